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
