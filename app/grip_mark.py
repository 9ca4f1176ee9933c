"""An edge that can be moved, as it is shown over the sheet: lit, with its value and why it stops there."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen, QPolygonF

from app.painter import Place
from app.theme import ON_PAPER, RHYTHM, SMALL_POINTS, TEXT_POINTS, text_font
from model.sentences import capitalise
from render.drawing import Segment

EDGE_WIDTH = 2.5
ARROW, ARROW_OFF = 6.0, 7.0
"""Pixels of the arrow heads that say which way an edge goes, and how far off it they begin."""
TICK, TICKS_OFF = 3.0, 12.0
"""Half a tick, and how far beside the arrow heads ticks stand, pixels."""
OFF_POINTER = 20.0
PAD = 7.0
CORNER = 3.0


@dataclass(frozen=True, slots=True)
class GripMark:
    """An edge in `view`, in its inches, moved ACROSS (0) or UP (1).

    `label`, `value` and `was` are what it moves, to what, and what that was, `note` the edge's name or why it
    stopped, `is_over` that this is because something is over its limit. `at` is the pointer's pixel, None for
    the edge's own middle. `stops` are how far along its way there is something worth stopping at;
    `is_stopped` says that it lies on one.
    """

    view: str
    segments: tuple[Segment, ...]
    way: int
    label: str
    value: str
    note: str
    was: str = ""
    at: QPointF | None = None
    stops: tuple[float, ...] = ()
    is_held: bool = False
    is_stopped: bool = False
    is_over: bool = False

    @property
    def words(self) -> str:
        """All of it in one sentence, to be read out."""
        was = f", was {self.was}" if self.was else ""
        return f"{self.label} {self.value}{was}. {capitalise(self.note)}".strip() + "."

    def middle_of(self, place: Place) -> QPointF:
        """The pixel in the middle of the edge in a view that stands at `place`."""
        return place.to_line(self.segments[0]).center()

    def paint(self, painter: QPainter, place: Place, room: QRectF) -> None:
        """Lay it over the view that stands at `place`; the plate stays within `room`."""
        lines = [place.to_line(segment) for segment in self.segments]
        anchor = self._anchor(lines)
        lit = QColor(ON_PAPER.lit)
        if self.is_stopped:
            self._paint_stop(painter, anchor, room, lit)
        painter.setPen(QPen(lit, EDGE_WIDTH))
        painter.drawLines(lines)
        self._paint_stops(painter, place.scale, anchor, lit)
        self._paint_arrows(painter, anchor, lit)
        self._paint_plate(painter, self.at or anchor, room)

    def _anchor(self, lines: list[QLineF]) -> QPointF:
        """The point of the edge nearest to the pointer, or its middle."""
        if self.at is None:
            return lines[0].center()
        near = [_nearest(line, self.at) for line in lines]
        return min(near, key=lambda point: QLineF(point, self.at or point).length())

    def _paint_stop(self, painter: QPainter, anchor: QPointF, room: QRectF, lit: QColor) -> None:
        """What the edge lies on, ruled over the sheet in long dashes, as a proportion is."""
        pen = QPen(lit, 1.0)
        pen.setDashPattern([8.0, 3.0])
        painter.setPen(pen)
        if self.way:
            painter.drawLine(QLineF(room.left(), anchor.y(), room.right(), anchor.y()))
        else:
            painter.drawLine(QLineF(anchor.x(), room.top(), anchor.x(), room.bottom()))

    def _paint_stops(self, painter: QPainter, scale: float, anchor: QPointF, lit: QColor) -> None:
        """Where there is something worth stopping at, as on a rule that lies beside the arrow heads."""
        painter.setPen(QPen(lit, 1.0))
        for off in self.stops:
            if self.way:
                x, y = anchor.x() - TICKS_OFF, anchor.y() - off * scale
                painter.drawLine(QLineF(x - TICK, y, x + TICK, y))
            else:
                x, y = anchor.x() + off * scale, anchor.y() - TICKS_OFF
                painter.drawLine(QLineF(x, y - TICK, x, y + TICK))

    def _paint_arrows(self, painter: QPainter, anchor: QPointF, lit: QColor) -> None:
        """A head on either side, pointing away from the edge, outlined so that it shows on dark wood too."""
        painter.setPen(QPen(QColor("#ffffff"), 1.0))
        painter.setBrush(lit)
        for turn in (-1.0, 1.0):
            tip, foot = (turn * (ARROW_OFF + ARROW), turn * ARROW_OFF)
            points = [(tip, 0.0), (foot, ARROW * 0.6), (foot, -ARROW * 0.6)]
            offs = [QPointF(b, a) if self.way else QPointF(a, b) for a, b in points]
            painter.drawPolygon(QPolygonF([anchor + off for off in offs]))

    def _paint_plate(self, painter: QPainter, at: QPointF, room: QRectF) -> None:
        """Name and value in one line, below it what the edge is or why it stops."""
        plain, bold, small = (
            text_font(TEXT_POINTS),
            text_font(TEXT_POINTS, bold=True),
            text_font(SMALL_POINTS),
        )
        of_plain, of_bold, of_small = (QFontMetricsF(f, painter.device()) for f in (plain, bold, small))
        runs = [(self.label, plain, ON_PAPER.soft, of_plain), (self.value, bold, ON_PAPER.ink, of_bold)]
        if self.was:
            runs.append((f"was {self.was}", small, ON_PAPER.soft, of_small))
        widths = [metrics.horizontalAdvance(text) for text, _, _, metrics in runs]
        notes = _wrap(self.note, of_small, max(room.width() * 0.4, 160.0))
        line, low = of_bold.height(), of_small.height()
        first = sum(widths) + RHYTHM * (len(runs) - 1)
        noted = [of_small.horizontalAdvance(note) for note in notes]
        width = max([first, *noted]) + 2 * PAD
        box = _beside(at, width, line + len(notes) * low + PAD, room)
        painter.setPen(QPen(QColor(ON_PAPER.lit), 1.0))
        painter.setBrush(QColor("#ffffff"))
        painter.drawRoundedRect(box, CORNER, CORNER)
        x, y = box.left() + PAD, box.top() + PAD / 2 + of_bold.ascent()
        for (text, font, colour, _), run in zip(runs, widths, strict=True):
            _write(painter, QPointF(x, y), text, font, colour)
            x += run + RHYTHM
        tone = ON_PAPER.over if self.is_over else ON_PAPER.lit if self.is_held else ON_PAPER.soft
        for i, note in enumerate(notes):
            _write(painter, QPointF(box.left() + PAD, y + (i + 1) * low), note, small, tone)


def _write(painter: QPainter, at: QPointF, text: str, font: QFont, colour: str) -> None:
    painter.setFont(font)
    painter.setPen(QColor(colour))
    painter.drawText(at, text)


def _nearest(line: QLineF, point: QPointF) -> QPointF:
    run = line.p2() - line.p1()
    length = QPointF.dotProduct(run, run)
    part = QPointF.dotProduct(point - line.p1(), run) / length if length else 0.0
    return line.pointAt(min(max(part, 0.0), 1.0))


def distance_to(place: Place, segment: Segment, pixel: QPointF) -> float:
    """Pixels from an edge that stands at `place`."""
    return QLineF(pixel, _nearest(place.to_line(segment), pixel)).length()


def _beside(at: QPointF, width: float, height: float, room: QRectF) -> QRectF:
    """Right of and below the pointer; on its other sides where it would leave the room."""
    x, y = at.x() + OFF_POINTER, at.y() + OFF_POINTER
    if x + width > room.right():
        x = max(at.x() - OFF_POINTER - width, room.left())
    if y + height > room.bottom():
        y = max(at.y() - OFF_POINTER - height, room.top())
    return QRectF(round(x) + 0.5, round(y) + 0.5, round(width), round(height))


def _wrap(text: str, metrics: QFontMetricsF, width: float) -> list[str]:
    """The words of a note on as many lines as it takes."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and metrics.horizontalAdvance(longer) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
