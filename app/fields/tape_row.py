"""A line for what is typed on one line: a length, a count, a number or a short text."""

from __future__ import annotations

from app.fields.row import VALUE_SHARE, Row
from app.fields.tape_edit import TapeEdit
from model.job import Job, read_value
from model.parameters import Kind, Parameter, Value
from model.units import LengthStyle

TEXT_SHARE = 0.64
"""Names need more room than figures."""


class TapeRow(Row):
    """Shows a value as the job's style writes it, and sends what was typed as it was typed."""

    def __init__(self, parameter: Parameter) -> None:
        share = TEXT_SHARE if parameter.kind is Kind.TEXT else VALUE_SHARE
        super().__init__(parameter.path, parameter.label, parameter.about, share=share)
        self._parameter = parameter
        self._state: tuple[Value, LengthStyle] | None = None
        self.edit = TapeEdit(steps=parameter.kind not in (Kind.TEXT, Kind.READINGS))
        if parameter.may_be_empty:
            self.edit.setPlaceholderText("not given")
        self.place_value(self.edit, parameter.name)
        self.edit.entered.connect(lambda text: self.entered.emit(self.path, text))
        self.edit.stepped.connect(lambda count: self.stepped.emit(self.path, count))
        self.edit.given_up.connect(self.settle)
        self.edit.focused.connect(lambda: self.focused.emit(self.path))
        self.edit.left.connect(lambda: self.left.emit(self.path))

    def show_job(self, job: Job, fresh: bool) -> None:
        """A refused text stays until it is put right or given up."""
        if fresh:
            self.settle()
        elif self.message:
            return
        state = (read_value(job, self.path), job.about.length_style)
        if fresh or state != self._state or self.edit.is_touched:
            self._state = state
            self.edit.show_text(self._parameter.format(*state))

    def take_cursor(self) -> None:
        """Ready to be typed over, also when the cursor was here already."""
        super().take_cursor()
        self.edit.selectAll()

    def commit(self) -> bool:
        """Enter what is being typed."""
        self.edit.commit()
        return not self.message
