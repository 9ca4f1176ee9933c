"""Cuts of a sheet: fewest first, then the largest part left, then the least sawing."""

from __future__ import annotations

import pytest

from model.cutting.sheet_cuts import Lying, Sawyer, Unsawable, order_cuts, part_along

PINWHEEL = (Lying(0, 0, 0, (2, 1)), Lying(1, 2, 0, (1, 2)), Lying(0, 1, 2, (2, 1)), Lying(1, 0, 1, (1, 2)))


def test_a_pinwheel_cannot_be_sawn():
    with pytest.raises(Unsawable):
        Sawyer(0).saw(PINWHEEL, (3, 3))


def test_strips_are_parted_wherever_nothing_lies_across():
    pieces = (Lying(0, 0, 0, (4, 2)), Lying(0, 2, 2, (4, 2)), Lying(0, 6, 0, (1, 1)))
    assert [len(strip) for strip in part_along(pieces, 0)] == [2, 1]
    assert [len(strip) for strip in part_along(pieces, 1)] == [2, 1]


def test_a_piece_that_fills_its_room_is_not_cut():
    assert Sawyer(0).saw((Lying(0, 0, 0, (5, 4)),), (5, 4)).worth == (0, 0, 0)


def test_of_as_many_cuts_those_that_leave_the_largest_rectangle_are_made():
    """A piece in a corner: the crosscut first leaves 60 by 40, the rip first leaves 100 by 30."""
    sawing = Sawyer(0).saw((Lying(0, 0, 0, (40, 10)),), (100, 40))
    assert sawing.worth[:2] == (2, -100 * 30)


def test_what_is_too_small_to_keep_is_not_counted_as_left():
    kept, lost = Sawyer(2, (20, 5)), Sawyer(2, (21, 5))
    assert kept.worth_left((22, 7)) == 20 * 5
    assert lost.worth_left((22, 7)) == 0
    assert kept.worth_left((2, 30)) == 0


def test_parallel_cuts_follow_each_other_and_then_the_largest_part_is_sawn():
    pieces = (
        Lying(0, 0, 0, (20, 30)),
        Lying(1, 20, 0, (20, 30)),
        Lying(2, 40, 0, (60, 15)),
        Lying(3, 40, 15, (60, 15)),
    )
    sawn = order_cuts(Sawyer(0).saw(pieces, (100, 30)).part, 0)
    assert [(cut.axis, cut.at) for cut in sawn.cuts] == [("x", 20), ("x", 40), ("y", 15)]
    assert sorted(piece.item for piece in sawn.pieces) == [0, 1, 2, 3]
    assert not sawn.left


def test_the_saw_cut_lies_between_a_piece_and_the_next():
    """Sizes have the saw's 3 in them: two pieces of 17 on a sheet of 40."""
    sawn = order_cuts(Sawyer(3).saw((Lying(0, 0, 0, (20, 10)), Lying(0, 20, 0, (20, 10))), (43, 10)).part, 3)
    assert sorted((cut.at, cut.x0, cut.y1) for cut in sawn.cuts) == [(17, 0, 7), (37, 0, 7)]
    assert [piece.x for piece in sawn.pieces] == [0, 20]
