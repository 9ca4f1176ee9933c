"""The checker itself: it lets a right plan pass and names each thing that can be wrong."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.cutting.task import BoardPlan, Lane, Proof, Refusal, SawnBoard, Stock, Task, Wanted
from tests.model.cutting.checker import list_faults

TASK = Task(
    (Wanted("a", 40, 10, 2), Wanted("b", 30, 6), Wanted("m", 20, 10, 2, 10, 0, "grain")),
    (Stock("s", 84, 10, 7, 3), Stock("w", 60, 18, 9, None, 2, 1)),
    4,
)
RIGHT = BoardPlan(
    (
        SawnBoard("s", (Lane(10, ("a", "a")),)),
        SawnBoard("s", (Lane(10, ("m", "m", "b"), (True, False, False)),)),
    ),
    (),
    Proof(14, 14),
)


def _with(board: int, **change: object) -> BoardPlan:
    boards = list(RIGHT.boards)
    boards[board] = replace(boards[board], **change)
    return replace(RIGHT, boards=tuple(boards))


def test_a_right_plan_passes():
    assert list_faults(TASK, RIGHT) == []


@pytest.mark.parametrize(
    ("plan", "says"),
    [
        (_with(0, stock="x"), "x is not listed"),
        (_with(0, lanes=(Lane(10, ("a", "q")),)), "q is not wanted"),
        (_with(0, lanes=(Lane(10, ("a",)),)), "1 + 0 of 2 a"),
        (_with(0, lanes=()), "bought for nothing"),
        (_with(0, lanes=(Lane(10, ()),)), "is empty"),
        (_with(0, lanes=(Lane(10, ("a", "a", "b")),)), "end at 118 of 84"),
        (_with(0, lanes=(Lane(6, ("a", "a")),)), "wider than its lane"),
        (_with(0, lanes=(Lane(10, ("a",)), Lane(10, ("a",)))), "take 24 of 10"),
        (_with(0, lanes=(Lane(10, ("a", "a"), (True,)),)), "1 turns for 2"),
        (_with(0, stock="w"), "costs 16, not 14"),
        (_with(0, stock="w"), "end at 84 of 56"),
        (replace(RIGHT, proof=Proof(13, 13)), "costs 14, not 13"),
        (replace(RIGHT, proof=Proof(14, 15)), "bound 15 for 14"),
        (replace(RIGHT, refused=(Refusal("a", 1, "no", 40, 10),)), "2 + 1 of 2 a"),
        (replace(RIGHT, refused=(Refusal("a", 1, "no", 40, 10),)), "is refused, and s would hold it"),
        (replace(RIGHT, refused=(Refusal("a", 1, "", 40, 10),)), "without a reason"),
        (replace(RIGHT, refused=(Refusal("a", 1, "no", 39, 10),)), "would not come out"),
    ],
)
def test_what_is_wrong_is_named(plan, says):
    assert any(says in fault for fault in list_faults(TASK, plan))


def test_a_batch_in_two_lanes_is_named():
    boards = (SawnBoard("s", (Lane(10, ("m", "b")),)), SawnBoard("s", (Lane(10, ("m",)),)), RIGHT.boards[0])
    assert "batch grain lies in 2 lanes" in list_faults(TASK, replace(RIGHT, boards=boards))


def test_too_many_of_a_limited_stock_are_named():
    assert "2 of 1 s" in list_faults(
        replace(TASK, stock=(replace(TASK.stock[0], supply=1), TASK.stock[1])), RIGHT
    )


def test_edges_that_a_rip_needs_are_counted():
    """16 is left of 18 between trimmed edges: 10 and 6 lie beside each other there only without a saw."""
    plan = replace(RIGHT, boards=(SawnBoard("w", (Lane(10, ("a",)), Lane(6, ("b",)))),), proof=Proof(9, 9))
    assert "lanes of w take 20 of 16" in list_faults(TASK, plan)


def test_slanting_cuts_take_more_than_the_blade():
    """Mitred over its own width a cut takes kerf * sqrt 2 along: 40 - 10 + 5.66 = 35.66, not 34."""
    task = Task((TASK.wanted[2],), (Stock("s", 36, 10, 1),), 4)
    boards = (SawnBoard("s", (Lane(10, ("m", "m"), (True, False)),)),)
    plan = BoardPlan(boards, (), Proof(1, 1))
    assert list_faults(task, plan) == []
    shorter = replace(task, stock=(Stock("s", 35, 10, 1),))
    assert any("end at 35.65" in fault for fault in list_faults(shorter, plan))


def test_ends_that_slant_apart_share_no_cut():
    task = Task((TASK.wanted[2],), (Stock("s", 43, 10, 1),), 4)
    plan = BoardPlan((SawnBoard("s", (Lane(10, ("m", "m")),)),), (), Proof(1, 1))
    assert any("end at 44 of 43" in fault for fault in list_faults(task, plan))
