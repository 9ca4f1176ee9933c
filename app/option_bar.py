"""The row of options above the sheet: tabs, and what is done with them. Hidden while there is one."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QMenu, QWidget

from app.buttons import QuietButton, quiet_button
from app.option_tabs import OptionTabs
from app.rooms import OPTIONS_HEIGHT
from app.sparing import least_width, spare
from app.theme import RHYTHM, colours


class OptionBar(QWidget):
    """Tabs and buttons; what they do is app.optioning's."""

    def __init__(self) -> None:
        super().__init__()
        self.setFixedHeight(OPTIONS_HEIGHT)
        self.tabs = OptionTabs()
        self.add_button: QuietButton = quiet_button("Add", "Add an option")
        self.back_button = quiet_button("Bring back", "Bring back an option that was thrown away")
        self.back_menu = QMenu(self)
        self.side_button: QuietButton = quiet_button("Side by side", "Look at two or three options together")
        self._has_back = False
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 2 * RHYTHM, 0)
        row.setSpacing(RHYTHM // 2)
        row.addWidget(self.tabs, 1)
        for button in (self.add_button, self.back_button, self.side_button):
            row.addWidget(button)
        self.back_button.clicked.connect(self._open_back)
        self.hide()

    def offer_back(self, thrown: bool) -> None:
        """Offer to bring back what was thrown away, if anything was."""
        self._has_back = thrown
        self.back_button.setVisible(thrown)
        self.make_room()

    def _list_spared(self) -> list[QWidget]:
        """Buttons that a small screen does without, what goes first first: in the menu they stay."""
        return [self.side_button, self.add_button, *([self.back_button] if self._has_back else [])]

    @property
    def _scrolled(self) -> int:
        """Pixels of tabs that may be scrolled to instead of shown."""
        return self.tabs.sizeHint().width() - self.tabs.minimumSizeHint().width()

    def make_room(self) -> None:
        """Leave away the buttons that there is no room for beside a tab."""
        spare(self._row, self._list_spared(), self.width() + self._scrolled)
        self.updateGeometry()

    def minimumSizeHint(self) -> QSize:
        """Room for a tab."""
        return QSize(least_width(self._row, self._list_spared()) - self._scrolled, OPTIONS_HEIGHT)

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Leave away the buttons that there is no room for."""
        self.make_room()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A hairline below."""
        with QPainter(self) as painter:
            painter.setPen(QColor(colours().rule))
            painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)

    def _open_back(self) -> None:
        self.back_menu.popup(self.back_button.mapToGlobal(self.back_button.rect().bottomLeft()))
