"""What is laid over the sheet while somebody works: the dimension in focus, a finding's place, boards picked.

None of it belongs to the drawing and none of it is printed.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from app.grip_mark import GripMark
from app.painter import Place, dimension_writing, paint_text
from app.shown import ShownView
from app.status_shape import paint_shape
from app.theme import ON_PAPER, RHYTHM, SMALL_POINTS, status_colour, text_font
from model.check.finding import STATUS_WORD, Finding
from render.dimension_strokes import dimension_strokes
from render.drawing import Dimension, Point, Ring, Segment
from render.extent import text_corners

LIT_WIDTH = 1.8
RING = 11.0
PLATE_CLEAR = 3.0


@dataclass(slots=True)
class Overlay:
    """What is to be shown; empty fields show nothing. `hover` is a path under the pointer.

    `finding_points` and `outlines` hold a view's name with each place and each board's ring in it; `guides`
    are the lines of a proportion on the front. `grip` is the edge that can be moved or is, `banner` says that
    another state of the job is shown.
    """

    path: str = ""
    hover: str = ""
    finding: Finding | None = None
    finding_points: tuple[tuple[str, Point], ...] = ()
    outlines: tuple[tuple[str, Ring], ...] = ()
    guides: tuple[Segment, ...] = ()
    grip: GripMark | None = None
    banner: str = ""

    @property
    def points_out(self) -> bool:
        """Whether a finding's place or a board is marked, as it was when that was looked for."""
        return self.finding is not None or bool(self.outlines)

    def paint(self, painter: QPainter, views: list[ShownView], place: Place, room: QRectF) -> None:
        """Lay it over the views, in pixels; `room` is what of the device is the sheet's."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
        for view in views:
            own = place.moved(view.dx, 0.0)
            self._tint_boards(painter, own, [ring for name, ring in self.outlines if name == view.name])
            if view.name == "front":
                self._rule_guides(painter, own)
            for path in {self.hover, self.path} - {""}:
                for dimension in view.list_dimensions(path):
                    self._light(painter, dimension, own, view.drawing.ratio, plate=path == self.path)
        if self.finding is not None:
            for view in views:
                for point in [point for name, point in self.finding_points if name == view.name]:
                    at = place.moved(view.dx, 0.0).to_pixels(point)
                    self._mark_finding(painter, self.finding, at)
        for view in views:
            if self.grip is not None and not self.banner and view.name == self.grip.view:
                self.grip.paint(painter, place.moved(view.dx, 0.0), room)
        if self.banner:
            self._paint_banner(painter, room)

    def _paint_banner(self, painter: QPainter, room: QRectF) -> None:
        """What is shown in place of the job as it is, in the sheet's upper left corner."""
        font = text_font(SMALL_POINTS, bold=True)
        metrics = QFontMetricsF(font, painter.device())
        size = QRectF(0, 0, metrics.horizontalAdvance(self.banner) + 2 * RHYTHM, 3 * RHYTHM)
        plate = size.translated(room.left() + RHYTHM, room.top() + RHYTHM)
        painter.setPen(QPen(QColor(ON_PAPER.lit), 1.0))
        painter.setBrush(QColor(ON_PAPER.lit_ground))
        painter.drawRoundedRect(plate, PLATE_CLEAR, PLATE_CLEAR)
        painter.setFont(font)
        painter.setPen(QColor(ON_PAPER.ink))
        painter.drawText(plate, int(Qt.AlignmentFlag.AlignCenter), self.banner)

    def _rule_guides(self, painter: QPainter, place: Place) -> None:
        """Long dashes where an author would have a size end."""
        pen = QPen(QColor(ON_PAPER.lit), LIT_WIDTH)
        pen.setDashPattern([8.0, 3.0])
        painter.setPen(pen)
        painter.drawLines([place.to_line(segment) for segment in self.guides])

    def distance_to(self, dimension: Dimension, place: Place, pixel: QPointF) -> float:
        """Pixels from a dimension's writing or line; 0 on the writing."""
        box = _text_box(dimension, place)
        if box.contains(pixel):
            return 0.0
        low, high = dimension.span
        ends = ((dimension.line, low), (dimension.line, high)) if dimension.vertical else (
            (low, dimension.line), (high, dimension.line))  # fmt: skip
        return _distance(pixel, place.to_pixels(ends[0]), place.to_pixels(ends[1]))

    def _light(
        self, painter: QPainter, dimension: Dimension, place: Place, ratio: float, plate: bool
    ) -> None:
        colour = QColor(ON_PAPER.lit)
        if plate:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(ON_PAPER.lit_ground))
            painter.drawRoundedRect(_text_box(dimension, place), PLATE_CLEAR, PLATE_CLEAR)
        painter.setPen(QPen(colour, LIT_WIDTH if plate else 1.0))
        painter.drawLines([place.to_line(segment) for segment in dimension_strokes(dimension, ratio)])
        paint_text(painter, dimension_writing(dimension), place, colour)

    def _tint_boards(self, painter: QPainter, place: Place, rings: list[Ring]) -> None:
        tint = QColor(ON_PAPER.lit)
        tint.setAlpha(48)
        painter.setPen(QPen(QColor(ON_PAPER.lit), LIT_WIDTH))
        painter.setBrush(tint)
        for ring in rings:
            painter.drawPolygon(QPolygonF([place.to_pixels(point) for point in ring]))

    def _mark_finding(self, painter: QPainter, finding: Finding, at: QPointF) -> None:
        """A ring with a cross hair round the place, and the status in shape and word beside it."""
        colour = status_colour(finding.status, ON_PAPER)
        painter.setPen(QPen(colour, 2.0))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(at, RING, RING)
        for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            start, end = QPointF(dx, dy) * (RING - 4), QPointF(dx, dy) * (RING + 5)
            painter.drawLine(at + start, at + end)
        font = text_font(SMALL_POINTS, bold=True)
        word = STATUS_WORD[finding.status]
        width = QFontMetricsF(font, painter.device()).horizontalAdvance(word)
        plate = QRectF(at.x() + RING + RHYTHM, at.y() - RING - 2 * RHYTHM, width + 4 * RHYTHM, 2.5 * RHYTHM)
        painter.setPen(QPen(colour, 1.0))
        painter.setBrush(QColor("#ffffff"))
        painter.drawRoundedRect(plate, PLATE_CLEAR, PLATE_CLEAR)
        shape = QRectF(plate.left() + RHYTHM, plate.center().y() - 5, 10, 10)
        paint_shape(painter, finding.status, shape, colour)
        painter.setFont(font)
        painter.setPen(colour)
        inside = plate.adjusted(3 * RHYTHM - 2, 0, 0, 0)
        painter.drawText(inside, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), word)


def _text_box(dimension: Dimension, place: Place) -> QRectF:
    corners = [place.to_pixels(point) for point in text_corners(dimension_writing(dimension))]
    xs, ys = [c.x() for c in corners], [c.y() for c in corners]
    box = QRectF(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))
    return box.adjusted(-PLATE_CLEAR, 0, PLATE_CLEAR, 0)


def _distance(pixel: QPointF, start: QPointF, end: QPointF) -> float:
    run = end - start
    length = QPointF.dotProduct(run, run)
    part = min(max(QPointF.dotProduct(pixel - start, run) / length, 0.0), 1.0) if length else 0.0
    away = pixel - start - run * part
    return hypot(away.x(), away.y())
