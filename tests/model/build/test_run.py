"""Sections run round corners: lengths at long points, mitres, and pieces that meet without a gap."""

from itertools import pairwise

import pytest

from model.board import Stock, StockKind
from model.build.run import ON_FACE, Profile, against, moulding_stock, run_section, under, upon
from model.moulding.library import SECTIONS

STRIP = Stock(StockKind.BOARD, 1.0, "poplar")
SQUARE = [(0.0, 0.0), (1.0, 0.0), (1.0, 2.0), (0.0, 2.0)]


def run(path):
    return run_section(["leg"] * (len(path) - 1), "test", STRIP, path, Profile(SQUARE))


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


FRAME = [(0.0, 0.0), (0.0, 20.0), (10.0, 20.0), (10.0, 0.0)]
"""Clockwise seen from the front, so that the right hand lies inside."""


def frame(profile):
    return run_section(["leg"] * 4, "test", STRIP, FRAME, profile, ON_FACE, closed=True)


def test_a_frame_is_mitred_at_all_four_corners_and_keeps_inside_its_opening():
    left, top, right, bottom = pieces = frame(Profile(SQUARE))
    assert [piece.axis for piece in pieces] == ["y", "x", "y", "x"]
    assert all((p.low.mitre, p.high.mitre) == (45, 45) for p in pieces)
    assert (left.length, top.length) == (20, 10)
    assert (left.bounds, right.bounds) == (((0, 0, 0), (1, 20, 2)), ((9, 0, 0), (10, 20, 2)))
    assert (top.bounds, bottom.bounds) == (((0, 19, 0), (10, 20, 2)), ((0, 0, 0), (10, 1, 2)))
    for one, other in zip(pieces, pieces[1:] + pieces[:1], strict=True):
        assert len(set(one.vertices) & set(other.vertices)) == len(SQUARE)


def test_a_frames_volume_is_the_section_along_its_middle_line():
    assert sum(piece.volume for piece in frame(Profile(SQUARE))) == pytest.approx(2.0 * 2 * (9 + 19))


def test_an_open_run_on_a_face_is_square_at_its_two_ends():
    path = [(-5, 0), (-5, 30), (5, 30), (5, 10)]
    left, top, right = run_section(["leg"] * 3, "test", STRIP, path, Profile(SQUARE), ON_FACE)
    assert (left.low.mitre, left.high.mitre) == (0, 45)
    assert (right.low.mitre, right.high.mitre) == (0, 45)
    assert (left.length, top.length, right.length) == (30, 10, 20)
    assert top.bounds == ((-5, 29, 0), (5, 30, 2))


OVOLO = SECTIONS["ovolo"].section.sized(0.75)


def test_a_section_hangs_under_stands_upon_and_lies_against():
    seat = OVOLO.seat
    hung, stood = (of(OVOLO, 10.0) for of in (under, upon))
    assert {y for x, y in hung.points if x == seat} >= {10.0}
    assert min(y for _, y in hung.points) == 10.0 - 0.75
    assert max(y for _, y in stood.points) == 10.0 + 0.75
    lain = against(OVOLO, 3.0)
    assert (min(d for d, _ in lain.points), max(d for d, _ in lain.points)) == (0.0, 0.75)
    assert (min(z for _, z in lain.points), max(z for _, z in lain.points)) == (3.0, 3.0 + seat)


def test_each_leg_knows_where_its_face_and_its_seat_lie():
    stock = moulding_stock(OVOLO, "poplar")
    path = [(10, 0), (10, 5), (-10, 5), (-10, 0)]
    run_ = run_section(["leg"] * 3, "test", stock, path, under(OVOLO, 0.0))
    assert [(p.worked.out, p.worked.seat) for p in run_] == [("+x", "+y"), ("+z", "+y"), ("-x", "+y")]
    cap = run_section(["leg"] * 3, "test", stock, path, upon(OVOLO, 0.0))
    assert [p.worked.seat for p in cap] == ["-y", "-y", "-y"]
    pieces = frame(against(OVOLO, 0.0))
    assert [(p.worked.out, p.worked.seat) for p in pieces] == [
        ("+z", "-x"), ("+z", "+y"), ("+z", "+x"), ("+z", "-y"),
    ]  # fmt: skip


def test_a_curves_corners_are_named_on_every_leg():
    for piece in frame(against(OVOLO, 0.0)):
        _, curved = OVOLO.polygon()
        assert len(piece.curved) == len(curved)
        assert piece.section_area > 0
