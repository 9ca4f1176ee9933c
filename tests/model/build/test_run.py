"""Sections run round corners: lengths at long points, mitres, and pieces that meet without a gap."""

from itertools import pairwise

import pytest

from model.board import Stock, StockKind
from model.build.run import run_section

STRIP = Stock(StockKind.BOARD, 1.0, "poplar")
SQUARE = [(0.0, 0.0), (1.0, 0.0), (1.0, 2.0), (0.0, 2.0)]


def run(path):
    return run_section(["leg"] * (len(path) - 1), "test", STRIP, path, SQUARE)


def test_band_round_a_shelf_measures_to_its_long_points():
    right, front, left = run([(10, 0), (10, 5), (-10, 5), (-10, 0)])
    assert (right.length, front.length, left.length) == (6, 22, 6)
    assert [(b.low.mitre, b.high.mitre) for b in (right, front, left)] == [(0, 45), (45, 45), (0, 45)]


def test_inside_corner_shortens_the_pieces():
    # A moulding that runs along a wall, meets a pier standing out 3 in. and goes round it.
    path = [(20, 0), (5, 0), (5, 3), (0, 3)]
    wall, side, face = run(path)
    assert wall.bounds[0][0] == 5
    assert wall.high.is_square
    assert min(x for x, _, z in wall.vertices if z == 1) == 6
    assert side.length == 4
    assert face.bounds[1][0] == 6


@pytest.mark.parametrize("path", [[(10, 0), (10, 5), (-10, 5), (-10, 0)], [(20, 0), (5, 0), (5, 3), (0, 3)]])
def test_neighbouring_pieces_share_the_mitre(path):
    pieces = run(path)
    for one, other in pairwise(pieces):
        assert len(set(one.vertices) & set(other.vertices)) == len(SQUARE)


def test_volume_of_a_run_is_the_section_along_the_middle_line():
    pieces = run([(10, 0), (10, 5), (-10, 5), (-10, 0)])
    assert sum(piece.volume for piece in pieces) == pytest.approx(2.0 * (5.5 + 21 + 5.5))
