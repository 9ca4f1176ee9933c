"""Lines of a menu: words, keys and what they call. Which lines there are stands in app.command_menu."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QActionGroup, QKeySequence, QUndoStack
from PySide6.QtWidgets import QMenu

Act = Callable[[], object]
Keys = QKeySequence.StandardKey | str | tuple[QKeySequence.StandardKey | str, ...] | None


def add_command(menu: QMenu, words: str, act: Act, keys: Keys = None) -> QAction:
    """A line of a menu; several keys may reach it."""
    action = QAction(words, menu)
    action.triggered.connect(lambda _checked=False: act())
    if keys is not None:
        action.setShortcuts(_sequences(keys))
    menu.addAction(action)
    return action


def add_choice(menu: QMenu, choices: dict[str, str], pick: Callable[[str], object]) -> dict[str, QAction]:
    """Lines of which one is ticked: stored word to words shown."""
    group = QActionGroup(menu)
    actions = {}
    for key, words in choices.items():
        action = QAction(words, menu, checkable=True)
        action.triggered.connect(lambda _checked=False, key=key: pick(key))
        group.addAction(action)
        menu.addAction(action)
        actions[key] = action
    return actions


class StepAction(QAction):
    """Undo or redo, named after the step that it takes."""

    def __init__(self, menu: QMenu, word: str, act: Act, key: QKeySequence.StandardKey) -> None:
        super().__init__(word, menu)
        self._word = word
        self.setShortcuts(key)
        self.triggered.connect(lambda _checked=False: act())
        menu.addAction(self)

    def show_step(self, text: str) -> None:
        """Name the step."""
        self.setText(f"{self._word} {text}".strip())


class Command(QAction):
    """A command that says why it cannot be given, on its line of the menu and in words to be read out."""

    def __init__(self, parent: QObject, act: Callable[[], None]) -> None:
        super().__init__(parent)
        self.triggered.connect(lambda _on=False: act())

    def offer(self, words: str, explained: str, reason: str) -> None:
        """Offer it as `words`; with a `reason` it cannot be given."""
        self.setText(f"{words} ({reason})" if reason else words)
        self.setIconText(words)
        told = f"Cannot be done now: {reason}." if reason else explained
        self.setToolTip(told)
        self.setStatusTip(told)
        self.setEnabled(not reason)


def add_steps(menu: QMenu, stack: QUndoStack, undo: Act, redo: Act) -> None:
    """Undo and redo; each can be chosen only while there is a step to take."""
    back = StepAction(menu, "Undo", undo, QKeySequence.StandardKey.Undo)
    forth = StepAction(menu, "Redo", redo, QKeySequence.StandardKey.Redo)
    stack.undoTextChanged.connect(back.show_step)
    stack.canUndoChanged.connect(back.setEnabled)
    stack.redoTextChanged.connect(forth.show_step)
    stack.canRedoChanged.connect(forth.setEnabled)
    back.setEnabled(stack.canUndo())
    forth.setEnabled(stack.canRedo())


def fill_recent(
    menu: QMenu, paths: tuple[Path, ...], open_path: Callable[[Path], object], clear: Act
) -> None:
    """The files used last, numbered; a line to forget them."""
    menu.clear()
    for i, path in enumerate(paths, start=1):
        action = add_command(menu, f"&{i}  {path.name}", partial(open_path, path))
        action.setToolTip(str(path))
    if paths:
        menu.addSeparator()
        add_command(menu, "Forget these", clear)
    menu.setEnabled(bool(paths))


def _sequences(keys: Keys) -> list[QKeySequence]:
    each = keys if isinstance(keys, tuple) else (keys,)
    found: list[QKeySequence] = []
    for key in each:
        if isinstance(key, QKeySequence.StandardKey):
            found += QKeySequence.keyBindings(key)
        elif key:
            found.append(QKeySequence(key))
    return list({key.toString(): key for key in found}.values())  # the same key twice would reach nothing
