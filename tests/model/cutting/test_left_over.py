"""What boards leave, by hand; kerf an eighth of an inch, 8 units, unless said."""

from __future__ import annotations

import pytest

from model.cutting.left_over import LeftOver, lane_length, list_left_of_board, list_left_of_sheet
from model.cutting.mitre import saving
from model.cutting.task import Lane, Placed, SawnBoard, SawnSheet, Stock, Task, Wanted

INCH = 64


def _left(length: float, width: float, stock: Stock, keep: float = 0.0) -> tuple[LeftOver, ...]:
    wanted = Wanted("a", round(length * INCH), round(width * INCH))
    task = Task((wanted,), (stock,), 8, round(keep * INCH))
    board = SawnBoard(stock.key, (Lane(wanted.width, ("a",)),))
    return list_left_of_board(board, stock, task, {"a": wanted})


def _stock(length: float, width: float, ends: float = 0.0) -> Stock:
    return Stock("s", round(length * INCH), round(width * INCH), 1, None, round(ends * INCH))


@pytest.mark.parametrize(
    ("length", "left"), [(60.0, 35.875), (95.0, 0.875), (95.875, None), (95.9375, None), (96.0, None)]
)
def test_the_end_of_a_lane_is_left_less_the_blade_that_frees_it(length: float, left: float | None):
    found = _left(length, 3.5, _stock(96, 3.5))
    assert found == (() if left is None else (LeftOver(round(left * INCH), 224),))


def test_a_strip_beside_the_lanes_is_left_whole():
    assert _left(96, 3.5, _stock(96, 5.5)) == (LeftOver(96 * INCH, round((5.5 - 3.5 - 0.125) * INCH)),)


def test_trimmed_ends_are_not_left():
    assert _left(60, 3.5, _stock(96, 3.5, ends=1)) == (LeftOver(round(33.875 * INCH), 224),)


def test_what_is_short_or_narrow_is_not_kept():
    assert _left(60, 3.5, _stock(96, 3.5), keep=36) == ()
    assert _left(96, 3.5, _stock(96, 4.5)) == ()


def test_two_mitres_that_share_a_cut_take_less():
    wanted = {key: Wanted(key, 20 * INCH, 2 * INCH, 1, 128, 128) for key in "ab"}
    apart = lane_length(Lane(128, ("a", "b")), wanted, 8)
    shared = lane_length(Lane(128, ("a", "b"), (False, True)), wanted, 8)
    assert apart == 40 * INCH + 8
    assert apart - shared == saving(128, 128, 8) > 100


def test_a_sheets_left_parts_are_those_of_its_plan():
    left = (Placed("", 0, 0, 20 * INCH, 10 * INCH), Placed("", 0, 0, 5 * INCH, 5 * INCH))
    sheet = SawnSheet("s", (), (), left)
    assert list_left_of_sheet(sheet, Task((), (), 8, 12 * INCH)) == (LeftOver(20 * INCH, 10 * INCH),)
