"""The front elevation in two: its main sizes on one sheet and the sizes of its frames on another.

For papers so small that all its dimensions together would leave no room for the drawing.
"""

from __future__ import annotations

from model.surround import Surround
from render.dimension_strings import String
from render.drawing import Drawing
from render.view_dimensions import list_strings
from render.views import ViewOptions, draw_view

FRAME_SIZES = {"column.stile", "column.rail", "frieze.stile", "frieze.rail", "bed_mould.size"}
"""Parameters of which a string of frame sizes shows at least one."""

CEILING = {"ceiling", "room.ceiling"}
"""What the ceiling's line and note stand for."""


def draw_main_sizes(surround: Surround, view: str, ratio: float) -> Drawing:
    """The front elevation without the sizes of its frames; `view` is the name it is placed under."""
    return _draw(surround, ratio, frames=False)


def draw_frame_sizes(surround: Surround, view: str, ratio: float) -> Drawing:
    """The front elevation with the sizes of its frames alone; `view` is the name it is placed under."""
    return _draw(surround, ratio, frames=True)


def shows_frames(string: String) -> bool:
    """Whether a string gives sizes of stiles, rails, panels and mouldings."""
    return any(station.shows in FRAME_SIZES for station in string.stations)


def _draw(surround: Surround, ratio: float, frames: bool) -> Drawing:
    strings = tuple(s for s in list_strings(surround, "front") if shows_frames(s) is frames)
    whole = draw_view(surround, "front", ViewOptions(ratio=ratio, strings=strings))
    if not frames:
        return whole
    return Drawing(tuple(mark for mark in whole.marks if mark.stands_for not in CEILING), ratio)
