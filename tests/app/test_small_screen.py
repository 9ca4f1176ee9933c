"""A laptop of 1366 by 768 dots at twice its size leaves 683 by 384: everything must still be within reach."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from app.buttons import StrongButton
from app.rooms import CUTS, LEAST_TRAY, MATERIALS
from app.settings import Settings
from app.view_bar import CHOICES
from app.window import Window

SMALLEST = (683, 350)
"""With the system's own bars taken off."""


def _resize(qtbot: QtBot, window: Window, width: int, height: int) -> None:
    window.resize(width, height)
    qtbot.waitUntil(lambda: (window.width(), window.height()) == (width, height))


def _overhangs(window: Window, parent: QWidget) -> list[str]:
    """Buttons that reach past what they stand in."""
    shown = [button for button in parent.findChildren(QWidget) if button.isVisible()]
    return [
        f"{button.metaObject().className()} {button.accessibleName() or button.toolTip()}"
        for button in shown
        if button.mapTo(parent, QPoint(button.width(), 0)).x() > parent.width() + 1
        and button.focusPolicy() != button.focusPolicy().NoFocus
    ]


@pytest.mark.parametrize("job", ["brick", "too-close"])
def test_the_window_fits_a_small_laptop_at_twice_its_size(qtbot: QtBot, window: Window, job: str):
    window.files.open_example(job)
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    hint = window.minimumSizeHint()
    assert hint.width() <= SMALLEST[0]
    assert hint.height() <= SMALLEST[1]
    _resize(qtbot, window, *SMALLEST)
    qtbot.wait(50)
    assert _overhangs(window, window.bar) == []
    assert _overhangs(window, window.tray) == []


def test_a_window_of_700_by_420_shows_list_and_sheet_beside_each_other(qtbot: QtBot, window: Window):
    window.files.open_example("brick")
    window.tray.fold(True)
    _resize(qtbot, window, 700, 420)
    assert window.fields.isVisible()
    assert window.canvas.isVisible()
    assert window.canvas.width() >= 240
    assert window.canvas.height() >= 120


def test_a_low_window_shows_the_sheet_or_the_lists(qtbot: QtBot, window: Window):
    _resize(qtbot, window, *SMALLEST)
    window.tray.turn_to(CUTS)
    assert not window.canvas.isVisible()
    qtbot.waitUntil(lambda: window.tray.shown_list.height() > 100)
    window.tray.fold(True)
    assert window.canvas.isVisible()
    _resize(qtbot, window, 1366, 768)
    window.tray.fold(False)
    assert window.canvas.isVisible()


def test_the_view_that_is_shown_keeps_its_button_on_the_narrowest_bar(qtbot: QtBot, window: Window):
    _resize(qtbot, window, 620, 400)
    for number, (_, views) in enumerate(CHOICES):
        window.choose_views(views)
        assert window.bar.view_buttons.button(number).isVisible()
        assert window.bar.packet_button.isVisible()


def test_what_was_left_away_comes_back_with_the_room(qtbot: QtBot, window: Window):
    _resize(qtbot, window, 620, 400)
    assert not window.bar.zoom_buttons[0].isVisible()
    _resize(qtbot, window, 1366, 768)
    qtbot.waitUntil(lambda: all(button.isVisible() for button in window.bar.zoom_buttons))
    assert all(button.isVisible() for button in window.bar.view_buttons.buttons())


def test_the_measuring_list_folds_away_by_key_and_a_field_asked_for_opens_it(qtbot: QtBot, window: Window):
    action = next(
        a
        for menu in window.menuBar().actions()
        for a in menu.menu().actions()
        if a.text().replace("&", "").startswith("Fold the measuring list")
    )
    action.trigger()
    assert not window.fields.isVisible()
    window.fields.focus_path("shelf.depth")
    assert window.fields.isVisible()


def test_panes_lists_and_views_are_remembered(qtbot: QtBot, window: Window, settings: Settings, tmp_path):
    window.fold_list(True)
    window.tray.turn_to(MATERIALS)
    window.tray.fold(True)
    window.choose_views(("plan",))
    window.close()
    again = Window(settings, tmp_path / "unsaved")
    qtbot.addWidget(again, before_close_func=lambda shown: shown.wind_up())
    assert again.fields.isHidden()
    assert again.tray.page == MATERIALS
    assert again.tray.is_folded
    assert again.drafting.views == ("plan",)
    assert again.bar.view_buttons.button(1).isChecked()


