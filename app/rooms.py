"""The rooms of the window as they are before anything is in them: how large, and which lists the tray has."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QWidget

from app.theme import RHYTHM

LIST_WIDTH = 344
LEAST_LIST_WIDTH, MOST_LIST_WIDTH = 300, LIST_WIDTH + 160
"""Of the measuring list: names and values can still be read."""
LEAST_SHEET = QSize(240, 120)
HEAD_HEIGHT = 5 * RHYTHM
LEAST_TRAY = HEAD_HEIGHT + 6 * RHYTHM
OPEN_HEIGHT = 21 * RHYTHM
OPTIONS_HEIGHT = 6 * RHYTHM
FINDINGS, PROPORTIONS, CUTS, MATERIALS, BUYING, PLANS, PRICE = range(7)
TITLES = ("Findings", "Proportions", "Cut list", "Materials", "Buying", "Cutting", "Price")
PLANNED = (BUYING, PLANS)
"""The lists that a cutting plan is worked out for."""
ROOMY = (*PLANNED, PRICE)
"""Those that are no use in a slit."""


class ListRoom(QWidget):
    """Keeps the measuring list's place, and the keyboard, until the list is there."""

    def __init__(self) -> None:
        super().__init__()
        self.setMinimumWidth(LEAST_LIST_WIDTH)
        self.setMaximumWidth(MOST_LIST_WIDTH)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Measuring list")


class TrayRoom(QWidget):
    """Keeps the tray's place, or that of its headings where it is `folded`."""

    def __init__(self, folded: bool) -> None:
        super().__init__()
        self.is_folded = folded
        if folded:
            self.setFixedHeight(HEAD_HEIGHT)
        else:
            self.setMinimumHeight(LEAST_TRAY)
