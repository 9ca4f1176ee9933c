"""How the surround meets the facing and the wall: only what is amiss is said."""

from __future__ import annotations

from model.check.backing import check_backing
from model.check.finding import Finding, Status
from model.job import default_job, with_texts
from model.surround import plan_surround


def _check(**texts: str) -> list[Finding]:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return list(check_backing(plan_surround(with_texts(default_job(), pairs))))


def test_a_facing_that_reaches_behind_the_wood_raises_nothing():
    assert _check() == []


def test_a_frieze_over_the_opening_fails():
    (finding,) = _check(frieze__height="25")
    assert (finding.status, finding.part, finding.measured) == (Status.FAIL, "frieze", -3)
    assert finding.message == 'The frieze comes 3" down over the opening.'


def test_bare_wall_beside_and_above_the_facing_is_a_caution():
    beside, above = _check(facing__width="58", facing__height="40")
    assert (beside.status, beside.part, beside.path) == (Status.WARN, "columns", "column.margin")
    assert beside.message == '2" of bare wall shows between the facing and each column.'
    assert (above.status, above.part, above.path) == (Status.WARN, "frieze", "frieze.height")
    assert above.message == '3" of bare wall shows between the facing and the frieze.'


def test_a_facing_flush_with_the_wall_leaves_nothing_standing_off():
    assert _check(facing__width="76", facing__height="45") == []


def test_a_proud_facing_that_ends_behind_the_columns_edge_is_a_caution():
    columns, shelf = _check(facing__proud="2", facing__width="76 1/2")
    assert columns.message == "The columns' outer sides straddle the facing's edge, 2\" off the wall."
    assert columns.path == "column.margin"
    assert shelf.message == "The shelf's ends stand 2\" off the wall beside the facing."


def test_over_a_proud_facing_lower_than_the_shelf_the_sides_step_back_to_the_wall():
    assert _check(facing__proud="2", facing__width="100", facing__height="45") == []


def test_a_proud_facing_larger_than_the_surround_raises_nothing():
    assert _check(facing__proud="2", facing__width="100") == []


def test_columns_clear_of_a_proud_facing_go_back_to_the_wall():
    assert not [f for f in _check(facing__proud="2", facing__width="70") if f.part == "columns"]
