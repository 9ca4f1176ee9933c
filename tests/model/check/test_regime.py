"""Which rules govern a site."""

from __future__ import annotations

import pytest

from model.check.finding import Status
from model.check.plain import FIT, build_plain
from model.check.regime import Regime, ease_unused, find_regime
from model.job import default_job, with_texts
from model.parameters import FIREPLACES, RULES
from model.site import Site


def _site(fireplace: str, rule: str) -> Site:
    return with_texts(default_job(), [("site.fireplace", fireplace), ("site.rule", rule)]).site


@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("fireplace", FIREPLACES)
def test_masonry_rules_govern_masonry_only_and_the_manual_whatever_it_is_chosen_for(fireplace, rule):
    by_rule = {"australia": Regime.SILENT, "england": Regime.SILENT, "local": Regime.CHART}
    built = fireplace in ("masonry", "not_in_use")
    found = by_rule.get(rule, Regime.MASONRY) if built else Regime.UNKNOWN
    assert find_regime(_site(fireplace, rule)) is (Regime.CHART if rule == "manual" else found)


@pytest.mark.parametrize("status", Status)
def test_only_failures_of_an_unused_fireplace_are_eased(status):
    finding = build_plain(FIT, status, "shelf", "It is so.", "shelf.height")
    (eased,) = ease_unused(_site("not_in_use", "irc"), (finding,))
    assert eased.status is (Status.WARN if status is Status.FAIL else status)
    assert (eased.message != finding.message) is (status is Status.FAIL)
    assert ease_unused(_site("masonry", "irc"), (finding,)) == (finding,)
