"""The way through the window: on the real window's parts, by keys alone, skippable, once by itself."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from pytestqt.qtbot import QtBot

from app.settings import WALKED, Settings
from app.way import list_stops
from app.window import Window

SIZES = [(1366, 768), (700, 420), (2560, 1440)]


def _press(qtbot: QtBot, window: Window, key: Qt.Key) -> None:
    qtbot.keyClick(window.focusWidget(), key)


@pytest.mark.parametrize("size", SIZES)
def test_every_stop_rings_what_it_speaks_of_and_its_card_lies_in_the_window(
    qtbot: QtBot, window: Window, size: tuple[int, int]
):
    window.files.open_example("brick")
    window.resize(*size)
    qtbot.waitUntil(lambda: (window.width(), window.height()) == size)
    window.way.begin()
    for at, stop in enumerate(list_stops()):
        assert window.way.at == at
        qtbot.wait(30)
        target = stop.find(window)
        assert target.isVisible(), stop.title
        box = QRect(target.mapTo(window, QPoint(0, 0)), target.size())
        assert window.way.ring.geometry().contains(box.intersected(window.rect())), stop.title
        assert window.rect().contains(window.way.card.geometry()), stop.title
        _press(qtbot, window, Qt.Key.Key_Return)
    assert not window.way.is_on
    assert not window.way.card.isVisible()


def test_a_small_part_is_not_covered_by_what_is_said_of_it(qtbot: QtBot, window: Window):
    window.way.begin()
    for at, stop in enumerate(list_stops()):
        window.way.go_to(at)
        qtbot.wait(20)
        target = stop.find(window)
        box = QRect(target.mapTo(window, QPoint(0, 0)), target.size())
        if box.width() * box.height() < 60_000:
            assert not window.way.card.geometry().intersects(box), stop.title


def test_the_way_is_gone_back_and_skipped_by_key_and_is_then_remembered(
    qtbot: QtBot, window: Window, settings: Settings
):
    window.way.begin()
    _press(qtbot, window, Qt.Key.Key_PageDown)
    assert window.way.at == 1
    _press(qtbot, window, Qt.Key.Key_PageUp)
    assert window.way.at == 0
    assert not settings.read(WALKED, False)
    _press(qtbot, window, Qt.Key.Key_Escape)
    assert not window.way.is_on
    assert settings.read(WALKED, False) is True


def test_the_window_can_be_used_on_the_way(qtbot: QtBot, window: Window):
    window.way.begin()
    window.fields.focus_path("opening.width")
    edit = window.fields.rows["opening.width"].value_widget
    qtbot.keyClicks(edit, "40")
    qtbot.keyClick(edit, Qt.Key.Key_Return)
    assert window.session.job.site.opening.width == 40
    assert window.way.is_on


def test_the_help_menu_leads_through_again(window: Window, settings: Settings):
    settings.write(WALKED, True)
    actions = [a for menu in window.menuBar().actions() for a in menu.menu().actions()]
    next(a for a in actions if "way through" in a.text()).trigger()
    assert window.way.at == 0


def test_the_stop_about_help_shows_the_help_of_a_field(qtbot: QtBot, window: Window):
    window.way.begin()
    window.way.go_to(2)
    qtbot.waitUntil(lambda: not window.fields.help.picture.is_empty)
    assert window.fields.help.text.startswith("From the finished hearth")


def test_the_way_does_not_begin_by_itself_over_something_to_be_answered(qtbot: QtBot, window: Window):
    window.notice.say("Unsaved work was kept.", (("Open it", lambda: None),))
    window.way.begin_by_itself()
    assert not window.way.is_on
    window.notice.put_away()
    window.way.begin_by_itself()
    assert window.way.is_on
