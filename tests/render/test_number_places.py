"""Numbers stand beside their marks, clear of lines, marks and each other."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, box

from app.demo import list_demos, read_demo
from model.surround import plan_surround
from render.drawing import Lines, Polyline, Text
from render.extent import text_corners
from render.number_places import Paper, join_number, list_strokes, place_numbers
from render.views import ViewOptions, draw_view

NEAR = st.integers(-40, 40).map(lambda i: i / 4)


def test_in_the_open_a_number_stands_close_to_the_right():
    assert place_numbers([(0, 0)], [(2.0, 1.0)], 0.5, Paper(())) == (pytest.approx((0.5 + 1.0, 0)),)


def test_a_line_through_that_place_moves_it_on():
    upright = [(0.9, -9.0, 0.9, 9.0)]
    ((x, _),) = place_numbers([(0, 0)], [(1.0, 1.0)], 0.5, Paper(upright))
    assert x + 0.5 <= 0.9 or x - 0.5 >= 0.9


@given(
    st.lists(st.tuples(NEAR, NEAR), min_size=1, max_size=5, unique=True),
    st.lists(st.tuples(NEAR, NEAR, NEAR, NEAR), max_size=4),
)
def test_what_is_found_is_clear_of_everything(spots, strokes):
    strokes = [s for s in strokes if s[:2] != s[2:]]
    places = place_numbers(spots, [(1.0, 1.0)] * len(spots), 0.25, Paper(strokes), furthest=60)
    boxes = [box(x - 0.5, y - 0.5, x + 0.5, y + 0.5) for x, y in places]
    marks = [box(x - 0.25, y - 0.25, x + 0.25, y + 0.25) for x, y in spots]
    for i, mine in enumerate(boxes):
        others = [*boxes[:i], *marks]
        assert all(mine.intersection(other).area < 1e-9 for other in others)
        assert all(mine.intersection(LineString([s[:2], s[2:]])).length < 1e-9 for s in strokes)


@pytest.mark.parametrize("name", list_demos())
def test_no_line_strikes_an_anchors_number(name):
    drawing = draw_view(plan_surround(read_demo(name)), "front", ViewOptions(ratio=16.0, anchors=True))
    strokes = [
        LineString([s[:2], s[2:]])
        for mark in drawing.marks
        if isinstance(mark, Lines | Polyline)
        for s in list_strokes([mark])
    ]
    for text in drawing.marks:
        if isinstance(text, Text) and text.stands_for == "anchor":
            xs, ys = zip(*text_corners(text), strict=True)
            area = box(min(xs), min(ys), max(xs), max(ys))
            assert not [line for line in strokes if line.intersection(area).length > 1e-6], text.text


def test_a_join_runs_from_the_marks_edge_to_the_numbers_box():
    assert join_number((0, 0), (10, 0), (4, 2), 1) == pytest.approx((1, 0, 8, 0))
