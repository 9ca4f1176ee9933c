"""The scroll bar of every list."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QScrollBar, QStyle, QStyleOptionSlider

from app.theme import colours


class ThinBar(QScrollBar):
    """A scroll bar without a trough."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The part that is dragged, and nothing else."""
        option = QStyleOptionSlider()
        self.initStyleOption(option)
        style = self.style()
        box = style.subControlRect(
            QStyle.ComplexControl.CC_ScrollBar, option, QStyle.SubControl.SC_ScrollBarSlider, self
        )
        c = colours()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self.palette().window())
            if self.maximum() > self.minimum():
                painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(QColor(c.faint if self.isSliderDown() or self.underMouse() else c.rule))
                painter.drawRoundedRect(QRectF(box).adjusted(3, 3, -3, -3), 3, 3)
