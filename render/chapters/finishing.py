"""Filling, sanding, caulking, priming and painting, with amounts."""

from __future__ import annotations

from model.steps.finishing import list_finishing
from render.desk import Desk, Draft, draft_pages
from render.finishing_sheet import finishing_strips

FINISHING = "Finishing"


def draft_finishing(desk: Desk) -> list[Draft]:
    """Every step of finishing; no sheet where nothing was taken off or nothing is to be done."""
    if desk.takeoff is None:
        return []
    job = desk.surround.job
    finishing = list_finishing(job, desk.takeoff.materials)
    if not finishing:
        return []
    return draft_pages(desk, FINISHING, finishing_strips(finishing, job.about.length_style, desk.width))
