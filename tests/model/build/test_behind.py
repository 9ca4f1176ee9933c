"""An old ledger and bolts left on the masonry: what is cut round them, and what rests on them."""

from __future__ import annotations

import pytest

from model.build.behind import notch_edge
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts

WIDE = ("old_ledger.top=50", "old_ledger.left=36", "old_ledger.right=36")


def plan(*settings: str):
    return plan_surround(with_texts(default_job(), [tuple(s.split("=")) for s in settings]))


def pieces(surround, role):
    return [b for b in surround.boards if b.role == role]


def test_nothing_lies_behind_unless_it_was_measured():
    assert plan().layout.behind == ()
    assert plan("old_ledger.top=50", "old_ledger.use=remove").layout.behind == ()
    assert plan("old_ledger.top=50", "old_ledger.use=remove").boards == plan().boards


def test_a_worked_old_ledger_that_is_built_over():
    """By hand. It lies from 46 1/2 to 50 over the hearth and stands out 1 1/2, out to 36 on both sides.

    Inner returns (31 to 31 3/4, 3 1/4 wide, 52 high) lose 3 1/2 x 1 1/2 between 46 1/2 and 50; outer ones,
    from 37 3/4 on, nothing. The inner nailer parts into 0 to 46 1/2; what is left over it, 2, is no piece.
    The outer one (36 1/4 on) stays whole. The new ledger keeps 50 to 52.
    """
    surround = plan(*WIDE)
    inner, outer = (pieces(surround, f"column {which} return")[1] for which in ("inner", "outer"))
    notched = ((0, 0), (46.5, 0), (46.5, 1.5), (50, 1.5), (50, 0), (52, 0), (52, 3.25), (0, 3.25))
    assert inner.section == notched
    assert inner.volume == pytest.approx(0.75 * (52 * 3.25 - 3.5 * 1.5))
    assert len(outer.section) == 4
    nailers = sorted(pieces(surround, "column nailer"), key=lambda board: board.bounds[0][0])
    assert [(b.bounds[0][1], b.bounds[1][1]) for b in nailers] == [(0, 52), (0, 46.5), (0, 46.5), (0, 52)]
    (own,) = pieces(surround, "shelf nailer")
    assert (own.bounds[0][1], own.bounds[1][1]) == (50, 52)


def test_the_cut_list_names_what_is_sawn_out_of_a_return():
    notes = [c.notes for c in list_cuts(plan(*WIDE)) if "inner return" in c.name]
    assert any(
        '1 1/2" sawn out of one edge for 3 1/2", from 3\'-10 1/2" off the lower end on' in n for n in notes
    )


def test_the_shelf_rests_on_an_old_ledger_that_is_used_and_packing_makes_up_what_is_missing():
    """Its top at 51 1/2, the shelf's underside at 52; own pieces from its ends at 24 to the columns at 31."""
    surround = plan("old_ledger.top=51 1/2", "old_ledger.use=use")
    (packing,) = pieces(surround, "old ledger packing")
    assert packing.bounds == ((-24, 51.5, 0), (24, 52, 1.5))
    ends = sorted((b.bounds[0][0], b.bounds[1][0]) for b in pieces(surround, "shelf nailer"))
    assert ends == [(-31, -24), (24, 31)]
    assert pieces(plan("old_ledger.top=52", "old_ledger.use=use"), "old ledger packing") == []


@pytest.mark.parametrize(
    ("settings", "reason"),
    [
        (("old_ledger.top=52 1/2",), "0.5 in. over the shelf's underside"),
        (("old_ledger.top=49",), "3 in. under the shelf's underside"),
        (("old_ledger.top=52", "old_ledger.thick=3"), "stands out further"),
        (("old_ledger.top=52", "old_ledger.left=4", "old_ledger.right=9"), "less than half"),
        (
            ("old_ledger.top=52", "facing.height=49", "facing.proud=1", "nailer.ledger=2"),
            "does not lie on what",
        ),
    ],
)
def test_an_old_ledger_that_cannot_carry_the_shelf_is_built_over_and_it_is_said(settings, reason):
    layout = plan("old_ledger.use=use", *settings).layout
    (shortfall,) = (s for s in layout.shortfalls if s.path == "old_ledger.use")
    assert reason in shortfall.reason
    assert layout.behind[0].met == "keep"


def test_a_return_is_notched_for_a_bolt_with_an_eighth_all_round():
    """A half-inch bolt at 31 3/8, 20 up, 1 1/2 out: from 19 5/8 to 20 3/8, 1 5/8 deep."""
    surround = plan("bolt_one.across=31 3/8", "bolt_one.up=20")
    inner = pieces(surround, "column inner return")[1]
    assert inner.section[1:5] == ((19.625, 0), (19.625, 1.625), (20.375, 1.625), (20.375, 0))
    left = plan("bolt_one.across=-31 3/8", "bolt_one.up=20")
    assert pieces(left, "column inner return")[0].volume == pytest.approx(inner.volume)


def test_a_bolt_too_long_for_a_return_is_not_notched_for():
    surround = plan("bolt_one.across=31 3/8", "bolt_one.up=20", "bolt_one.out=3")
    assert all(len(b.section) == 4 for b in pieces(surround, "column inner return"))


def test_the_soffit_is_notched_where_a_bolt_meets_its_back():
    surround = plan("bolt_one.across=6", "bolt_one.up=43 1/4", "bolt_one.out=1")
    (soffit,) = pieces(surround, "soffit")
    assert soffit.length == 62
    assert soffit.volume == pytest.approx(0.75 * (62 * soffit.extent("z") - 0.75 * 1.125))


def test_notches_close_together_are_sawn_as_one_and_leave_no_thin_ends():
    edge = ((0.0, 0.0), (52.0, 0.0))
    assert notch_edge(edge, [(10, 12, 1), (12.25, 14, 1.5)]) == (
        (0, 0), (10, 0), (10, 1.5), (14, 1.5), (14, 0), (52, 0),
    )  # fmt: skip
    assert notch_edge(edge, [(0.25, 3, 1)]) == ((0, 1), (3, 1), (3, 0), (52, 0))
    assert notch_edge(edge, [(-5, 60, 1)]) == ((0, 1), (52, 1))
    assert notch_edge(edge, [(60, 70, 1)]) == edge


def test_a_notch_over_a_step_back_to_the_wall_takes_both_planes():
    edge = ((0.0, 0.0), (40.0, 0.0), (40.0, -3.0), (52.0, -3.0))
    assert notch_edge(edge, [(38, 42, 1)]) == (
        (0, 0), (38, 0), (38, 1), (42, 1), (42, -3), (52, -3),
    )  # fmt: skip
