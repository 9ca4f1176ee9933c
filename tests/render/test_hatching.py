"""Hatch strokes: inside, out of holes, the right distance apart."""

from math import cos, hypot, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon

from render.drawing import Hatch, Pen
from render.hatching import MOST_LINES, hatch_segments

SQUARE = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
HOLE = ((3.0, 3.0), (7.0, 3.0), (7.0, 7.0), (3.0, 7.0))
ELL = ((0.0, 0.0), (10.0, 0.0), (10.0, 4.0), (4.0, 4.0), (4.0, 10.0), (0.0, 10.0))


def length_of(segments):
    return sum(hypot(x2 - x1, y2 - y1) for x1, y1, x2, y2 in segments)


def test_level_hatch_of_a_square_is_one_stroke_for_each_spacing():
    strokes = hatch_segments(Hatch(Pen.HATCH, (SQUARE,), 0, 1))
    assert [(y1, x1, x2) for x1, y1, x2, _ in strokes] == [(n + 0.5, 0, 10) for n in range(10)]


def test_strokes_stop_at_a_hole():
    strokes = hatch_segments(Hatch(Pen.HATCH, (SQUARE, HOLE), 0, 1))
    assert [s for s in strokes if s[1] == 4.5] == [(0, 4.5, 3, 4.5), (7, 4.5, 10, 4.5)]


@given(
    st.sampled_from([(SQUARE,), (SQUARE, HOLE), (ELL,), (ELL[::-1],)]),
    st.floats(-180, 180),
    st.floats(0.05, 3),
)
def test_strokes_lie_within_the_area_and_fill_it_evenly(rings, angle, spacing):
    area = Polygon(rings[0], rings[1:])
    strokes = hatch_segments(Hatch(Pen.HATCH, rings, angle, spacing))
    for x1, y1, x2, y2 in strokes:
        assert area.buffer(1e-6).contains(LineString([(x1, y1), (x2, y2)]))
    # Strokes a spacing apart stand for a band of that width each: their length times it is the area, but
    # for what is lost or gained at the two ends of the family.
    assert abs(length_of(strokes) * spacing - area.area) <= 15 * spacing


@given(st.floats(-180, 180))
def test_strokes_run_at_the_angle_asked_for(angle):
    along = cos(radians(angle)), sin(radians(angle))
    for x1, y1, x2, y2 in hatch_segments(Hatch(Pen.HATCH, (SQUARE,), angle, 0.7)):
        across = (x2 - x1) * along[1] - (y2 - y1) * along[0]
        assert across == pytest.approx(0, abs=1e-9)


def test_neighbouring_areas_share_one_family_of_lines():
    beside = tuple((x + 10, y) for x, y in SQUARE)
    left = hatch_segments(Hatch(Pen.HATCH, (SQUARE,), 0, 0.3))
    right = hatch_segments(Hatch(Pen.HATCH, (beside,), 0, 0.3))
    assert [s[1] for s in left] == pytest.approx([s[1] for s in right])


def test_an_absurdly_fine_hatch_is_widened():
    assert len(hatch_segments(Hatch(Pen.HATCH, (SQUARE,), 0, 1e-7))) <= MOST_LINES


def test_an_area_without_points_has_no_strokes():
    assert hatch_segments(Hatch(Pen.HATCH, ((),), 45, 1)) == ()
