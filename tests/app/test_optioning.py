"""Options in the window: by mouse and by keyboard, each step undone, nothing lost, prices beside the work."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QAction, QMouseEvent
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from app.demo import read_demo
from app.estimating import strip
from app.files import read_job_file
from app.option_tabs import OptionTabs
from app.optioning import ADD, AFTER, AWAY, BEFORE, DUPLICATE, EARLIER, LATER, RENAME, SIDE
from app.recovery import list_left_behind
from app.window import Window
from model.check.finding import Status
from model.job import default_job, read_value, with_value
from model.options import FIRST_NAME, LONGEST_NAME, add_option, rename, take_up
from model.parameters import BY_PATH
from model.photo.stored import WallPhoto

LEFT = Qt.MouseButton.LeftButton


def _three(window: Window) -> None:
    """Columns 7, 8 and 9 in. wide, the first in work."""
    job = rename(with_value(default_job(), "column.width", 7), 0, "Seven")
    for width, name in ((8, "Eight"), (9, "Nine")):
        job = rename(with_value(add_option(job), "column.width", width), int(width) - 7, name)
    window.session.open(take_up(job, 0), None)


def _width(window: Window) -> float:
    return read_value(window.session.job, "column.width")


def _names(window: Window) -> tuple[str, ...]:
    return window.session.job.options.names


def _press(window: Window, words: str) -> None:
    window.options.commands[words].trigger()


def _click_tab(qtbot: QtBot, window: Window, place: int, button=LEFT) -> None:
    tabs = window.options.bar.tabs
    qtbot.mouseClick(tabs, button, pos=tabs.tabRect(place).center())


def test_one_design_has_no_tabs_and_a_second_one_brings_them(window: Window, qtbot: QtBot):
    bar = window.options.bar
    assert bar.isHidden()
    _press(window, ADD)
    assert not bar.isHidden()
    assert _names(window) == (FIRST_NAME, "Option 2")
    qtbot.keyClicks(bar.tabs.editor, "Plain")
    qtbot.keyClick(bar.tabs.editor, Qt.Key.Key_Return)
    assert _names(window) == (FIRST_NAME, "Plain")
    assert bar.tabs.tabText(1) == "Plain"
    window.undo()
    window.undo()
    assert _names(window) == (FIRST_NAME,)
    assert bar.isHidden()


def test_a_tab_is_taken_up_by_mouse_and_by_keyboard_and_drawn(window: Window, qtbot: QtBot):
    _three(window)
    _click_tab(qtbot, window, 2)
    assert _width(window) == 9
    assert window.drafting.surround.job.design.column.width == 9
    tabs = window.options.bar.tabs
    tabs.setFocus()
    qtbot.keyClick(tabs, Qt.Key.Key_Left)
    assert _width(window) == 8
    _press(window, BEFORE)
    assert _width(window) == 7
    _press(window, AFTER)
    assert _width(window) == 8


def test_going_back_and_forth_between_options_is_one_step(window: Window, qtbot: QtBot):
    _three(window)
    window.session.set_value("column.width", 7.5)
    for place in (1, 2, 1, 2):
        _click_tab(qtbot, window, place)
    window.undo()
    assert _width(window) == 7.5
    assert window.session.job.options.place == 0
    window.undo()
    assert _width(window) == 7
    window.redo()
    window.redo()
    assert window.session.job.options.name == "Nine"


def test_undoing_an_edit_goes_back_to_the_option_it_was_made_in(window: Window):
    _three(window)
    window.session.set_value("column.width", 6.5)
    window.options.take_up(1)
    window.session.set_value("column.width", 10)
    window.undo()
    assert (_width(window), window.session.job.options.name) == (8, "Eight")
    window.undo()
    window.undo()
    assert (_width(window), window.session.job.options.name) == (7, "Seven")


def test_what_is_being_typed_belongs_to_the_option_that_is_left(window: Window, qtbot: QtBot):
    _three(window)
    window.fields.focus_path("column.width")
    edit = window.fields.rows["column.width"].edit
    edit.selectAll()
    qtbot.keyClicks(edit, "7 1/4")
    window.options.take_up(1)
    assert _width(window) == 8
    window.options.take_up(0)
    assert _width(window) == 7.25


@pytest.mark.parametrize("by", ["double click", "F2", "Enter"])
def test_a_name_is_typed_where_it_stands(window: Window, qtbot: QtBot, by: str):
    _three(window)
    tabs = window.options.bar.tabs
    if by == "double click":
        qtbot.mouseDClick(tabs, LEFT, pos=tabs.tabRect(0).center())
    elif by == "F2":
        _press(window, RENAME)
    else:
        tabs.setFocus()
        qtbot.keyClick(tabs, Qt.Key.Key_Return)
    assert tabs.editor.isVisible()
    assert tabs.editor.selectedText() == "Seven"
    qtbot.keyClicks(tabs.editor, "  As  built ")
    qtbot.keyClick(tabs.editor, Qt.Key.Key_Return)
    assert _names(window)[0] == "As built"
    assert not tabs.editor.isVisible()


def test_escape_leaves_the_name_and_leaving_takes_it(window: Window, qtbot: QtBot):
    _three(window)
    tabs = window.options.bar.tabs
    tabs.edit_name(0)
    qtbot.keyClicks(tabs.editor, "Other")
    qtbot.keyClick(tabs.editor, Qt.Key.Key_Escape)
    assert _names(window)[0] == "Seven"
    tabs.edit_name(0)
    qtbot.keyClicks(tabs.editor, "Other")
    window.canvas.setFocus()
    assert _names(window)[0] == "Other"


@pytest.mark.parametrize(
    ("name", "words"), [("eight", "called so already"), (" ", "write a name"), ("x" * 61, "60")]
)
def test_a_name_that_cannot_be_stays_with_its_sentence(window: Window, qtbot: QtBot, name: str, words: str):
    _three(window)
    tabs = window.options.bar.tabs
    tabs.edit_name(0)
    tabs.editor.setText(name)
    qtbot.keyClick(tabs.editor, Qt.Key.Key_Return)
    assert tabs.editor.isVisible()
    assert words in window.notice.text
    assert words in tabs.editor.accessibleDescription()
    tabs.editor.setText("Six")
    qtbot.keyClick(tabs.editor, Qt.Key.Key_Return)
    assert _names(window)[0] == "Six"
    assert not tabs.editor.isVisible()
    assert window.notice.text == ""


def test_one_thrown_away_is_brought_back_by_the_notice_by_undo_and_from_the_list(window: Window):
    _three(window)
    _press(window, AWAY)
    assert _names(window) == ("Eight", "Nine")
    assert "“Seven” was thrown away." in window.notice.text
    window.notice.buttons[0].click()
    assert _names(window) == ("Eight", "Nine", "Seven")
    assert _width(window) == 7
    window.undo()
    window.undo()
    assert _names(window) == ("Seven", "Eight", "Nine")
    _press(window, AWAY)
    assert "thrown away" in window.notice.text
    window.undo()
    assert window.notice.text == ""
    _press(window, AWAY)
    menu = window.options.bar.back_menu
    menu.aboutToShow.emit()
    assert [action.text() for action in menu.actions()] == ["Seven"]
    menu.actions()[0].trigger()
    assert _names(window) == ("Eight", "Nine", "Seven")


def test_the_last_one_cannot_be_thrown_away_and_says_why(window: Window):
    command = window.options.commands[AWAY]
    assert not command.isEnabled()
    assert "there is only one design" in command.text()


def test_options_are_put_in_another_order_by_menu_and_by_dragging(window: Window, qtbot: QtBot):
    _three(window)
    _press(window, LATER)
    assert _names(window) == ("Eight", "Seven", "Nine")
    assert _width(window) == 7
    _press(window, EARLIER)
    assert _names(window) == ("Seven", "Eight", "Nine")
    tabs = window.options.bar.tabs
    start, end = tabs.tabRect(0).center(), tabs.tabRect(2).center() + QPoint(30, 0)
    qtbot.mousePress(tabs, LEFT, pos=start)
    for part in range(1, 21):
        _drag(tabs, start + (end - start) * part / 20)
    assert _names(window) == ("Seven", "Eight", "Nine")
    qtbot.mouseRelease(tabs, LEFT, pos=end)
    assert _names(window) == ("Eight", "Nine", "Seven")
    assert [tabs.tabText(i) for i in range(3)] == list(_names(window))
    assert (window.session.job.options.name, _width(window)) == ("Seven", 7)
    window.undo()
    assert _names(window) == ("Seven", "Eight", "Nine")


def _drag(tabs: OptionTabs, at: QPoint) -> None:
    """Move the pointer with its button held, which the test library does not do."""
    moved = QMouseEvent(
        QEvent.Type.MouseMove,
        QPointF(at),
        QPointF(tabs.mapToGlobal(at)),
        Qt.MouseButton.NoButton,
        LEFT,
        Qt.KeyboardModifier.NoModifier,
    )
    QApplication.sendEvent(tabs, moved)


def test_a_tab_that_is_dragged_and_put_back_changes_nothing(window: Window, qtbot: QtBot):
    _three(window)
    tabs = window.options.bar.tabs
    start, end = tabs.tabRect(0).center(), tabs.tabRect(1).center() + QPoint(40, 0)
    qtbot.mousePress(tabs, LEFT, pos=start)
    for at in (start + QPoint(40, 0), end, start):
        _drag(tabs, at)
        window.options._show()
    qtbot.mouseRelease(tabs, LEFT, pos=start)
    assert _names(window) == ("Seven", "Eight", "Nine")
    assert [tabs.tabText(i) for i in range(3)] == list(_names(window))
    assert not window.session.stack.canUndo()


def test_a_copy_stands_beside_what_it_is_a_copy_of(window: Window):
    _three(window)
    _press(window, DUPLICATE)
    assert _names(window) == ("Seven", "Seven (2)", "Eight", "Nine")
    assert window.session.job.options.place == 1


def test_long_names_are_cut_on_the_tab_and_told_whole(window: Window):
    _three(window)
    long = "A name " * 8
    window.options.rename(0, long)
    tabs = window.options.bar.tabs
    assert tabs.tabSizeHint(0).width() <= 34 * 8
    assert " ".join(long.split()) in tabs.tabToolTip(0)
    assert " ".join(long.split()) in tabs.accessibleTabName(0)
    assert len(_names(window)[0]) <= LONGEST_NAME


def test_thirty_options_leave_the_window_as_narrow_as_it_was(window: Window):
    before = window.minimumSizeHint().width()
    for _ in range(29):
        window.session.change("x", add_option(window.session.job))
    assert window.options.bar.tabs.count() == 30
    assert window.minimumSizeHint().width() <= before
    tabs = window.options.bar.tabs
    assert tabs.tabRect(29).right() <= tabs.width()
    assert tabs.tabRect(0).right() < 0


def test_tabs_count_what_is_over_in_the_one_in_work(window: Window, qtbot: QtBot):
    window.session.open(add_option(read_demo("too-close")), None)
    qtbot.waitUntil(lambda: any(f.status is Status.FAIL for f in window.drafting.findings))
    qtbot.waitUntil(lambda: dict(window.options.bar.tabs.shown[1].counts or ()).get(Status.FAIL, 0) > 0)
    assert "over" in window.options.bar.tabs.accessibleTabName(1)


def test_saved_and_kept_work_holds_every_option(window: Window, tmp_path: Path):
    _three(window)
    _press(window, AWAY)
    window.recovery.keep()
    window.recovery._lock.unlock()
    (kept,) = list_left_behind(tmp_path / "unsaved")
    assert kept.job == window.session.job
    assert kept.job.options.names == ("Eight", "Nine")
    assert [each.name for each in kept.job.options.thrown] == ["Seven"]
    kept.lock.unlock()
    window.session.path = tmp_path / "room.mantel"
    assert window.files.save()
    assert read_job_file(tmp_path / "room.mantel") == window.session.job


def test_the_menu_names_every_command_and_its_keys(window: Window):
    (menu,) = (a.menu() for a in window.menuBar().actions() if a.text() == "&Options")
    commands = window.options.commands
    texts = [action.text() for action in menu.actions() if not action.isSeparator() and not action.menu()]
    assert len(texts) == len(commands)
    keys = [action.shortcut().toString() for action in commands.values() if not action.shortcut().isEmpty()]
    others = [key.toString() for action in window.findChildren(QAction) for key in action.shortcuts()]
    assert len(keys) == len(set(keys)) == len(commands) - 1
    assert not {key for key in keys if others.count(key) > 1}


@pytest.mark.parametrize(
    ("place", "cannot"), [(0, {EARLIER}), (1, set()), (2, {LATER})], ids=["first", "middle", "last"]
)
def test_a_tabs_menu_offers_what_can_be_done_with_it(
    window: Window, qtbot: QtBot, place: int, cannot: set[str]
):
    _three(window)
    _click_tab(qtbot, window, place, Qt.MouseButton.RightButton)
    menu = next(menu for menu in window.findChildren(QMenu) if menu.isVisible())
    actions = {action.text(): action for action in menu.actions()}
    assert {words for words, action in actions.items() if not action.isEnabled()} == cannot
    assert len(actions) == 5
    actions[AWAY].trigger()
    menu.close()
    assert _names(window) == tuple(name for i, name in enumerate(("Seven", "Eight", "Nine")) if i != place)
    window.notice.buttons[0].click()
    assert set(_names(window)) == {"Seven", "Eight", "Nine"}


def test_the_menu_key_opens_the_menu_of_the_tab_in_work(window: Window, qtbot: QtBot):
    _three(window)
    window.options.take_up(1)
    qtbot.keyClick(window.options.bar.tabs, Qt.Key.Key_Menu)
    menu = next(menu for menu in window.findChildren(QMenu) if menu.isVisible())
    actions = {action.text(): action for action in menu.actions()}
    actions[LATER].trigger()
    menu.close()
    assert _names(window) == ("Seven", "Nine", "Eight")


def test_more_options_than_a_job_holds_are_refused_in_words(window: Window, monkeypatch):
    _three(window)
    monkeypatch.setattr("model.options.MOST_OPTIONS", 3)
    _press(window, ADD)
    assert len(_names(window)) == 3
    assert "3" in window.notice.text


def test_side_by_side_shows_fronts_at_one_scale_with_counts_and_what_differs(window: Window, qtbot: QtBot):
    _three(window)
    _press(window, SIDE)
    side = window.options.side_window
    qtbot.waitUntil(side.isVisible)
    qtbot.waitUntil(lambda: side.columns[0].picture.box.width() > 0)
    assert [column.chooser.currentText() for column in side.columns[:2]] == ["Seven", "Eight"]
    assert side.columns[2].isHidden()
    side.third_button.click()
    qtbot.wait(20)
    assert [column.chooser.currentText() for column in side.columns] == ["Seven", "Eight", "Nine"]
    assert len({column.picture.scale for column in side.columns}) == 1
    model = side.table.model()
    rows = [[model.index(r, c).data() for c in range(model.columnCount())] for r in range(model.rowCount())]
    assert ["Columns: width", '7"', '8"', '9"'] in [row[1:] for row in rows]
    side.table.setCurrentIndex(model.index([row[1] for row in rows].index("Columns: width"), 1))
    qtbot.keyClick(side.table, Qt.Key.Key_Return)
    assert window.fields.rows["column.width"].isAncestorOf(window.focusWidget())
    window.session.set_value("column.width", 6)
    qtbot.wait(120)
    model = side.table.model()
    assert any(model.index(r, 2).data() == '6"' for r in range(model.rowCount()))
    side.columns[2].work_button.click()
    assert _width(window) == 9
    qtbot.wait(80)
    assert not side.columns[2].work_button.isEnabled()


def test_side_by_side_follows_names_and_closes_with_the_last_but_one(window: Window, qtbot: QtBot):
    _three(window)
    _press(window, SIDE)
    side = window.options.side_window
    side.choose(1, 2)
    assert side.places[:2] == (0, 2)
    window.options.rename(2, "Nine feet")
    qtbot.wait(120)
    assert side.columns[1].chooser.currentText() == "Nine feet"
    window.options.throw_away(2)
    qtbot.wait(120)
    assert side.columns[1].chooser.currentText() == "Eight"
    window.options.throw_away(1)
    qtbot.waitUntil(lambda: not side.isVisible())


def test_side_by_side_opened_again_shows_the_option_in_work(window: Window, qtbot: QtBot):
    _three(window)
    window.options.show_side_by_side()
    side = window.options.side_window
    side.choose(1, 1)
    side.close()
    window.options.take_up(2)
    window.options.show_side_by_side()
    qtbot.waitUntil(side.isVisible)
    assert side.places == (2, 1)
    assert not side.columns[0].work_button.isEnabled()
    side.choose(0, 0)
    side.hide()
    window.options.take_up(0)
    side.show()
    assert side.places == (0, 1)


def test_prices_come_beside_the_work_and_differ_from_the_one_in_work(window: Window, qtbot: QtBot):
    window.cutting.use_list("example")
    _three(window)
    job = with_value(window.session.job, "offer.hour", 50)
    window.session.open(job, None)
    window.options.ask()
    assert window.options.find_price(0) is None
    assert "being worked out" in window.options.bar.tabs.shown[1].price
    qtbot.waitUntil(lambda: all(window.options.find_price(i) is not None for i in range(3)), timeout=90_000)
    totals = [window.options.find_price(i).total for i in range(3)]
    assert all(totals)
    assert len(set(totals)) > 1
    shown = window.options.bar.tabs.shown
    assert "(" not in shown[0].price
    assert any("(+" in each.price or "(\N{MINUS SIGN}" in each.price for each in shown[1:])
    window.session.set_value("offer.margin", 20)
    dearer = [window.options.find_price(i).total for i in range(3)]
    assert all(after > before for after, before in zip(dearer, totals, strict=True))
    window.cutting.use_list("usual")
    qtbot.wait(100)
    assert window.options.find_price(0) is None


def test_what_is_offered_and_what_it_is_called_is_no_other_question():
    job = with_value(default_job(), "offer.margin", 10)
    assert strip(with_value(job, "job.name", "x")) == strip(default_job())
    assert strip(with_value(job, "column.width", 8)) != strip(job)
    assert QApplication.instance() is not None


def test_fronts_are_painted_beside_the_work_at_one_scale(window: Window, qtbot: QtBot):
    _three(window)
    _press(window, SIDE)
    side = window.options.side_window
    qtbot.waitUntil(side.isVisible)
    lines = side.columns[0].picture.box
    side.colour_button.click()
    qtbot.waitUntil(lambda: len(side._drawings) == 2, timeout=20_000)
    assert side.columns[0].picture.box.width() < lines.width()
    assert side.columns[0].picture.scale == side.columns[1].picture.scale
    side.third_button.click()
    qtbot.waitUntil(lambda: len(side._drawings) == 3, timeout=20_000)
    side.colour_button.click()
    assert side._drawings == ()
    assert side.columns[0].picture.box.width() > 0


def test_colours_make_no_other_question_of_a_plan_or_a_price(window: Window):
    job = window.session.job
    other = (
        with_value(
            job, "look.paint", next(w for w in BY_PATH["look.paint"].choices if w != job.design.look.paint)
        )
        if BY_PATH["look.paint"].choices
        else with_value(job, "look.paint", "#112233")
    )
    photo = WallPhoto(400, 300, ((100, 200), (200, 200), (200, 100), (100, 100)), kept="aGVhcnRo")
    other = replace(other, photo=photo)
    assert other != job
    assert strip(other) == strip(job)
    stock_list = window.cutting.find_list()
    window.cutting.planning._asked = (job, stock_list)
    assert window.cutting.planning.is_asked(other, stock_list)
    assert not window.cutting.planning.is_asked(with_value(job, "column.width", 6.5), stock_list)
