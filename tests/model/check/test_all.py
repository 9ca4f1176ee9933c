"""All checks together, on whole surrounds: order, plain texts, and what must hold for any job in range."""

from __future__ import annotations

from dataclasses import replace
from math import isfinite

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from model.check.all import WHO_DECIDES, check_built, check_surround
from model.check.finding import Bound, Finding, Status
from model.check.fire import check_fire, list_fire_faults, list_placed_faults
from model.check.worst import WORST_FIRST
from model.errors import Refused
from model.job import default_job, with_texts, with_value
from model.parameters import BY_PATH
from model.surround import Surround, plan_surround
from tests.planned import findings_of, plan_of
from tests.strategies import alike, jobs
from tests.wrong_designs import designs

CLEARANCE = "mantel clearance"


def _check(**texts: str) -> tuple[Finding, ...]:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return check_surround(plan_surround(with_texts(default_job(), pairs)))


def _clearance(surround: Surround) -> dict[str, Finding]:
    return {f.part: f for f in check_fire(surround) if f.check == CLEARANCE}


@given(jobs())
def test_any_job_in_range_is_checked_and_findings_come_worst_first(job):
    findings = findings_of(job)
    ranks = [WORST_FIRST.index(finding.status) for finding in findings]
    assert ranks == sorted(ranks)
    assert {"hearth extension", CLEARANCE, "fit"} <= {finding.check for finding in findings}


@given(st.one_of(jobs(), designs()))
def test_an_answer_follows_from_what_is_measured_its_limit_and_which_way_that_holds(job):
    for finding in findings_of(job):
        if finding.measured is None or finding.limit is None:
            continue
        spare = (finding.measured - finding.limit) * (1 if finding.bound is Bound.LEAST else -1)
        assert spare < 0 or finding.status is not Status.FAIL, finding
        assert spare >= -1e-6 or finding.status is not Status.PASS, finding


@given(jobs(piece_one__name="", piece_two__name=""))
def test_every_finding_can_be_read_written_and_pointed_at(job):
    surround = plan_of(job)
    for finding in findings_of(job):
        for number in (finding.measured, finding.limit, *(finding.at or ())):
            assert number is None or isfinite(number), finding
        for text in (finding.message, finding.cure):
            assert text == "" or ((text[0].isupper() or text[0].isdigit()) and text.endswith(".")), finding
            assert "nan" not in text.split(), finding
            assert "inf" not in text.split(), finding
            assert "!" not in text, finding
        assert finding.message
        assert finding.source
        assert bool(finding.cure) or finding.status in (Status.PASS, Status.WARN), finding
        assert finding.path == "" or finding.path in BY_PATH, finding
        assert set(finding.boards) <= set(surround.marks)
        assert len(finding.boards) == len(set(finding.boards))


@given(jobs(site__fireplace="gas"))
def test_no_masonry_figure_is_offered_for_a_gas_fireplace(job):
    for finding in findings_of(job):
        if finding.check in (CLEARANCE, "hearth extension", "concealed wood"):
            assert "IRC" not in finding.rule, finding
            assert "NFPA" not in finding.rule, finding
            assert finding.rule in ("the manual's chart", "the appliance's manual")
            if job.site.rule != "manual" and finding.check != "hearth extension":
                assert finding.status is Status.UNKNOWN
                assert finding.limit is None


@given(jobs(site__fireplace="not_in_use"))
def test_a_fireplace_not_in_use_never_fails_the_fire_rules(job):
    for finding in findings_of(job):
        if finding.check in (CLEARANCE, "hearth extension"):
            assert finding.status is not Status.FAIL


def _list_spans(surround: Surround) -> list[tuple[str, float, float]]:
    """Each piece's role and from where to where it goes from side to side."""
    return [(board.role, board.bounds[0][0], board.bounds[1][0]) for board in surround.boards]


@given(jobs(), st.floats(0.0625, 20))
def test_raising_the_shelf_never_breaks_a_clearance(job, lift):
    low = plan_of(job)
    try:
        high = plan_surround(with_value(job, "shelf.height", job.design.shelf.height + lift))
    except Refused:
        assume(False)
    assume(low.layout.shortfalls == high.layout.shortfalls)
    assume(
        _list_spans(low) == _list_spans(high)
    )  # a cleat that an old ledger parts is whole once it is past it
    before, after = _clearance(low), _clearance(high)
    for part, finding in before.items():
        if finding.status is not Status.FAIL and part in after:
            assert after[part].status is not Status.FAIL, part


@settings(max_examples=60)
@given(jobs(), st.floats(0.0625, 20))
def test_setting_the_columns_further_out_never_breaks_a_clearance(job, push):
    near = plan_of(job)
    try:
        far = plan_surround(with_value(job, "column.margin", job.design.column.margin + push))
    except Refused:
        assume(False)
    assume(near.layout.shortfalls == far.layout.shortfalls)
    assume(len(near.boards) == len(far.boards))  # a return that goes to the wall gets a nailer behind it
    before, after = _clearance(near), _clearance(far)
    for part, finding in before.items():
        if finding.status is not Status.FAIL and part in after:
            assert after[part].status is not Status.FAIL, part


@given(alike())
def test_left_and_right_are_judged_alike(job):
    found = _clearance(plan_of(job))
    for part, finding in found.items():
        twin = found.get(part.replace("left", "right"))
        if part.startswith("left") and twin is not None:
            assert (finding.status, finding.path) == (twin.status, twin.path)
            assert finding.measured == pytest.approx(twin.measured)
            assert finding.limit == pytest.approx(twin.limit)


def test_the_default_job_breaks_no_rule():
    assert all(finding.status is not Status.FAIL for finding in _check())


def test_the_list_says_that_others_decide():
    assert "approve nothing" in WHO_DECIDES
    assert "authority having jurisdiction" in WHO_DECIDES


def test_no_finding_claims_approval():
    for finding in _check() + _check(column__margin="4", hearth__depth="10"):
        text = f"{finding.message} {finding.cure}".lower()
        assert not any(word in text for word in ("approved", "complies", "compliant", "legal", "safe"))


@given(jobs())
def test_only_what_is_about_fire_is_marked_on_the_sheet(job):
    surround = plan_of(job)
    assert all(finding.at is None for finding in check_built(surround))


@given(jobs())
def test_what_the_sheet_marks_is_what_the_whole_check_finds_but_for_its_cures(job):
    surround = plan_of(job)
    whole = list_placed_faults(check_fire(surround))
    assert list_fire_faults(surround) == tuple(
        replace(found, cure=marked.cure, path=marked.path)
        for found, marked in zip(whole, list_fire_faults(surround), strict=True)
    )


@given(jobs())
def test_what_is_known_about_fire_already_gives_the_same_list(job):
    surround = plan_of(job)
    assert check_surround(surround, check_fire(surround)) == findings_of(job)
