"""Cures are tried on the model: each offered one clears its finding, is the least, and hides no harm."""

from __future__ import annotations

from hypothesis import example, given, settings

from app.demo import read_demo
from model.check.all import check_surround
from model.check.finding import Bound, Finding, Status
from model.check.handle import list_handles
from model.check.in_force import list_rules, read_statuses
from model.check.mantel import CHECK as MANTEL
from model.check.remedy import MOST_OFFERED, Remedy, find_remedies
from model.check.saying import Change, read_number
from model.check.wording import Wording
from model.check.worst import WORST_FIRST
from model.job import Job, default_job, with_texts, with_value
from model.parameters import Kind, find_parameter
from model.surround import Surround, plan_surround
from model.units import format_length
from tests.strategies import jobs
from tests.wrong_designs import designs


def _plan(name: str, **texts: str) -> Surround:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return plan_surround(with_texts(read_demo(name), pairs))


def _pick(surround: Surround, part: str) -> Finding:
    return next(f for f in check_surround(surround) if f.part == part)


def _worst(surround: Surround) -> dict[tuple[str, str], Status]:
    found: dict[tuple[str, str], Status] = {}
    for finding in check_surround(surround):
        found.setdefault((finding.check, finding.part), finding.status)
    return found


def _short(finding: Finding) -> float:
    if finding.measured is None or finding.limit is None:
        return 0.0
    return (finding.limit - finding.measured) * (-1 if finding.bound is Bound.MOST else 1)


@settings(max_examples=25)
@given(designs())
@example(read_demo("too-close"))
def test_any_cure_that_is_offered_clears_its_finding_and_hides_no_harm(job):
    before = plan_surround(job)
    findings, worst = check_surround(before), _worst(before)
    for finding in findings:
        remedies = find_remedies(before, finding)
        assert len(remedies) <= MOST_OFFERED
        for remedy in remedies:
            after = plan_surround(remedy.apply(job))
            _holds(finding, remedy, worst, _worst(after))
            over = [f for f in check_surround(after) if f.status is Status.FAIL and f.check == MANTEL]
            assert remedy.clears_all is (not over)


def _holds(
    finding: Finding,
    remedy: Remedy,
    before: dict[tuple[str, str], Status],
    after: dict[tuple[str, str], Status],
) -> None:
    rank = WORST_FIRST.index
    own = (finding.check, finding.part)
    assert rank(after.get(own, Status.PASS)) > rank(finding.status), remedy
    for key, status in after.items():
        if (
            key != own
            and status in (Status.FAIL, Status.WARN)
            and rank(status) < rank(before.get(key, Status.PASS))
        ):
            assert remedy.worsens, (key, remedy)
            assert status is not Status.FAIL or remedy.breaks, (key, remedy)


@settings(max_examples=15)
@given(designs())
def test_a_cure_of_one_length_is_the_least_on_the_tape(job):
    """Held against every mark of the tape from where it stands to what is offered."""
    surround = plan_surround(job)
    over = [f for f in check_surround(surround) if f.status is Status.FAIL and f.check == MANTEL]
    for finding in over[:2]:
        least = {
            remedy.changes[0].path: remedy.changes[0].value
            for remedy in find_remedies(surround, finding)
            if len(remedy.changes) == 1 and not remedy.clears_all
        }
        for path, value in least.items():
            if find_parameter(path).kind is Kind.LENGTH:
                assert _is_least(job, finding, Change(path, value)), (path, value, finding)


def _is_least(job: Job, finding: Finding, change: Change) -> bool:
    start, step = read_number(job, change.path), Wording(job.about.length_style).step
    way = 1 if change.value > start else -1
    value = change.value - way * step
    while (value - start) * way > step / 2:
        status = read_statuses(plan_surround(with_value(job, change.path, value))).get(finding.part)
        if status is not Status.FAIL:
            return False
        value -= way * max(step, abs(value - start) / 24 // step * step)
    return True


@given(jobs())
@settings(max_examples=40)
def test_quick_answers_are_those_of_the_findings(job):
    surround = plan_surround(job)
    quick = read_statuses(surround)
    said = {f.part: f.status for f in check_surround(surround) if f.check == MANTEL and f.at is not None}
    if not quick or job.site.fireplace == "not_in_use" or surround.layout.leans:
        return
    assert {part: quick[part] for part in said if part in quick} == said


@given(jobs())
@settings(max_examples=5)
def test_any_job_in_range_may_be_cured_or_not_but_never_raises(job):
    surround = plan_surround(job)
    for finding in check_surround(surround)[:3]:
        for remedy in find_remedies(surround, finding):
            assert remedy.apply(surround.asked or job) != (surround.asked or job)


def test_columns_too_near_are_set_off_and_the_value_stands_in_tape_fractions():
    surround = _plan("too-close")
    first, *_ = find_remedies(surround, _pick(surround, "left column"))
    assert first.sentence == 'Set the columns 1\'-0" from the opening instead of 6 1/2".'
    assert first.changes == (Change("column.margin", 12.0),)
    assert format_length(first.changes[0].value, surround.job.about.length_style) in first.sentence


def test_where_one_change_is_not_enough_for_all_clearances_two_are():
    surround = _plan("too-close")
    remedies = find_remedies(surround, _pick(surround, "left column"))
    whole = next(remedy for remedy in remedies if remedy.clears_all)
    assert {change.path for change in whole.changes} == {"column.margin", "shelf.height"}


def test_columns_pushed_into_a_wall_are_made_up_for_at_the_shelfs_end():
    """10 in. of margin, 2 in. short; the shelf's end then reaches past the wall that is free."""
    surround = _plan("bedroom", column__margin="10", room__right="18 1/2", bed_mould__on="no")
    remedies = find_remedies(surround, _pick(surround, "right column"))
    assert remedies
    assert not any(remedy.breaks for remedy in remedies)
    assert any({"column.margin", "shelf.overhang_right"} == {c.path for c in r.changes} for r in remedies)


def test_what_is_within_or_not_known_has_no_cure():
    surround = _plan("brick")
    assert find_remedies(surround, _pick(surround, "shelf")) == ()
    unknown = _plan("gas", site__rule="irc")
    assert find_remedies(unknown, check_surround(unknown)[0]) == ()


def test_a_size_that_has_no_say_is_never_offered():
    surround = _plan("too-close", plinth__on="no")
    paths = {h.path for f in check_surround(surround) for h in list_handles(surround, f)}
    assert not any(path.startswith("plinth") for path in paths)


def test_no_rules_are_named_where_nothing_is_known():
    assert list_rules(_plan("gas", site__rule="irc").job.site) == ((), ())


def test_a_findings_own_sentence_rules_out_nothing_that_clears_it():
    """Under a low ceiling no height helps; the search still finds what is slimmer or left off."""
    low = plan_surround(with_texts(default_job(), [("opening.height", "52"), ("room.ceiling", "66")]))
    nailers, mould = _pick(low, "frieze nailers"), _pick(low, "bed mould")
    assert nailers.cure == "No height below the ceiling clears it here."
    assert [r.changes[0].path for r in find_remedies(low, nailers)] == ["frieze.projection"]
    assert mould.cure == "Leave the bed mould off."
    assert [r.changes[0].path for r in find_remedies(low, mould)] == [mould.path]
