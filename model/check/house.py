"""What an old house may hold that is stirred up: lead in paint, asbestos in board; where it was asked."""

from __future__ import annotations

from collections.abc import Iterator

from model.check.finding import Bound, Finding, Status
from model.reference.cautions import ASBESTOS, LEAD_AREA, LEAD_DAYS, LEAD_YEAR
from model.surround import Surround

CHECK = "old house"


def check_house(surround: Surround) -> Iterator[Finding]:
    """Cautions that go with the year of the house and with what is round the fireplace."""
    house = surround.job.site.house
    if house.year is not None and house.year < LEAD_YEAR.value:
        yield _check_lead(house.year, house.painted)
    if house.old_board:
        yield Finding(
            check=CHECK,
            rule="asbestos",
            standing=ASBESTOS.standing,
            source=ASBESTOS.source,
            status=Status.WARN,
            part="old board",
            measured=None,
            limit=None,
            unit="",
            message="Old board, paper or cement sheet round the fireplace may hold asbestos.",
            cure="Leave it alone while it is sound; have it tested before it is drilled, sawn or taken off.",
            path="house.old_board",
        )


def _check_lead(year: float, painted: float | None) -> Finding:
    """Painted surface against what the renovation rule leaves out."""
    if painted is None:
        status = Status.UNKNOWN
        message = (
            f"A house of {year:.0f} may have lead in its paint; how much of it is taken off is not entered."
        )
        cure = "Measure the painted parts that come off or are sawn, whole parts counted whole."
    elif painted > LEAD_AREA.value:
        status = Status.WARN
        message = (
            f"A house of {year:.0f} may have lead in its paint, and {painted:g} sq ft are disturbed in one "
            f"room: over {LEAD_AREA.value:g} sq ft the renovation rule applies to work for pay."
        )
        cure = "Work as a certified renovator, with containment, or have the paint tested first."
    else:
        status = Status.PASS
        message = (
            f"A house of {year:.0f} may have lead in its paint; {painted:g} sq ft are disturbed. All jobs in "
            f"the room within {LEAD_DAYS.value:g} days add up."
        )
        cure = ""
    return Finding(
        check=CHECK,
        rule="40 CFR 745.83",
        standing=LEAD_AREA.standing,
        source=LEAD_AREA.source,
        status=status,
        part="old paint",
        measured=painted,
        limit=LEAD_AREA.value,
        unit="sq ft",
        message=message,
        cure=cure,
        path="house.painted",
        bound=Bound.MOST,
    )
