"""Which drawings stand on the screen's sheet and where, and what lies under a point of it. No widgets."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from app.painter import Gathered, gather_drawing, region_path
from model.board import Point3
from render.drawing import Dimension, Drawing, Point, Region

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

    def list_dimensions(self, path: str = "") -> Iterator[Dimension]:
        """Dimensions that show a parameter: all of them, or those of one `path`."""
        for mark in self.drawing.marks:
            if isinstance(mark, Dimension) and mark.stands_for and (not path or mark.stands_for == path):
                yield mark

    def list_regions(self, marks: frozenset[str]) -> Iterator[QPainterPath]:
        """Areas that belong to boards with one of these marks."""
        for mark in self.drawing.marks:
            if isinstance(mark, Region) and mark.stands_for in marks:
                yield region_path(mark)

    def find_board(self, point: Point) -> str:
        """The mark of the board seen at a point of this view, or nothing."""
        for mark in reversed(self.drawing.marks):
            if isinstance(mark, Region) and mark.stands_for and region_path(mark).contains(QPointF(*point)):
                return mark.stands_for
        return ""

    def project(self, at: Point3) -> Point:
        """Where a point of the room is seen in this view, on the sheet."""
        x, y, z = at
        seen = {"front": (x, y), "side": (-z, y), "vertical_section": (-z, y)}.get(self.name, (x, -z))
        return seen[0] + self.dx, seen[1]


def set_out(drawings: list[tuple[str, Drawing]]) -> list[ShownView]:
    """The named drawings beside each other from left to right, on one line of heights."""
    shown: list[ShownView] = []
    for name, drawing in drawings:
        gathered = gather_drawing(drawing)
        dx = shown[-1].box.right() + GAP * drawing.ratio - gathered.box.left() if shown else 0.0
        shown.append(ShownView(name, drawing, gathered, dx))
    return shown
