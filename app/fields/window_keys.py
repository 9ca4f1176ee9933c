"""Which keys an entry leaves to the window it stands in."""

from __future__ import annotations

from PySide6.QtCore import QEvent
from PySide6.QtGui import QKeyEvent, QKeySequence

KEYS = (QKeySequence.StandardKey.Undo, QKeySequence.StandardKey.Redo, QKeySequence("Ctrl+E"))
"""Undo, redo, and what on some systems goes to a line's end, for which there is the End key."""


def leave_to_window(event: QEvent) -> bool:
    """Whether an entry is asked if one of `KEYS` is its own; the event is then told that it is not."""
    if event.type() != QEvent.Type.ShortcutOverride or not isinstance(event, QKeyEvent):
        return False
    if not any(_matches(event, key) for key in KEYS):
        return False
    event.ignore()
    return True


def _matches(event: QKeyEvent, key: QKeySequence.StandardKey | QKeySequence) -> bool:
    if isinstance(key, QKeySequence):
        return QKeySequence(event.keyCombination()) == key
    return event.matches(key)
