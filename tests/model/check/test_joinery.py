"""Mitres are held to what may show of them, frames to the wood their joints want; worked by hand."""

from __future__ import annotations

from math import hypot, sqrt

import pytest

from app.demo import list_demos, read_demo
from model.check.finding import Status
from model.check.joinery import check_joinery, find_widest_mitre
from model.job import default_job, with_texts
from model.surround import plan_surround


def _plan(**texts: str):
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return plan_surround(with_texts(default_job(), pairs))


def _find(**texts: str):
    return {finding.path: finding for finding in check_joinery(_plan(**texts))}


def test_the_ends_of_a_mitre_part_by_the_pieces_movement_and_the_root_of_two():
    """Two pieces of width w from a corner at (0, 0): one ends at (w, w - wm), the other at (w - wm, w)."""
    mitre = find_widest_mitre(_plan(slip__on="yes", slip__width="4"))
    assert mitre is not None
    assert (mitre.part, mitre.width) == ("slip", 4)
    w, m = mitre.width, mitre.moves
    assert mitre.opens == pytest.approx(hypot(w - (w - w * m), (w - w * m) - w))


def test_a_wide_flat_mitre_opens_further_than_may_show():
    """Poplar, put together at 8 %, 4 % beside a fire: 4 / (3000 / 8.2 - 22) = 0.01163 for each inch."""
    narrow, wide = (_find(slip__on="yes", slip__width=w)["slip.width"] for w in ("3", "4"))
    assert narrow.measured == pytest.approx(3 * 0.01163 * sqrt(2), abs=2e-4)
    assert wide.measured == pytest.approx(4 * 0.01163 * sqrt(2), abs=2e-4)
    assert (narrow.status, wide.status) == (Status.PASS, Status.WARN)
    assert wide.limit == 1 / 16
    assert "slip" in wide.message


def test_an_edge_band_is_mitred_through_its_thickness_and_not_its_width():
    mitre = find_widest_mitre(_plan(bed_mould__on="no", shelf__edge_height="4", shelf__thickness="4"))
    assert mitre is not None
    assert mitre.width == pytest.approx(0.75)


@pytest.mark.parametrize(("rail", "amiss"), [("1 1/2", False), ("1 7/16", True)])
def test_a_rail_under_an_inch_and_a_half_takes_one_screw_only(rail, amiss):
    found = _find(column__rail=rail, column__panels="2")
    assert ("column.rail" in found) is amiss
    if amiss:
        assert found["column.rail"].status is Status.WARN


@pytest.mark.parametrize(("thick", "amiss"), [("3/4", False), ("23/32", False), ("11/16", True)])
def test_frames_are_three_quarters_thick_give_or_take_a_thirty_second(thick, amiss):
    """AWS 2009, section 10, 4.4.6.10."""
    assert ("board.thickness" in _find(board__thickness=thick, job__precision="32")) is amiss
    assert "board.thickness" not in _find(
        board__thickness="1/2", column__kind="plain", frieze__kind="plain", frieze__projection="3"
    )


@pytest.mark.parametrize("name", list_demos())
def test_the_shipped_jobs_are_sound(name):
    found = list(check_joinery(plan_surround(read_demo(name))))
    assert found
    assert {finding.status for finding in found} == {Status.PASS}
