"""Which keys an entry leaves to the window it stands in."""

from __future__ import annotations

from PySide6.QtCore import QEvent
from PySide6.QtGui import QKeyEvent, QKeySequence

KEYS = (QKeySequence.StandardKey.Undo, QKeySequence.StandardKey.Redo)


def leave_to_window(event: QEvent) -> bool:
    """Whether an entry is asked if undo or redo is its own; the event is then told that it is not."""
    if event.type() != QEvent.Type.ShortcutOverride or not isinstance(event, QKeyEvent):
        return False
    if not any(event.matches(key) for key in KEYS):
        return False
    event.ignore()
    return True
