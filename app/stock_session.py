"""The stock list in use while it is edited: its name, its steps back and forth. No widgets, no disk."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from model.cutting.stock_list import StockList


class StockEdit(QUndoCommand):
    """One step: the list before and after."""

    def __init__(self, session: StockSession, words: str, after: StockList) -> None:
        super().__init__(words)
        self._session = session
        self._before, self._after = session.stock_list, after

    def redo(self) -> None:
        """Put the list as it is after the step."""
        self._session.put_list(self._after)

    def undo(self) -> None:
        """Put the list as it was before the step."""
        self._session.put_list(self._before)


class StockSession(QObject):
    """A list and its undo stack. `name` is a file's, or that of a shipped list.

    `changed` follows every new list, `replaced` one that came from elsewhere, `state_changed` a change of
    name or of whether it is saved.
    """

    changed = Signal()
    replaced = Signal()
    state_changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.stock_list = StockList()
        self.name = ""
        self._recovered = False
        self.stack = QUndoStack(self)
        self.stack.cleanChanged.connect(self._tell_state)

    def _tell_state(self, _clean: bool) -> None:
        self.state_changed.emit()

    @property
    def is_unsaved(self) -> bool:
        """Whether there are edits that closing would lose."""
        return self._recovered or not self.stack.isClean()

    def put_list(self, stock_list: StockList) -> None:
        """Show another state of the same list. Only steps call this."""
        self.stock_list = stock_list
        self.changed.emit()

    def change(self, words: str, after: StockList) -> None:
        """One step, named by `words`; none where nothing is different."""
        if after != self.stock_list:
            self.stack.push(StockEdit(self, words, after))

    def open(self, stock_list: StockList, name: str, recovered: bool = False) -> None:
        """Take up another list. A `recovered` one counts as unsaved until it is saved."""
        self.stock_list, self.name = stock_list, name
        self._recovered = recovered
        self.stack.clear()
        self.stack.setClean()
        self.replaced.emit()
        self.changed.emit()
        self.state_changed.emit()

    def mark_saved(self, name: str) -> None:
        """What is in the file called `name` is what is shown."""
        self.name = name
        self._recovered = False
        self.stack.setClean()
        self.state_changed.emit()

    def retire(self) -> None:
        """Say nothing more: whoever listened may be gone before this is."""
        self.stack.blockSignals(True)
        self.blockSignals(True)
