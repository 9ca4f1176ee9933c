"""Sections as wholes: sizes, scaling, and backs that are sprung."""

from math import cos, radians, sin, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon
from shapely.affinity import rotate

from model.moulding.elements import bead, cavetto, fillet, ovolo
from model.moulding.library import SECTIONS
from model.moulding.section import Section, back_contacts, thinnest

NAMES = sorted(SECTIONS)
SPRUNG = [name for name in NAMES if SECTIONS[name].section.is_sprung]
COVE = Section("cove", (fillet(0.25, 0.25), cavetto(1.5, 1.5), fillet(0.25)), foot=0.25)


def test_heights_and_projections_add_up():
    assert (COVE.height, COVE.seat, COVE.projection) == (2.0, 2.0, 2.0)
    assert COVE.outline.bounds == (0.0, -2.0, 2.0, 0.0)


def test_a_bead_stands_out_past_its_seat():
    section = Section("bead", (fillet(0.25), bead(0.5), fillet(0.25)), foot=0.25)
    assert section.seat == 0.25
    assert section.projection == 0.5


@pytest.mark.parametrize("name", NAMES)
@given(factor=st.floats(0.2, 5))
def test_a_scaled_section_is_similar(name, factor):
    section = SECTIONS[name].section
    scaled = section.scaled(factor)
    assert scaled.outline.area == pytest.approx(section.outline.area * factor**2, rel=1e-9)
    assert scaled.projection == pytest.approx(section.projection * factor, rel=1e-9)
    assert scaled.spring == section.spring


@pytest.mark.parametrize("name", NAMES)
def test_a_section_is_made_as_high_as_asked(name):
    assert SECTIONS[name].section.sized(1.375).height == pytest.approx(1.375, rel=1e-12)


@pytest.mark.parametrize("name", NAMES)
def test_the_polygon_starts_at_the_seat_and_lies_below_it_clear_of_the_wall(name):
    section = SECTIONS[name].section
    points, smooth = section.polygon()
    assert all(x >= -1e-12 and -section.height - 1e-9 <= y <= 1e-12 for x, y in points)
    assert smooth <= set(range(len(points)))
    assert Polygon(points).is_valid


@pytest.mark.parametrize("name", SPRUNG)
def test_a_sprung_back_leans_off_the_wall_by_its_spring_angle(name):
    section = SECTIONS[name].section
    level, plumb = back_contacts(section)
    assert level / plumb == pytest.approx(tan(radians(section.spring)))
    assert 0 < level < section.seat
    assert 0 < plumb < section.height


@pytest.mark.parametrize("name", SPRUNG)
def test_the_strip_a_sprung_moulding_is_worked_from_is_as_thick_as_said(name):
    section = SECTIONS[name].section
    thickness, width = section.stock_size
    assert thickness == pytest.approx(section.thickness, abs=0.2)
    points, _ = section.polygon(1e-4)
    # Turned until its back stands plumb its outline is the strip's.
    x0, y0, x1, y1 = rotate(Polygon(points), section.spring, origin=(0, 0)).bounds
    assert (x1 - x0, y1 - y0) == pytest.approx((thickness, width), abs=2e-4)


@pytest.mark.parametrize("name", SPRUNG)
def test_wood_is_left_between_a_sprung_back_and_its_face(name):
    section = SECTIONS[name].section
    left = thinnest(section)
    assert 0 < left < section.thickness
    turn = radians(section.spring)
    level, _ = back_contacts(section)
    points, _ = section.polygon(1e-4)
    face = [p for p in points if p not in ((0.0, 0.0), (level, 0.0)) and p[0] > 1e-9 and p[1] < 0]
    nearest = min(x * cos(turn) - y * sin(turn) for x, y in face) - level * cos(turn)
    assert left == pytest.approx(nearest, abs=2e-3)


def test_a_flat_backs_strip_is_its_projection_by_its_height():
    assert COVE.stock_size == pytest.approx((2.0, 2.0))


def test_a_flat_back_has_no_thinnest_place():
    with pytest.raises(ValueError, match="flat back"):
        thinnest(Section("flat", (ovolo(1, 1),), foot=0.1))
