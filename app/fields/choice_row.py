"""A line for picking one of a few words."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QWheelEvent
from PySide6.QtWidgets import QComboBox

from app.fields.row import Row
from model.job import Job, read_value
from model.parameters import Parameter


class ChoiceBox(QComboBox):
    """A box that the wheel turns only when it has the focus."""

    focused = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setFrame(False)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

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
        super().__init__(parameter.path, parameter.label, parameter.help)
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
