"""A made-up manual's chart, no appliance's own: how its rows are read. Nothing here is a published figure."""

from __future__ import annotations

from math import isinf

import numpy as np
import pytest

from model.check.all import check_surround
from model.check.chart import Table
from model.check.finding import Finding, Status
from tests.wood import hold, place_above, place_at_corner, place_beside, surround_of

SHELF = ((0.75, 8), (2.5, 10), (4, 12), (6, 14), (8, 16), (10, 18), (12, 20))
LEGS = ((0.75, 4), (3, 6), (6, 8), (12, 12))
CHART = {
    "site__fireplace": "gas",
    "site__rule": "manual",
    "chart__shelf": "; ".join(f"{p} : {d}" for p, d in SHELF),
    "chart__legs": "; ".join(f"{p} : {d}" for p, d in LEGS),
    "chart__source": "Invented manual, page 9",
}


@pytest.mark.parametrize(
    ("projection", "least"),
    [(0.5, 8), (0.75, 8), (0.8, 10), (4, 12), (5, 14), (7, 16), (12, 20)],
)
def test_between_rows_the_chart_steps_up(projection, least):
    assert Table(SHELF).least(np.array([projection])) == [least]


def test_past_the_last_row_nothing_is_permitted():
    assert isinf(Table(SHELF).least(np.array([12.25]))[0])


def test_without_rows_nothing_is_known():
    assert np.isnan(Table(()).least(np.array([1.0]))).all()


@pytest.mark.parametrize(
    ("board", "status", "measured", "limit"),
    [
        (place_above(5, 14.5), Status.PASS, 14.5, 14),
        (place_above(5, 14), Status.WARN, 14, 14),
        (place_above(5, 13.5), Status.FAIL, 13.5, 14),
        (place_above(7, 16.5), Status.PASS, 16.5, 16),
        (place_above(12.25, 40), Status.FAIL, 12.25, 12),
        (place_beside(5, 8.5), Status.PASS, 8.5, 8),
        (place_beside(5, 7.5), Status.FAIL, 7.5, 8),
        (place_beside(13, 40), Status.FAIL, 13, 12),
    ],
)
def test_wood_is_held_against_the_chart(board, status, measured, limit):
    finding = hold(board, **CHART)
    assert (finding.status, finding.measured, finding.limit) == (status, measured, limit)
    assert finding.rule == "the manual's chart"
    assert finding.source == "Invented manual, page 9"


def test_off_the_corner_either_table_is_enough():
    assert hold(place_at_corner(5, 9, 1), **CHART).status is Status.PASS
    assert hold(place_at_corner(5, 1, 15), **CHART).status is Status.PASS
    assert hold(place_at_corner(5, 7, 13), **CHART).status is Status.FAIL


def test_legs_may_stand_against_an_opening_that_asks_for_nothing_beside():
    touching = hold(place_beside(5, 0), **(CHART | {"chart__legs": "12 : 0"}))
    assert (touching.status, touching.measured, touching.limit) == (Status.WARN, 0, 0)


def test_wood_over_the_opening_fails_by_whichever_table_is_known():
    for known in ("chart__shelf", "chart__legs"):
        other = {"chart__shelf": "", "chart__legs": ""} | {known: CHART[known]}
        finding = hold(place_above(5, -4), **(CHART | other))
        assert (finding.status, finding.measured) == (Status.FAIL, 0)


def test_where_the_legs_are_missing_the_sides_are_not_known():
    legless = CHART | {"chart__legs": ""}
    assert hold(place_above(5, 15), **legless).status is Status.PASS
    beside = hold(place_beside(5, 30), **legless)
    assert (beside.status, beside.limit, beside.path) == (Status.UNKNOWN, None, "chart.legs")
    assert hold(place_at_corner(5, 30, 1), **legless).status is Status.UNKNOWN
    assert hold(place_at_corner(5, 1, 15), **legless).status is Status.PASS


def test_where_the_shelf_is_missing_the_top_is_not_known():
    topless = CHART | {"chart__shelf": ""}
    above = hold(place_above(5, 40), **topless)
    assert (above.status, above.path) == (Status.UNKNOWN, "chart.shelf")
    assert hold(place_beside(5, 9), **topless).status is Status.PASS


def test_without_a_chart_nothing_is_known():
    finding = hold(place_above(7, 40), site__fireplace="factory_built", site__rule="manual")
    assert (finding.status, finding.measured, finding.limit) == (Status.UNKNOWN, None, None)
    assert finding.part == "whole surround"
    assert finding.path == "chart.shelf"
    assert "chart" in finding.cure


