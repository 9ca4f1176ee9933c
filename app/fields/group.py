"""A heading of the measuring list and the lines below it."""

from __future__ import annotations

from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from app.fields.row import SIDE, Row
from app.theme import RHYTHM, text_font


class Group(QWidget):
    """Parted from the next by space; there is no box round it."""

    def __init__(self, title: str, rows: list[Row]) -> None:
        super().__init__()
        self.title = title
        heading = QLabel(title)
        heading.setFont(text_font(bold=True))
        heading.setContentsMargins(SIDE, 2 * RHYTHM, SIDE, RHYTHM // 2)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(heading)
        for row in rows:
            layout.addWidget(row)
