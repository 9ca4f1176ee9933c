"""A picture of what one field measures, on paper, the measure itself in the colour of what is in focus."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.painter import (
    Gathered,
    Place,
    dimension_writing,
    gather_drawing,
    paint_drawing,
    paint_text,
    region_path,
)
from app.theme import ON_PAPER, RHYTHM
from render.dimension_strokes import dimension_strokes
from render.drawing import Dimension, Drawing, Fill, Lines, Mark, Polyline, Region, Text
from render.pens import TINTS
from render.picture_frame import FieldPicture

LINE_DOTS = 3.0
"""Pixels to a millimetre of line width."""
LIT_WIDTH = 2.0
CORNER = 4.0
LARGEST = 1.6
"""Pixels to a ninety-sixth of an inch on paper, at most: writing need not be larger."""


class PictureView(QWidget):
    """Shows a `FieldPicture`, as large as fits; nothing at all where there is none."""

    def __init__(self, largest: float = LARGEST) -> None:
        super().__init__()
        self._largest = largest
        self._ground: Gathered | None = None
        self._marked = Drawing(())
        self._box = QRectF()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Picture of what is measured")

    @property
    def is_empty(self) -> bool:
        """Whether there is no picture."""
        return self._ground is None

    def show_picture(self, picture: FieldPicture | None, words: str) -> None:
        """Show it; `words` say what is measured to whoever cannot see it."""
        self._ground = None
        if picture is not None:
            self._ground, self._marked = gather_drawing(picture.ground), picture.marked
            self._box = self._ground.box.united(gather_drawing(picture.marked).box)
        self.setAccessibleDescription(words if picture is not None else "")
        self.update()

    def sizeHint(self) -> QSize:
        """Of the shape that pictures have."""
        return QSize(312, 18 * RHYTHM)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paper, what is measured, and over it the measure."""
        if self._ground is None:
            return
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(TINTS[Fill.PAPER]))
            painter.drawRoundedRect(self.rect(), CORNER, CORNER)
            place = self._place()
            paint_drawing(painter, self._ground, place, LINE_DOTS)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            for mark in self._marked.marks:
                _paint_marked(painter, mark, place, self._marked.ratio)

    def _place(self) -> Place:
        """Where the model's origin lies, for the picture to stand in the middle."""
        room, box = self.rect().adjusted(RHYTHM, RHYTHM, -RHYTHM, -RHYTHM), self._box
        scale = min(
            max(room.width(), 1) / max(box.width(), 1e-6),
            max(room.height(), 1) / max(box.height(), 1e-6),
            self._largest * 96 / self._marked.ratio,
        )
        left = room.center().x() - scale * box.center().x()
        return Place(scale, left, room.center().y() + scale * box.center().y())


def _paint_marked(painter: QPainter, mark: Mark, place: Place, ratio: float) -> None:
    lit = QColor(ON_PAPER.lit)
    match mark:
        case Region(fill=Fill.PAPER):
            painter.fillPath(place.transform.map(region_path(mark)), QBrush(QColor(TINTS[Fill.PAPER])))
        case Region():
            lit.setAlpha(56)
            painter.fillPath(place.transform.map(region_path(mark)), QBrush(lit))
        case Polyline():
            painter.setPen(QPen(lit, 1.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            points = QPolygonF([place.to_pixels(point) for point in mark.points])
            painter.drawPolygon(points) if mark.closed else painter.drawPolyline(points)
        case Lines():
            painter.setPen(QPen(lit, LIT_WIDTH))
            painter.drawLines([_line(place, *segment) for segment in mark.segments])
        case Text():
            paint_text(painter, mark, place, lit)
        case Dimension():
            painter.setPen(QPen(lit, LIT_WIDTH / 1.5))
            painter.drawLines([_line(place, *segment) for segment in dimension_strokes(mark, ratio)])
            paint_text(painter, dimension_writing(mark), place, lit)


def _line(place: Place, x0: float, y0: float, x1: float, y1: float) -> QLineF:
    start, end = place.to_pixels((x0, y0)), place.to_pixels((x1, y1))
    return QLineF(QPointF(start), QPointF(end))
