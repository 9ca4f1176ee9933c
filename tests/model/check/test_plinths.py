"""A plinth against the baseboard that ends at it. Sizes by hand: columns from 31 in., plinths 8 in. high."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from model.check.finding import Finding, Status
from model.check.plinths import check_plinths
from model.job import default_job, with_texts
from model.surround import Surround, plan_surround

NARROW_FACING = ("facing.width", "60")


def _plan(**texts: str) -> Surround:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return plan_surround(with_texts(default_job(), [NARROW_FACING, *pairs]))


def _check(**texts: str) -> Iterator[Finding]:
    return iter(tuple(check_plinths(_plan(**texts))))


@pytest.mark.parametrize(("height", "status"), [("7 1/2", "pass"), ("8", "pass"), ("8 1/16", "warn")])
def test_a_plinth_lower_than_its_baseboard_is_close_and_one_as_high_is_within(height: str, status: str):
    (found,) = _check(baseboard__height_left=height)
    assert (found.status, found.part, found.measured) == (Status(status), "left plinth", 8)
    assert bool(found.cure) == (status == "warn")


def test_each_side_is_held_against_its_own_baseboard_and_names_its_own_boards():
    surround = _plan(baseboard__height_left="6", baseboard__height_right="9", plinth_cap__on="yes")
    left, right = check_plinths(surround)
    assert (left.status, right.status) == (Status.PASS, Status.WARN)
    for found, side in ((left, "left"), (right, "right")):
        named = [
            board
            for mark, board in zip(surround.marks, surround.boards, strict=True)
            if mark in found.boards and board.assembly == f"{side} column"
        ]
        assert {board.bounds[1][1] for board in named} == {8}


def test_heights_are_over_the_floor_where_a_column_steps_down_to_it():
    """A hearth 4 in. high ends under the column: its foot goes 4 in. further down, the plinth 8 over it."""
    (found,) = _check(
        hearth__height="4", hearth__width="70", column__over_edge="stepped", baseboard__height_right="10"
    )
    assert (found.measured, found.limit, found.status) == (12, 10, Status.PASS)


def test_nothing_is_said_without_plinths_without_a_baseboard_or_where_they_do_not_meet():
    assert not [*_check(), *_check(plinth__on="no", baseboard__height_left="9")]
    assert not list(_check(facing__width="100", baseboard__height_left="9"))
