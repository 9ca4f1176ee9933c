"""Front and side, with the plan where it has room."""

from __future__ import annotations

from render.desk import Desk, Draft, draft_layout, drawer, each_once, lay
from render.front_parted import draw_frame_sizes, draw_main_sizes
from render.parted import draft_parted, is_clear
from render.section_marks import marked
from render.sheets import FRAME_SIZES
from render.view_layout import lay_views

PARTED_RATIO = 24
"""Drawn smaller than 1/2" = 1'-0", the front's dimensions are parted over two sheets. Shop choice."""
GOOD_RATIO = 16
"""The front view gives up scale for its neighbours down to 3/4" = 1'-0" and no further. Shop choice."""


def draft_elevations(desk: Desk) -> list[Draft]:
    """Front and side on one sheet, with the plan if that fits too, where the front stays large enough."""
    draw = marked(desk.surround, drawer(desk.surround))
    front = lay(desk, draw, ("front",))
    if front.scale.ratio > PARTED_RATIO:
        main = lay(desk, marked(desk.surround, each_once(desk.surround, draw_main_sizes)), ("front",))
        if main.scale.ratio < front.scale.ratio and main.fits(desk.area) and is_clear(main):
            frames = lay(desk, each_once(desk.surround, draw_frame_sizes), (FRAME_SIZES,))
            if is_clear(frames):
                return [
                    draft_layout(desk, ("front",), main),
                    draft_layout(desk, (FRAME_SIZES,), frames),
                    *draft_parted(desk, "side"),
                ]
    large = [scale for scale in desk.scales if scale.ratio <= max(front.scale.ratio, GOOD_RATIO)]
    for views in (("front", "side", "plan"), ("front", "side")):
        together = lay_views(views, draw, large, desk.area)
        if together.fits(desk.area) and is_clear(together):
            return [draft_layout(desk, views, together)]
    return [*draft_parted(desk, "front"), *draft_parted(desk, "side")]
