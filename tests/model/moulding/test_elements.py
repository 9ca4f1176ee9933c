"""Elements as Nicholson draws the regular ones, and as they are kept within their sizes when flattened."""

from itertools import pairwise
from math import atan2, hypot, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.moulding.elements import (
    CURVED,
    Element,
    Shape,
    bead,
    bevel,
    cavetto,
    cyma_recta,
    cyma_reversa,
    draw_element,
    fillet,
    ovolo,
    scotia,
    torus,
)
from model.moulding.outline import Arc, Line

START = (3.0, 0.0)
SIZES = st.floats(0.05, 4)


def arcs(element):
    strokes = draw_element(element, START)
    assert all(isinstance(stroke, Arc) for stroke in strokes)
    return strokes


def test_a_fillet_that_leads_back_steps_back_below_its_face():
    assert [s.end for s in draw_element(fillet(1, 0.5), START)] == [(3.0, -1.0), (2.5, -1.0)]


def test_a_fillet_that_leads_out_steps_out_above_its_face():
    assert [s.end for s in draw_element(fillet(1, -0.5), START)] == [(3.5, 0.0), (3.5, -1.0)]


@pytest.mark.parametrize("element", [bead(0.5), torus(2.0)])
def test_bead_and_torus_are_half_circles_that_stand_out_by_half_their_height(element):
    (arc,) = arcs(element)
    assert arc.radius == element.down / 2
    assert arc.turn == pytest.approx(-pi)
    assert arc.point_at(0.0) == pytest.approx((3 + element.down / 2, -element.down / 2))
    assert arc.end == (3.0, -element.down)


def test_an_ovolo_as_high_as_deep_is_a_quarter_circle_bulging_out():
    (arc,) = arcs(ovolo(2, 2))
    assert (arc.centre, arc.radius) == ((1.0, 0.0), 2.0)
    assert arc.turn == pytest.approx(-pi / 2)


def test_a_cavetto_as_high_as_deep_is_a_quarter_circle_hollowed_out():
    (arc,) = arcs(cavetto(2, 2))
    assert (arc.centre, arc.radius) == ((3.0, -2.0), 2.0)
    assert arc.turn == pytest.approx(pi / 2)


def test_a_cyma_recta_is_two_quarters_hollow_where_it_projects():
    hollow, round_ = arcs(cyma_recta(2, 2))
    assert hollow.end == round_.start == (2.0, -1.0)
    assert (hollow.turn, round_.turn) == pytest.approx((pi / 2, -pi / 2))
    assert (hollow.radius, round_.radius) == (1.0, 1.0)


def test_a_cyma_reversa_is_two_quarters_round_where_it_projects():
    round_, hollow = arcs(cyma_reversa(2, 2))
    assert (round_.turn, hollow.turn) == pytest.approx((-pi / 2, pi / 2))


def test_a_cyma_that_comes_out_is_still_named_by_its_projecting_half():
    round_, hollow = arcs(cyma_recta(2, -2))
    assert (round_.turn, hollow.turn) == pytest.approx((-pi / 2, pi / 2))


def test_a_scotia_has_two_quarters_whose_upper_is_a_third_of_the_height():
    # Nicholson: the height in three, one part the radius of the upper quarter, two of the lower.
    upper, lower = arcs(scotia(3, -1))
    assert (upper.radius, lower.radius) == (1.0, 2.0)
    assert (upper.turn, lower.turn) == pytest.approx((pi / 2, pi / 2))
    assert upper.end == (2.0, -1.0)
    assert lower.end == (4.0, -3.0)


def test_a_bevel_is_one_straight_stroke():
    assert draw_element(bevel(1, 2), START) == (Line(START, (1.0, -1.0)),)


@given(st.sampled_from(sorted(CURVED)), SIZES, SIZES, st.booleans())
def test_curves_join_smoothly_and_keep_within_height_and_projection(shape, down, back, comes_out):
    strokes = arcs(Element(shape, down, -back if comes_out else back))
    ends = [START[0], START[0] + (back if comes_out else -back)]
    for stroke in strokes:
        for angle in stroke.quadrants():
            x, y = stroke.point_at(angle)
            assert min(ends) - 1e-9 <= x <= max(ends) + 1e-9
            assert -down - 1e-9 <= y <= 1e-9
    for before, after in pairwise(strokes):
        bend = after.headings()[0] - before.headings()[1]
        assert abs((bend + pi) % (2 * pi) - pi) < 1e-6


@given(SIZES, SIZES, st.booleans())
def test_a_cavetto_is_the_ovolo_turned_half_round(down, back, comes_out):
    way = -back if comes_out else back
    (round_,), (hollow,) = arcs(ovolo(down, way)), arcs(cavetto(down, way))
    assert hollow.radius == pytest.approx(round_.radius)
    assert hollow.turn == pytest.approx(-round_.turn)
    middle = (START[0] - way / 2, -down / 2)
    turned = (2 * middle[0] - round_.centre[0], 2 * middle[1] - round_.centre[1])
    assert hollow.centre == pytest.approx(turned, abs=1e-9)


@given(st.floats(0.1, 3), st.floats(-3, 3), st.floats(0.01, 4), st.booleans(), st.booleans())
def test_an_arc_by_its_radius_has_that_radius_and_bends_as_said(down, back, more, hollow, long):
    radius = hypot(down, back) / 2 + more
    element = Element(Shape.HOLLOW if hollow else Shape.ROUND, down, back, radius, long)
    (arc,) = arcs(element)
    assert arc.radius == pytest.approx(radius, rel=1e-6)
    assert (arc.turn > 0) == hollow
    assert (abs(arc.turn) > pi) == long
    assert atan2(arc.end[1] - arc.start[1], arc.end[0] - arc.start[0]) == pytest.approx(atan2(-down, -back))
