"""Cures are tried on the model: each offered one clears its finding, is the least, and hides no harm."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from app.demo import read_demo
from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.check.handle import list_handles
from model.check.in_force import list_rules, read_statuses
from model.check.mantel import CHECK as MANTEL
from model.check.remedy import MOST_OFFERED, find_remedies
from model.check.saying import Change, say_changes
from model.job import default_job, with_texts, with_value
from model.surround import Surround, plan_surround
from model.units import format_length
from tests.cure_trials import find_smaller, hold_outcome
from tests.planned import findings_of, plan_of
from tests.strategies import jobs
from tests.wrong_designs import designs


def _plan(name: str, **texts: str) -> Surround:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return plan_surround(with_texts(read_demo(name), pairs))


def _pick(surround: Surround, part: str) -> Finding:
    return next(f for f in check_surround(surround) if f.part == part)


@settings(max_examples=20)
@given(designs(), st.integers(0, 3))
@example(read_demo("too-close"), 0)
@example(read_demo("too-close"), 3)
def test_any_cure_that_is_offered_clears_its_finding_and_hides_no_harm(job, which):
    """Every fourth finding of each; `tests.bench.cures` goes through hundreds."""
    before = plan_of(job)
    for finding in findings_of(job)[which::4]:
        remedies = find_remedies(before, finding)
        assert len(remedies) <= MOST_OFFERED
        for remedy in remedies:
            assert list(hold_outcome(job, finding, remedy)) == []


@settings(max_examples=10)
@given(designs(), st.integers(0, 5))
def test_no_value_on_a_fine_grid_does_as_much_and_is_nearer(job, which):
    """Single changes and the second ones of pairs; `tests.bench.cures` tries hundreds."""
    surround = plan_of(job)
    over = [f for f in findings_of(job) if f.status is Status.FAIL]
    for finding in over[which : which + 1]:
        for remedy in find_remedies(surround, finding):
            assert find_smaller(job, finding, remedy, 24) is None, remedy


LEANS = {"plumb__left": "-1", "plumb__right": "-1", "column__margin": "12 1/2"}
"""An inch away from the room at the top; NFPA 211 wants 6 in. and what it stands out beside the opening."""


def test_before_masonry_that_falls_back_room_is_sought_until_it_is_clear_there_too():
    surround = _plan("bedroom", site__rule="nfpa211", column__projection="6 1/2", **LEANS)
    finding = next(f for f in check_surround(surround) if f.message.startswith("Measured from the masonry"))
    assert finding.status is Status.WARN
    remedies = find_remedies(surround, finding)
    assert remedies
    for remedy in remedies:
        after = check_surround(plan_surround(remedy.apply(surround.job)))
        assert not [
            f for f in after if f.part == finding.part and f.check == MANTEL and f.status is Status.WARN
        ]


def test_a_size_off_the_tape_is_said_exactly_where_rounding_would_hide_the_change():
    """44 in. are 1117.6 mm, which a tape in whole millimetres reads as 1118."""
    job = with_value(read_demo("gas"), "shelf.height", 44.0)
    sentence = say_changes(job, [Change("shelf.height", 1118 / 25.4)])
    assert sentence == "Set the shelf's top 1118 mm over the floor instead of 1117.60 mm."


@given(jobs())
@settings(max_examples=40)
def test_quick_answers_are_those_of_the_findings(job):
    surround = plan_of(job)
    quick = read_statuses(surround)
    said: dict[str, Status] = {}
    for finding in findings_of(job):
        if finding.check == MANTEL and finding.at is not None:
            said.setdefault(finding.part, finding.status)
    if not quick or job.site.fireplace == "not_in_use":
        return
    assert {part: quick[part] for part in said if part in quick} == said


@given(jobs())
@settings(max_examples=5)
def test_any_job_in_range_may_be_cured_or_not_but_never_raises(job):
    surround = plan_of(job)
    for finding in findings_of(job)[:3]:
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


@pytest.mark.parametrize(
    ("row", "part"),
    [("back_band.on", "back band"), ("slip.on", "slip"), ("capital.on", "left capital")],
)
def test_what_is_laid_on_and_stands_too_near_may_be_left_off(row, part):
    surround = plan_surround(with_texts(read_demo("too-close"), [(row, "yes")]))
    finding = _pick(surround, part)
    assert finding.status is Status.FAIL
    [left_off] = [r for r in find_remedies(surround, finding) if Change(row, False) in r.changes]
    after = check_surround(plan_surround(left_off.apply(surround.job)))
    assert part not in {f.part for f in after if f.status is Status.FAIL}


def test_a_plank_that_moves_too_much_may_be_less_deep_or_built_up():
    surround = _plan("brick", shelf__kind="plank", shelf__overhang_front="8")
    finding = next(f for f in check_surround(surround) if f.path == "shelf.kind")
    assert finding.status is Status.WARN
    tried = [change for remedy in find_remedies(surround, finding) for change in remedy.changes]
    assert [change.path for change in tried] == ["shelf.overhang_front", "shelf.kind"]
    assert tried[1].value == "built_up"
