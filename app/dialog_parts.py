"""What dialogs have alike: a field's label, the button that goes on and the one that leaves."""

from __future__ import annotations

from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QWidget

from app.buttons import PlainButton, StrongButton
from app.theme import RHYTHM


def build_label(words: str, field: QWidget) -> QLabel:
    """The label of `field`, whose letter after & leads into it; the field is read out by the same words."""
    label = QLabel(words)
    label.setBuddy(field)
    field.setAccessibleName(words.replace("&", ""))
    return label


def build_foot(dialog: QDialog, going_on: StrongButton, leaving: str) -> QHBoxLayout:
    """The dialog's last row: `going_on` accepts it, beside it what leaves it; `leaving` explains that."""
    leave = PlainButton("Leave it", leaving)
    leave.setAutoDefault(False)
    leave.clicked.connect(dialog.reject)
    going_on.setDefault(True)
    going_on.clicked.connect(dialog.accept)
    row = QHBoxLayout()
    row.setSpacing(RHYTHM)
    row.addStretch(1)
    row.addWidget(leave)
    row.addWidget(going_on)
    return row
