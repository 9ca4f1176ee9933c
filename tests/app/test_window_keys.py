"""An entry leaves the window's own keys to the window."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtGui import QKeyEvent, QKeySequence

from app.fields.window_keys import leave_to_window


def _ask(keys: str) -> QKeyEvent:
    pressed = QKeySequence(keys)[0]
    event = QKeyEvent(QEvent.Type.ShortcutOverride, pressed.key(), pressed.keyboardModifiers())
    event.accept()
    return event


@pytest.mark.parametrize("keys", ["Ctrl+Z", "Ctrl+Shift+Z", "Ctrl+E"])
def test_undo_redo_and_the_key_that_explains_are_the_windows(qapp, keys: str):
    event = _ask(keys)
    assert leave_to_window(event)
    assert not event.isAccepted()


@pytest.mark.parametrize("keys", ["Ctrl+C", "Ctrl+V", "Ctrl+A", "E", "End"])
def test_keys_of_typing_stay_the_entrys_own(qapp, keys: str):
    event = _ask(keys)
    assert not leave_to_window(event)
    assert event.isAccepted()
