"""A nailer without sound places for anchors is named, says why and what helps, and is counted for nothing."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from app.demo import read_demo
from model.check.finding import Finding, Status
from model.check.holding import check_holding
from model.check.nailers_held import check_nailers_held
from model.job import with_texts
from model.surround import Surround, plan_surround
from model.takeoff.anchors import plan_anchors
from tests.planned import findings_of, plan_of
from tests.strategies import jobs

SHORT = {"nailer.ledger": "3 1/2", "anchor.edge": "4"}
"""What the shipped brick front was drawn with before: a ledger that hardly lies on the facing."""


def _plan(texts: dict[str, str], name: str = "brick") -> Surround:
    return plan_surround(with_texts(read_demo(name), list(texts.items())))


def _find(texts: dict[str, str], name: str = "brick") -> dict[str, Finding]:
    return {finding.part: finding for finding in check_nailers_held(_plan(texts, name))}


def test_every_nailer_of_the_shipped_brick_front_is_held():
    assert {part: f.status for part, f in _find({}).items()} == {"nailers": Status.PASS}


def test_a_ledger_over_the_facings_top_is_named_with_the_height_that_would_hold_it():
    """56 3/4 in. is its top, 54 - 4 in. the highest sound place: 6 3/4 and 1/2 in. of wood under it."""
    finding = _find(SHORT)["ledger"]
    assert finding.status is Status.WARN
    assert finding.boards == ("N4",)
    assert "facing's top edge" in finding.message
    assert '7 1/4" high' in finding.cure
    assert finding.path == "nailer.ledger"


@pytest.mark.parametrize(("height", "held"), [("7 3/16", False), ("7 1/4", True)])
def test_the_height_that_is_said_is_the_least_that_holds_it(height, held):
    assert ("ledger" not in _find(SHORT | {"nailer.ledger": height})) is held


def test_an_upright_that_a_published_distance_would_hold_says_so():
    """38 1/4 in. is 3 3/4 off the facing's side: the guide gives the full load from there."""
    finding = _find(SHORT)["left column nailers"]
    assert finding.boards == ("N1a",)
    assert "3 3/4" in finding.cure
    assert "left column nailers" not in _find(SHORT | {"anchor.edge": "3 3/4"})


def test_an_upright_beside_one_that_is_held_may_be_blocked_to_it():
    finding = _find({}, "too-close")["right column nailers"]
    assert finding.boards == ("N1d",)
    assert "Screw it to N1c with blocks" in finding.cure


def test_a_nailer_held_at_one_end_only_says_how_much_of_it_lies_free():
    """Uprights beside a facing 60 in. high that find framing over it alone."""
    wide = {
        "opening.width": "84", "opening.height": "40", "facing.width": "110", "facing.height": "60",
        "hearth.width": "110", "shelf.height": "76", "column.projection": "6", "frieze.projection": "5",
        "room.left": "100", "room.right": "100",
    }  # fmt: skip
    finding = _find(wide, "gas")["left column nailers"]
    assert finding.boards == ("N1a", "N1b")
    assert "has 2 anchors only" in finding.message
    # 60 in. and the 3/4 in. that the lowest screw keeps off the facing.
    assert f"{60.75 * 25.4:.0f} mm of it lie free" in finding.message


def test_a_ledger_without_anchors_carries_nothing_and_holds_no_screws():
    found = {finding.check: finding for finding in check_holding(_plan(SHORT))}
    assert found["shelf sag"].status is Status.WARN
    assert "counts for nothing" in found["shelf sag"].message
    assert "shelf under a weight" in found
    assert (found["shelf fixing"].status, found["shelf fixing"].limit) == (Status.WARN, 0.0)
    held = {finding.check: finding for finding in check_holding(_plan({}))}
    assert {held[check].status for check in ("shelf sag", "shelf fixing")} == {Status.PASS}


@settings(max_examples=60, deadline=None)
@given(jobs())
def test_every_nailer_without_enough_anchors_is_among_the_boards_of_a_finding(job):
    surround = plan_of(job)
    plan = plan_anchors(surround)
    found = [finding for finding in findings_of(job) if finding.check == "nailers held"]
    named = {mark for finding in found for mark in finding.boards}
    assert named == {surround.marks[i] for i in (*plan.loose, *plan.partly)}
    assert all(finding.cure for finding in found if finding.status is not Status.PASS)
