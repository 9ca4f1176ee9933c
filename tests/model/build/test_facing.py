"""Masonry out of plumb: what follows it, and what stays where it is."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis.strategies import floats

from model.build.facing import Lean
from model.build.level_backs import FOLLOWS, PACKING
from model.job import default_job, with_texts, with_value
from model.surround import plan_surround
from tests.planned import plan_of
from tests.strategies import jobs


def plan(*settings: str):
    return plan_surround(with_texts(default_job(), [tuple(s.split("=")) for s in settings]))


def named(surround, role, side="right"):
    return next(b for b in surround.boards if b.role == role and b.assembly == f"{side} column")


def test_masonry_falls_back_only_from_where_it_stands_furthest_out():
    toward, away = Lean(0.0, 48.0, 0.5), Lean(0.0, 48.0, -0.5)
    assert [toward.set_back(y) for y in (0, 24, 48, 60)] == [0.5, 0.25, 0, 0]
    assert [away.set_back(y) for y in (-3, 0, 24, 48)] == [0, 0, 0.25, 0.5]


def test_a_cut_that_follows_it_lies_on_the_masonrys_face():
    for amount in (0.5, -0.75):
        lean = Lean(-1.0, 51.0, amount)
        for y in (-1.0, 7.0, 51.0):
            assert lean.cut(0.0).position(0.0, y) == pytest.approx(-lean.set_back(y))


def test_returns_are_as_much_wider_at_the_foot_as_masonry_leans_toward_the_room():
    """The default's returns are 3 1/4 in. wide before plumb masonry."""
    for role in ("column inner return", "column outer return"):
        board = named(plan("plumb.right=1/2"), role)
        assert board.section == ((0.0, -0.5), (52.0, 0.0), (52.0, 3.25), (0.0, 3.25))
        assert board.volume == pytest.approx(0.75 * 52 * (3.75 + 3.25) / 2)


def test_returns_are_wider_at_the_head_where_masonry_leans_away():
    assert named(plan("plumb.left=-3/8"), "column outer return", "left").bounds[0][2] == -0.375
    assert named(plan("plumb.left=-3/8"), "column outer return", "right").bounds[0][2] == 0


def test_over_a_proud_facing_only_the_part_on_the_facing_leans():
    """The reading is over the forty inches of facing; above it the returns go back to the wall as before."""
    section = named(
        plan("plumb.right=1/4", "facing.proud=2", "facing.height=40"), "column inner return"
    ).section
    assert section[:4] == ((0.0, -0.25), (40.0, 0.0), (40.0, -2.0), (52.0, -2.0))


def test_a_return_on_the_wall_is_left_square_where_the_facing_was_read():
    surround = plan("plumb.right=1/4", "facing.proud=2", "facing.width=70")
    assert len(named(surround, "column outer return").section) == 4
    assert named(surround, "column outer return").bounds[0][2] == -2
    assert named(surround, "column inner return").bounds[0][2] == -0.25


def test_where_neither_side_is_on_the_facing_the_reading_is_of_the_wall():
    surround = plan("plumb.right=1/4", "facing.proud=2", "facing.width=60")
    for role in ("column inner return", "column outer return"):
        assert named(surround, role).bounds[0][2] == -2.25


def test_a_plinth_return_and_a_bed_mould_are_cut_to_follow_it_and_a_slip_stops_what_meets_it():
    surround = plan("plumb.right=1/2")
    foot = [b for b in surround.boards if b.role == "plinth return" and b.is_scribed]
    assert [b.bounds[0][2] for b in foot] == [-0.5, -0.5]
    assert sum(b.assembly == "bed mould" and b.is_scribed for b in surround.boards) == 1
    behind_slip = plan("plumb.right=1/2", "slip.on=yes")
    assert sum(b.role == "plinth return" and b.is_scribed for b in behind_slip.boards) == 1


def test_a_plinth_that_rises_over_low_masonry_stays_square_and_out_of_the_wall():
    """Facing 10 1/2 high and 1/2 proud: over it the wall stands at -1/2, wherever the facing's head leans."""
    low = plan("facing.height=10 1/2", "facing.proud=1/2", "plumb.right=-7/8", "plinth.height=24")
    returns = [b for b in low.boards if b.role == "plinth return" and b.assembly == "right column"]
    assert returns
    assert all(board.bounds[0][2] >= -0.5 for board in returns)
    tall = plan("facing.height=30", "facing.proud=1/2", "plumb.right=-1/4", "plinth.height=24")
    assert any(b.role == "plinth return" and b.bounds[0][2] < -0.1 for b in tall.boards)


def test_a_reading_far_out_of_plumb_is_taken_for_a_slip():
    layout = plan("plumb.right=2", "facing.proud=2", "facing.height=12").layout
    (shortfall,) = (s for s in layout.shortfalls if s.path == "plumb.right")
    assert (shortfall.asked, shortfall.built) == (2, 1)


@settings(max_examples=40, deadline=None)
@given(
    jobs(plumb__left=None, plumb__right=None, baseboard__meets="cut_back", cord__on=False),
    floats(-2, 2),
    floats(-2, 2),
)
def test_no_reading_moves_the_front_of_anything_nor_the_shelf(job, left, right):
    """But for what is notched round a baseboard: it is not, where the masonry is out of plumb.

    And but for holes of cords: they lie where what stands behind the boards lets them.
    """
    leaning = with_value(with_value(job, "plumb.left", left), "plumb.right", right)
    plumb, out = plan_of(job), plan_surround(leaning)
    rest = [board for board in out.boards if board.role not in PACKING]
    for before, after in zip(plumb.boards, rest, strict=True):
        assert before.role == after.role
        assert after.bounds[1] == pytest.approx(before.bounds[1])
        assert after.bounds[0][:2] == pytest.approx(before.bounds[0][:2])
        assert after.bounds[0][2] <= before.bounds[0][2] + 1e-9
        if before.role not in FOLLOWS and before.assembly in ("shelf", "frieze", "nailers"):
            assert after == before
