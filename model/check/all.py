"""All checks on one surround, worst first. What each asks stands in the file named after it."""

from __future__ import annotations

from model.check.anchors import check_anchors
from model.check.backing import check_backing
from model.check.concealed import check_concealed
from model.check.cord_way import check_cord_way
from model.check.finding import Finding, Status
from model.check.fit import check_fit
from model.check.hearth import check_hearth
from model.check.holding import check_holding
from model.check.house import check_house
from model.check.joinery import check_joinery
from model.check.left_on import check_left_on
from model.check.mantel import check_mantel
from model.check.manual import ask_for_manual, check_manual, tell_silent
from model.check.movement import check_movement
from model.check.obstacles import check_obstacles
from model.check.on_hand import check_on_hand
from model.check.panels import check_panels
from model.check.plinths import check_plinths
from model.check.plumb import check_behind, check_plumb
from model.check.regime import Regime, ease_unused, find_regime
from model.check.survey import check_survey
from model.check.television import check_television
from model.check.worst import WORST_FIRST
from model.check.zone import check_zone
from model.surround import Surround

WHO_DECIDES = (
    "The adopted local code, the appliance's manual and the authority having jurisdiction decide; "
    "these checks approve nothing."
)
"""To stand by every list of findings."""


def check_surround(surround: Surround, fire: tuple[Finding, ...] | None = None) -> tuple[Finding, ...]:
    """Every finding, failures first, then what is not known, cautions and passes.

    `fire` are those of `check_fire`, where they are there already.
    """
    findings = (*(check_fire(surround) if fire is None else fire), *check_built(surround))
    return tuple(sorted(findings, key=lambda finding: WORST_FIRST.index(finding.status)))


def check_fire(surround: Surround) -> tuple[Finding, ...]:
    """Clearances and hearth, in no order; cautions at most where no fire burns any more."""
    fire = (*_check_clearance(surround), *check_hearth(surround))
    return ease_unused(surround.job.site, fire)


def list_fire_faults(surround: Surround) -> tuple[Finding, ...]:
    """Where those rules fail at a place, for whoever marks it: as `check_fire` has it, but without cures."""
    fire = (*_check_clearance(surround, cured=False), *check_hearth(surround))
    return list_placed_faults(ease_unused(surround.job.site, fire))


def list_placed_faults(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Those that fail at a place."""
    return tuple(f for f in findings if f.status is Status.FAIL and f.at is not None)


def check_built(surround: Surround) -> tuple[Finding, ...]:
    """All that no fire asks, in no order: room, measurements, what it hangs on and what may be stirred up."""
    return (
        *check_fit(surround),
        *check_obstacles(surround),
        *check_plinths(surround),
        *check_left_on(surround),
        *check_movement(surround),
        *check_joinery(surround),
        *check_panels(surround),
        *check_backing(surround),
        *check_survey(surround),
        *check_plumb(surround),
        *check_cord_way(surround),
        *check_anchors(surround),
        *check_on_hand(surround),
        *check_holding(surround),
        *check_television(surround),
        *check_house(surround),
    )


def _check_clearance(surround: Surround, cured: bool = True) -> tuple[Finding, ...]:
    match find_regime(surround.job.site):
        case Regime.MASONRY:
            found = check_mantel(surround, cured)
            return (*found, *check_behind(surround, check_mantel, found), *check_concealed(surround))
        case Regime.CHART:
            found = check_manual(surround, cured)
            return (*found, *check_behind(surround, check_manual, found), *check_zone(surround))
        case Regime.SILENT:
            return (tell_silent(surround.job.site),)
        case Regime.UNKNOWN:
            return (ask_for_manual(surround.job.site),)
