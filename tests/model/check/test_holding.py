"""A shelf is held to its sag where nothing else carries it, and to what pulls at its screws."""

from __future__ import annotations

import pytest

from model.check.finding import Finding, Status
from model.check.holding import check_holding
from model.job import default_job, with_texts
from model.surround import plan_surround


def _find(**texts: str) -> dict[str, Finding]:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return {f.check: f for f in check_holding(plan_surround(with_texts(default_job(), pairs)))}


def test_a_ledger_carries_the_shelf_whatever_it_would_sag_alone():
    sag = _find()["shelf sag"]
    assert (sag.status, sag.limit) == (Status.PASS, None)
    assert "carry it all along" in sag.message


def test_a_heavier_load_sags_more_and_creep_is_half_as_much_again():
    def first(load: str) -> float:
        return float(_find(shelf__load=load)["shelf sag"].message.split("alone would sag ")[1].split()[0])

    assert first("40") > first("20") > 0
    message = _find()["shelf sag"].message
    early, late = (
        float(part.split()[-1]) for part in message.split(" in. ")[:2] if part.split()[-1][0].isdigit()
    )
    assert late == pytest.approx(early * 1.5, abs=0.001)


@pytest.mark.parametrize(("overhang", "status"), [("3", Status.PASS), ("14", Status.WARN)])
def test_leaning_on_a_far_overhang_pulls_its_screws_out(overhang, status):
    """50 lb on the edge; the frieze is 3 in. out and the shelf reaches the masonry: arithmetic."""
    fixing = _find(shelf__overhang_front=overhang)["shelf fixing"]
    assert fixing.status is status
    out = 4 + float(overhang) - 3
    assert fixing.measured == pytest.approx(50 * out / 3, abs=0.1)
    assert fixing.limit == pytest.approx(2 * 2850 * 0.42**2 * 0.164, abs=0.1)


def test_a_weight_at_the_middle_is_asked_where_nothing_carries_the_shelf():
    assert "shelf under a weight" not in _find()
    light = {"frieze__projection": "3/4", "shelf__load": "0", "shelf__edge_height": "3/4"}
    thin, thick = (_find(**light, shelf__thickness=t)["shelf under a weight"] for t in ("3/4", "6"))
    assert (thin.status, thick.status) == (Status.WARN, Status.PASS)
    assert thin.cure
    assert thin.limit == thick.limit == pytest.approx(2 * (18 + 13) / 144, abs=1e-4)


def test_a_ledger_that_an_old_one_parts_carries_no_shelf_and_holds_no_screws():
    """Kept as it is, the old one leaves 5 in. of a new one at each end of 62."""
    found = _find(old_ledger__top="51 1/2", old_ledger__use="keep")
    assert "counts for nothing" in found["shelf sag"].message
    assert (found["shelf fixing"].status, found["shelf fixing"].limit) == (Status.WARN, 0.0)


def test_an_old_ledger_that_is_used_takes_the_screws_if_it_holds_itself():
    fixing = _find(old_ledger__top="51 1/2", old_ledger__use="use")["shelf fixing"]
    assert fixing.status is Status.PASS
    assert "in the old ledger may take 165 lb" in fixing.message
    assert "pull-test it" in fixing.message


def test_where_nothing_behind_takes_screws_the_shelf_is_not_passed_by_them():
    """A frieze of one board on the facing has no ledger behind it."""
    fixing = _find(frieze__projection="3/4")["shelf fixing"]
    assert (fixing.status, fixing.limit) == (Status.WARN, 0.0)
    assert "Give the shelf a ledger" in fixing.cure
