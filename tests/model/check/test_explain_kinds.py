"""Every kind of check has a page: what is asked, sums that come out, and the finding's own numbers."""

from __future__ import annotations

import re
from math import atan2, degrees, hypot

import pytest
from hypothesis import given, settings

from app.demo import read_demo
from model.check import (
    anchors,
    concealed,
    cord_way,
    holding,
    house,
    joinery,
    mantel,
    manuals_hearth,
    nailers_held,
    panels,
    plain,
    plinths,
    television,
    zone,
)
from model.check.all import WHO_DECIDES, check_surround
from model.check.explain import ARITHMETIC, Explanation, explain_finding
from model.check.finding import Finding
from model.job import with_texts
from model.surround import Surround, plan_surround
from render.explained import PAGES, draw_explanation, list_legend
from tests.planned import findings_of, pictures_of, plan_of
from tests.strategies import jobs

KINDS = {
    mantel.CHECK: ("too-close", {}),
    manuals_hearth.CHECK: ("too-close", {}),
    zone.CHECK: ("gas", {"chart.none_above": "254 mm"}),
    concealed.CHECK: ("too-close", {}),
    holding.SAG: ("brick", {}),
    holding.WEIGHED: ("brick", {"frieze.projection": "3/4"}),
    holding.FIXING: ("brick", {}),
    television.CHECK: ("brick", {"tv.diagonal": "65"}),
    house.CHECK: ("brick", {"house.year": "1950", "house.painted": "14"}),
    cord_way.CHECK: ("bedroom", {"cord.on": "yes"}),
    anchors.CHECK: ("brick", {}),
    nailers_held.CHECK: ("too-close", {}),
    joinery.CHECK: ("brick", {}),
    plinths.CHECK: ("bedroom", {"baseboard.height_left": "10", "facing.width": "50"}),
    panels.CHECK: ("brick", {"panel.kind": "solid"}),
    plain.FIT: ("brick", {"room.left": "20"}),
    plain.SURVEY: ("brick", {"facing.width": "40"}),
}
"""A shipped job and what is set in it, by the name of a check that it then has a finding of."""


def _find(check: str) -> tuple[Surround, Finding, Explanation]:
    name, texts = KINDS[check]
    surround = plan_surround(with_texts(read_demo(name), list(texts.items())))
    finding = next(f for f in check_surround(surround) if f.check == check)
    return surround, finding, explain_finding(surround, finding)


def _read(line: str) -> list[float]:
    return [
        float(word.replace("\N{MINUS SIGN}", "-"))
        for word in re.findall("\N{MINUS SIGN}?[0-9]+\\.?[0-9]*", line)
    ]


@pytest.mark.parametrize("check", KINDS)
def test_a_page_says_what_is_asked_the_findings_own_numbers_the_source_and_who_decides(check):
    _, finding, page = _find(check)
    assert page.clauses
    assert page.source
    assert str(finding.standing) in page.source
    assert page.decides == WHO_DECIDES
    if finding.measured is not None and finding.limit is not None:
        metric = "mm" in page.arithmetic[-1]
        scale = 25.4 if metric else 1.0
        numbers = _read(page.arithmetic[-1])
        assert numbers[0] == pytest.approx(finding.measured * scale, abs=0.06)
        assert numbers[1] == pytest.approx(finding.limit * scale, abs=0.06)


@pytest.mark.parametrize("check", KINDS)
def test_a_page_draws_its_rule_and_says_what_its_signs_mean(check):
    surround, finding, _ = _find(check)
    drawing = draw_explanation(surround, finding)
    plain_marks = set(draw_explanation(surround, _find(house.CHECK)[1]).marks)
    if check != house.CHECK:
        assert set(drawing.marks) - plain_marks
    assert list_legend(drawing) or check in (house.CHECK, plain.FIT, plain.SURVEY)


