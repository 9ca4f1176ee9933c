"""Where pieces lie: within the board, off each other, in the order of their sources."""

from __future__ import annotations

from model.cutting.places import list_places
from model.cutting.plan import plan_order
from tests.model.cutting.yard import order_of, piece, sold


def test_pieces_lie_one_after_the_other_with_the_blade_between():
    plan = plan_order(order_of([piece("A1", 40), piece("A2", 30)], sold("1x4", 3.5, 96, 1000), trim_end=0.5))
    (group,) = plan.groups
    first, second = list_places(group.sawn[0], group)
    assert (first.source.mark, first.along, first.across) == ("A1", 32, 0)
    assert (second.source.mark, second.along) == ("A2", 32 + 40 * 64 + 8)


def test_lanes_lie_side_by_side_with_the_blade_between():
    plan = plan_order(order_of([piece("A1", 90, 3), piece("A2", 90, 2)], sold("1x6", 5.5, 96, 1000)))
    (group,) = plan.groups
    wide, narrow = list_places(group.sawn[0], group)
    assert (wide.lane, wide.across, narrow.lane, narrow.across) == (1, 0, 2, 3 * 64 + 8)


def test_mitred_pieces_that_share_cuts_end_within_the_board():
    pieces = [piece(f"A{i}", 20, 2, mitres=(2.0, 2.0), bare=2) for i in range(5)]
    plan = plan_order(order_of(pieces, sold("1x2", 2, 94, 1000)))
    (group,) = plan.groups
    (sawn,) = group.sawn
    places = list_places(sawn, group)
    assert any(place.turned for place in places)
    assert max(place.along + place.length for place in places) <= 94 * 64
    assert sum(place.length for place in places) > 94 * 64
