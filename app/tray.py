"""The tray below the sheet: findings, proportions, lists and cutting plans, one at a time; it folds away."""

from __future__ import annotations

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QLayout,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from app.buttons import quiet_button
from app.buying_table import BuyingTable
from app.counts import Counts
from app.cure_bar import CureBar
from app.cut_table import CutTable
from app.finding_list import FindingList
from app.guide_list import GuideList
from app.materials_table import MaterialsTable
from app.plan_view import PlanView
from app.price_table import PriceTable
from app.rooms import FINDINGS, HEAD_HEIGHT, LEAST_TRAY, TITLES
from app.sparing import least_width, spare
from app.theme import RHYTHM

CURE_HEIGHT = 6 * RHYTHM
"""Pixels of two lines of a cure."""


class Tray(QWidget):
    """Seven lists under one row of headings. `folded` says when it opens or closes."""

    folded = Signal(bool)
    turned = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.findings = FindingList()
        self.cures = CureBar()
        self.guides = GuideList()
        self.cuts = CutTable()
        self.materials = MaterialsTable()
        self.buying = BuyingTable()
        self.plans = PlanView()
        self.price = PriceTable()
        self.counts = Counts()
        self._stack = QStackedWidget()
        for widget in (self._build_findings(), *self._lists[1:]):
            self._stack.addWidget(widget)
        self._headings = QButtonGroup(self)
        self.fold_button = quiet_button("Fold", "Fold the tray away, or open it again")
        self.fold_button.clicked.connect(lambda: self.fold(not self.is_folded))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self._build_head())
        layout.addWidget(self._stack, 1)
        self.setMinimumHeight(LEAST_TRAY)

    def _build_findings(self) -> QWidget:
        """The findings, and under them what would cure the one in focus."""
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.findings, 1)
        column.addWidget(self.cures)
        return page

    @property
    def _lists(self) -> tuple[QWidget, ...]:
        return self.findings, self.guides, self.cuts, self.materials, self.buying, self.plans, self.price

    def _build_head(self) -> QWidget:
        head = QWidget()
        head.setFixedHeight(HEAD_HEIGHT)
        self._row = row = QHBoxLayout(head)
        row.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        row.setContentsMargins(RHYTHM, 0, RHYTHM, 0)
        row.setSpacing(RHYTHM // 2)
        for page, title in enumerate(TITLES):
            button = quiet_button(title, f"Show {title.lower()}", checkable=True)
            self._headings.addButton(button, page)
            row.addWidget(button)
        self._headings.button(FINDINGS).setChecked(True)
        self._headings.idClicked.connect(self.turn_to)
        row.addSpacing(2 * RHYTHM)
        row.addWidget(self.counts)
        row.addStretch(1)
        row.addWidget(self.fold_button)
        return head

    def _list_spared(self) -> list[QWidget]:
        """Headings that a small screen does without: in the menu they stay."""
        return [button for button in self._headings.buttons()[::-1] if not button.isChecked()]

    def minimumSizeHint(self) -> QSize:
        """Narrow enough for a small screen; the counts are then in figures alone."""
        shorter = self.counts.sizeHint().width() - self.counts.minimumSizeHint().width()
        return QSize(least_width(self._row, self._list_spared()) - shorter, LEAST_TRAY)

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Leave away the headings that there is no room for."""
        self.make_room()

    def make_room(self) -> None:
        """Leave away the headings that there is no room for beside the counts."""
        self.heading(self.page).show()
        spare(self._row, self._list_spared(), self.width())

    def height_in_focus(self) -> int:
        """Pixels at which the finding in focus and two lines of its cure are read whole."""
        return HEAD_HEIGHT + self.findings.height_of_current() + CURE_HEIGHT

    @property
    def is_folded(self) -> bool:
        """Whether only the headings and the counts are seen."""
        return self._stack.isHidden()

    @property
    def page(self) -> int:
        """Which list is shown."""
        return self._stack.currentIndex()

    @property
    def shown_list(self) -> QWidget:
        """The list that is shown, for the keyboard."""
        return self._lists[self.page]

    def is_shown(self, page: int) -> bool:
        """Whether a list is there to be read."""
        return self.page == page and not self.is_folded

    def heading(self, page: int) -> QPushButton:
        """The button that turns to a list."""
        button = self._headings.button(page)
        assert isinstance(button, QPushButton)
        return button

    def turn_to(self, page: int) -> None:
        """Show a list, opening the tray if need be."""
        self.heading(page).setChecked(True)
        self._stack.setCurrentIndex(page)
        self.make_room()
        self.fold(False)
        self.turned.emit(page)

    def fold(self, folded: bool) -> None:
        """Show the headings alone, or everything."""
        if folded == self.is_folded:
            return
        self._stack.setHidden(folded)
        self.fold_button.setText("Open" if folded else "Fold")
        if folded:
            self.setFixedHeight(HEAD_HEIGHT)
        else:
            self.setMaximumHeight(16777215)
            self.setMinimumHeight(LEAST_TRAY)
        self.folded.emit(folded)
