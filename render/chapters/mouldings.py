"""Every moulding of the job, full size."""

from __future__ import annotations

from render.desk import Desk, Draft
from render.moulding_sheet import lay_mouldings, list_used
from render.sheets import Block, safe_area


def draft_mouldings(desk: Desk) -> list[Draft]:
    """As many sheets as it takes; none where there is no moulding."""
    style = desk.surround.job.about.length_style
    area = safe_area(*desk.size, Block.BELOW)
    pages = lay_mouldings(list_used(desk.surround.layout.mouldings, style), area, style)
    full_size = desk.scales[0].name
    return [Draft("Mouldings, full size", full_size, page, Block.BELOW) for page in pages]
