"""The stock list as tables in a window of its own: what is sold, at what price, and what lies there."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QAction, QCloseEvent, QColor, QKeySequence, QPalette, QShowEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QLabel, QStackedWidget, QVBoxLayout, QWidget

from app.buttons import PlainButton, QuietButton, StrongButton, quiet_button
from app.dialog_parts import fit_screen
from app.hairline import Hairline
from app.notice import Notice
from app.stock_files import StockFiles
from app.stock_header import ListFields
from app.stock_model import PAGES, StockModel, style_of_list
from app.stock_table import StockTable
from app.theme import RHYTHM, colours
from model.cutting.stock_list import SoldRow
from model.cutting.supplies import Supply
from model.units import LengthStyle

FIRST_SIZE = QSize(1080, 600)
HOW = "Enter types in a cell and goes down a row. Rows without a price are listed as missing, never counted."
Key = QKeySequence.StandardKey


class StockWindow(QWidget):
    """Edits the list that plans are made from; what is entered is planned with at once."""

    def __init__(self, parent: QWidget, files: StockFiles) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self._files, self._session = files, files.session
        self._main = files.window, files.notice
        self.notice = Notice()
        self.common = ListFields(self._session)
        self.tables = [
            StockTable(StockModel(self._session, which), f"Stock list, {words.lower()}")
            for which, words in PAGES.items()
        ]
        self.pages = QStackedWidget()
        self.headings = QButtonGroup(self)
        self.words = QLabel(HOW)
        self.words.setWordWrap(True)
        self.words.setContentsMargins(2 * RHYTHM, RHYTHM // 2, 2 * RHYTHM, RHYTHM // 2)
        self._lay_out()
        self._add_keys()
        self._connect()
        fit_screen(self, FIRST_SIZE)
        self._show_state()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.notice)
        column.addWidget(self.common)
        column.addWidget(Hairline())
        column.addLayout(self._build_head())
        column.addWidget(self.pages, 1)
        column.addWidget(self.words)
        column.addWidget(Hairline())
        column.addLayout(self._build_foot())

    def _build_head(self) -> QHBoxLayout:
        row = _row()
        for i, (table, words) in enumerate(zip(self.tables, PAGES.values(), strict=True)):
            self.pages.addWidget(table)
            button = quiet_button(words, f"Show what is {words.lower()}", checkable=True)
            self.headings.addButton(button, i)
            row.addWidget(button)
        self.headings.button(0).setChecked(True)
        row.addStretch(1)
        self.add_button = self._add(row, "Add a row", "Add a row like the one in focus", self.add_row)
        self.remove_button = self._add(row, "Take it out", "Take out the selected rows", self.remove_rows)
        return row

    def _build_foot(self) -> QHBoxLayout:
        row, files = _row(), self._files
        self._add(row, "Open…", "Open another stock list", self._entered(files.ask_and_use))
        self._add(
            row, "Read a table…", "Take the rows of a CSV file", self._entered(files.ask_and_read_table)
        )
        self._add(row, "Write a table…", "Write all rows as CSV", self._entered(files.ask_and_write_table))
        row.addStretch(1)
        self._add(row, "Save as…", "Save to another file, and use that", self._entered(files.save_as))
        self.save_button = StrongButton("Save the list", "Save to the list's own file")
        self.save_button.clicked.connect(lambda _on=False: self.save())
        row.addWidget(self.save_button)
        return row

    def _add(self, row: QHBoxLayout, words: str, explained: str, act: Callable[[], object]) -> QuietButton:
        button = PlainButton(words, explained)
        button.clicked.connect(lambda _on=False: act())
        row.addWidget(button)
        return button

    def _add_keys(self) -> None:
        for keys, act in (
            (Key.Undo, self.undo),
            (Key.Redo, self.redo),
            (Key.Save, self.save),
            (Key.Open, self._entered(self._files.ask_and_use)),
            (Key.New, self.add_row),
            ("Ctrl+Del", self.remove_rows),
            ("Ctrl+1", partial(self.turn_to, 0)),
            ("Ctrl+2", partial(self.turn_to, 1)),
            ("Ctrl+3", partial(self.turn_to, 2)),
            (Key.Close, self.close),
        ):
            action = QAction(self)
            known = QKeySequence.keyBindings(keys) if isinstance(keys, Key) else [QKeySequence(keys)]
            action.setShortcuts(known)
            action.triggered.connect(lambda _on=False, act=act: act())
            self.addAction(action)
        self.add_button.setToolTip("Add a row like the one in focus (Ctrl+N)")
        self.remove_button.setToolTip("Take out the selected rows (Ctrl+Delete)")

    def _connect(self) -> None:
        self.headings.idClicked.connect(self.turn_to)
        self.common.told.connect(self._show_words)
        self._session.changed.connect(self._show_state)
        self._session.state_changed.connect(self._show_state)
        for table in self.tables:
            table.moved.connect(self._show_words)
            table.stock.told.connect(self._show_words)

    @property
    def table(self) -> StockTable:
        """The table in view."""
        return self.tables[self.pages.currentIndex()]

    def show_style(self, style: LengthStyle) -> None:
        """Write lengths in the job's units."""
        fine = style_of_list(style)
        self.common.show_style(fine)
        for table in self.tables:
            table.stock.show_style(fine)

    def turn_to(self, page: int) -> None:
        """Show what is sold (0), what is on hand (1) or what is used up beside wood (2)."""
        self.headings.button(page).setChecked(True)
        self.pages.setCurrentIndex(page)
        self._show_state()
        self._show_words()

    def add_row(self) -> None:
        """A row like the one in focus, to be written over."""
        self.commit()
        if self.table.stock.has_own_rows:
            self.table.add_row()

    def remove_rows(self) -> None:
        """Take out the selected rows."""
        self.commit()
        if self.table.stock.has_own_rows:
            self.table.remove_rows()

    def commit(self) -> None:
        """Enter what is being typed."""
        self.table.commit()
        self.common.commit()

    def undo(self) -> None:
        """One step back; what is being typed is entered first and is that step."""
        self.commit()
        self._session.stack.undo()

    def redo(self) -> None:
        """One step forth."""
        self._session.stack.redo()

    def save(self) -> bool:
        """Save the list; says so where an entry was refused and is not in the file."""
        self.commit()
        if not self._files.save():
            return False
        if self._find_sentence():
            self.notice.say("Saved without the entry that was refused; what was there before is in the file.")
        else:
            self.notice.say(f"Saved: {self._files.list_name}")
        return True

    def _entered(self, act: Callable[[], object]) -> Callable[[], None]:
        """`act`, once what is being typed is entered."""

        def enter_and_act() -> None:
            self.commit()
            act()

        return enter_and_act

    def _show_state(self) -> None:
        self.setWindowTitle(f"{self._files.title}[*] – Stock list")
        self.setWindowModified(self._session.is_unsaved)
        for i, (table, words) in enumerate(zip(self.tables, PAGES.values(), strict=True)):
            button = self.headings.button(i)
            button.setText(f"{words} ({len(table.stock.rows)})")
            button.updateGeometry()
        self.add_button.setEnabled(self.table.stock.has_own_rows)
        self.remove_button.setEnabled(self.table.stock.has_own_rows and bool(self.table.stock.rows))
        self._show_words()

    def _find_sentence(self) -> str:
        """What is wrong: in the cell in focus, else in the first that was refused, else in a field."""
        at = self.table.currentIndex()
        wrong = self.table.stock.wrong_at(at.row(), at.column())
        for table in (self.table, *self.tables):
            place = table.stock.first_wrong()
            if wrong is None and place is not None:
                wrong = table.stock.wrong_at(*place)
        return wrong.sentence if wrong else self.common.sentence

    def _show_words(self) -> None:
        """The sentence below the table: what is wrong, or how the table is used."""
        sentence = self._find_sentence()
        palette = self.words.palette()
        ink = colours().wrong if sentence else colours().soft
        palette.setColor(QPalette.ColorRole.WindowText, QColor(ink))
        self.words.setPalette(palette)
        self.words.setText(sentence or f"{self._say_missing()}{HOW}")

    def _say_missing(self) -> str:
        rows = self.table.stock.rows
        missing = sum(isinstance(row, SoldRow | Supply) and row.price is None for row in rows)
        return f"{missing} of {len(rows)} rows have no price. " if missing else ""

    def showEvent(self, event: QShowEvent) -> None:
        """From now on questions and words about stock lists come here."""
        self._files.window, self._files.notice = self, self.notice
        super().showEvent(event)
        if not self.table.currentIndex().isValid() and self.table.stock.rows:
            self.table.focus_cell(0, self._price_column())

    def _price_column(self) -> int:
        names = [field.name for field in self.table.stock.fields]
        return names.index("price") if "price" in names else 0

    def changeEvent(self, event: QEvent) -> None:
        """Other colours."""
        if event.type() == QEvent.Type.PaletteChange:
            self._show_words()
        super().changeEvent(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Put the window away; the list stays in use, saved or not."""
        self.commit()
        self._files.window, self._files.notice = self._main
        self.notice.put_away()
        super().closeEvent(event)


def _row() -> QHBoxLayout:
    row = QHBoxLayout()
    row.setContentsMargins(RHYTHM, RHYTHM // 2, 2 * RHYTHM, RHYTHM // 2)
    row.setSpacing(RHYTHM)
    return row
