"""The overmantel's own nailers: where they stand, on what, and what hangs on them."""

from __future__ import annotations

from hypothesis import given, settings

from model.board import Board
from model.job import default_job, with_texts
from model.surround import Surround, plan_surround
from model.takeoff.anchor_places import WALL
from model.takeoff.anchors import list_order, plan_anchors
from tests.planned import plan_of
from tests.strategies import jobs


def _plan(**values: str) -> Surround:
    pairs = [("over.on", "yes"), *((name.replace("__", "."), text) for name, text in values.items())]
    return plan_surround(with_texts(default_job(), pairs))


def _nailers(surround: Surround, role: str) -> list[Board]:
    return [board for board in surround.boards if board.role == role]


def test_an_upright_stands_in_each_end_and_a_strip_between_them():
    """Columns 38 1/2 out; 3/4 returns. Shelf's top at 54, overmantel 30 high, its top 3/4.

    1 1/2 out less a reveal of 3/4 and a panel of 1/4 leaves 1/2 for a strip that is planed to it.
    """
    surround = _plan(over__reach="height", over__height="30")
    left, right = _nailers(surround, "overmantel nailer")
    assert right.bounds == ((38.5 - 0.75 - 1.5, 54, 0), (37.75, 54 + 30 - 0.75, 0.5))
    assert left.bounds[0][0] == -37.75
    (strip,) = _nailers(surround, "overmantel top nailer")
    assert (strip.length, strip.bounds[1][1]) == (2 * 36.25, 83.25)
    assert (strip.stock.thickness, strip.thickness) == (0.75, 0.5)


def test_a_deep_overmantel_has_framing_and_a_shallow_one_no_nailers():
    assert _nailers(_plan(over__projection="3"), "overmantel nailer")[0].thickness == 1.5
    assert not _nailers(_plan(over__projection="1"), "overmantel nailer")


def test_over_a_proud_facing_the_uprights_step_back_to_the_wall():
    """The facing, 3 proud, ends at 70: a piece on it, and one on the wall behind it."""
    surround = _plan(facing__proud="3", facing__height="70", facing__width="100", over__reach="height")
    right = [b.bounds for b in _nailers(surround, "overmantel nailer") if b.bounds[0][0] > 0]
    assert [(low[1], high[1], low[2]) for low, high in right] == [(54, 70, 0), (70, 83.25, -3)]


def test_its_anchors_are_in_the_plan_and_hold_none_of_what_is_under_the_shelf():
    without, surround = plan_surround(default_job()), _plan()
    before, plan = plan_anchors(without), plan_anchors(surround)
    own = [a for a in plan.anchors if surround.boards[a.board].role.startswith("overmantel")]
    assert len(own) >= 5
    assert all(anchor.into == WALL and not anchor.upper for anchor in own)
    assert plan.upper == before.upper
    assert len(plan.anchors) == len(before.anchors) + len(own)
    assert any("overmantel" in step for step in list_order(surround))
    assert not any("overmantel" in step for step in list_order(without))


def test_the_panel_mould_lies_in_its_panels_too():
    """Three panels, four pieces each, as deep behind the frame as the panels are."""
    surround = _plan(panel_mould__on="yes")
    pieces = [b for b in surround.boards if b.assembly == "overmantel" and "panel mould" in b.role]
    assert len(pieces) == 12
    assert {b.bounds[0][2] for b in pieces} == {1.5 - 0.75}
    assert max(b.bounds[1][2] for b in pieces) <= 1.5


@settings(max_examples=30, deadline=None)
@given(jobs(over__on=True))
def test_no_nailer_reaches_out_of_the_overmantel(job):
    surround = plan_of(job)
    over = surround.layout.over
    for board in surround.boards:
        if board.role.startswith("overmantel") and board.assembly == "nailers":
            assert over is not None
            assert board.bounds[1][2] <= over.frame.front
            assert over.frame.outline[1] <= board.bounds[0][1] < board.bounds[1][1] <= over.top
