"""A heading of the measuring list and the lines below it, which fold away under it."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRect, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.fields.row import SIDE, Row
from app.theme import RHYTHM, colours, text_font

HEIGHT = 5 * RHYTHM


class Heading(QWidget):
    """The group's name, and a small sign that shows whether its lines are folded away."""

    clicked = Signal()

    def __init__(self, title: str) -> None:
        super().__init__()
        self._title = title
        self.is_folded = False
        self.setFixedHeight(HEIGHT)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAccessibleName(title)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click folds or unfolds."""
        if event.button() is Qt.MouseButton.LeftButton and self.rect().contains(event.position().toPoint()):
            self.clicked.emit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The name low in its line, so that space parts it from what is above."""
        c = colours()
        low = QRect(SIDE, HEIGHT // 3, self.width() - 2 * SIDE, HEIGHT - HEIGHT // 3)
        with QPainter(self) as painter:
            painter.setFont(text_font(bold=True))
            painter.setPen(QColor(c.ink))
            painter.drawText(low, int(Qt.AlignmentFlag.AlignVCenter), self._title)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            painter.setPen(QPen(QColor(c.faint), 1.5))
            x, y = low.right() - 5.0, low.center().y() + 0.5
            sign = ((-2, -4), (2, 0), (-2, 4)) if self.is_folded else ((-4, -2), (0, 2), (4, -2))
            painter.drawPolyline(QPolygonF([QPointF(x + dx, y + dy) for dx, dy in sign]))


class Group(QWidget):
    """Parted from the next by space; there is no box round it."""

    def __init__(self, title: str, rows: list[Row], folded: bool) -> None:
        super().__init__()
        self.rows = rows
        self.heading = Heading(title)
        self.heading.clicked.connect(lambda: self.fold(not self.is_folded))
        self._lines = QWidget()
        column = QVBoxLayout(self._lines)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for row in rows:
            column.addWidget(row)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self.heading)
        layout.addWidget(self._lines)
        self.fold(folded)

    @property
    def is_folded(self) -> bool:
        """Whether only the heading is seen."""
        return self.heading.is_folded

    def fold(self, folded: bool) -> None:
        """Show the heading alone, or its lines too."""
        self.heading.is_folded = folded
        self.heading.update()
        self._lines.setHidden(folded)
