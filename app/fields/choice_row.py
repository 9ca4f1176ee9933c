"""A line for picking one of a few words."""

from __future__ import annotations

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QPainter, QPaintEvent, QPen, QPolygonF, QWheelEvent
from PySide6.QtWidgets import QComboBox

from app.fields.row import Row
from app.theme import RHYTHM, colours
from model.job import Job, read_value
from model.parameters import Parameter

CHOICE_SHARE = 0.65
"""Words need more room than figures."""


class ChoiceBox(QComboBox):
    """A box that the wheel turns only when it has the focus."""

    focused = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setFrame(False)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The words at the right like all values, and a small sign that there are others."""
        c = colours()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            painter.setPen(QPen(QColor(c.soft), 1.5))
            x, y = self.width() - 5.0, self.height() / 2
            painter.drawPolyline(QPolygonF([QPointF(x - 4, y - 2), QPointF(x, y + 2), QPointF(x + 4, y - 2)]))
            painter.setPen(QColor(c.ink))
            room = self.rect().adjusted(0, 0, -RHYTHM * 2, 0)
            words = self.fontMetrics().elidedText(
                self.currentText(), Qt.TextElideMode.ElideRight, room.width()
            )
            painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight), words)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Elsewhere the wheel moves the list."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Tell the list."""
        super().focusInEvent(event)
        self.focused.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Tell the list; the box's own pop-up is not leaving."""
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.left.emit()


class ChoiceRow(Row):
    """Shows the words of the table's choices and sends the stored word of the one picked."""

    def __init__(self, parameter: Parameter) -> None:
        super().__init__(parameter.path, parameter.label, parameter.help, share=CHOICE_SHARE)
        self._keys = tuple(parameter.choices or {})
        self.box = ChoiceBox()
        self.box.addItems(list((parameter.choices or {}).values()))
        self.place_value(self.box, parameter.name)
        self.box.activated.connect(lambda index: self.entered.emit(self.path, self._keys[index]))
        self.box.focused.connect(lambda: self.focused.emit(self.path))
        self.box.left.connect(lambda: self.left.emit(self.path))

    def show_job(self, job: Job, fresh: bool) -> None:
        """Show the choice that holds; there is no text that could stay behind."""
        self.settle()
        self.box.setCurrentIndex(self._keys.index(str(read_value(job, self.path))))
