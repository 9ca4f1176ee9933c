"""A line for a yes or no."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent

from app.fields.row import Row
from app.tick_box import Tick
from model.job import Job, read_value
from model.parameters import Parameter


class TickBox(Tick):
    """A check box that says when the focus comes and goes."""

    focused = Signal()
    left = Signal()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Tell the list."""
        super().focusInEvent(event)
        self.focused.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Tell the list."""
        super().focusOutEvent(event)
        self.left.emit()


class YesNoRow(Row):
    """Shows whether it is so, in a word beside the box, and sends "yes" or "no"."""

    def __init__(self, parameter: Parameter) -> None:
        super().__init__(parameter.path, parameter.label, parameter.help)
        self._parameter = parameter
        self.box = TickBox()
        self.box.setLayoutDirection(Qt.LayoutDirection.RightToLeft)  # at the right, like all values
        self.place_value(self.box, parameter.name)
        self.box.clicked.connect(lambda on: self.entered.emit(self.path, "yes" if on else "no"))
        self.box.focused.connect(lambda: self.focused.emit(self.path))
        self.box.left.connect(lambda: self.left.emit(self.path))

    def show_job(self, job: Job, fresh: bool) -> None:
        """Show the answer that holds."""
        self.settle()
        on = bool(read_value(job, self.path))
        self.box.setChecked(on)
        self.box.setText(self._parameter.format(on, job.about.length_style).capitalize())
