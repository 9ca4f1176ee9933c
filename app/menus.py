"""Lines of a menu: words, keys and what they call. Which lines there are stands in app.command_menu."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtGui import QAction, QActionGroup, QKeySequence, QUndoStack
from PySide6.QtWidgets import QMainWindow, QMenu

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


def add_steps(window: QMainWindow, menu: QMenu, stack: QUndoStack, undo: Act, redo: Act) -> None:
    """Undo and redo, named after the step they take."""
    back = add_command(menu, "Undo", undo, QKeySequence.StandardKey.Undo)
    forth = add_command(menu, "Redo", redo, QKeySequence.StandardKey.Redo)
    for action, word, told, can, text in (
        (back, "Undo", stack.undoTextChanged, stack.canUndo, stack.undoText),
        (forth, "Redo", stack.redoTextChanged, stack.canRedo, stack.redoText),
    ):

        def show(_text: str = "", action=action, word=word, can=can, text=text) -> None:  # type: ignore[no-untyped-def]
            action.setText(f"{word} {text()}".strip())
            action.setEnabled(can())

        told.connect(show)
        stack.indexChanged.connect(lambda _i, show=show: show())
        show()
    window.addActions([back, forth])


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
    return found
