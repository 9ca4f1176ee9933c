"""The front as a picture: shades and shadows laid over the view, and nothing that only a workshop needs.

How shades are worked out is render.shaded's. A working drawing carries none.
"""

from __future__ import annotations

from model.surround import Surround
from render.drawing import Drawing, Hatch, Leader, Mark, Pen, Region, Text
from render.shaded import Backdrop, list_tones
from render.view_context import BESIDE, Frame
from render.views import ViewOptions, draw_view, project_boards

WORKSHOP = frozenset({Pen.GUIDE, Pen.CENTRE, Pen.DIMENSION, Pen.FAULT, Pen.CLEARANCE})
"""Pens for what does not show in the room."""


def draw_shaded(surround: Surround, ratio: float) -> Drawing:
    """The front elevation without dimensions, notes and hidden lines, shaded; lettered for `ratio`."""
    projection, _ = project_boards(surround, "front")
    tones = list_tones(projection, _wall_behind(surround))
    view = draw_view(surround, "front", ViewOptions(ratio=ratio, dimensions=False))
    kept = [mark for mark in view.marks if _shows(mark)]
    areas = [mark for mark in kept if isinstance(mark, Region)]
    hatches = [mark for mark in kept if isinstance(mark, Hatch)]
    lines = [mark for mark in kept if not isinstance(mark, Region | Hatch)]
    return Drawing((*areas, *tones.regions, *hatches, *lines), ratio)


def _shows(mark: Mark) -> bool:
    if isinstance(mark, Text | Leader):
        return False
    return mark.stands_for != "ceiling" and getattr(mark, "pen", None) not in WORKSHOP


def _wall_behind(surround: Surround) -> Backdrop:
    """The wall as far as it goes and a shadow may fall on it."""
    layout, room = surround.layout, surround.job.site.room
    frame = Frame.around(surround, "front")
    left, _, right, top = frame.outline
    left = max(left - BESIDE, -layout.opening_side - room.left)
    right = min(right + layout.shelf_foremost - layout.wall, layout.opening_side + room.right)
    return Backdrop(layout.wall, (min(left, right), layout.floor, right, top))
