"""Where the surround is held to the wall, and what is fastened with what."""

from __future__ import annotations

from model.surround import Surround
from model.takeoff.anchors import plan_anchors
from render.desk import Desk, Draft, draft_layout, draft_pages, each_once, lay
from render.drawing import Drawing
from render.fixing_sheet import fixing_strips
from render.sheets import ANCHORS
from render.views import ViewOptions, draw_view

FIXING = "Fixing"


def draft_anchors(desk: Desk) -> list[Draft]:
    """The front with every anchor numbered as in its table; no sheet where there is none."""
    if not plan_anchors(desk.surround).anchors:
        return []
    layout = lay(desk, each_once(desk.surround, draw_anchored), (ANCHORS,))
    if not layout.fits(desk.area):
        layout = lay(desk, each_once(desk.surround, _draw_numbers), (ANCHORS,))
    return [draft_layout(desk, (ANCHORS,), layout)]


def draft_fixing(desk: Desk) -> list[Draft]:
    """The tables of anchors and fasteners."""
    return draft_pages(desk, FIXING, fixing_strips(desk.surround, desk.width))


def draw_anchored(surround: Surround, _: str, ratio: float) -> Drawing:
    """The front with every anchor numbered, lettered for `ratio`."""
    return draw_view(surround, "front", ViewOptions(ratio, dimensions=False, anchors=True))


def _draw_numbers(surround: Surround, view: str, ratio: float) -> Drawing:
    """The same without what stands in the room or lies behind the wood; the front elevation shows that."""
    drawing = draw_anchored(surround, view, ratio)
    others = {obstacle.path for obstacle in (*surround.layout.obstacles, *surround.layout.behind)}
    return Drawing(tuple(mark for mark in drawing.marks if mark.stands_for not in others), ratio)
