"""The line above the sheet: what went wrong is not taken away by what can wait."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.notice import Notice

WRONG, OFFER, AFTER = "That file cannot be read.", "Unsaved work was kept.", "It is open now."


def _build(qtbot: QtBot) -> Notice:
    notice = Notice()
    qtbot.addWidget(notice)
    return notice


def test_an_offer_waits_until_what_went_wrong_was_put_away(qtbot: QtBot):
    notice = _build(qtbot)
    notice.say(WRONG, wrong=True)
    notice.offer(OFFER, (("Open it", lambda: None),))
    assert notice.text == WRONG
    notice.close_button.click()
    assert notice.text == OFFER
    notice.close_button.click()
    assert notice.text == ""
    assert notice.isHidden()


def test_an_offer_waits_for_what_a_choice_says(qtbot: QtBot):
    notice = _build(qtbot)
    notice.say(WRONG, (("Do this", lambda: notice.say(AFTER)),))
    notice.offer(OFFER, ())
    notice.buttons[0].click()
    assert notice.text == AFTER
    notice.put_away()
    assert notice.text == OFFER


def test_an_offer_is_made_at_once_where_nothing_is_said(qtbot: QtBot):
    notice = _build(qtbot)
    taken: list[str] = []
    notice.offer(OFFER, (("Open it", lambda: taken.append(OFFER)),))
    assert notice.text == OFFER
    notice.buttons[0].click()
    assert (taken, notice.text) == ([OFFER], "")


def test_an_offer_that_was_not_answered_is_made_again(qtbot: QtBot):
    notice = _build(qtbot)
    notice.offer(OFFER, (("Open it", lambda: None),))
    notice.put_away()  # as when another job is opened
    assert notice.text == OFFER
    notice.say(AFTER)
    assert notice.text == AFTER
    notice.put_away()
    assert notice.text == OFFER
    assert notice.buttons[0].text() == "Open it"
    notice.say(AFTER)
    notice.say(WRONG, wrong=True)
    notice.close_button.click()
    assert notice.text == OFFER
    notice.close_button.click()
    assert notice.isHidden()


def test_the_second_half_of_a_double_click_does_not_answer_what_came_up_under_the_pointer(qtbot: QtBot):
    notice, thrown = _build(qtbot), []
    notice.say(WRONG, (("Do this", lambda: None),))
    notice.offer(OFFER, (("Throw it away", lambda: thrown.append(True)),))
    notice.show()
    qtbot.mouseClick(notice.buttons[0], Qt.MouseButton.LeftButton)
    qtbot.mouseClick(notice.buttons[0], Qt.MouseButton.LeftButton)
    assert notice.text == OFFER
    assert not thrown
    qtbot.wait(QApplication.doubleClickInterval() + 50)
    qtbot.mouseClick(notice.buttons[0], Qt.MouseButton.LeftButton)
    assert thrown
