"""A page says the rule, the sums with the surround's own numbers, the source, and who decides."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings

from app.demo import list_demos, read_demo
from model.check.all import WHO_DECIDES, check_surround
from model.check.explain import CLAUSES, Explanation, explain_finding
from model.check.finding import Finding
from model.check.mantel import CHECK as MANTEL
from model.check.manuals_hearth import CHECK as HEARTH
from model.check.sums import Sums
from model.job import with_texts
from model.surround import plan_surround
from tests.planned import findings_of, plan_of
from tests.strategies import jobs


def _explain(name: str, part: str, *texts: tuple[str, str]) -> tuple[Finding, Explanation]:
    surround = plan_surround(with_texts(read_demo(name), texts))
    finding = next(f for f in check_surround(surround) if f.part == part and f.check != "fit")
    return finding, explain_finding(surround, finding)


SIGNS = ("\N{SQUARE ROOT}", "\N{SUPERSCRIPT FOUR}", "²", "/ (", "lb ×")
"""Of sums that are worked out in tests of their own."""


def _follows(line: str) -> bool:
    """Whether ``a - b / 2 = c`` in a line comes out, by arithmetic done here."""
    found = re.search(r"(\(?[0-9.]+(?: [+/\u2212×] \(?[0-9.]+\)?)+) = (\u2212?[0-9.]+)", line)
    if found is None or any(sign in line for sign in SIGNS):
        return True
    sum_text, result = (text.replace("\N{MINUS SIGN}", "-").replace("×", "*") for text in found.groups())
    return eval(sum_text) == pytest.approx(float(result.rstrip(".")), abs=0.006)


def test_a_plinth_too_near_is_worked_out_line_by_line():
    """Opening 36 in. wide; the plinth's corner 23.75 from the centre line, 4.75 out; arithmetic by hand."""
    _, page = _explain("too-close", "left plinth")
    assert page.title == "Left plinth: mantel clearance"
    assert page.answer.startswith("Over: ")
    assert "Beside the opening: 23.75 \u2212 36 / 2 = 5.75 in." in page.arithmetic
    assert "By IRC: out 4.75 in., more than 12 / 8 = 1.5 in.: 12 in. are needed." in page.arithmetic
    assert any("6 + 4.75 = 10.75 in. beside" in line for line in page.arithmetic)
    assert page.arithmetic[-1] == "5.75 < 12 in.: 6.25 in. short."
    assert page.decides == WHO_DECIDES


@pytest.mark.parametrize("units", ["inches", "millimetres"])
def test_what_is_short_of_nothing_by_a_hair_of_rounding_is_nothing(units):
    sums = Sums(plan_surround(with_texts(read_demo("brick"), [("job.units", units)])))
    assert [sums.bare(inches) for inches in (-1e-9, 0.0, 1e-9)] == ["0", "0", "0"]
    assert sums.bare(-1 / 4) == {"inches": "\u22120.25", "millimetres": "\u22126.3"}[units]


def test_a_hearth_is_worked_out_by_the_openings_area():
    _, page = _explain("too-close", "hearth, front")
    assert "Area: 36 × 30 / 144 = 7.50 sq ft, 6 or more." in page.arithmetic
    assert page.arithmetic[-1] == "16 < 20 in.: 4 in. short."


def test_a_chart_shows_its_rows_and_from_where_it_counts():
    _, page = _explain("gas", "shelf", ("chart.datum", "outlet"), ("chart.datum_height", "500 mm"))
    assert any(line.startswith("Rows above (20: 150, 60: 220") for line in page.arithmetic)
    assert "Heights count from the hot-air outlet, 500 mm over the hearth." in page.arithmetic
    assert "entered by the user" in page.source


@pytest.mark.parametrize("rule", ["irc", "nfpa211", "strictest", "canada", "australia", "england"])
@pytest.mark.parametrize("name", ["brick", "bedroom", "too-close"])
def test_every_clause_in_force_is_said_in_words_and_every_sum_comes_out(name, rule):
    surround = plan_surround(with_texts(read_demo(name), [("site.rule", rule)]))
    for finding in check_surround(surround):
        page = explain_finding(surround, finding)
        for line in page.arithmetic:
            assert _follows(line), line
        if finding.check in (MANTEL, HEARTH) and finding.limit is not None:
            assert page.clauses, finding.rule
            assert all(name in CLAUSES for name in finding.rule.split(", ")), finding.rule


@given(jobs())
@settings(max_examples=25)
def test_any_finding_of_any_job_can_be_explained(job):
    surround = plan_of(job)
    for finding in findings_of(job):
        page = explain_finding(surround, finding)
        assert page.source
        for line in (*page.arithmetic, page.answer):
            assert "nan" not in line.split(), line
            assert "inf" not in line.split(), line
            assert not line.endswith(".."), line


def test_the_demos_have_pages_for_all_their_findings():
    for name in list_demos():
        surround = plan_surround(read_demo(name))
        titles = [explain_finding(surround, finding).title for finding in check_surround(surround)]
        assert all(titles)
