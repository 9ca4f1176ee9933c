"""What to take care of."""

from __future__ import annotations

from model.cautions import list_cautions
from render.cautions_sheet import caution_strips
from render.desk import Desk, Draft, draft_pages

CAUTIONS = "Cautions"


def draft_cautions(desk: Desk) -> list[Draft]:
    """The cautions that concern the job."""
    loads = desk.takeoff.loads if desk.takeoff else None
    return draft_pages(desk, CAUTIONS, caution_strips(list_cautions(desk.surround, loads), desk.width))
