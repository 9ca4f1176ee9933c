"""Every control of every window has a name and a role to be read out, and is reached by keys alone."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QAccessible, QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QMainWindow, QMenu, QMenuBar, QWidget
from pytestqt.qtbot import QtBot

from app.rooms import TITLES
from app.window import Window
from model.options import add_option, throw_away

AREAS = {"Canvas", "PlanSheet", "QScrollArea"}
"""Drawn by the program itself, or scrolled: Qt knows no closer role than an area's. All are named."""


def _list_controls(root: QWidget) -> list[QWidget]:
    """What takes the keyboard now, the inside of pop-up lists left out: they speak for their box."""
    found = [root, *root.findChildren(QWidget)]
    return [
        control
        for control in found
        if control.focusPolicy() != Qt.FocusPolicy.NoFocus
        and control.isVisibleTo(root)
        and control.isEnabled()
        and not isinstance(control, QMenu | QMenuBar | QMainWindow | QDialog)
        and not (control.parent() and control.parent().inherits("QComboBoxPrivateContainer"))
    ]


def _say(control: QWidget) -> tuple[str, QAccessible.Role]:
    read = QAccessible.queryAccessibleInterface(control)
    assert read is not None
    return read.text(QAccessible.Text.Name), read.role()


def _list_mute(root: QWidget) -> list[str]:
    """Controls without a name, or with no role that says what they are."""
    mute = []
    for control in _list_controls(root):
        name, role = _say(control)
        vague = role in (QAccessible.Role.NoRole, QAccessible.Role.Client)
        kind = type(control).__name__
        part = control.objectName() == "qt_spinbox_lineedit"
        if not name or (vague and kind not in AREAS and not part):
            mute.append(f"{kind} “{name}” in {type(control.parent()).__name__}")
    return mute


def _walk_by_tab(qtbot: QtBot, root: QWidget) -> list[QWidget]:
    """Controls that the tab key comes to, from the one in focus on, until it comes round again."""
    seen: list[QWidget] = []
    if root.focusWidget() is None:
        root.setFocus()
        root.focusNextChild()
    while (at := root.focusWidget()) is not None and at not in seen and len(seen) < 900:
        seen.append(at)
        QTest.keyClick(at, Qt.Key.Key_Tab)
    return seen


def _list_unreached(qtbot: QtBot, root: QWidget) -> list[str]:
    wanted = [control for control in _list_controls(root) if control.focusPolicy() & Qt.FocusPolicy.TabFocus]
    seen = set(_walk_by_tab(qtbot, root))
    missed = [control for control in wanted if control not in seen and control.focusProxy() is None]
    return [f"{type(control).__name__} “{_say(control)[0]}”" for control in missed if not _is_twin(control)]


def _is_twin(control: QWidget) -> bool:
    """One of several buttons of which one is down: the tab key comes to that, arrow keys to the rest."""
    group = getattr(control, "group", lambda: None)()
    inner = control.objectName() == "qt_spinbox_lineedit"
    return inner or (group is not None and group.exclusive() and not control.isChecked())


def _list_actions(menu: QMenu | QMenuBar) -> Iterator[QAction]:
    for action in menu.actions():
        if action.menu():
            yield from _list_actions(action.menu())
        elif not action.isSeparator():
            yield action


def _in_dialog(qtbot: QtBot, window: Window, open_it, look) -> None:
    """Open a dialog, look at it once it is there, and close it."""
    looked: list[bool] = []

    def visit() -> None:
        dialog = QApplication.activeModalWidget()
        try:
            assert isinstance(dialog, QDialog)
            look(dialog)
            looked.append(True)
        finally:
            if isinstance(dialog, QDialog):
                dialog.reject()

    QTimer.singleShot(400, visit)
    open_it()
    qtbot.waitUntil(lambda: bool(looked), timeout=20_000)


DIALOGS = {
    "packet": lambda window: window.write_packet(),
    "labels": lambda window: window.beside.ask_labels(),
    "print": lambda window: window.show_print(),
}


def test_every_control_of_the_window_says_what_it_is(qtbot: QtBot, window: Window):
    window.files.open_example("too-close")
    for page in range(len(TITLES)):
        window.tray.turn_to(page)
        assert _list_mute(window) == []
    window.measuring.begin()
    assert _list_mute(window) == []


def test_every_control_of_the_stock_window_says_what_it_is(qtbot: QtBot, window: Window):
    window.cutting.show_stock()
    shown = next(w for w in QApplication.topLevelWidgets() if type(w).__name__ == "StockWindow")
    assert _list_mute(shown) == []
    shown.close()


