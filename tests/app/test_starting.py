"""A first design is put in place as one step, and said in words."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from app.arguments import STARTS as WORDS
from app.command_menu import STARTS
from app.demo import read_demo
from app.starting import NOT_KNOWN
from app.window import Window
from model.check.finding import Status
from model.check.first_design import GUIDES
from model.job import with_texts

MINUTE = 60_000


def _open(window: Window, name: str, *texts: tuple[str, str]) -> None:
    window.session.open(with_texts(read_demo(name), texts), None)


def test_every_guide_has_its_words_in_the_menu_and_on_the_command_line():
    assert tuple(STARTS) == tuple(WORDS.split("|")) == GUIDES


def test_it_is_one_step_and_one_undo(window: Window, qtbot: QtBot):
    _open(window, "too-close")
    before = window.session.job
    window.start_from_fireplace("usual")
    assert window.starting.progress.isVisible()
    qtbot.waitUntil(lambda: window.session.job is not before, timeout=MINUTE)
    assert window.session.stack.count() == 1
    assert "solid boards keep the width" in window.notice.text
    assert "hearth, front" in window.notice.text
    qtbot.waitUntil(lambda: all(f.path.startswith("hearth") for f in _list_over(window)))
    window.notice.buttons[0].click()
    assert window.session.job == before


def _list_over(window: Window):
    return [f for f in window.drafting.findings if f.status is Status.FAIL]


def test_where_nothing_is_known_it_says_so_and_leaves_the_job(window: Window, qtbot: QtBot):
    _open(window, "gas", ("site.rule", "irc"))
    before = window.session.job
    window.start_from_fireplace("usual")
    qtbot.waitUntil(lambda: window.notice.text == NOT_KNOWN, timeout=MINUTE)
    assert window.session.job is before


def test_an_edit_made_meanwhile_is_not_overwritten(window: Window, qtbot: QtBot):
    _open(window, "bedroom")
    window.start_from_fireplace("usual")
    window.session.set_text("column.width", "7")
    edited = window.session.job
    qtbot.waitUntil(lambda: "was changed" in window.notice.text, timeout=MINUTE)
    assert window.session.job is edited


def test_it_can_be_stopped(window: Window, qtbot: QtBot):
    _open(window, "brick")
    before = window.session.job
    window.start_from_fireplace("indoors")
    window.starting.progress.stop_button.click()
    qtbot.waitUntil(lambda: not window.starting.progress.isVisible(), timeout=MINUTE)
    assert window.session.job is before
