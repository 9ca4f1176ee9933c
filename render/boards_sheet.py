"""The views on which boards carry their marks, and the parts of sections that need a larger scale for it.

Where a mark stands is decided in render.board_marks.
"""

from __future__ import annotations

from collections.abc import Mapping

from model.once import once
from model.surround import Surround
from render.board_marks import BoardMarks, mark_seen
from render.details import detail_box, draw_part
from render.drawing import Drawing
from render.extent import Box
from render.sheets import BOARDS_COLUMN, BOARDS_FRONT, BOARDS_SHELF, BOARDS_SIDE
from render.views import ViewOptions, draw_view

BOARDS_OF: Mapping[str, str] = {
    BOARDS_FRONT: "front",
    BOARDS_SIDE: "side",
    BOARDS_COLUMN: "plan_section",
    BOARDS_SHELF: "vertical_section",
}
"""The view that each drawing with marks is of."""


def draw_boards(surround: Surround, name: str, ratio: float) -> Drawing:
    """The named drawing with the mark of every board that it shows, lettered for `ratio`."""
    bare, found = _draw_marked(surround, name, ratio)
    return bare.plus(*found.marks)


def draw_bare(surround: Surround, name: str, ratio: float) -> Drawing:
    """The same without the marks."""
    return once(surround, ("bare", name, ratio), lambda: _draw_bare(surround, name, ratio))


def list_left_out(surround: Surround, name: str, ratio: float) -> tuple[str, ...]:
    """The marks of boards that the named drawing shows and has no room to mark."""
    return _draw_marked(surround, name, ratio)[1].left_out


def _draw_marked(surround: Surround, name: str, ratio: float) -> tuple[Drawing, BoardMarks]:
    """The drawing without marks, and those."""

    def draw() -> tuple[Drawing, BoardMarks]:
        bare = draw_bare(surround, name, ratio)
        return bare, _mark(surround, name, bare)

    return once(surround, (name, ratio), draw)


def _draw_bare(surround: Surround, name: str, ratio: float) -> Drawing:
    view = BOARDS_OF[name]
    if _part(surround, name) is not None:
        return draw_part(surround, view, ratio)
    return draw_view(surround, view, ViewOptions(ratio=ratio, dimensions=False))


def _mark(surround: Surround, name: str, bare: Drawing) -> BoardMarks:
    return mark_seen(surround, BOARDS_OF[name], bare.ratio, bare.marks, _part(surround, name))


def _part(surround: Surround, name: str) -> Box | None:
    view = BOARDS_OF[name]
    return detail_box(surround, view) if view.endswith("section") else None
