"""The fluted face: hollows of the size asked for, cut out of one board."""

from math import pi

import pytest
from hypothesis import given
from hypothesis.strategies import floats, integers

from model.board import Board, End, Stock, StockKind
from model.build.flutes import FACETS, Flutes

PINE = Stock(StockKind.BOARD, 0.75, "pine")


def board(flutes: Flutes, width: float) -> Board:
    section, curved = flutes.section((0.0, width), (0.0, 0.75))
    return Board("column fluted face", "right column", PINE, "y", section, End(0), End(10), curved)


def test_hollows_take_their_arcs_out_of_the_board():
    # Half-round flutes 1/2 in. wide: each takes pi/32 sq in., and the facets inside the arc a little less.
    piece = board(Flutes(4, 0.5, 0.25, 0.375), 6.0)
    taken = 6.0 * 0.75 - piece.section_area
    assert taken == pytest.approx(4 * pi / 32, rel=0.03)
    assert taken < 4 * pi / 32


def test_flutes_stand_in_the_middle_of_the_face():
    lefts = Flutes(3, 1.0, 0.25, 0.5).lefts(10.0, 18.0)
    assert lefts == [12.0, 13.5, 15.0]


@given(integers(1, 12), floats(0.25, 2), floats(0.05, 1), floats(0.125, 2))
def test_no_facet_corner_lies_deeper_than_asked_or_off_the_arc(count, width, share, between):
    depth = share * min(width / 2, 0.5)
    flutes = Flutes(count, width, depth, between)
    section, curved = flutes.section((0.0, flutes.across + 1), (0.0, 0.75))
    assert len(curved) == count * (FACETS - 1)
    assert min(z for z, _ in section[1:-1]) == pytest.approx(0.75 - depth)
    radius = (width * width / 4 + depth * depth) / (2 * depth)
    for i in curved:
        z, x = section[i]
        nearest = min(abs(x - left - width / 2) for left in flutes.lefts(0.0, flutes.across + 1))
        off = (nearest**2 + (z - (0.75 - depth + radius)) ** 2) ** 0.5
        assert off == pytest.approx(radius)
