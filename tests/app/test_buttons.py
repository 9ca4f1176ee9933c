"""Buttons are pressed by mouse, by the space bar and by Enter."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.buttons import PlainButton, QuietButton, StrongButton


def _press(button: QuietButton, held: bool) -> None:
    press = QEvent.Type.KeyPress, Qt.Key.Key_Return, Qt.KeyboardModifier.NoModifier
    QApplication.sendEvent(button, QKeyEvent(*press, "\r", held))


@pytest.mark.parametrize("kind", [QuietButton, PlainButton, StrongButton])
@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space])
def test_a_button_in_focus_is_pressed_by_enter_as_by_the_space_bar(qtbot: QtBot, dressed, kind, key):
    button, pressed = kind("Go on", "Go on"), []
    qtbot.addWidget(button)
    button.clicked.connect(lambda: pressed.append(key))
    QTest.keyClick(button, key)
    assert pressed == [key]


def test_enter_held_down_presses_once_and_one_that_cannot_be_pressed_stays(qtbot: QtBot, dressed):
    button, pressed = PlainButton("Go on", "Go on"), []
    qtbot.addWidget(button)
    button.clicked.connect(lambda: pressed.append(1))
    for held in (False, True, True):
        _press(button, held)
    assert len(pressed) == 1
    button.setEnabled(False)
    QTest.keyClick(button, Qt.Key.Key_Return)
    assert len(pressed) == 1
