"""Outlines of lines and arcs: area, middle and reach exact, and flats that keep to the arcs."""

from math import hypot, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point, Polygon

from model.moulding.library import SECTIONS
from model.moulding.outline import Arc, Line, Outline, arc_bulged, arc_round

QUARTER = Outline((Line((0, 0), (0, 1)), arc_round((0, 1), (1, 0), (0, 0), left=False), Line((1, 0), (0, 0))))
NAMES = sorted(SECTIONS)


def test_a_quarter_circles_area_and_middle_are_the_textbooks():
    # Area pi r^2 / 4; middle at 4 r / 3 pi from either straight side (any table of plane figures).
    assert QUARTER.area == pytest.approx(pi / 4, rel=1e-14)
    assert QUARTER.centroid == pytest.approx((4 / (3 * pi), 4 / (3 * pi)), rel=1e-14)


def test_a_rectangle_with_a_half_round_adds_up():
    outline = Outline(
        (
            Line((0, 0), (2, 0)),
            arc_round((2, 0), (2, -1), (2, -0.5), left=False),
            Line((2, -1), (0, -1)),
            Line((0, -1), (0, 0)),
        )
    )
    assert outline.area == pytest.approx(2 + pi / 8, rel=1e-14)
    assert outline.bounds == pytest.approx((0, -1, 2.5, 0))
    assert outline.centroid[1] == pytest.approx(-0.5)


@pytest.mark.parametrize("name", NAMES)
def test_area_and_middle_by_arcs_are_those_of_very_fine_flats(name):
    outline = SECTIONS[name].section.outline
    points, _ = outline.facet(1e-7)
    fine = Polygon(points)
    assert outline.area == pytest.approx(fine.area, rel=2e-6)
    assert outline.centroid == pytest.approx((fine.centroid.x, fine.centroid.y), abs=1e-6)
    assert outline.bounds == pytest.approx(fine.bounds, abs=1e-12)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("sagitta", [1 / 16, 1 / 128, 1 / 1000])
def test_flats_lie_no_further_off_the_arcs_than_stated_and_reach_as_far(name, sagitta):
    outline = SECTIONS[name].section.outline
    points, _ = outline.facet(sagitta)
    polygon = Polygon(points)
    assert polygon.is_valid
    assert not polygon.exterior.is_ccw
    assert polygon.bounds == pytest.approx(outline.bounds, abs=1e-12)
    fine, _ = outline.facet(1e-6)
    assert max(polygon.exterior.distance(Point(p)) for p in fine) <= sagitta + 1e-6


def test_flats_are_finer_where_more_is_asked():
    counts = [len(QUARTER.facet(sagitta)[0]) for sagitta in (1 / 16, 1 / 128, 1 / 1024)]
    assert counts == sorted(counts)
    assert counts[0] < counts[-1]


def test_corners_within_an_arc_show_no_edge_and_sharp_ones_do():
    points, smooth = QUARTER.facet(1 / 64)
    sharp = [point for i, point in enumerate(points) if i not in smooth]
    assert sharp == [(0, 0), (0, 1), (1, 0)]


def test_strokes_that_run_on_show_no_edge_where_they_meet():
    half_round = Outline(
        (
            Line((0, 0), (2, 0)),
            arc_round((2, 0), (2, -1), (2, -0.5), left=False),
            Line((2, -1), (0, -1)),
            Line((0, -1), (0, 0)),
        )
    )
    points, smooth = half_round.facet(1 / 64)
    assert [point for i, point in enumerate(points) if i not in smooth] == [(0, 0), (0, -1)]


@given(st.floats(-3, 3).filter(lambda b: abs(b) > 1e-3), st.floats(-5, 5), st.floats(0.1, 5))
def test_an_arc_kept_as_a_bulge_comes_back(bulge, x, y):
    arc = arc_bulged((0.0, 0.0), (x, y), bulge)
    assert arc.bulge == pytest.approx(bulge, rel=1e-6)
    assert hypot(arc.centre[0] - x, arc.centre[1] - y) == pytest.approx(arc.radius, rel=1e-9)


@given(st.floats(-pi, pi))
def test_reach_in_any_direction_is_the_furthest_fine_point(angle):
    outline = SECTIONS["attic_base"].section.outline
    points, _ = outline.facet(1e-7)
    from math import cos, sin

    furthest = max(x * cos(angle) + y * sin(angle) for x, y in points)
    assert outline.reach(angle) == pytest.approx(furthest, abs=1e-6)


def test_an_arc_knows_its_radius_and_where_it_is_furthest_out():
    arc = Arc((0, 1), (0, -1), (0, 0), -pi)
    assert arc.radius == 1
    assert [round(angle, 12) for angle in arc.quadrants()] == [0.0]
