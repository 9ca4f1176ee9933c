"""How a part is judged, and which of its places is shown."""

from __future__ import annotations

from math import nan

import pytest

from model.check.finding import Status
from model.check.mantel import IRC_RULE, list_planes
from model.check.nearest import list_points
from model.check.part import list_parts
from model.check.worst import WORST_FIRST, group_points, judge, list_broken, list_readings
from model.corners import list_corners
from model.site import Opening
from tests.wood import place_above, place_at_corner, place_beside

OPENING = Opening(36.0, 30.0)


@pytest.mark.parametrize(
    ("straight", "square", "status"),
    [
        (-0.5, -2, Status.FAIL),
        (-1e-9, -1e-9, Status.WARN),
        (0.5, -0.5, Status.WARN),
        (0.1, 0.1, Status.WARN),
        (0.125, 0.125, Status.PASS),
        (nan, nan, Status.UNKNOWN),
    ],
)
def test_judgement_by_what_is_to_spare(straight, square, status):
    assert judge(straight, square) is status


def test_the_order_runs_from_fail_to_pass():
    assert tuple(Status) == WORST_FIRST


def _group(*boards):
    points = list_points(list_corners(boards), OPENING, list_planes(OPENING))
    return group_points(points, list_parts(boards))


def _read(*boards):
    return {r.part: r for r in list_readings(_group(*boards), IRC_RULE)}


def test_each_part_is_read_by_itself():
    found = _read(place_above(7, 11), place_beside(5, 13), place_at_corner(0.75, 7, 7))
    assert {part: r.status for part, r in found.items()} == {
        "shelf": Status.FAIL,
        "right column": Status.PASS,
        "corner block": Status.PASS,
    }
    assert {part: r.boards for part, r in found.items()} == {
        "shelf": (0,),
        "right column": (1,),
        "corner block": (2,),
    }


def test_of_equally_tight_places_the_furthest_out_above_the_middle_is_shown():
    reading = _read(place_above(7, 11))["shelf"]
    assert reading.at == (0, 41, 7)
    assert reading.projection == 7


def test_points_over_the_line_are_kept_for_the_cure():
    over = list_broken(_group(place_above(7, 11)), "shelf", (IRC_RULE,))
    assert over.above.min() == pytest.approx(11)
    assert not len(list_broken(_group(place_above(7, 13)), "shelf", (IRC_RULE,)).board)
