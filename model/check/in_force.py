"""The clearance rules that hold at a site, whichever regime they come from, and quick answers by part.

What findings say of them is model.check.mantel's and model.check.manual's.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from model.check.chart import list_chart_planes, read_chart
from model.check.clearance import Lengths, square_distance, straight_distance
from model.check.finding import Status
from model.check.mantel import RULES, list_planes
from model.check.manual import build_chart_rule
from model.check.nearest import Plane
from model.check.regime import Regime, find_regime
from model.check.worst import Rule, group_corners, judge, rank_spares
from model.site import Site
from model.surround import Surround


def list_rules(site: Site) -> tuple[tuple[Rule, ...], tuple[Plane, ...]]:
    """The rules in force and where they take steps or turn; none where nothing is known."""
    match find_regime(site):
        case Regime.MASONRY:
            return RULES[site.rule], list_planes(site.opening, site.rule)
        case Regime.CHART:
            chart = read_chart(site)
            if chart.is_known:
                return (build_chart_rule(chart),), list_chart_planes(chart, site.opening)
    return (), ()


def read_statuses(surround: Surround) -> dict[str, Status]:
    """How each part stands by the clearance rules, without a word about it; empty where nothing is known.

    Before masonry out of plumb a part that is over only as measured from where it falls back is close.
    """
    rules, planes = list_rules(surround.job.site)
    if not rules:
        return {}
    statuses = _read(surround, rules, planes)
    if surround.layout.leans:
        behind = _read(surround.off_masonry(), rules, planes)
        for part in statuses:
            if behind[part] is Status.FAIL and statuses[part] is Status.PASS:
                statuses[part] = Status.WARN
    return statuses


def _read(surround: Surround, rules: Sequence[Rule], planes: Sequence[Plane]) -> dict[str, Status]:
    grouped = group_corners(surround, planes)
    points = grouped.points
    straight, square = (
        np.min(
            [
                rule.hold(
                    points.projection, points.beside, points.above, way(points.beside, points.above)
                ).spare
                for rule in rules
            ],
            axis=0,
        )
        for way in (straight_distance, square_distance)
    )
    return {part: judge(_least(straight[own]), _least(square[own])) for part, own in grouped.spans.items()}


def _least(spares: Lengths) -> float:
    """What is to spare at the tightest point; NaN where it is not known and nothing is over."""
    return float(spares[np.argmin(rank_spares(spares))])
