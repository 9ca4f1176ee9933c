"""A finding in focus is offered its cures; one click makes one, one undo takes it back."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from app.cure_bar import LOOKING
from app.demo import read_demo
from app.explained_window import ExplainedWindow
from app.window import Window
from model.check.finding import Status

TEN_SECONDS = 10_000


@pytest.fixture
def cures(window: Window, qtbot: QtBot) -> Window:
    """A window with the job that breaks its rules, its first finding in focus and cures offered."""
    window.session.open(read_demo("too-close"), None)
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    _focus(window, 0)
    assert window.tray.cures.text == LOOKING
    qtbot.waitUntil(lambda: window.tray.cures.do_button.isVisible(), timeout=TEN_SECONDS)
    return window


def _focus(window: Window, row: int) -> None:
    found = window.tray.findings
    found.setCurrentIndex(found.model().index(row, 0))


def _status(window: Window) -> Status:
    finding = window.tray.findings.current()
    assert finding is not None
    return finding.status


def test_one_click_makes_a_cure_and_one_undo_takes_it_back(cures: Window, qtbot: QtBot):
    before, steps = cures.session.job, cures.session.stack.count()
    assert _status(cures) is Status.FAIL
    cures.tray.cures.do_button.click()
    assert cures.session.stack.count() == steps + 1
    qtbot.waitUntil(lambda: _status(cures) is not Status.FAIL)
    assert cures.tray.cures.text.startswith("Done: ")
    cures.tray.cures.undo_button.click()
    assert cures.session.job == before
    qtbot.waitUntil(lambda: _status(cures) is Status.FAIL)
    qtbot.waitUntil(lambda: cures.tray.cures.do_button.isVisible(), timeout=TEN_SECONDS)


def test_other_ways_are_shown_in_turn_and_come_round_again(cures: Window):
    bar = cures.tray.cures
    first = bar.text
    texts = [first]
    while True:
        bar.other_button.click()
        if bar.text == first:
            break
        texts.append(bar.text)
    assert len(set(texts)) == len(texts) > 1
    assert any("no clearance is over" in text for text in texts)


def test_what_gets_worse_is_said_beside_the_cure(cures: Window):
    assert "After that, close:" in cures.tray.cures.text


def test_an_edit_lets_go_of_what_was_offered(cures: Window, qtbot: QtBot):
    cures.session.set_text("column.margin", "7")
    qtbot.waitUntil(lambda: "instead of 7" in cures.tray.cures.text, timeout=TEN_SECONDS)


def test_after_a_cure_another_finding_has_its_own(cures: Window, qtbot: QtBot):
    cures.tray.cures.do_button.click()
    qtbot.waitUntil(lambda: _status(cures) is not Status.FAIL)
    row = next(i for i, f in enumerate(cures.drafting.findings) if f.part == "hearth, front")
    _focus(cures, row)
    qtbot.waitUntil(lambda: "hearth itself" in cures.tray.cures.text, timeout=TEN_SECONDS)


def test_a_finding_that_is_within_is_offered_no_cure(cures: Window):
    row = next(i for i, f in enumerate(cures.drafting.findings) if f.status is Status.PASS)
    _focus(cures, row)
    assert not cures.tray.cures.do_button.isVisible()
    assert cures.tray.cures.text == ""


def test_the_finding_in_focus_is_explained_on_a_page_of_its_own(cures: Window):
    cures.tray.cures.explain_button.click()
    (page,) = cures.findChildren(ExplainedWindow)
    assert page.windowTitle() == "Left plinth: mantel clearance"
    assert "5.75 < 12 in.: 6.25 in. short." in page.texts
    assert not page.grab().isNull()
    assert page.outdated.isHidden()
    cures.session.step("column.margin", 1)
    assert page.outdated.isVisible()
    page.close()
    cures.session.step("column.margin", 1)


def test_without_a_finding_in_focus_nothing_is_explained(window: Window):
    window.explain()
    assert window.findChildren(ExplainedWindow) == []
