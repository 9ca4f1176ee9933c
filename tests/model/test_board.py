"""One piece of wood: sizes, volume and place, also mitred, moved and mirrored."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.board import Board, End, Stock, StockKind, Worked, block

POPLAR = Stock(StockKind.BOARD, 0.75, "poplar")
MITRED = Board(
    "edge band",
    "shelf",
    POPLAR,
    "x",
    ((0, 5), (2, 5), (2, 5.75), (0, 5.75)),
    End(-20 + 5, 0, -1),
    End(20 - 5, 0, 1),
)
"""Runs along x; u is y, v is z. Long points on its outer face, z = 5.75."""


def test_square_piece_has_the_sizes_it_was_given():
    stile = block("stile", "column", POPLAR, "y", (10, 12), (0, 48), (3, 3.75))
    assert (stile.length, stile.width, stile.thickness) == (48, 2, 0.75)
    assert stile.volume == 48 * 2 * 0.75
    assert stile.bounds == ((10, 0, 3), (12, 48, 3.75))
    assert (stile.low.mitre, stile.high.mitre) == (0, 0)


@pytest.mark.parametrize("x", [0.0, 55.03433476953879, -69.91989238492036])
def test_of_two_sides_as_near_to_the_stock_the_lesser_is_the_thickness_wherever_a_piece_stands(x):
    """1/4 by 3/4 out of 1/2 in. stock: planed to 1/4."""
    half = Stock(StockKind.BOARD, 0.5, "poplar")
    packing = block("packing", "frieze", half, "y", (x, x + 0.75), (0, 48), (8.3125, 8.5625))
    assert (packing.width, packing.thickness) == (pytest.approx(0.75), 0.25)


def test_a_small_piece_far_out_fills_what_it_does_near_by():
    """A mitred moulding: 0.0977 sq in., whose middle, 0.1583 in. up, is 0.2 + 2 x 0.1583 in. long."""
    section = ((0.0, 0.0), (0.375, 0.0), (0.25, 0.3125), (0.0, 0.3125))
    ends = End(-0.1, -1.0), End(0.1, 1.0)
    near = Board("mould", "overmantel", POPLAR, "x", section, *ends)
    far = near.moved(0, 218.23585104419743, 4.720659885764983)
    assert far.volume == pytest.approx(near.volume, rel=1e-12)
    assert near.volume == pytest.approx(0.09765625 * (0.2 + 2 * 0.1583333), rel=1e-6)


def test_mitred_piece_is_measured_long_point_to_long_point():
    assert MITRED.length == 2 * (20 + 0.75)
    assert (MITRED.low.mitre, MITRED.high.mitre) == (45, 45)
    # A trapezoid 40 in. on its inner face and 41.5 in. on its outer, 2 in. high.
    assert MITRED.volume == pytest.approx((40 + 41.5) / 2 * 0.75 * 2)


def test_piece_sawn_to_shape_has_its_length_along_its_grain():
    face = ((0.0, 0.0), (4.0, 0.0), (3.5, 48.0), (0.0, 48.0))
    board = Board("return", "column", POPLAR, "z", face, End(0.0), End(0.75), grain="y")
    assert (board.length, board.width, board.thickness) == (48, 4, 0.75)
    assert board.volume == pytest.approx((4 + 3.5) / 2 * 48 * 0.75)


@pytest.mark.parametrize("axis", "xyz")
def test_every_axis_keeps_the_room_right_handed(axis):
    piece = block("p", "a", POPLAR, axis, (0, 1), (0, 2), (0, 3))
    assert piece.bounds == ((0, 0, 0), (1, 2, 3))
    assert piece.section_area > 0
    assert piece.volume == 6


@given(st.floats(-50, 50), st.floats(-50, 50), st.floats(-50, 50))
def test_moving_changes_the_place_and_nothing_else(dx, dy, dz):
    moved = MITRED.moved(dx, dy, dz)
    assert moved.volume == pytest.approx(MITRED.volume)
    for corner, before in zip(moved.vertices, MITRED.vertices, strict=True):
        assert corner == pytest.approx((before[0] + dx, before[1] + dy, before[2] + dz))


@pytest.mark.parametrize("axis", "xyz")
def test_mirrored_twin_lies_on_the_other_side_and_mirrors_back(axis):
    piece = Board(
        "p", "left", POPLAR, axis, ((1, 1), (3, 1), (3, 2)), End(0.5, 0.25, 0.5), End(9.0, -0.25, 0.0)
    )
    twin = piece.mirrored("right")
    assert twin.assembly == "right"
    assert twin.volume == pytest.approx(piece.volume)
    assert _rounded(twin) == sorted((-x, y, z) for x, y, z in _rounded(piece))
    assert _rounded(twin.mirrored("left")) == _rounded(piece)


def _rounded(board):
    return sorted(tuple(round(c, 6) + 0.0 for c in corner) for corner in board.vertices)


def test_curve_keeps_its_place_on_the_mirrored_section():
    piece = Board(
        "p", "a", POPLAR, "y", ((0, 0), (2, 0), (2, 1), (1, 2)), End(0), End(1), curved=frozenset({2})
    )
    twin = piece.mirrored("b")
    corner = piece.section[2]
    assert [twin.section[i] for i in twin.curved] == [(corner[0], -corner[1])]


def test_a_moulded_piece_faces_the_other_way_on_the_other_side():
    moulded = replace(MITRED, worked=Worked("ovolo", 38.0, out="+x", seat="-y"))
    assert moulded.mirrored("left").worked == Worked("ovolo", 38.0, out="-x", seat="-y")
    assert moulded.mirrored("left").mirrored("right").worked == moulded.worked


@pytest.mark.parametrize("mirror", [False, True])
@pytest.mark.parametrize("seat", ["+y", "-y"])
def test_a_sprung_piece_is_measured_square_to_its_back_and_along_it(mirror, seat):
    # A strip 0.5 by 2 in. leaning 45 degrees off the wall, along z, its face to the right.
    up = 1 if seat == "+y" else -1
    corners = [(0.0, 0.0), (0.5, -0.5), (2.5, 1.5), (2.0, 2.0)]
    section = tuple((x / 2**0.5, up * y / 2**0.5) for x, y in corners)
    worked = Worked("crown", 45.0, out="+x", seat=seat)
    strip = Board("crown", "shelf", POPLAR, "z", section[::up], End(0), End(9), worked=worked)
    strip = strip.mirrored("shelf") if mirror else strip
    strip = replace(strip, stock=replace(POPLAR, thickness=0.5))
    assert (strip.thickness, strip.width) == pytest.approx((0.5, 2.0))
