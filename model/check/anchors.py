"""Whether as many anchors find sound masonry as the surround's weight asks for."""

from __future__ import annotations

from model.check.finding import Bound, Finding, Status
from model.check.part import NAILERS
from model.fixing import AnchorRule
from model.reference.anchors import SAFETY_FACTOR, SOFT_SHEAR, SOFT_TENSION
from model.reference.sourced import Standing
from model.surround import Surround
from model.takeoff.anchors import AnchorPlan, plan_anchors

CHECK = "anchors"
OWN = (Standing.ENTERED, "entered by the user: what an anchor holds on the spot")
"""Where the loads of an anchor are a job's own."""


def check_anchors(surround: Surround) -> tuple[Finding, ...]:
    """One finding: what the surround's weight asks of the upper anchors, as if no foot bore any of it."""
    plan = plan_anchors(surround)
    rule = surround.job.design.anchor
    planned = rule.tension == SOFT_TENSION.value and rule.shear == SOFT_SHEAR.value
    standing, source = (SOFT_TENSION.standing, SOFT_TENSION.source) if planned else OWN
    return (
        Finding(
            check=CHECK,
            rule=CHECK,
            standing=standing,
            source=f"{source}; a tested anchor: {SAFETY_FACTOR.source}",
            status=Status.PASS if plan.holds else Status.WARN,
            part=NAILERS,
            measured=float(plan.upper),
            limit=float(plan.needed),
            unit="",
            message=_format(plan, rule),
            cure=""
            if plan.holds
            else "Pull-test an anchor on the spot and enter what it holds, or fix to framing in the wall.",
            path="anchor.tension",
            bound=Bound.LEAST,
        ),
    )


def _format(plan: AnchorPlan, rule: AnchorRule) -> str:
    asked = (
        f"{plan.needed} anchors near the top hold {plan.weight:.0f} lb, each {rule.tension:.0f} lb of pull "
        f"and {rule.shear:.0f} lb of shear; {plan.upper} find a sound place."
    )
    if not plan.holds:
        return asked
    return f"{asked} Each then feels {plan.tension:.0f} lb of pull and {plan.shear:.0f} lb of shear."
