"""Which stock list is in use: opened, saved, read from tables and written as such. Nothing is lost unasked.

What a file holds is app.stock_lists' business, how a list is edited that of app.stock_window.
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QWidget

from app.asking import ELSEWHERE, REPLACE, ask_over_changes, ask_where, say_anew
from app.files import FileState, FileTrouble, file_state
from app.leaving import may_leave
from app.notice import Notice
from app.settings import Settings
from app.stock_session import StockSession
from model.errors import Refused, StockRefused

if TYPE_CHECKING:
    from app.stock_recovery import LeftList
    from model.cutting.stock_list import StockList

KEPT = "stock_list"
"""The setting that keeps which list is in use."""
FILTER = "Stock lists (*.yard *.csv)"
TABLE_FILTER = "Tables (*.csv)"
LISTS, TABLES = {"Stock lists (*.yard)": (".yard",)}, {TABLE_FILTER: (".csv",)}
MOST_FAULTS = 4


class StockFiles(QObject):
    """Carries out what is asked about stock lists. `window` and `notice` are those in front of the person."""

    def __init__(self, window: QWidget, settings: Settings, notice: Notice) -> None:
        super().__init__(window)
        self.window, self.notice = window, notice
        self._settings = settings
        self._is_read = False
        self.state: FileState | None = None
        """How the list's file was when it was last read or written here."""
        self.session = StockSession()
        self.session.name = str(settings.read(KEPT, ""))

    @property
    def list_name(self) -> str:
        """What the list in use is called: a file, or one that is shipped."""
        from app.stock_lists import USUAL

        return self.session.name or USUAL

    @property
    def title(self) -> str:
        """The same for titles and questions."""
        return "New stock list" if self._is_shipped else Path(self.list_name).stem

    @property
    def _is_shipped(self) -> bool:
        from app.stock_lists import EXAMPLE, USUAL

        return self.list_name in (USUAL, EXAMPLE) and not os.path.isfile(self.list_name)

    def find_list(self) -> StockList:
        """The list in use; the usual sizes, and a word why, where it cannot be read any more."""
        from app.stock_lists import USUAL, read_shipped_list, read_stock_named

        if not self._is_read:
            self._is_read = True
            name = self.list_name
            state = file_state(Path(name))  # before it is read, so that what is written meanwhile counts
            try:
                self._take(read_stock_named(name), name, state)
            except StockRefused as refusal:
                self.notice.say(f"{_explain(refusal)}\nThe usual sizes are used instead.", wrong=True)
                self._take(read_shipped_list(), USUAL)
        return self.session.stock_list

    def use(self, name: str) -> bool:
        """Take up the shipped list or the file called `name`; says why where it cannot be read."""
        from app.stock_lists import read_stock_named

        if not self.may_leave():
            return False
        state = file_state(Path(name))  # as in `find_list`
        try:
            found = read_stock_named(name)
        except StockRefused as refusal:
            self.notice.say(_explain(refusal), wrong=True)
            return False
        self._settings.write(KEPT, name)
        self._take(found, name, state)
        self.notice.say(f"Plans are made from the stock list “{Path(name).stem}”.")
        return True

    def _take(self, stock_list: StockList, name: str, state: FileState | None = None) -> None:
        self._is_read, self.state = True, state
        self.session.open(stock_list, name)

    def take_up(self, left: LeftList) -> bool:
        """Go on with a list that was left behind; whether the one in use could be put aside."""
        if not self.may_leave():
            return False
        self._is_read, self.state = True, left.state
        self.session.open(left.stock_list, left.name, recovered=True)
        return True

    def ask_and_use(self) -> None:
        """Ask for a file, and take it up."""
        name, _ = QFileDialog.getOpenFileName(self.window, "Open a stock list", self._folder, FILTER)
        if name:
            self.use(name)

    @property
    def _folder(self) -> str:
        return "" if self._is_shipped else str(Path(self.list_name).parent)

    def save(self) -> bool:
        """Save to the list's own file, asking for one where it has none; whether it is saved."""
        self.find_list()
        path = Path(self.list_name)
        state = file_state(path)
        if self._is_shipped or path.suffix.lower() != ".yard":
            return self.save_as()
        if state is None and self.state is not None:
            return self._save_anew(path)
        if state is None or state == self.state:
            return self._save(path)
        choice = ask_over_changes(self.window, path, "stock list")
        if choice == ELSEWHERE:
            return self.save_as()
        return choice == REPLACE and self._save(path)

    def save_as(self) -> bool:
        """Ask for a file, save to it and use it from now on; whether it is saved."""
        self.find_list()
        where = ask_where(self.window, "Save the stock list", Path(self._folder, "stock.yard"), LISTS)
        return where is not None and self._save(where[0])

    def _save_anew(self, path: Path) -> bool:
        """Save to where the file was that is there no more; it may be on a disk that was taken away."""
        is_done = self._save(path)
        if is_done:
            self.notice.say(say_anew(path, "stock list"))
        return is_done

    def _save(self, path: Path) -> bool:
        if not self._write(path):
            return False
        self.state = file_state(path)
        self._settings.write(KEPT, str(path))
        self.session.mark_saved(str(path))
        return True

    def ask_and_save_copy(self) -> None:
        """Ask for a name, and write the list there, as a list or a table; the one in use stays in use."""
        where = ask_where(self.window, "Save a copy of the list", Path("stock"), LISTS | TABLES)
        if where is not None:
            self.save_copy(where[0])

    def save_copy(self, path: Path) -> bool:
        """Write the list to `path`, by its ending; says so, or why it cannot be written."""
        if not self._write(path):
            return False
        self.notice.say(f"Written: {path}")
        return True

    def _write(self, path: Path) -> bool:
        from app.stock_lists import save_stock_list

        try:
            save_stock_list(path, self.find_list())
        except (Refused, FileTrouble) as trouble:
            self.notice.say(str(trouble), wrong=True)
            return False
        return True

    def ask_and_read_table(self) -> None:
        """Ask for a table, and take its rows in place of the list's."""
        name, _ = QFileDialog.getOpenFileName(self.window, "Read a table", self._folder, TABLE_FILTER)
        if name:
            self.read_table(Path(name))

    def read_table(self, path: Path) -> bool:
        """Take the rows of a table as one step; changes nothing, and says why, where they are refused."""
        from app.stock_lists import read_stock_named

        try:
            found = read_stock_named(str(path), self.find_list())
        except StockRefused as refusal:
            self.notice.say(f"No row was changed.\n{_explain(refusal)}", wrong=True)
            return False
        self.session.change("reading a table", found)
        counts = f"{len(found.sold)} sizes sold and {len(found.on_hand)} on hand"
        self.notice.say(f"{counts} were read from {path.name}.")
        return True

    def ask_and_write_table(self) -> None:
        """Ask for a file, and write the rows to it as a table."""
        where = ask_where(self.window, "Write a table", Path(self._folder, "stock.csv"), TABLES)
        if where is not None:
            self.save_copy(where[0])

    def may_leave(self) -> bool:
        """Whether the list may be put aside: it is saved, or the person said what to do with it."""
        if not self.session.is_unsaved:
            return True
        text = f"The stock list “{self.title}” has changes that are not saved."
        return may_leave(self.window, "Unsaved stock list", text, self.save)


def _explain(refusal: StockRefused) -> str:
    faults = list(refusal.faults[:MOST_FAULTS])
    more = len(refusal.faults) - len(faults)
    return "\n".join([*faults, *([f"and {more} more"] if more else [])])
