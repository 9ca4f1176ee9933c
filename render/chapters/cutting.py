"""What is bought and sawn: cut list, buying list, cutting plans, rough sizes, saw settings, materials."""

from __future__ import annotations

from model.cutting.buying import list_buying
from model.cutting.frozen import list_since_printed
from model.takeoff.materials import list_fastened
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


def draft_plans(desk: Desk) -> list[Draft]:
    """Every board and sheet as it is cut, then how the saw is guided; no sheet for what there is none of."""
    style, drafts = desk.surround.job.about.length_style, []
    if desk.cutting is not None:
        cut = desk.surround.job.purchase.cut
        plans = cutting_strips(desk.cutting, style, desk.width, desk.bought, cut)
        drafts += draft_pages(desk, "Cutting plans", plans) if plans else []
    if (takeoff := desk.takeoff) is not None:
        strips = guide_strips(takeoff.settings, takeoff.saw, style, desk.width)
        drafts += draft_pages(desk, "Saw settings", strips)
    return drafts


def draft_buying(desk: Desk) -> list[Draft]:
    """What to buy; no sheet where nothing is planned."""
    if desk.cutting is None:
        return []
    style = desk.surround.job.about.length_style
    buying = list_buying(desk.cutting)
    changes = list_since_printed(desk.surround.job.purchase, buying)
    fastened = list_fastened(desk.takeoff.materials) if desk.takeoff else ()
    strips = buying_strips(desk.cutting, buying, style, desk.width, changes, fastened)
    return draft_pages(desk, "Buying list", strips) if strips else []


def draft_rough(desk: Desk) -> list[Draft]:
    """What is sawn first."""
    if (takeoff := desk.takeoff) is None:
        return []
    style = desk.surround.job.about.length_style
    return draft_pages(desk, "Rough sizes", rough_strips(takeoff.cuts, style, desk.width))


def draft_materials(desk: Desk) -> list[Draft]:
    """What is used up, and what is lifted."""
    if (takeoff := desk.takeoff) is None:
        return []
    job, floor = desk.surround.job, desk.surround.layout.floor
    strips = materials_strips(takeoff, job, floor, job.about.length_style, desk.width)
    return draft_pages(desk, "Materials", strips)
