"""Which drawings stand on the screen's sheet and where. No widgets."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPolygonF

from app.painter import Gathered, gather_drawing
from render.drawing import Dimension, Drawing, Region

ELEVATIONS = ("front", "side")
GAP = 0.5
"""Clear between two views on the sheet, inches on paper."""


@dataclass(frozen=True, slots=True)
class ShownView:
    """A drawing ready to paint; its model origin lies (dx, 0) inches from the sheet's."""

    name: str
    drawing: Drawing
    gathered: Gathered
    dx: float = 0.0

    @property
    def box(self) -> QRectF:
        """What it takes up on the sheet."""
        return self.gathered.box.translated(self.dx, 0.0)

    @property
    def solid_box(self) -> QRectF:
        """What wood and masonry take up on the sheet, without writing and dimension lines."""
        rings = [mark.rings[0] for mark in self.drawing.marks if isinstance(mark, Region)]
        points = [QPointF(x + self.dx, y) for ring in rings for x, y in ring]
        return QPolygonF(points).boundingRect()

    def list_dimensions(self, path: str = "") -> Iterator[Dimension]:
        """Dimensions that show a parameter: all of them, or those of one `path`."""
        for mark in self.drawing.marks:
            if isinstance(mark, Dimension) and mark.stands_for and (not path or mark.stands_for == path):
                yield mark


def put_in(drawings: Sequence[tuple[str, Drawing]], before: Sequence[ShownView]) -> list[ShownView]:
    """The views `before`, the named drawings among them in the place of what was there, where it stood."""
    new = dict(drawings)
    return [_with_drawing(view, new.get(view.name, view.drawing)) for view in before]


def _with_drawing(view: ShownView, drawing: Drawing) -> ShownView:
    if view.drawing == drawing:
        return view
    return ShownView(view.name, drawing, gather_drawing(drawing), view.dx)


def set_out(drawings: Sequence[tuple[str, Drawing]], before: Sequence[ShownView] = ()) -> list[ShownView]:
    """The named drawings beside each other from left to right, on one line of heights.

    What is ready to paint in `before` already is taken from there: an edit often leaves a view as it is.
    """
    shown: list[ShownView] = []
    ready = {view.name: view for view in before}
    for name, drawing in drawings:
        same = name in ready and ready[name].drawing == drawing
        gathered = ready[name].gathered if same else gather_drawing(drawing)
        dx = shown[-1].box.right() + GAP * drawing.ratio - gathered.box.left() if shown else 0.0
        shown.append(ShownView(name, drawing, gathered, dx))
    return shown
