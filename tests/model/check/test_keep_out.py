"""The outlines drawn for the clearance rules say the same as the rules."""

from __future__ import annotations

from math import hypot

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.check.clearance import irc_greatest_projection, straight_distance
from model.check.keep_out import Ring, list_allowed_beside, list_allowed_slope, list_keep_out_rings
from model.check.mantel import RULES
from model.job import default_job, with_texts
from model.site import Site
from tests.strategies import jobs


def _site(**texts: str) -> Site:
    return with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()]).site


def _area(ring: Ring) -> float:
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1], strict=True)) / 2


def _is_inside(ring: Ring, x: float, y: float) -> bool:
    inside = False
    for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1], strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) / (y1 - y0) * (x1 - x0):
            inside = not inside
    return inside


@given(jobs())
def test_rings_run_counter_clockwise_from_the_hearth_up_alike_on_both_sides(job):
    for ring in list_keep_out_rings(job.site):
        assert _area(ring) > 0
        assert min(y for _, y in ring) == 0
        assert {(-x, y) for x, y in ring} == set(ring)


@pytest.mark.parametrize("rule", ["irc", "nfpa211", "strictest", "canada"])
@given(st.floats(-40, 40), st.floats(0.01, 60))
def test_inside_the_first_ring_no_wood_may_be_and_outside_thin_wood_may(rule, x, y):
    site = _site(site__rule=rule)
    beside, above = max(abs(x) - 18, 0.0), max(y - 30, 0.0)
    if abs(hypot(beside, above) - 6) < 0.13:  # 150 mm are 5.91 in.
        return
    first = list_keep_out_rings(site)[0]
    assert _is_inside(first, x, y) is _is_over(site, 0.5, beside, above)


@pytest.mark.parametrize("rule", ["irc", "nfpa211", "strictest", "canada"])
@given(st.floats(-40, 40), st.floats(0.01, 60))
def test_outside_the_second_ring_bold_wood_may_be_and_inside_not(rule, x, y):
    """Just over 1 1/2 in. out, the least that counts as bold."""
    site = _site(site__rule=rule)
    beside, above = max(abs(x) - 18, 0.0), max(y - 30, 0.0)
    if min(abs(hypot(beside, above) - 12), abs(beside - 7.5), abs(beside - 5.9), abs(above - 12)) < 0.2:
        return
    second = list_keep_out_rings(site)[1]
    assert _is_inside(second, x, y) is _is_over(site, 1.51, beside, above)


def _is_over(site: Site, projection: float, beside: float, above: float) -> bool:
    p, b, a = (np.array([value]) for value in (projection, beside, above))
    return any(rule.hold(p, b, a, straight_distance(b, a)).spare[0] < 0 for rule in RULES[site.rule])


def test_the_slope_follows_the_irc():
    slope = list_allowed_slope(_site(site__rule="irc"), reach=9.0)
    assert slope == ((6, 0), (6, 0.75), (12, 1.5), (12, 9))
    for height in (6.5, 8, 11.9):
        on_line = 0.75 + (height - 6) * 0.125
        assert irc_greatest_projection(height) == pytest.approx(on_line)


def test_the_slope_follows_nfpa211():
    assert list_allowed_slope(_site(site__rule="nfpa211"), reach=9.0) == (
        (6, 0),
        (6, 1.5),
        (12, 1.5),
        (12, 9),
    )


def test_the_strictest_slope_is_the_ircs():
    assert list_allowed_slope(_site(site__rule="strictest")) == list_allowed_slope(_site(site__rule="irc"))


CHART = {
    "site__fireplace": "gas",
    "site__rule": "manual",
    "chart__shelf": "1 : 8; 6 : 14",
    "chart__legs": "3 : 6",
}


def test_a_chart_draws_its_first_and_last_rows():
    rings = list_keep_out_rings(_site(**CHART))
    assert [max(y for _, y in ring) for ring in rings] == [38, 44]
    assert [max(x for x, _ in ring) for ring in rings] == [24, 24]
    assert list_allowed_slope(_site(**CHART), reach=5.0) == ((8, 0), (8, 1), (14, 1), (14, 6), (19, 6))


@pytest.mark.parametrize("texts", [{"site__fireplace": "gas"}, {"site__rule": "manual"}])
def test_nothing_is_drawn_where_nothing_is_known(texts):
    assert list_keep_out_rings(_site(**texts)) == ()
    assert list_allowed_slope(_site(**texts)) == ()


@pytest.mark.parametrize("rule", ["irc", "nfpa211", "strictest", "canada"])
@given(st.floats(0.1, 30), st.floats(0.05, 11.9))
def test_from_above_the_shape_holds_just_what_is_too_near_beside_the_opening(rule, beside, projection):
    """A point at the hearth, so that only the side counts; on the boundary itself nothing is claimed."""
    site = _site(site__rule=rule)
    line = list_allowed_beside(site, reach=12.0)
    spares = [
        r.hold(np.array([projection]), np.array([beside]), np.array([-10.0]), np.array([beside])).spare[0]
        for r in RULES[rule]
    ]
    if min(abs(spare) for spare in spares) < 0.01 or abs(projection - 1.5) < 0.01:
        return
    ring = ((0.0, 0.0), *((b, p) for b, p in line), (0.0, line[-1][1]))
    inside = _is_inside(ring, beside, projection)
    assert inside is bool(min(spares) < 0)
