"""What is said of an old ledger and of bolts: what goes round them, and what cannot."""

from __future__ import annotations

from model.check.finding import Status
from model.check.left_on import check_left_on
from model.check.survey import check_survey
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.anchors import plan_anchors
from model.takeoff.cut_list import list_cuts


def plan(*settings: str):
    return plan_surround(with_texts(default_job(), [tuple(s.split("=")) for s in settings]))


def test_nothing_is_said_where_nothing_was_left():
    assert check_left_on(plan()) == ()


def test_a_bolt_in_a_nailer_is_bored_for_and_the_cut_list_says_where():
    """The right inner nailer begins at 31 3/4: a bolt at 32 1/2 is 3/4 from its left edge."""
    surround = plan("bolt_one.across=32 1/2", "bolt_one.up=20", "bolt_one.out=2")
    (found,) = check_left_on(surround)
    assert found.status is Status.PASS
    assert found.message.startswith(
        "The first bolt stays 2'-8 1/2\" to the right of the centre line, 1'-8\" over the hearth:"
    )
    (note,) = (c.notes for c in list_cuts(surround) if "bolt" in c.notes)
    assert note.endswith(
        'bore 3/4" dia. through over the first bolt, '
        'centre 1\'-8" from its lower end and 3/4" from its left edge'
    )


def test_a_bolt_that_reaches_a_panel_fails_by_how_far_and_says_what_it_may_stand_out():
    """Column panels lie from 3 to 3 1/4 off the masonry."""
    surround = plan("bolt_one.across=34 3/4", "bolt_one.up=30", "bolt_one.out=3 3/4")
    (found,) = check_left_on(surround)
    assert (found.status, found.measured, found.limit) == (Status.FAIL, 3.75, 3.0)
    assert 'stands 3/4" into board' in found.message
    assert 'no more than 3"' in found.cure


def test_a_ledger_that_the_shelf_runs_into_fails():
    surround = plan("old_ledger.top=53")
    found = check_left_on(surround)[0]
    assert found.status is Status.FAIL
    assert found.cure.startswith("Take it off")
    shelf = {m for m, b in zip(surround.marks, surround.boards, strict=True) if b.assembly == "shelf"}
    assert set(found.boards) & shelf


def test_a_kept_ledger_names_what_is_notched_and_one_that_leaves_no_room_is_warned_of():
    """At 52 it takes the new ledger's whole place between 24 on both sides of the centre line: 48."""
    found = check_left_on(plan("old_ledger.top=50", "old_ledger.left=36", "old_ledger.right=36"))
    assert [f.status for f in found] == [Status.PASS]
    assert "notched round it" in found[0].message
    crowded = check_left_on(plan("old_ledger.top=52"))
    assert [f.status for f in crowded] == [Status.PASS, Status.WARN]
    assert "4'-0\"" in crowded[1].message or '48"' in crowded[1].message


def test_a_used_and_a_removed_ledger_are_said_to_be():
    (used,) = check_left_on(plan("old_ledger.top=51 1/2", "old_ledger.use=use"))
    assert 'The shelf rests on it, packed up 1/2"' in used.message
    (removed,) = check_left_on(plan("old_ledger.top=51 1/2", "old_ledger.use=remove"))
    assert "comes off before" in removed.message


def test_anchors_keep_their_edge_distance_from_bolts():
    """An anchor of the default stands in the right inner nailer near its foot; a bolt there moves it up."""
    bare = plan()
    spot = next(a for a in plan_anchors(bare).anchors if a.x > 0 and abs(a.x - 32.5) < 0.1)
    surround = plan(f"bolt_one.across={spot.x}", f"bolt_one.up={spot.y}", "bolt_one.out=1")
    rule = surround.job.design.anchor
    anchors = plan_anchors(surround).anchors
    assert len(anchors) == len(plan_anchors(bare).anchors)
    least = min(((a.x - spot.x) ** 2 + (a.y - spot.y) ** 2) ** 0.5 for a in anchors)
    assert least >= rule.edge + 0.25 - 1e-9


def test_no_anchor_goes_through_the_packing_on_a_used_ledger_and_none_counts_for_it():
    surround = plan("old_ledger.top=51 1/2", "old_ledger.use=use")
    anchored = {surround.boards[a.board].role for a in plan_anchors(surround).anchors}
    assert "old ledger packing" in {b.role for b in surround.boards}
    assert "old ledger packing" not in anchored
    assert "shelf nailer" in anchored


def test_contradictory_entries_are_reported_with_the_pair_and_the_amount():
    """The default's facing is 78 wide and 56 high round an opening 36 by 30."""

    def messages(*settings: str) -> list[str]:
        return [f.message for f in check_survey(plan(*settings)) if f.status is Status.FAIL]

    assert messages() == []
    (outside,) = messages("bolt_one.across=-41")
    assert outside == (
        'The first bolt is 3\'-5" from the centre line, the facing ends at 3\'-3": it would lie 2" outside.'
    )
    (above,) = messages("bolt_two.across=30", "bolt_two.up=57 1/2")
    assert '1 1/2" outside' in above
    (inside,) = messages("bolt_one.across=3", "bolt_one.up=29")
    assert 'lies 1" inside the opening' in inside
    (into,) = messages("old_ledger.top=32")
    assert 'reach 1 1/2" into the opening' in into
    (beside,) = messages("old_ledger.top=50", "old_ledger.right=40")
    assert '1" of it hangs beside the facing' in beside
    (apart,) = messages("bolt_one.across=33", "bolt_two.across=33 1/4")
    assert apart == 'The first bolt and the second bolt are 1/4" apart, 1/4" less than their diameters take.'
