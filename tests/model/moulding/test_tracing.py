"""Drawn outlines become sections of named elements; what is not drawn as it hangs is refused."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.errors import Refused
from model.moulding.elements import Shape
from model.moulding.library import SECTIONS
from model.moulding.notation import format_section, parse_section
from model.moulding.tracing import trace_section

NAMES = sorted(SECTIONS)
SQUARE = [(0, 0, 0), (1, 0, 0), (1, 2, 0), (0, 2, 0)]


def vertices_of(section, dx=0.0, dy=0.0):
    return [(s.start[0] + dx, s.start[1] + dy, s.bulge) for s in section.outline.strokes]


def turned(vertices):
    """The same outline the other way round: each bulge belongs to the stroke that leaves its vertex."""
    points = [(x, y) for x, y, _ in reversed(vertices)]
    bulges = [-bulge for _, _, bulge in reversed(vertices)]
    return [(x, y, b) for (x, y), b in zip(points, [*bulges[1:], bulges[0]], strict=True)]


def assert_same(traced, section):
    assert traced.outline.area == pytest.approx(section.outline.area, rel=1e-5)
    assert traced.outline.centroid == pytest.approx(section.outline.centroid, abs=1e-5)
    assert traced.outline.bounds == pytest.approx(section.outline.bounds, abs=1e-5)
    assert traced.spring == pytest.approx(section.spring, abs=1e-3)


@pytest.mark.parametrize("name", NAMES)
def test_a_shipped_section_is_traced_back_to_its_elements(name):
    section = SECTIONS[name].section
    traced = trace_section(vertices_of(section), section.name)
    assert_same(traced, section)
    same = {"torus": "bead"}
    assert [same.get(e.shape, e.shape) for e in traced.elements] == [
        same.get(e.shape, e.shape) for e in section.elements
    ]


@pytest.mark.parametrize("name", NAMES)
@settings(max_examples=15, deadline=None)
@given(
    dx=st.floats(-100, 100), dy=st.floats(-100, 100), begin=st.integers(0, 40), other_way=st.booleans(),
    size=st.floats(2, 6),
)  # fmt: skip
def test_where_it_lies_where_it_begins_and_which_way_round_makes_no_difference(
    name, dx, dy, begin, other_way, size
):
    section = SECTIONS[name].section.sized(size)
    vertices = vertices_of(section, dx, dy)
    begin %= len(vertices)
    vertices = vertices[begin:] + vertices[:begin]
    assert_same(trace_section(turned(vertices) if other_way else vertices, "drawn"), section)


@pytest.mark.parametrize("name", NAMES)
def test_what_is_traced_can_be_written_down(name):
    traced = trace_section(vertices_of(SECTIONS[name].section.sized(2.125), 3.7, -8.1), "drawn")
    assert parse_section(format_section(traced)) == traced


def test_arcs_without_a_name_keep_their_radius():
    section = parse_section("fillet 1/8 down; round 1 down, 1/2 back, 1 radius; fillet 1/8 down; foot 1/4")
    traced = trace_section(vertices_of(section), "drawn")
    assert [e.shape for e in traced.elements] == [Shape.FILLET, Shape.ROUND, Shape.FILLET]
    assert traced.elements[1].radius == pytest.approx(1)
    assert_same(traced, section)


def test_a_seat_and_a_back_drawn_in_pieces_are_one():
    vertices = [(0, 0, 0), (0.5, 0, 0), (1, 0, 0), (1, -1, 0), (0, -1, 0), (0, -0.5, 0)]
    traced = trace_section(vertices, "drawn")
    assert [(e.shape, e.down, e.back) for e in traced.elements] == [(Shape.FILLET, 1.0, 0.0)]
    assert traced.foot == 1.0


def test_points_drawn_twice_do_no_harm():
    assert trace_section([SQUARE[0], *SQUARE], "drawn").height == 2


@pytest.mark.parametrize(
    ("vertices", "wanted"),
    [
        ([(0, 0, 0), (1, 0, 0)], "a closed outline of 3 to"),
        ([(0, 0, 0), (2, 0, 0), (1, 2, 0)], "draw it as it hangs"),
        ([(0, 0, 1), (2, 0, 1)], "a closed outline of 3 to"),
        ([(0, 0, 0), (0.5, 0, 0), (0.5, -1, 0), (0, -1, 0), (0, -0.5, 0), (-0.2, -0.25, 0)], "as it hangs"),
        ([(0.5, 0, 0), (2, 0, 0), (2, -1, 0), (0, -2, 0), (0, -1, 0), (0.4, -0.5, 0)], "one straight line"),
        ([(x, y * 30, b) for x, y, b in SQUARE], "1/8 to 12 in. high"),
    ],
)
def test_what_cannot_be_a_section_is_refused(vertices, wanted):
    with pytest.raises(Refused) as caught:
        trace_section(vertices, "drawn")
    assert wanted in str(caught.value)
    assert str(caught.value).startswith("section drawing")


@pytest.mark.parametrize("spoilt", [float("nan"), float("inf"), -float("inf"), 1e308])
@pytest.mark.parametrize("place", range(3))
def test_an_outline_of_no_numbers_is_refused_by_name(place: int, spoilt: float):
    vertices = [(0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (1.0, -1.0, 0.0), (0.0, -1.0, 0.0)]
    vertices[1] = (*vertices[1][:place], spoilt, *vertices[1][place + 1 :])
    with pytest.raises(Refused, match=r'section drawing "hall": a point or a bend'):
        trace_section(vertices, "hall")