def test_every_control_of_an_explanation_says_what_it_is(qtbot: QtBot, window: Window):
    window.files.open_example("too-close")
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    window.tray.findings.setCurrentIndex(window.tray.findings.model().index(0, 0))
    window.explain()
    shown = next(w for w in QApplication.topLevelWidgets() if type(w).__name__ == "ExplainedWindow")
    assert _list_mute(shown) == []
    assert _list_unreached(qtbot, shown) == []
    shown.close()


@pytest.mark.parametrize("name", list(DIALOGS))
def test_every_control_of_a_dialog_says_what_it_is_and_is_reached_by_tab(
    qtbot: QtBot, window: Window, name: str
):
    def look(dialog: QDialog) -> None:
        assert _list_mute(dialog) == []
        assert _list_unreached(qtbot, dialog) == []

    _in_dialog(qtbot, window, lambda: DIALOGS[name](window), look)


def test_the_tab_key_reaches_every_control_of_the_window(qtbot: QtBot, window: Window):
    window.files.open_example("brick")
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    window.fields.focus_path("opening.width")
    assert _list_unreached(qtbot, window) == []


def test_the_tab_key_reaches_every_control_of_the_measuring_mode(qtbot: QtBot, window: Window):
    window.measuring.begin()
    window.measuring.skip()
    assert _list_unreached(qtbot, window) == []


def test_the_tab_key_leaves_every_list_of_the_tray(qtbot: QtBot, window: Window):
    window.files.open_example("brick")
    for page in range(len(TITLES)):
        window.tray.turn_to(page)
        window.tray.shown_list.setFocus()
        start = window.focusWidget()
        QTest.keyClick(start, Qt.Key.Key_Tab)
        assert window.focusWidget() is not start, TITLES[page]


def test_every_command_is_in_a_menu(window: Window):
    listed = set(_list_actions(window.menuBar()))
    loose = [
        action.text()
        for action in window.findChildren(QAction)
        if action.text() and not action.menu() and action not in listed and not action.isSeparator()
    ]
    assert loose == []


def test_no_key_gives_two_commands(window: Window):
    keys = defaultdict(list)
    for action in _list_actions(window.menuBar()):
        for key in action.shortcuts():
            keys[key.toString()].append(action.text())
    assert {key: words for key, words in keys.items() if len(words) > 1} == {}


def test_no_menu_has_a_letter_twice(window: Window):
    def look(menu: QMenu | QMenuBar) -> None:
        letters = [a.text()[a.text().index("&") + 1].lower() for a in menu.actions() if "&" in a.text()]
        twice = [letter for letter, count in Counter(letters).items() if count > 1 and not letter.isdigit()]
        assert twice == [], [a.text() for a in menu.actions()]
        for action in menu.actions():
            if action.menu():
                look(action.menu())

    look(window.menuBar())


def test_buttons_show_that_they_have_the_focus(qtbot: QtBot, window: Window):
    button = window.bar.packet_button
    button.clearFocus()
    before = button.grab().toImage()
    button.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(button.hasFocus)
    assert button.grab().toImage() != before


def test_a_group_is_folded_and_opened_by_key(qtbot: QtBot, window: Window):
    window.fields.focus_path("facing.proud")
    fold = next(a for a in _list_actions(window.menuBar()) if "in focus, or open it" in a.text())
    fold.trigger()
    assert window.fields.groups["Facing"].is_folded
    fold.trigger()
    assert not window.fields.groups["Facing"].is_folded
    assert window.focusWidget() is window.fields.rows["facing.proud"].value_widget


def test_every_control_of_options_says_what_it_is_and_is_reached_by_tab(qtbot: QtBot, window: Window):
    window.resize(1366, 768)  # a narrow row leaves to the menu what it has no room for
    for _ in range(2):
        window.session.change("adding an option", add_option(window.session.job))
    window.session.change("throwing one away", throw_away(window.session.job, 0))
    window.session.change("adding an option", add_option(window.session.job))
    assert _list_mute(window.options.bar) == []
    reached = _walk_by_tab(qtbot, window)
    bar = window.options.bar
    for control in (bar.tabs, bar.add_button, bar.back_button, bar.side_button):
        assert control in reached, _say(control)
    tabs = QAccessible.queryAccessibleInterface(bar.tabs)
    names = [tabs.child(i).text(QAccessible.Text.Name) for i in range(bar.tabs.count())]
    assert all(name in told for name, told in zip(window.session.job.options.names, names, strict=True)), (
        names
    )


def test_every_control_side_by_side_says_what_it_is_and_is_reached_by_tab(qtbot: QtBot, window: Window):
    for _ in range(2):
        window.session.change("adding an option", add_option(window.session.job))
    window.options.show_side_by_side()
    shown = window.options.side_window
    qtbot.waitActive(shown)
    shown.third_button.setChecked(True)
    assert _list_mute(shown) == []
    assert _list_unreached(qtbot, shown) == []
    shown.close()
