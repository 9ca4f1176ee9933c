"""All checks on one surround, worst first. What each asks stands in the file named after it."""

from __future__ import annotations

from model.check.anchors import check_anchors
from model.check.backing import check_backing
from model.check.cord_way import check_cord_way
from model.check.finding import Finding
from model.check.fire import check_fire
from model.check.fit import check_fit
from model.check.holding import check_holding
from model.check.house import check_house
from model.check.joinery import check_joinery
from model.check.left_on import check_left_on
from model.check.movement import check_movement
from model.check.nailers_held import check_nailers_held
from model.check.obstacles import check_obstacles
from model.check.on_hand import check_on_hand
from model.check.panels import check_panels
from model.check.plinths import check_plinths
from model.check.plumb import check_plumb
from model.check.survey import check_survey
from model.check.television import check_television
from model.check.worst import WORST_FIRST
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
        *check_nailers_held(surround),
        *check_on_hand(surround),
        *check_holding(surround),
        *check_television(surround),
        *check_house(surround),
    )
