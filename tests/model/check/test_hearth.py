"""What is said of the hearth, and for which fireplaces anything is said at all."""

from __future__ import annotations

import pytest

from model.check.finding import Finding, Status
from model.check.hearth import check_hearth
from model.job import default_job, with_texts
from model.surround import plan_surround


def _check(**texts: str) -> dict[str, Finding]:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return {f.part: f for f in check_hearth(plan_surround(with_texts(default_job(), pairs)))}


def test_front_sides_and_thickness_are_told_apart():
    found = _check(hearth__thickness="3")
    assert {part: finding.path for part, finding in found.items()} == {
        "hearth, front": "hearth.depth",
        "hearth, sides": "hearth.width",
        "hearth, thickness": "hearth.thickness",
    }
    assert all(finding.status is Status.PASS and not finding.cure for finding in found.values())


def test_a_thickness_not_measured_is_not_known():
    finding = _check()["hearth, thickness"]
    assert (finding.status, finding.measured, finding.limit) == (Status.UNKNOWN, None, 2)
    assert finding.cure.startswith("Measure it")


def test_a_short_hearth_is_measured_named_and_cured():
    found = _check(hearth__depth="18", hearth__width="54")
    front, sides = found["hearth, front"], found["hearth, sides"]
    assert (front.status, front.measured, front.limit) == (Status.FAIL, 18, 20)
    assert front.message.startswith(
        'The hearth reaches 18" in front of the facing; an opening of 7.50 sq ft needs 20".'
    )
    assert front.cure == "Bring the hearth out to at least 1'-8\"."
    assert (sides.status, sides.measured, sides.limit) == (Status.FAIL, 9, 12)
    assert sides.cure == "Widen the hearth to at least 5'-0\"."


def test_a_thin_hearth_on_the_level_of_the_opening_has_no_exception():
    """The 3/8 in. are for a firebox floor 8 in. above the extension; a raised hearth is level with it."""
    finding = _check(hearth__thickness="1/2", hearth__height="12")["hearth, thickness"]
    assert finding.status is Status.FAIL
    assert '3/8" is enough only where' in finding.message
    assert "3/8" not in _check(hearth__thickness="1/4")["hearth, thickness"].message


@pytest.mark.parametrize(
    ("rule", "clause", "source"),
    [
        ("irc", "IRC R1001.10", "IRC"),
        ("nfpa211", "NFPA 211 11.3", "NFPA 211"),
        ("strictest", "IRC R1001.10, NFPA 211 11.3", "IRC"),
        ("manual", "IRC R1001.10", "IRC"),
    ],
)
def test_the_clause_follows_the_rules_in_force(rule, clause, source):
    front = _check(site__rule=rule)["hearth, front"]
    assert front.rule == clause
    assert front.source.startswith(source)
    assert ("Slips" in front.message) is (rule in ("nfpa211", "strictest"))


@pytest.mark.parametrize("fireplace", ["gas", "electric", "factory_built"])
def test_an_appliance_leaves_its_hearth_to_its_manual(fireplace):
    (finding,) = _check(site__fireplace=fireplace, hearth__depth="1").values()
    assert (finding.status, finding.measured, finding.limit) == (Status.UNKNOWN, None, None)
    assert "manual" in finding.message
    assert ("R1004.2" in finding.rule) is (fireplace == "factory_built")
