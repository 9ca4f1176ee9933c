"""Words that are kept bare become sentences with one capital and one stop."""

from __future__ import annotations

from model.sentences import capitalise, end_sentence, merge_stops


def test_only_the_first_letter_grows():
    assert capitalise("the PDF packet") == "The PDF packet"
    assert capitalise("") == ""


def test_a_sentence_that_ends_in_an_abbreviation_gets_no_second_stop():
    assert end_sentence("Engineering Aid Basic, 2nd ed.") == "Engineering Aid Basic, 2nd ed."
    assert end_sentence("shop choice") == "shop choice."


def test_a_unit_that_has_a_stop_shares_it_with_the_sentence_wherever_it_ends():
    assert merge_stops("Out 5 in.. Needed are 12 in..") == "Out 5 in. Needed are 12 in."
