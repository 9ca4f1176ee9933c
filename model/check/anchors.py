"""Whether as many anchors find sound masonry as the surround's weight asks for."""

from __future__ import annotations

from model.check.finding import Finding, Status
from model.check.part import NAILERS
from model.reference.anchors import SOFT_TENSION
from model.surround import Surround
from model.takeoff.anchors import plan_anchors

CHECK = "anchors"


def check_anchors(surround: Surround) -> tuple[Finding, ...]:
    """One caution where too few find room; nothing where all is well."""
    plan = plan_anchors(surround)
    if plan.holds:
        return ()
    rule = surround.job.design.anchor
    return (
        Finding(
            check=CHECK,
            rule=CHECK,
            standing=SOFT_TENSION.standing,
            source=SOFT_TENSION.source,
            status=Status.WARN,
            part=NAILERS,
            measured=float(plan.upper),
            limit=float(plan.needed),
            unit="",
            message=(
                f"{plan.needed} anchors near the top hold {plan.weight:.0f} lb, each {rule.tension:.0f} lb "
                f"of pull and {rule.shear:.0f} lb of shear; {plan.upper} find a sound place."
            ),
            cure="Pull-test an anchor on the spot and enter what it holds, or fix to framing in the wall.",
            path="anchor.tension",
        ),
    )
