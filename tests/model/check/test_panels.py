"""Solid panels are reported with what moves and what holds them, each by its own frame."""

from __future__ import annotations

import pytest

from model.check.all import check_surround
from model.check.explain import explain_finding
from model.check.finding import Status
from model.check.panels import CHECK, check_panels, list_floating
from model.check.remedy import find_remedies
from model.job import default_job, with_texts
from model.surround import plan_surround


def _plan(**texts: str):
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    settings = [("panel.kind", "solid"), ("panel.reveal", "1/4"), *pairs]
    return plan_surround(with_texts(default_job(), settings))


def test_sheets_are_not_asked():
    assert not list(check_panels(_plan(panel__kind="sheet")))


def test_each_frame_with_solid_panels_is_reported_and_holds_them():
    surround = _plan(over__on="yes")
    found = list(check_panels(surround))
    assert [f.part for f in found] == ["left column", "right column", "frieze", "overmantel"]
    assert {f.status for f in found} == {Status.PASS}
    assert all(f.measured >= f.limit == 1 / 16 for f in found)
    assert all(f.boards for f in found)


def test_the_movement_that_is_told_is_poplars_between_four_and_ten_percent():
    """4 in. between the column's stiles: 4 + 3/4 - 1/16 over 1.00603 is 4.659, cut to 4 5/8; times 4 over
    (3000 / 8.2 - 30 + 8) is 0.0538 lost, times 2.074 is 0.0279 gained."""
    finding = next(iter(check_panels(_plan())))
    assert '4 5/8"' in finding.message
    assert "0.054 in. to 4.0 %" in finding.message
    assert "0.028 in. to 10.1 %" in finding.message
    assert finding.measured == pytest.approx(4.625 - 0.0538 - 4 - 0.375, abs=2e-4)


def test_wood_that_is_built_damp_has_further_to_shrink():
    """At 12 % it only shrinks, so that it needs no room to swell and is cut wider."""
    dry, damp = (next(iter(list_floating(_plan(rates__moisture=m)))) for m in ("8", "12"))
    assert damp.loses > 1.9 * dry.loses
    assert (damp.grows, dry.grows) == (0, pytest.approx(0.0279, abs=1e-4))
    assert damp.width > dry.width


def test_what_cannot_be_grooved_offers_sheets_and_so_passes():
    surround = _plan(column__taper="2", panel__reveal="3/4")
    (finding,) = (f for f in check_surround(surround) if f.path == "panel.kind" and f.status is Status.FAIL)
    assert "tapered" in finding.message
    remedy = find_remedies(surround, finding)[0]
    assert remedy.sentence == "Make the panels of sheet."
    assert not remedy.breaks
    cured = check_surround(plan_surround(remedy.apply(surround.job)))
    assert not [f for f in cured if f.path == "panel.kind" and f.status is not Status.PASS]


def test_a_reveal_too_deep_for_a_groove_is_cured_by_what_is_drawn():
    surround = _plan(panel__reveal="3/4")
    (finding,) = (f for f in check_surround(surround) if f.path == "panel.reveal")
    assert finding.status is Status.FAIL
    (remedy,) = find_remedies(surround, finding)
    assert "3/8" in remedy.sentence
    assert not plan_surround(remedy.apply(surround.job)).layout.shortfalls


def test_the_page_works_out_the_cut_width_by_sums_that_come_out():
    surround = _plan()
    finding = next(f for f in check_surround(surround) if f.check == CHECK)
    page = explain_finding(surround, finding)
    line = next(line for line in page.arithmetic if line.startswith("Driest"))
    assert "4.6250 \N{MINUS SIGN} 0.0538 \N{MINUS SIGN} 4.0000 \N{MINUS SIGN} 0.375 = 0.1962 in." in line
    assert "ANSI/AWI 0622" in page.source
