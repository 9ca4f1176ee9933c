"""What is bought and sawn: cut list, buying list, cutting plans, rough sizes, saw settings, materials."""

from __future__ import annotations

from model.cutting.buying import list_buying
from model.takeoff.saw_setups import list_corner_angles, list_setups
from render.buying_sheet import buying_strips
from render.cut_sheet import cut_strips
from render.cutting_sheet import cutting_strips
from render.desk import Desk, Draft, draft_pages
from render.guide_sheet import guide_strips
from render.materials_sheet import materials_strips
from render.rough_sheet import rough_strips
from render.saw_sheet import CORNERS, corner_strips, saw_strips


def draft_cut_list(desk: Desk) -> list[Draft]:
    """Every piece at its finished size, and how the mitre saw is set."""
    strips = (
        *cut_strips(desk.cuts, desk.surround.job.about.length_style, desk.width),
        *saw_strips(list_setups(desk.surround), desk.width),
        *corner_strips(list_corner_angles(desk.surround, CORNERS), desk.width),
    )
    return draft_pages(desk, "Cut list", strips)


def draft_cutting(desk: Desk) -> list[Draft]:
    """What to buy, and every board and sheet as it is cut; no sheet for what there is none of."""
    if desk.cutting is None:
        return []
    style = desk.surround.job.about.length_style
    buying = buying_strips(desk.cutting, list_buying(desk.cutting), style, desk.width)
    plans = cutting_strips(desk.cutting, style, desk.width, desk.bought)
    return [
        *(draft_pages(desk, "Buying list", buying) if buying else []),
        *(draft_pages(desk, "Cutting plans", plans) if plans else []),
    ]


def draft_takeoff(desk: Desk) -> list[Draft]:
    """What is sawn first, how the saw is guided, and what is used up and lifted."""
    if (takeoff := desk.takeoff) is None:
        return []
    job, floor, width = desk.surround.job, desk.surround.layout.floor, desk.width
    style = job.about.length_style
    return [
        *draft_pages(desk, "Rough sizes", rough_strips(takeoff.cuts, style, width)),
        *draft_pages(desk, "Saw settings", guide_strips(takeoff.settings, takeoff.saw, style, width)),
        *draft_pages(desk, "Materials", materials_strips(takeoff, job, floor, style, width)),
    ]
