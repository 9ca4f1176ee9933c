"""A made-up manual's chart, no appliance's own: how its rows are read. Nothing here is a published figure."""

from __future__ import annotations

from math import isinf

import numpy as np
import pytest

from model.check.finding import Status
from model.check.manual import least_by_chart
from tests.wood import hold, place_above, place_at_corner, place_beside

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
    assert least_by_chart(SHELF, np.array([projection])) == [least]


def test_past_the_last_row_nothing_is_permitted():
    assert isinf(least_by_chart(SHELF, np.array([12.25]))[0])


def test_without_rows_nothing_is_known():
    assert np.isnan(least_by_chart((), np.array([1.0]))).all()


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
