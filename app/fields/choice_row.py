"""A line for picking one of a few words."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRect, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPolygonF,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QComboBox

from app.fields.row import SIDE, Row
from app.theme import RHYTHM, ROW_HEIGHT, colours
from model.job import Job, read_value
from model.parameters import Parameter

CHOICE_SHARE = 0.65
"""Words need more room than figures."""
NAME_GAP = RHYTHM
SIGN = 2 * RHYTHM
"""Room for the sign that there are others."""


class ChoiceBox(QComboBox):
    """A box that the wheel never turns: it moves the list, and a rule chosen by mistake is not seen."""

    focused = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setFrame(False)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.currentTextChanged.connect(self._tell_whole)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another room for the words."""
        super().resizeEvent(event)
        self._tell_whole()

    def _tell_whole(self) -> None:
        """Words that are cut short are told in full under the pointer; else the row's help is."""
        words = self.currentText()
        is_cut = self.fontMetrics().horizontalAdvance(words) > self.width() - SIGN
        self.setToolTip(words if is_cut else "")

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The words at the right like all values, and a small sign that there are others."""
        c = colours()
        with QPainter(self) as painter:
            paint_sign(painter, self.rect())
            painter.setPen(QColor(c.ink))
            room = self.rect().adjusted(0, 0, -SIGN, 0)
            words = self.fontMetrics().elidedText(
                self.currentText(), Qt.TextElideMode.ElideRight, room.width()
            )
            painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight), words)

    def showPopup(self) -> None:
        """Open as wide as the longest of the words, however narrow the box is."""
        texts = (self.itemText(i) for i in range(self.count()))
        longest = max((self.fontMetrics().horizontalAdvance(text) for text in texts), default=0)
        self.view().setMinimumWidth(longest + 4 * RHYTHM)
        super().showPopup()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The list's."""
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


def paint_sign(painter: QPainter, box: QRect) -> None:
    """The sign at a box's right end that there are others to choose."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(QColor(colours().soft), 1.5))
    x, y = box.right() - 4.0, box.top() + box.height() / 2
    painter.drawPolyline(QPolygonF([QPointF(x - 4, y - 2), QPointF(x, y + 2), QPointF(x + 4, y - 2)]))
    painter.restore()


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
        index = self._keys.index(str(read_value(job, self.path)))
        if index != self.box.currentIndex():
            self.box.setCurrentIndex(index)
            self.box.setGeometry(self._value_box())
            self.update()

    def _value_box(self) -> QRect:
        """As wide as the words shown, so that the name is cut short only where both have no room."""
        room, metrics = self.width() - 2 * SIDE, self.fontMetrics()
        beside_name = room - metrics.horizontalAdvance(self.label) - NAME_GAP
        words = metrics.horizontalAdvance(self.box.currentText()) + SIGN + NAME_GAP
        width = min(max(beside_name, round(room * CHOICE_SHARE)), max(words, beside_name))
        return QRect(self.width() - SIDE - width, 1, width, ROW_HEIGHT - 3)