@pytest.mark.parametrize(("projection", "least"), [(0.5, 8), (5, 13), (7, 15), (12, 20)])
def test_a_chart_read_straight_from_row_to_row(projection, least):
    assert Table(SHELF, linear=True).least(np.array([projection])) == pytest.approx([least])


def _shelf(projection: float, distance: float, **more: str) -> Finding:
    return hold(place_above(projection, distance), **(CHART | more))


def test_heights_count_from_what_the_manual_names():
    """An outlet 27 in. up, 3 in. below the opening's top: 14 in. over it are 11 above the opening."""
    outlet = {"chart__datum": "outlet", "chart__datum_height": "27"}
    assert _shelf(5, 11.5, **outlet).status is Status.PASS
    fails = _shelf(5, 10.5, **outlet)
    assert (fails.status, fails.limit) == (Status.FAIL, 11)
    assert '14" over the hot-air outlet, which lies 27" over the hearth' in fails.message


def test_a_chart_from_the_units_base_counts_from_the_hearth():
    """49 in. over a base on the hearth are 19 above an opening 30 in. high."""
    base = {"chart__datum": "base", "chart__datum_height": "0", "chart__shelf": "8 : 49"}
    assert (_shelf(8, 19.5, **base).limit, _shelf(8, 18.5, **base).status) == (19, Status.FAIL)


def test_a_datum_that_was_not_measured_leaves_the_top_not_known():
    lost = _shelf(5, 40, chart__datum="hood")
    assert (lost.status, lost.path) == (Status.UNKNOWN, "chart.datum_height")
    assert "the hood's edge" in lost.message


def test_with_a_hood_its_own_table_holds_and_none_else():
    hooded = {"chart__hood": "yes", "chart__shelf_hood": "6 : 9"}
    assert _shelf(5, 9.5, **hooded).status is Status.PASS
    assert _shelf(5, 9.5).status is Status.FAIL
    missing = _shelf(5, 40, chart__hood="yes")
    assert (missing.status, missing.path) == (Status.UNKNOWN, "chart.shelf_hood")


def test_past_the_last_row_a_formula_may_go_on():
    """14 in. and the projection: 26 for 12 in., 28 for 14."""
    formula = {"chart__shelf": "8 : 22", "chart__plus": "14"}
    assert Table(((8, 22),), plus=14).least(np.array([8, 8.001, 12])) == pytest.approx([22, 22.001, 26])
    assert (_shelf(14, 28.5, **formula).status, _shelf(14, 27.5, **formula).limit) == (Status.PASS, 28)


def test_deeper_than_the_manual_permits_is_over_at_any_height():
    deep = _shelf(9, 60, chart__greatest="8")
    assert (deep.status, deep.measured, deep.limit) == (Status.FAIL, 9, 8)


def test_no_wood_stands_in_the_noncombustible_zone_however_thin():
    assert _shelf(0.5, 8.5).status is Status.PASS
    assert (_shelf(0.5, 8.5, chart__none_above="10").limit) == 10
    beside = hold(place_beside(0.5, 5), **(CHART | {"chart__none_beside": "6"}))
    assert (beside.status, beside.limit) == (Status.FAIL, 6)


@pytest.mark.parametrize(("above", "status"), [("26", Status.PASS), ("26 1/8", Status.FAIL)])
def test_the_facing_covers_the_noncombustible_zone(above, status):
    """The facing is 56 in. high, the opening 30."""
    findings = check_surround(surround_of(place_above(1, 30), **(CHART | {"chart__none_above": above})))
    (finding,) = (f for f in findings if f.check == "noncombustible zone")
    assert (finding.status, finding.path) == (status, "facing.height")


def test_a_local_amendment_holds_with_its_own_numbers_and_its_own_source():
    local = {
        "site__rule": "local",
        "local__shelf": "3/4 : 6; 60 : 14",
        "local__legs": "60 : 10",
        "local__source": "Invented ordinance 12",
    }
    found = hold(place_above(7, 13), **local)
    assert (found.status, found.limit, found.source) == (Status.FAIL, 14, "Invented ordinance 12")
    assert hold(place_beside(7, 10.5), **local).status is Status.PASS
    bare = hold(place_above(7, 40), site__rule="local")
    assert (bare.status, bare.path) == (Status.UNKNOWN, "local.shelf")
