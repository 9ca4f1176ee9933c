"""What dimensions and leaders consist of, on paper."""

from math import hypot

import pytest

from render.dimension_strokes import (
    EXTENSION_GAP,
    EXTENSION_OVERRUN,
    TICK_LENGTH,
    dimension_strokes,
    dimension_text,
)
from render.drawing import Anchor, Dimension

RATIO = 12.0
LEVEL = Dimension((-18, 0), (18, 0), False, -6, "3'-0\"", (0, -4.8), 1.5)
PLUMB = Dimension((18, 0), (18, 30), True, 24, "2'-6\"", (22.8, 15), 1.5)


def test_dimension_line_runs_from_point_to_point_at_its_height():
    assert (-18, -6, 18, -6) in dimension_strokes(LEVEL, RATIO)


def test_a_plumb_dimension_line_runs_upright():
    assert (24, 0, 24, 30) in dimension_strokes(PLUMB, RATIO)


def test_extension_lines_leave_a_gap_and_run_past_the_dimension_line():
    gap, over = EXTENSION_GAP * RATIO, EXTENSION_OVERRUN * RATIO
    strokes = dimension_strokes(LEVEL, RATIO)
    assert (-18, -gap, -18, -6 - over) in strokes
    assert (18, -gap, 18, -6 - over) in strokes


def test_extension_lines_reach_upwards_when_the_dimension_line_is_above():
    above = Dimension((-18, 30), (18, 30), False, 40, "3'-0\"", (0, 41), 1.5)
    assert (18, 30.75, 18, 41.5) in dimension_strokes(above, RATIO)


def test_no_extension_line_is_drawn_inside_its_own_gap():
    tight = Dimension((-18, 0), (18, 0), False, 0.5, "3'-0\"", (0, 2), 1.5)
    assert len(dimension_strokes(tight, RATIO)) == 3


@pytest.mark.parametrize("dimension", [LEVEL, PLUMB])
def test_ends_are_strokes_at_45_degrees_an_eighth_long_on_paper(dimension):
    slanted = [s for s in dimension_strokes(dimension, RATIO) if s[0] != s[2] and s[1] != s[3]]
    assert len(slanted) == 2
    for x1, y1, x2, y2 in slanted:
        assert abs(x2 - x1) == pytest.approx(abs(y2 - y1))
        assert hypot(x2 - x1, y2 - y1) / RATIO == pytest.approx(TICK_LENGTH)


def test_a_text_between_its_ends_needs_no_leader():
    assert len(dimension_strokes(LEVEL, RATIO)) == 5


def test_a_text_beside_its_span_is_joined_to_the_middle_of_the_span():
    aside = Dimension((0, 0), (2, 0), False, -6, '2"', (8, -4.8), 1.5)
    leader = dimension_strokes(aside, RATIO)[-1]
    assert leader[:2] == (1, -6)
    assert leader[2] < 8
    assert leader[3] <= -4.8


def test_a_lifted_text_is_joined_to_its_line_and_not_crossed():
    lifted = Dimension((0, 0), (2, 0), False, -6, '2"', (1, -9), 1.5, lifted=True)
    leader = dimension_strokes(lifted, RATIO)[-1]
    assert leader[:2] == (1, -6)
    assert leader[2] == 1
    assert leader[3] > -9 + 0.75


def test_capitals_of_a_level_text_are_centred_on_its_place():
    text = dimension_text(LEVEL)
    assert (text.at, text.rotation, text.anchor) == ((0, -4.8 - 0.75), 0.0, Anchor.MIDDLE)


def test_a_plumb_text_reads_from_the_right_centred_on_its_place():
    text = dimension_text(PLUMB)
    assert (text.at, text.rotation, text.anchor) == ((22.8 + 0.75, 15), 90.0, Anchor.MIDDLE)


def test_order_of_the_measured_points_does_not_matter():
    turned = Dimension(LEVEL.second, LEVEL.first, False, -6, LEVEL.text, LEVEL.text_at, 1.5)
    assert set(dimension_strokes(turned, RATIO)) == set(dimension_strokes(LEVEL, RATIO))