def test_no_check_is_without_a_page():
    surround = plan_surround(read_demo("too-close"))
    assert {f.check for f in check_surround(surround)} <= set(KINDS)
    assert set(PAGES) == set(KINDS)
    assert set(ARITHMETIC) <= set(KINDS)


def test_a_sag_is_worked_out_from_load_span_and_stiffness():
    """Five times load times span to the fourth over 384 times stiffness and inertia, read off the page."""
    _, _, page = _find(holding.SAG)
    line = next(line for line in page.arithmetic if line.startswith("5 ×"))
    _, load, span, _, stiffness, inertia, sag = _read(line.replace("\N{SUPERSCRIPT FOUR}", ""))
    assert 5 * load * span**4 / (384 * stiffness * inertia) == pytest.approx(sag, rel=2e-3)


def test_what_is_more_than_it_may_be_is_too_much_and_not_short():
    """A slip 4 in. wide: its mitres open by 0.0658 in., 1/16 in. may show."""
    job = with_texts(read_demo("brick"), [("slip.on", "yes"), ("slip.width", "4")])
    surround = plan_surround(job)
    finding = next(f for f in check_surround(surround) if f.check == joinery.CHECK)
    assert explain_finding(surround, finding).arithmetic[-1] == "0.0658 > 0.0625 in.: 0.0033 in. too much."


def test_the_pull_behind_a_shelf_is_the_load_times_its_levers():
    _, finding, page = _find(holding.FIXING)
    load, front, behind, pull = _read(page.arithmetic[0])
    assert load * front / behind == pytest.approx(pull, abs=0.006)
    assert pull == pytest.approx(finding.measured, abs=0.06)


def test_a_screen_is_looked_up_to_by_the_angle_that_is_said():
    _, finding, page = _find(television.CHECK)
    line = next(line for line in page.arithmetic if line.startswith("Up:"))
    middle, eye, away, up, _ = _read(line.replace("\N{MINUS SIGN} ", "- "))
    assert degrees(atan2(middle - eye, away)) == pytest.approx(up, abs=0.006)
    assert up == finding.measured
    assert hypot(away, middle - eye) > away


def test_anchors_are_reckoned_from_weight_and_lever():
    _, finding, page = _find(anchors.CHECK)
    weight, lever, moment, drop, pull = _read(page.arithmetic[0])
    assert weight * lever == pytest.approx(moment, rel=2e-3)
    assert moment / drop == pytest.approx(pull, abs=0.06)
    assert finding.limit == 2
    assert any("a safety factor of 5" in clause for clause in page.clauses)


def test_a_plank_moves_by_its_shrinkage_and_the_moisture_of_the_air():
    """11 1/4 in. of poplar: width × change over (3000 / shrinkage - 30 + start)."""
    job = with_texts(read_demo("brick"), [("shelf.kind", "plank"), ("shelf.depth", "11 1/4")])
    surround = plan_surround(job)
    finding = next(f for f in check_surround(surround) if f.path == "shelf.kind")
    page = explain_finding(surround, finding)
    line = next(line for line in page.arithmetic if line.startswith("Beside a fire"))
    dry, damp, width, change, _, shrinks, _, start, moved = _read(line.replace("\N{MINUS SIGN} ", ""))
    assert (start, change) == (dry, pytest.approx(damp - dry, abs=0.006))
    assert width * change / (3000 / shrinks - 30 + dry) == pytest.approx(moved, abs=2e-3)
    assert moved == pytest.approx(finding.measured, abs=1e-4)


@settings(max_examples=12)
@given(jobs())
def test_every_finding_of_any_job_has_words_for_what_is_asked_and_a_drawing(job):
    surround = plan_of(job)
    for finding, picture in zip(findings_of(job), pictures_of(job), strict=True):
        page = explain_finding(surround, finding)
        assert page.clauses, finding
        assert page.clauses[0][0].isupper() or page.clauses[0][0].isdigit()
        assert picture.marks
