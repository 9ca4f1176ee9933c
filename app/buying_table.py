"""The buying list beside the drawing. What is bought comes from model.cutting.buying."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QTableView, QVBoxLayout, QWidget

from app.buttons import PlainButton
from app.table_parts import TextModel, dress_table
from app.theme import RHYTHM, ROW_HEIGHT
from app.words import Words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from model.cutting.buying import BuyingList, Line
    from model.cutting.printed import Change
    from model.units import LengthStyle

HEADINGS = ("Bought as", "Item", "No.", "Spare", "Each", "Together", "Pieces", "Waste", "Since printed")
WIDTHS = (96, 280, 48, 56, 80, 88, 64, 112)
FIGURES = range(2, 7)


class BuyingTable(QWidget):
    """The table, and below it what it comes to. `chosen` hands on the marks that a line's boards give."""

    chosen = Signal(object)
    stock_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._lines: tuple[Line, ...] = ()
        self._texts = TextModel(HEADINGS, FIGURES)
        self.table = QTableView()
        self.table.setModel(self._texts)
        dress_table(self.table)
        self.table.setAccessibleName("Buying list")
        self.table.setMinimumHeight(2 * ROW_HEIGHT)
        for column, width in enumerate(WIDTHS):
            self.table.setColumnWidth(column, width)
        self.table.horizontalHeader().setStretchLastSection(True)
        self.table.selectionModel().currentRowChanged.connect(lambda *_: self.chosen.emit(self.marks()))
        self.words = Words("No plan yet.")
        self.words.setContentsMargins(RHYTHM, RHYTHM // 2, 2 * RHYTHM, RHYTHM // 2)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(self._build_head())
        layout.addWidget(self.table, 1)
        self.setFocusProxy(self.table)

    def _build_head(self) -> QHBoxLayout:
        self.stock_button = PlainButton("Stock list…", "Show and change what is sold, and at which price")
        self.stock_button.clicked.connect(self.stock_asked)
        head = QHBoxLayout()
        head.setContentsMargins(0, RHYTHM // 2, 2 * RHYTHM, RHYTHM // 2)
        head.addWidget(self.words, 1)
        head.addWidget(self.stock_button)
        return head

    def show_buying(
        self, buying: BuyingList, style: LengthStyle, words: str, changes: Sequence[Change] | None = None
    ) -> None:
        """Show another list and what `changes` there are since it was printed; the line in focus stays."""
        from model.cutting.printed import share_changes
        from render.buying_sheet import gone_texts, line_texts

        row = self.table.currentIndex().row()
        self._lines = (*buying.lines, *buying.used)
        shared, rest = share_changes(changes or (), buying.lines)
        since = [change.words if change else "" for change in shared] + [""] * len(buying.used)
        texts = [
            (*line_texts(line, buying.currency, style), words_since)
            for line, words_since in zip(self._lines, since, strict=True)
        ]
        self._texts.show_texts([*texts, *map(gone_texts, rest)])
        self.words.setText(words)
        self.table.setEnabled(True)
        if 0 <= row < len(self._lines):
            self.table.setCurrentIndex(self._texts.index(row, 0))

    def show_waiting(self, words: str) -> None:
        """What is shown is out of date, and looks it."""
        self.words.setText(words)
        self.table.setEnabled(False)

    def marks(self) -> frozenset[str]:
        """Marks of the pieces that come out of the line in focus."""
        row = self.table.currentIndex().row()
        lines = self._lines
        return frozenset(s.mark for s in lines[row].sources) if 0 <= row < len(lines) else frozenset()
