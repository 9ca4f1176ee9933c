"""Whether the facing covers what an appliance's manual wants noncombustible round the opening."""

from __future__ import annotations

from model.check.chart import CHART, read_chart
from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.regime import MANUAL
from model.check.wording import Wording
from model.surround import Surround

CHECK = "noncombustible zone"


def check_zone(surround: Surround) -> tuple[Finding, ...]:
    """One finding for each direction that the manual gives; wood in the zone is the clearance's business."""
    site = surround.job.site
    if site.rule != MANUAL:
        return ()
    asked = (
        ("above", site.chart.none_above, site.facing.height - site.opening.height, "facing.height"),
        ("beside", site.chart.none_beside, (site.facing.width - site.opening.width) / 2, "facing.width"),
    )
    return tuple(
        _hold(surround, way, least, has, path) for way, least, has, path in asked if least is not None
    )


def _hold(surround: Surround, way: str, least: float, has: float, path: str) -> Finding:
    site, wording = surround.job.site, Wording(surround.job.about.length_style)
    covered, needed = wording.pair(max(has, 0.0), least)
    passes = least <= HAIR or has >= least - HAIR
    edge = site.opening.height + least if way == "above" else site.opening.width + 2 * least
    figure = read_chart(site).figure
    return Finding(
        check=CHECK,
        rule=CHART,
        standing=figure.standing,
        source=figure.source,
        status=Status.PASS if passes else Status.FAIL,
        part="facing",
        measured=max(has, 0.0),
        limit=least,
        unit="in",
        message=f"The facing covers {covered} {way} the opening; the manual wants {needed} noncombustible.",
        cure=""
        if passes
        else f"Carry stone, tile or brick on to at least {wording.at_least(edge)} "
        + ("over the hearth." if way == "above" else "in all."),
        path=path,
    )
