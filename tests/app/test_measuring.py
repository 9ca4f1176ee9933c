"""The measuring mode by keys alone: one measurement after another, each one step, to a first design."""

from __future__ import annotations

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.window import Window
from model.job import read_value
from model.measuring_walk import list_walk

ENTER, BACK, SKIP, LEAVE = Qt.Key.Key_Return, Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_Escape


def _begin(qtbot: QtBot, window: Window) -> None:
    qtbot.keyClick(window, Qt.Key.Key_F7)
    assert window.measuring.is_on


def _press(qtbot: QtBot, window: Window, key: Qt.Key) -> None:
    qtbot.keyClick(window.measuring.page.entry.inner, key)


def _type(qtbot: QtBot, window: Window, text: str) -> None:
    qtbot.keyClicks(window.measuring.page.entry.inner, text)
    _press(qtbot, window, ENTER)


def _go_to(window: Window, path: str) -> None:
    while window.measuring.path != path:
        window.measuring.skip()


def test_the_mode_begins_with_the_opening_and_the_cursor_in_the_large_entry(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    page = window.measuring.page
    assert page.title.text() == "Opening width"
    assert window.focusWidget() is page.entry.edit
    assert page.entry.edit.selectedText() == "3'-0\""
    qtbot.waitUntil(lambda: not page.picture.is_empty)


def test_enter_takes_what_is_typed_as_one_step_and_goes_on(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    _type(qtbot, window, "40 1/2")
    assert read_value(window.session.job, "opening.width") == 40.5
    assert window.measuring.path == "readings.opening_width"
    _type(qtbot, window, "40 5/8, 40 1/2")
    assert window.session.stack.count() == 2
    assert window.session.stack.undoText() == "opening width, read again"


def test_enter_on_an_untouched_entry_goes_on_without_a_step(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    _press(qtbot, window, ENTER)
    assert window.measuring.path == "readings.opening_width"
    assert window.session.stack.count() == 0


def test_a_refused_entry_stays_with_a_sentence_below_it(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    _type(qtbot, window, "wide")
    page = window.measuring.page
    assert window.measuring.path == "opening.width"
    assert page.message.isVisible()
    assert "36 1/2" in page.message.text()
    assert page.entry.edit.text() == "wide"
    assert window.focusWidget() is page.entry.edit
    _type(qtbot, window, "40")
    assert not page.message.isVisible()
    assert window.measuring.path != "opening.width"


def test_back_and_skip_by_key_leave_the_job_as_it_is(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    qtbot.keyClicks(window.measuring.page.entry.inner, "50")
    _press(qtbot, window, SKIP)
    assert window.measuring.path == "readings.opening_width"
    _press(qtbot, window, BACK)
    assert window.measuring.path == "opening.width"
    assert window.measuring.page.entry.edit.text() == "3'-0\""
    assert window.session.stack.count() == 0


def test_what_is_there_is_asked_for_in_full_and_what_is_not_is_passed_by(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    _go_to(window, "outlet.left")
    _type(qtbot, window, "52")
    assert window.measuring.path == "outlet.height_left"
    _press(qtbot, window, ENTER)
    _press(qtbot, window, ENTER)
    assert window.measuring.path == "outlet.width"


def test_a_whole_group_is_skipped_by_key(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    inner = window.measuring.page.entry.inner
    qtbot.keyClick(inner, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
    assert window.measuring.path == "facing.width"


def test_a_choice_is_made_by_arrow_keys_and_enter(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    _go_to(window, "site.fireplace")
    before = read_value(window.session.job, "site.fireplace")
    _press(qtbot, window, Qt.Key.Key_Down)
    _press(qtbot, window, ENTER)
    assert read_value(window.session.job, "site.fireplace") != before


def test_the_walk_ends_with_the_fireplace_and_a_first_design(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    for _ in list_walk(window.session.job):
        window.measuring.skip()
    page = window.measuring.page
    assert page.design_button.isVisible()
    assert page.design_button.hasFocus()
    assert not page.entry.isVisible()
    qtbot.waitUntil(lambda: not page.picture.is_empty)
    qtbot.keyClick(page.design_button, Qt.Key.Key_Return)
    assert not window.measuring.is_on
    qtbot.waitUntil(lambda: window.session.stack.count() == 1, timeout=60_000)
    assert window.session.stack.undoText() == "start from this fireplace"


def test_measurements_that_disagree_are_told_at_the_end(qtbot: QtBot, window: Window):
    window.session.set_text("readings.diagonal_falling", "60")
    window.session.set_text("readings.diagonal_rising", "40")
    _begin(qtbot, window)
    for _ in list_walk(window.session.job):
        window.measuring.skip()
    qtbot.waitUntil(lambda: "diagonal" in window.measuring.page.help_label.text())


def test_leaving_keeps_what_was_entered_and_comes_back_to_where_it_was(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    _type(qtbot, window, "41")
    qtbot.keyClicks(window.measuring.page.entry.inner, "9")
    _press(qtbot, window, LEAVE)
    assert window.measuring.is_on  # first it gives up what was typed
    _press(qtbot, window, LEAVE)
    assert not window.measuring.is_on
    assert window.pages.currentIndex() == 0
    assert read_value(window.session.job, "opening.width") == 41
    _begin(qtbot, window)
    assert window.measuring.path == "readings.opening_width"


def test_undo_shows_the_value_that_holds_again(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    _type(qtbot, window, "41")
    _press(qtbot, window, BACK)
    qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.measuring.page.entry.edit.text() == "3'-0\""


def test_saving_enters_what_is_being_typed(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    qtbot.keyClicks(window.measuring.page.entry.inner, "44")
    assert window.commit_pending()
    assert read_value(window.session.job, "opening.width") == 44


def test_another_job_ends_the_mode(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    window.files.open_example("bedroom")
    assert not window.measuring.is_on
    assert window.pages.currentIndex() == 0


def test_a_new_job_offers_to_be_measured(qtbot: QtBot, window: Window):
    window.begin_job()
    assert "until it is measured" in window.notice.text
    window.notice.buttons[0].click()
    assert window.measuring.is_on
    assert window.notice.text == ""


def test_the_page_keys_never_change_a_choice(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    _go_to(window, "site.fireplace")
    before = window.session.job
    choice = window.measuring.page.entry.choice
    shown = choice.currentIndex()
    qtbot.keyClick(choice, Qt.Key.Key_PageUp)
    assert window.measuring.path != "site.fireplace"
    _go_to(window, "site.fireplace")
    assert choice.currentIndex() == shown
    qtbot.keyClick(choice, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
    assert window.measuring.path.startswith("house.")
    assert window.session.job is before


def test_what_is_no_measure_is_asked_beside_the_whole_fireplace(qtbot: QtBot, window: Window):
    _begin(qtbot, window)
    qtbot.waitUntil(lambda: not window.measuring.page.picture.is_empty)
    _go_to(window, "site.fireplace")
    assert not window.measuring.page.picture.is_empty
