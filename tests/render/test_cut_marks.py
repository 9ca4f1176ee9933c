"""Ends of cutting planes: beside the view, pointing the way the section looks."""

import pytest

from render.cut_marks import START, STROKE, draw_cut_end
from render.dimension_strings import FIRST_LINE
from render.drawing import Polyline, Text


def marks(level, out, taken=()):
    return draw_cut_end(10.0, 0.0, out, level, "A", 8.0, taken)


@pytest.mark.parametrize("out", [-1.0, 1.0])
def test_the_stroke_lies_outside_the_view_and_short_of_the_first_dimension_line(out):
    stroke, *_ = marks(True, out)
    assert isinstance(stroke, Polyline)
    xs = sorted(x * out for x, _ in stroke.points)
    assert xs == pytest.approx([START * 8, STROKE * 8])
    assert xs[1] < FIRST_LINE * 8


def test_a_level_plane_is_looked_down_on_and_an_upright_one_to_the_left():
    _, down, _ = marks(True, 1.0)
    assert min(y for _, y in down.points) < 10.0 == max(y for _, y in down.points)
    _, left, _ = marks(False, 1.0)
    assert min(x for x, _ in left.points) < 10.0 == max(x for x, _ in left.points)


def test_the_letter_moves_off_a_line_that_runs_through_it():
    free, taken = (next(m for m in marks(True, 1.0, t) if isinstance(m, Text)) for t in ((), (10.5,)))
    assert free.at[1] > 10.0 > taken.at[1]
