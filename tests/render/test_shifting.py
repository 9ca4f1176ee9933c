"""Shifting moves every kind of mark by the same amount and changes nothing else."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from render.drawing import Dimension, Drawing, Fill, Hatch, Lines, Mark, Pen, Polyline, Region, Text
from render.extent import drawing_extent
from render.shifting import shift_mark

MARKS: tuple[Mark, ...] = (
    Lines(Pen.EDGE, ((0, 0, 3, 4),)),
    Polyline(Pen.CUT, ((0, 0), (1, 2), (3, 1)), closed=True),
    Region(Fill.WOOD, (((0, 0), (1, 0), (1, 1)),), "C1"),
    Hatch(Pen.HATCH, (((0, 0), (1, 0), (1, 1)),), 45, 0.5),
    Text("a", (1, 1), 0.5),
    Dimension((0, 0), (5, 0), False, -2, '5"', (2.5, -1.5), 0.5),
    Dimension((0, 0), (0, 5), True, -2, '5"', (-2.5, 2.5), 0.5),
)
shifts = st.tuples(st.integers(-500, 500), st.integers(-500, 500))


@pytest.mark.parametrize("mark", MARKS, ids=lambda mark: type(mark).__name__)
@given(by=shifts)
def test_the_room_a_mark_takes_moves_with_it(mark: Mark, by: tuple[int, int]):
    x0, y0, x1, y1 = drawing_extent(Drawing((mark,), 12))
    moved = drawing_extent(Drawing((shift_mark(mark, by),), 12))
    assert moved == pytest.approx((x0 + by[0], y0 + by[1], x1 + by[0], y1 + by[1]))


@given(by=shifts)
def test_there_and_back_is_the_same_mark(by: tuple[int, int]):
    for mark in MARKS:
        assert shift_mark(shift_mark(mark, by), (-by[0], -by[1])) == mark
