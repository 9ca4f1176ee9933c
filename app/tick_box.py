"""A box to tick that is seen on either ground; the style's own all but vanishes on a dark one."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QCheckBox, QStyle, QStyleOptionButton

from app.theme import colours

CORNER = 2.0


class Tick(QCheckBox):
    """A check box with an edge of its own; where words and box lie is the style's."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Box, tick and words."""
        c = colours()
        option = QStyleOptionButton()
        self.initStyleOption(option)
        find = self.style().subElementRect
        box = QRectF(find(QStyle.SubElement.SE_CheckBoxIndicator, option, self)).adjusted(
            0.5, 0.5, -0.5, -0.5
        )
        room = find(QStyle.SubElement.SE_CheckBoxContents, option, self)
        ink = c.ink if self.isEnabled() else c.faint
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            painter.setPen(QPen(QColor(c.lit if self.hasFocus() else c.faint), 2 if self.hasFocus() else 1))
            painter.setBrush(QColor(c.entry))
            painter.drawRoundedRect(box, CORNER, CORNER)
            if self.isChecked():
                painter.setPen(QPen(QColor(ink), 2))
                painter.drawPolyline(_tick(box))
            painter.setPen(QColor(ink))
            right = self.layoutDirection() is Qt.LayoutDirection.RightToLeft
            side = Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft
            flags = int(Qt.AlignmentFlag.AlignVCenter | side) | int(Qt.TextFlag.TextShowMnemonic)
            painter.drawText(room, flags, self.text())


def _tick(box: QRectF) -> QPolygonF:
    wide, high = box.width(), box.height()
    places = ((0.22, 0.5), (0.42, 0.72), (0.78, 0.26))
    return QPolygonF([QPointF(box.left() + x * wide, box.top() + y * high) for x, y in places])
