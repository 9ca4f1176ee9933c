"""The part of a drawing inside a box."""

from math import hypot

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, Polygon, box

from render.clipping import clip_drawing, clip_ring, clip_segment
from render.drawing import Drawing, Fill, Hatch, Lines, Pen, Polyline, Region, Text

BOX = (0.0, 0.0, 4.0, 3.0)
PLACES = st.integers(-8, 12).map(lambda n: n / 2)
ELL = ((-2.0, -2.0), (6.0, -2.0), (6.0, 1.0), (2.0, 1.0), (2.0, 6.0), (-2.0, 6.0))


@given(PLACES, PLACES, PLACES, PLACES)
def test_a_stroke_keeps_what_lies_in_the_box(x1, y1, x2, y2):
    assume((x1, y1) != (x2, y2))
    within = LineString([(x1, y1), (x2, y2)]).intersection(box(*BOX)).length
    kept = clip_segment((x1, y1, x2, y2), BOX)
    length = hypot(kept[2] - kept[0], kept[3] - kept[1]) if kept else 0.0
    assert length == pytest.approx(within, abs=1e-9)


@given(st.integers(-6, 6), st.integers(-6, 6))
def test_an_area_keeps_what_lies_in_the_box(dx, dy):
    ring = tuple((x + dx, y + dy) for x, y in ELL)
    within = Polygon(ring).intersection(box(*BOX)).area
    kept = clip_ring(ring, BOX)
    area = (
        abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(kept, kept[1:] + kept[:1], strict=True))) / 2
    )
    assert area == pytest.approx(within, abs=1e-9)


def test_an_area_outside_is_nothing():
    assert clip_ring(((5.0, 5.0), (6.0, 5.0), (6.0, 6.0)), BOX) == ()


def test_a_closed_outline_is_cut_into_strokes():
    outline = Polyline(
        Pen.CUT, ((1.0, 1.0), (9.0, 1.0), (9.0, 2.0), (1.0, 2.0)), closed=True, stands_for="C1"
    )
    (kept,) = clip_drawing(Drawing((outline,), 4), BOX).marks
    assert kept == Lines(Pen.CUT, ((1.0, 1.0, 4.0, 1.0), (4.0, 2.0, 1.0, 2.0), (1.0, 2.0, 1.0, 1.0)), "C1")


def test_areas_and_hatches_keep_their_look_and_what_they_stand_for():
    ring = ((1.0, 1.0), (9.0, 1.0), (9.0, 2.0), (1.0, 2.0))
    marks = (Region(Fill.WOOD, (ring,), "C1"), Hatch(Pen.HATCH, (ring,), 45, 0.2, "C1"))
    kept = clip_drawing(Drawing(marks, 4), BOX)
    assert kept.ratio == 4
    assert (kept.marks[0].fill, kept.marks[0].stands_for) == (Fill.WOOD, "C1")
    assert (kept.marks[1].angle, kept.marks[1].spacing) == (45, 0.2)
    assert max(x for x, _ in kept.marks[0].rings[0]) == 4


def test_writing_and_what_lies_outside_are_left_out():
    marks = (
        Text('8"', (1, 1), 0.1),
        Lines(Pen.EDGE, ((5, 5, 6, 6),)),
        Region(Fill.WOOD, (((5, 5), (6, 5), (6, 6)),)),
    )
    assert clip_drawing(Drawing(marks), BOX).marks == ()
