"""Sentences on the screen, broken where a person may read them so. What they say is said elsewhere."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from render.lettering import tie_fractions


class Words(QLabel):
    """Words over as many lines as they take; a whole number and its fraction stay on one line."""

    def __init__(self, text: str = "") -> None:
        super().__init__()
        self._given = ""
        self.setWordWrap(True)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setText(text)

    def setText(self, text: str) -> None:
        """Show `text` as it is, whatever signs stand in it."""
        self._given = text
        super().setText(tie_fractions(text))

    def clear(self) -> None:
        """Show nothing."""
        self.setText("")

    def text(self) -> str:
        """What was given to be shown."""
        return self._given
