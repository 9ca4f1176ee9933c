"""Findings that no clause stands behind: how it goes together, fits the room, and was measured."""

from __future__ import annotations

from model.check.finding import Bound, Finding, Status
from model.reference.sourced import Standing

FIT, SURVEY = "fit", "survey"
SOURCE = {FIT: "how the parts go together", SURVEY: "the measurements against one another"}


def build_plain(
    check: str,
    status: Status,
    part: str,
    message: str,
    path: str,
    cure: str = "",
    measured: float | None = None,
    limit: float | None = None,
    unit: str = "in",
    bound: Bound = Bound.LEAST,
) -> Finding:
    """A finding of the check FIT or SURVEY."""
    return Finding(
        check=check,
        rule=check,
        standing=Standing.SHOP_CHOICE,
        source=SOURCE[check],
        status=status,
        part=part,
        measured=measured,
        limit=limit,
        unit=unit,
        message=message,
        cure=cure,
        path=path,
        bound=bound,
    )
