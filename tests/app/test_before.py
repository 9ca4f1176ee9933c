"""The state before is shown for as long as a key or the button is held, at the same scale and place."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRect, Qt
from PySide6.QtGui import QColor, QFocusEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.theme import ON_PAPER
from app.window import Window

SPACE = Qt.Key.Key_Space


def _texts(window: Window, path: str) -> set[str]:
    return {d.text for view in window.canvas.views for d in view.list_dimensions(path)}


def _hold(window: Window) -> None:
    window.canvas.setFocus()
    QTest.keyPress(window.canvas, SPACE)


def test_the_space_bar_shows_the_state_before_the_last_step(window: Window):
    window.session.set_text("shelf.height", "60")
    window.session.set_text("shelf.height", "70")
    place = window.canvas.place
    _hold(window)
    assert _texts(window, "shelf.height") == {"5'-0\""}
    assert window.canvas.place == place
    assert window.canvas.overlay.banner == "As it was before"
    QTest.keyRelease(window.canvas, SPACE)
    assert _texts(window, "shelf.height") == {"5'-10\""}
    assert window.canvas.overlay.banner == ""
    assert window.session.stack.count() == 2


def test_the_button_does_as_the_key_and_can_be_held_by_keys(qtbot: QtBot, window: Window):
    window.session.set_text("shelf.height", "60")
    button = window.bar.before_button
    qtbot.mousePress(button, Qt.MouseButton.LeftButton)
    assert _texts(window, "shelf.height") == {"4'-6\""}
    qtbot.mouseRelease(button, Qt.MouseButton.LeftButton)
    assert _texts(window, "shelf.height") == {"5'-0\""}
    button.setFocus()
    qtbot.keyPress(button, SPACE)
    assert _texts(window, "shelf.height") == {"4'-6\""}
    qtbot.keyRelease(button, SPACE)
    assert _texts(window, "shelf.height") == {"5'-0\""}


def test_while_an_edge_is_moved_before_is_where_it_was_taken(window: Window):
    window.session.set_text("opening.width", "40")
    window.shaping.pick()
    QTest.keyClick(window.canvas, Qt.Key.Key_Left)
    path = window.shaping.hold.grip.path
    moved = _texts(window, path)
    QTest.keyPress(window.canvas, SPACE)
    assert _texts(window, path) != moved
    assert _texts(window, "opening.width") == {"3'-4\""}
    QTest.keyRelease(window.canvas, SPACE)
    assert _texts(window, path) == moved
    assert window.shaping.hold is not None
    assert window.canvas.held is not None


def test_where_nothing_was_changed_it_says_so(window: Window):
    _hold(window)
    assert window.canvas.overlay.banner == "Nothing was changed yet"
    assert _texts(window, "shelf.height") == {"4'-6\""}
    QTest.keyRelease(window.canvas, SPACE)
    assert window.canvas.overlay.banner == ""


def test_going_elsewhere_or_a_change_ends_it(window: Window):
    window.session.set_text("shelf.height", "60")
    _hold(window)
    QApplication.sendEvent(window.canvas, QFocusEvent(QEvent.Type.FocusOut))
    assert _texts(window, "shelf.height") == {"5'-0\""}
    _hold(window)
    window.session.set_text("shelf.height", "61")
    assert _texts(window, "shelf.height") == {"5'-1\""}
    assert window.canvas.overlay.banner == ""
    assert window.canvas.held is None


def test_the_job_itself_is_left_alone(window: Window):
    window.session.set_text("shelf.height", "60")
    job, findings = window.session.job, window.drafting.findings
    _hold(window)
    assert window.session.job is job
    assert window.drafting.surround is not None
    assert window.drafting.surround.job.design.shelf.height == 60
    assert window.drafting.findings == findings
    QTest.keyRelease(window.canvas, SPACE)


def test_the_button_says_what_it_does(window: Window):
    button = window.bar.before_button
    assert button.text() == "Before"
    assert "space bar" in button.accessibleDescription()


def test_a_banner_on_the_sheet_says_that_another_state_is_shown(window: Window):
    window.session.set_text("shelf.height", "60")
    plain = window.canvas.grab().toImage()
    _hold(window)
    held = window.canvas.grab().toImage()
    room = window.canvas.room()
    corner = QRect(round(room.left()), round(room.top()), 200, 60)
    assert held.copy(corner) != plain.copy(corner)
    along = range(corner.left(), corner.right())
    assert QColor(ON_PAPER.lit_ground).name() in {held.pixelColor(x, corner.top() + 12).name() for x in along}
    QTest.keyRelease(window.canvas, SPACE)
    assert window.canvas.grab().toImage().copy(corner) == plain.copy(corner)
