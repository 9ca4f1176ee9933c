"""One shape for each status, so that colour is never the only sign. The words are model.check.finding's."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from model.check.finding import Status


def paint_shape(painter: QPainter, status: Status, box: QRectF, colour: QColor) -> None:
    """Over: a full triangle. Not known: an empty ring. Close: a half-full square. Within: a full dot."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(colour, 1.5))
    painter.setBrush(colour)
    middle = box.center()
    match status:
        case Status.FAIL:
            painter.drawPolygon(
                QPolygonF([QPointF(middle.x(), box.top()), box.bottomRight(), box.bottomLeft()])
            )
        case Status.UNKNOWN:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawEllipse(box.adjusted(1, 1, -1, -1))
        case Status.WARN:
            square = box.adjusted(1, 1, -1, -1)
            painter.fillRect(
                QRectF(square.left(), middle.y(), square.width(), square.bottom() - middle.y()), colour
            )
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(square)
        case Status.PASS:
            painter.drawEllipse(middle, box.width() / 4, box.height() / 4)
    painter.restore()
