"""The buttons of the window: quiet ones, and the one strong one on a screen."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton


def quiet_button(text: str, explained: str, checkable: bool = False) -> QPushButton:
    """A button that keeps to the background; `explained` says what it does."""
    button = _button(text, explained, "quiet")
    button.setCheckable(checkable)
    return button


def strong_button(text: str, explained: str) -> QPushButton:
    """The button for what the screen is for; no more than one on a screen."""
    return _button(text, explained, "strong")


def _button(text: str, explained: str, voice: str) -> QPushButton:
    button = QPushButton(text)
    button.setProperty(voice, True)
    button.setToolTip(explained)
    button.setAccessibleDescription(explained)
    button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    return button