def test_a_list_turned_to_by_key_has_the_keyboard(qtbot: QtBot, window: Window):
    window.files.open_example("brick")
    window.fields.focus_path("opening.width")
    before = window.session.job
    window.read_list(CUTS)
    qtbot.keyClick(window.focusWidget(), Qt.Key.Key_Down)
    assert window.focusWidget() is window.tray.shown_list
    assert window.session.job is before


DIALOGS = {
    "packet": lambda window: window.write_packet(),
    "labels": lambda window: window.beside.ask_labels(),
    "print": lambda window: window.show_print(),
}


@pytest.mark.parametrize("name", list(DIALOGS))
def test_a_dialog_fits_a_small_laptop_with_its_last_row_in_reach(qtbot: QtBot, window: Window, name: str):
    window.files.open_example("too-close")
    seen: list[tuple[int, int]] = []

    def look() -> None:
        dialog = QApplication.activeModalWidget()
        try:
            dialog.resize(*SMALLEST)
            QApplication.processEvents()
            least = dialog.minimumSizeHint()
            seen.append((least.width(), least.height()))
            for button in dialog.findChildren(StrongButton):
                corner = button.mapTo(dialog, QPoint(button.width(), button.height()))
                assert dialog.rect().contains(corner)
        finally:
            dialog.reject()

    QTimer.singleShot(300, look)
    DIALOGS[name](window)
    assert seen
    assert seen[0][0] <= SMALLEST[0]
    assert seen[0][1] <= SMALLEST[1]


def test_a_page_that_explains_fits_a_small_laptop(qtbot: QtBot, window: Window):
    window.files.open_example("too-close")
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    window.tray.findings.setCurrentIndex(window.tray.findings.model().index(0, 0))
    window.explain()
    shown = next(w for w in QApplication.topLevelWidgets() if type(w).__name__ == "ExplainedWindow")
    assert shown.minimumSizeHint().width() <= SMALLEST[0]
    assert shown.minimumSizeHint().height() <= SMALLEST[1]
    shown.close()


def test_several_options_fit_a_small_laptop_and_have_all_their_buttons_on_a_large_one(
    qtbot: QtBot, window: Window
):
    window.files.open_example("brick")
    for _ in range(4):
        window.options.add()
    window.options.throw_away(1)
    window.notice.put_away()
    _resize(qtbot, window, 1366, 768)
    bar = window.options.bar
    qtbot.waitUntil(lambda: bar.width() > 900)
    assert all(button.isVisible() for button in (bar.add_button, bar.back_button, bar.side_button))
    assert window.minimumSizeHint().width() <= SMALLEST[0]
    assert window.minimumSizeHint().height() <= SMALLEST[1]
    _resize(qtbot, window, *SMALLEST)
    assert bar.tabs.isVisible()
    assert _overhangs(window, bar) == []


def test_the_finding_in_focus_is_read_whole_on_a_laptop_at_125_percent(qtbot: QtBot, window: Window):
    window.files.open_example("too-close")
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    _resize(qtbot, window, 1093, 614)
    qtbot.wait(50)
    found = window.tray.findings
    for row in range(4):
        found.setCurrentIndex(found.model().index(row, 0))
        qtbot.wait(30)
        line = found.visualRect(found.currentIndex())
        assert line.top() >= 0
        assert line.bottom() <= found.viewport().height()
    sheet, tray = window.upright.sizes()
    assert tray <= sheet


def test_a_tray_made_low_by_hand_stays_so_while_the_same_finding_is_in_focus(qtbot: QtBot, window: Window):
    window.files.open_example("too-close")
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    _resize(qtbot, window, 1093, 614)
    window.tray.findings.setCurrentIndex(window.tray.findings.model().index(0, 0))
    window.upright.setSizes([2000, LEAST_TRAY])
    low = window.upright.sizes()[1]
    drawn = window.drafting.findings
    window.session.set_text("shelf.depth", "9 1/2")
    qtbot.waitUntil(lambda: window.drafting.findings is not drawn)
    qtbot.wait(50)
    assert window.upright.sizes()[1] == low
