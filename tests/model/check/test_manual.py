"""What is said where an appliance's chart governs. How rows are read is claimed in tests/invented."""

from __future__ import annotations

from hypothesis import given

from model.check.finding import Finding, Status
from model.check.manual import check_manual
from model.job import default_job, with_texts
from model.reference.sourced import Standing
from model.surround import plan_surround
from tests.planned import plan_of
from tests.strategies import jobs
from tests.wood import hold, place_above, place_beside

CHART = {
    "site__fireplace": "gas",
    "site__rule": "manual",
    "chart__shelf": "4 : 8; 8 : 14",
    "chart__legs": "4 : 5; 6 : 9",
}


def _check(**texts: str) -> dict[str, Finding]:
    pairs = [(path.replace("__", "."), text) for path, text in (CHART | texts).items()]
    return {f.part: f for f in check_manual(plan_surround(with_texts(default_job(), pairs)))}


def test_every_part_is_held_against_the_chart():
    found = _check()
    assert len(found) == 10
    assert all(finding.status is Status.PASS for finding in found.values())
    assert (found["shelf"].measured, found["shelf"].limit) == (22, 14)
    assert (found["left column"].measured, found["left column"].limit) == (13, 5)
    assert (found["left plinth"].measured, found["left plinth"].limit) == (12.25, 9)


def test_a_chart_without_its_manual_named_says_so():
    unnamed, named = _check()["shelf"], _check(chart__source="Invented manual, p. 3")["shelf"]
    assert (unnamed.standing, named.standing) == (Standing.ENTERED, Standing.ENTERED)
    assert "published" not in Standing.ENTERED
    assert "not named" in unnamed.source
    assert named.source == "Invented manual, p. 3"


def test_no_masonry_figure_stands_in_a_finding_by_the_chart():
    for finding in _check(column__margin="3", shelf__height="40").values():
        assert not any(
            word in f"{finding.rule} {finding.source} {finding.message}" for word in ("IRC", "NFPA")
        )


def test_what_the_chart_does_not_permit_is_told_by_its_projection():
    finding = hold(place_above(9, 40), **CHART)
    assert finding.message == 'The shelf stands out 9"; the chart ends at 8" and permits no more.'
    assert (finding.measured, finding.limit) == (9, 8)
    assert finding.cure == 'Keep the shelf within 8" of the masonry.'
    assert finding.path == "shelf.depth"
    assert hold(place_beside(7, 40), **CHART).path == "column.projection"


def test_cures_step_down_the_chart_as_well():
    finding = hold(place_beside(4, 3), **CHART)
    assert finding.cure.startswith("Set the columns at least")
    assert (finding.measured, finding.limit) == (3, 5)


def test_less_than_an_eighth_to_spare_is_close_here_too():
    assert hold(place_beside(4, 5.05), **CHART).status is Status.WARN


def test_a_masonry_fireplace_may_be_governed_by_a_manual():
    assert hold(place_above(8, 13), **(CHART | {"site__fireplace": "masonry"})).status is Status.FAIL


@given(
    jobs(
        site__rule="manual",
        chart__datum="opening",
        chart__shelf=(),
        chart__shelf_hood=(),
        chart__legs=(),
        chart__plus=None,
        chart__none_above=None,
        chart__none_beside=None,
    )
)
def test_without_a_chart_there_is_one_finding_and_nothing_is_known(job):
    (finding,) = check_manual(plan_of(job))
    built = job.site.fireplace in ("masonry", "not_in_use")
    shelf = "chart.shelf_hood" if job.site.chart.hood else "chart.shelf"
    path = "site.rule" if built else shelf
    assert (finding.status, finding.limit, finding.path) == (Status.UNKNOWN, None, path)
    assert finding.standing is Standing.NOT_ENTERED
    assert finding.cure.startswith("Choose the code's clauses" if built else "Enter the chart")
