"""A line for what follows from others: in a lighter voice, and nothing to type in."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QLabel

from app.fields.row import Row
from app.theme import colours
from model.derived import Derived
from model.job import Job
from model.units import LengthStyle, format_length

EDIT_MARGIN = 4
"""Pixels that an entry keeps clear at its right; figures that are typed and that are not must line up."""


class DerivedRow(Row):
    """Shows a length that nobody typed."""

    def __init__(self, derived: Derived) -> None:
        super().__init__(derived.key, derived.label, "Follows from the values above; it cannot be typed.")
        self.value = QLabel()
        self.value.setContentsMargins(0, 0, EDIT_MARGIN, 0)
        self.value.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.place_value(self.value, f"{derived.group}, {derived.label}")
        self.is_quiet = True

    def show_length(self, value: float, style: LengthStyle) -> None:
        """Show the length as the job writes it."""
        text = format_length(value, style)
        if text != self.value.text():
            self.value.setText(text)
            self.value.setAccessibleName(f"{self.label} {text}")

    def show_job(self, job: Job, fresh: bool) -> None:
        """Nothing in a job is shown here; what follows from it comes by `show_length`."""

    def recolour(self) -> None:
        """Take the lighter voice of the ground in use."""
        palette = self.value.palette()
        palette.setColor(QPalette.ColorRole.WindowText, QColor(colours().faint))
        palette.setColor(QPalette.ColorRole.Text, QColor(colours().faint))
        self.value.setPalette(palette)
