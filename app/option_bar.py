"""The row of options above the sheet: tabs, and what is done with them. Hidden while there is one."""

from __future__ import annotations

from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QMenu, QWidget

from app.buttons import QuietButton, quiet_button
from app.option_tabs import HEIGHT, OptionTabs
from app.theme import RHYTHM, colours


class OptionBar(QWidget):
    """Tabs and buttons; what they do is app.optioning's."""

    def __init__(self) -> None:
        super().__init__()
        self.setFixedHeight(HEIGHT)
        self.tabs = OptionTabs()
        self.add_button: QuietButton = quiet_button("Add", "Add an option")
        self.back_button = quiet_button("Bring back", "Bring back an option that was thrown away")
        self.back_menu = QMenu(self)
        self.side_button: QuietButton = quiet_button("Side by side", "Look at two or three options together")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 2 * RHYTHM, 0)
        row.setSpacing(RHYTHM // 2)
        row.addWidget(self.tabs, 1)
        for button in (self.add_button, self.back_button, self.side_button):
            row.addWidget(button)
        self.back_button.clicked.connect(self._open_back)
        self.hide()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A hairline below."""
        with QPainter(self) as painter:
            painter.setPen(QColor(colours().rule))
            painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)

    def _open_back(self) -> None:
        self.back_menu.popup(self.back_button.mapToGlobal(self.back_button.rect().bottomLeft()))
