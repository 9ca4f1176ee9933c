"""Anchors: where they go, how many the weight asks for, and what is said where they find no room."""

from __future__ import annotations

from itertools import combinations
from math import hypot

import pytest
from hypothesis import given, settings

from app.demo import list_demos, read_demo
from model.check.all import check_surround
from model.check.finding import Status
from model.job import default_job, with_texts
from model.reference.anchors import OFF_FACING
from model.surround import plan_surround
from model.takeoff.anchor_places import WALL, list_nailers
from model.takeoff.anchors import list_order, plan_anchors
from tests.planned import findings_of, plan_of
from tests.strategies import jobs


def _plan(**texts):
    return plan_surround(
        with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()])
    )


def _found(surround):
    return [f for f in check_surround(surround) if f.check == "anchors"]


@settings(max_examples=60, deadline=None)
@given(jobs())
def test_every_anchor_lies_in_its_nailer_and_keeps_its_distances(job):
    surround = plan_of(job)
    rule, opening, facing = job.design.anchor, surround.layout.opening_side, surround.layout.facing_side
    plan = plan_anchors(surround)
    for anchor in plan.anchors:
        low, high = surround.boards[anchor.board].bounds
        assert low[0] < anchor.x < high[0]
        assert low[1] < anchor.y < high[1]
        if anchor.into == WALL:
            off = max(abs(anchor.x) - facing, anchor.y - surround.layout.facing_top)
            assert off >= OFF_FACING.value - 1e-6
            continue
        over = anchor.y - surround.layout.opening_top
        assert abs(anchor.x) - opening >= rule.edge - 1e-6 or over >= max(rule.edge, rule.lintel) - 1e-6
        assert facing - abs(anchor.x) >= rule.edge - 1e-6
        assert surround.layout.facing_top - anchor.y >= rule.edge - 1e-6
    for one, other in combinations(plan.anchors, 2):
        assert hypot(one.x - other.x, one.y - other.y) >= 4 - 1e-5
    held = {anchor.board for anchor in plan.anchors}
    assert set(plan.loose) | held == set(list_nailers(surround))
    assert not set(plan.loose) & held
    (finding,) = (finding for finding in findings_of(job) if finding.check == "anchors")
    assert (finding.status is Status.PASS) is plan.holds


def test_the_number_follows_from_weight_and_lever_arm_by_hand():
    """Pull of weight times lever over drop against 50 lb, and weight against 100 lb, added up."""
    plan = plan_anchors(_plan())
    share = plan.weight * plan.lever / plan.drop / 50 + plan.weight / 100
    assert plan.needed - 1 < max(share, 1.5) <= plan.needed
    assert plan.upper * plan.tension == pytest.approx(plan.weight * plan.lever / plan.drop)
    assert plan.upper * plan.shear == pytest.approx(plan.weight)
    assert plan.used == pytest.approx(share / plan.upper)


def test_a_weaker_wall_asks_for_more_anchors():
    assert plan_anchors(_plan(anchor__shear="10")).needed > plan_anchors(_plan()).needed


@pytest.mark.parametrize("name", list_demos())
def test_the_shipped_jobs_are_held(name):
    assert plan_anchors(plan_surround(read_demo(name))).holds


def test_where_too_few_find_sound_masonry_it_is_said():
    weak = {"anchor__shear": "5", "anchor__tension": "5", "anchor__spacing": "32"}
    (finding,) = _found(_plan(**weak, facing__width="64", facing__height="46"))
    assert finding.measured < finding.limit
    assert "Pull-test" in finding.cure


def test_a_ledger_that_was_there_is_tested_before_it_carries_the_shelf():
    used = _plan(old_ledger__top="51 1/2", old_ledger__use="use")
    kept = _plan(old_ledger__top="40", old_ledger__use="keep")
    assert any("pull-test each of its own fixings" in step for step in list_order(used))
    assert not any("old ledger" in step for step in list_order(kept))


def test_the_order_begins_at_the_level_line_and_names_the_higher_foot():
    steps = list_order(_plan(level__centre="30", level__left="30 3/4", level__right="30"))
    assert steps[0].startswith("1. Snap a level line")
    assert any("right foot" in step for step in steps)
    assert not any("cord" in step for step in steps)
    assert any("cord holes" in step for step in list_order(_plan(cord__on="yes")))


def test_the_order_names_what_has_no_anchor_before_the_ledger_is_fixed():
    """The shipped brick front with a ledger that lies over the facing's top edge but for 3/4 in."""
    short = with_texts(read_demo("brick"), [("nailer.ledger", "3 1/2")])
    steps = list_order(plan_surround(short))
    said = next(k for k, step in enumerate(steps) if "No sound place was found for an anchor" in step)
    fixed = next(k for k, step in enumerate(steps) if "Fix the ledger" in step)
    assert "N4" in steps[said]
    assert said < fixed
    assert not any("No sound place" in step for step in list_order(plan_surround(read_demo("brick"))))
