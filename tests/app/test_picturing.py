"""The picture beside the field in focus: it comes with the focus and follows the job."""

from __future__ import annotations

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.window import Window
from render.drawing import Text


def _texts(window: Window) -> list[str]:
    return [mark.text for mark in window.fields.help.picture._marked.marks if isinstance(mark, Text)]


def test_the_field_in_focus_has_its_picture_beside_it(qtbot: QtBot, window: Window):
    window.fields.focus_path("opening.height")
    qtbot.waitUntil(lambda: _texts(window) == ["2'-6\""])
    assert window.fields.help.text.startswith("From the finished hearth")
    assert window.fields.help.picture.accessibleDescription().startswith("From the finished hearth")


def test_a_field_without_a_picture_keeps_its_words_alone(qtbot: QtBot, window: Window):
    window.fields.focus_path("opening.height")
    qtbot.waitUntil(lambda: not window.fields.help.picture.is_empty)
    window.fields.focus_path("job.client")
    qtbot.wait(20)
    assert window.fields.help.picture.is_empty
    assert window.fields.help.text == "Whose fireplace it is."


def test_the_picture_follows_what_is_typed(qtbot: QtBot, window: Window):
    window.fields.focus_path("opening.height")
    edit = window.fields.rows["opening.height"].value_widget
    qtbot.keyClicks(edit, "31")
    qtbot.keyClick(edit, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: _texts(window) == ["2'-7\""])


def test_a_low_window_leaves_pictures_away_and_keeps_the_words(qtbot: QtBot, window: Window):
    window.resize(1100, 420)
    qtbot.waitUntil(lambda: window.fields.help.picture.isHidden())
    assert window.fields.help.label.isVisible()
    window.resize(1100, 760)
    qtbot.waitUntil(lambda: window.fields.help.picture.isVisible())
