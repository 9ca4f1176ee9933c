"""Ends of cutting planes: beside the view, pointing the way the section looks."""

import pytest

from render.cut_marks import START, STROKE, draw_cut_end
from render.dimension_strings import FIRST_LINE
from render.drawing import Polyline, Text
from render.number_places import Paper


def marks(level, out, lines=()):
    return draw_cut_end(10.0, 0.0, out, level, "A", 8.0, Paper(lines))


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


def test_the_letter_stands_clear_of_lines_and_words():
    line = (-5.0, 10.5, 5.0, 10.5)
    free, moved = (next(m for m in marks(True, 1.0, lines) if isinstance(m, Text)) for lines in ((), (line,)))
    assert free.at[1] < line[1] < free.at[1] + free.height
    assert moved.at[1] > line[1] or moved.at[1] + moved.height < line[1]


def test_two_letters_never_stand_on_each_other():
    paper = Paper()
    first, second = (
        next(m for m in draw_cut_end(10.0, 0.0, 1.0, True, "A", 8.0, paper) if isinstance(m, Text))
        for _ in range(2)
    )
    apart = abs(first.at[0] - second.at[0]) > 0.5, abs(first.at[1] - second.at[1]) > 0.8
    assert any(apart)
