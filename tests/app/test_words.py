"""A whole number and its fraction stand on one line of a sentence, wherever that is broken."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from app.words import Words

SENTENCE = 'Opening width was read from 35 7/16" to 36 1/2", 1 1/16" apart; 35 7/16" governs.'


def test_a_fraction_is_never_parted_from_its_whole_number(qtbot: QtBot, dressed):
    words = Words()
    qtbot.addWidget(words)
    words.setText(SENTENCE)
    shown = super(Words, words).text()
    assert "1\u00a01/16" in shown
    assert " 7/16" not in shown
    assert "from 35" in shown


def test_what_was_said_is_given_back_as_it_was_said(qtbot: QtBot, dressed):
    words = Words(SENTENCE)
    qtbot.addWidget(words)
    assert words.text() == SENTENCE
    words.clear()
    assert words.text() == ""
    words.setText("<b>not bold</b>")
    assert words.sizeHint().width() > Words("not bold").sizeHint().width()
