"""What changed since a list was printed."""

from __future__ import annotations

import pytest

from model.cutting.buying import list_buying
from model.cutting.plan import plan_order
from model.cutting.printed import (
    Change,
    count_printed,
    list_changes,
    read_printed,
    share_changes,
    write_printed,
)
from model.errors import StockRefused
from tests.model.cutting.yard import order_of, piece, sold


def _counts(lengths: list[float], spare: int = 0) -> dict[str, int]:
    rows = sold("1x4", 3.5, 96, 1000), sold("1x4", 3.5, 144, 1600)
    pieces = [piece(f"A{i}", length) for i, length in enumerate(lengths)]
    return count_printed(list_buying(plan_order(order_of(pieces, *rows, spare=spare))))


def test_a_list_as_it_was_printed_has_no_changes():
    assert list_changes(_counts([90, 90]), _counts([90, 90])) == ()


def test_more_fewer_new_and_dropped_items_are_told_apart():
    short, long = "1x4 yellow poplar, 8'-0\"", "1x4 yellow poplar, 12'-0\""
    assert list_changes(_counts([90, 90]), _counts([90])) == (Change(short, 2, 1),)
    assert list_changes(_counts([90]), _counts([140])) == (Change(long, 0, 1), Change(short, 1, 0))
    assert list_changes(_counts([90]), _counts([90], spare=1)) == (Change(short, 1, 2),)


def test_a_change_is_said_in_words():
    said = [Change("1x4", *counts).words for counts in ((0, 2), (1, 3), (3, 2), (2, 0))]
    assert said == ["new", "2 more", "1 fewer", "gone"]


def test_each_line_has_its_change_and_what_stands_on_no_line_comes_after():
    rows = sold("1x4", 3.5, 96, 1000), sold("1x4", 3.5, 144, 1600)
    buying = list_buying(plan_order(order_of([piece("A1", 90), piece("A2", 140)], *rows)))
    now = count_printed(buying)
    short, long = now
    changes = list_changes({long: 3, "oak": 2, short: now[short]}, now)
    shared, rest = share_changes(changes, buying.lines)
    assert shared == (None, Change(long, 3, 1))
    assert rest == (Change("oak", 2, 0),)


def test_a_record_comes_back_as_it_was_kept():
    counts = _counts([90, 140, 140])
    assert read_printed(write_printed(counts)) == counts


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("{", "not a printed list's record"),
        ('{"counts": {}}', 'no "printed_list" version'),
        ('{"printed_list": 2, "counts": {}}', "newer program"),
        ('{"printed_list": 1, "counts": {"1x4": -1}}', "1x4 -1: write a whole number"),
        ('{"printed_list": 1, "counts": {"1x4": true}}', "1x4 true"),
        ('{"printed_list": 1, "counts": []}', "write an object"),
        ('{"printed_list": 1, "colour": 1}', "colour: not known here"),
    ],
)
def test_what_is_no_record_is_refused_in_words(text: str, words: str):
    with pytest.raises(StockRefused, match=words):
        read_printed(text)
