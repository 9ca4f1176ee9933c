"""The noncombustible hearth in front of a masonry fireplace; appliances' is in manuals_hearth."""

from __future__ import annotations

from dataclasses import dataclass

from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.manuals_hearth import CHECK, check_manuals_hearth
from model.check.regime import MASONRY_KINDS, NFPA211, STRICTEST
from model.check.wording import Wording
from model.reference.hearth import (
    LARGE_FRONT,
    LARGE_OPENING,
    LARGE_SIDE,
    LEAST_THICKNESS,
    NFPA_EXTENSION,
    SMALL_FRONT,
    SMALL_SIDE,
    THIN_RISE,
    THIN_THICKNESS,
)
from model.reference.sourced import Sourced
from model.site import Opening, Site
from model.surround import Surround

SQUARE_INCHES_PER_FOOT = 144.0


@dataclass(frozen=True, slots=True)
class Extension:
    """Least reach of the hearth in front of the facing and beyond each side of the opening."""

    front: Sourced
    side: Sourced


def least_extension(opening: Opening) -> Extension:
    """By the opening's area, compared in square inches; an area on the boundary is a large one."""
    if opening.width * opening.height >= LARGE_OPENING.value - HAIR:
        return Extension(LARGE_FRONT, LARGE_SIDE)
    return Extension(SMALL_FRONT, SMALL_SIDE)


def least_thickness(rise: float) -> Sourced:
    """Least thickness where the firebox's floor stands `rise` above the extension's top."""
    return THIN_THICKNESS if rise >= THIN_RISE.value - HAIR else LEAST_THICKNESS


def check_hearth(surround: Surround) -> tuple[Finding, ...]:
    """Front, sides and thickness."""
    site = surround.job.site
    if site.fireplace not in MASONRY_KINDS:
        return check_manuals_hearth(surround)
    wording = Wording(surround.job.about.length_style)
    return (_check_front(site, wording), _check_sides(site, wording), _check_thickness(site, wording))


def _check_front(site: Site, wording: Wording) -> Finding:
    needed = least_extension(site.opening).front
    measured, least = wording.pair(site.hearth.depth, needed.value)
    message = (
        f"The hearth reaches {measured} in front of the facing; {_format_area(site.opening)} needs {least}."
    )
    if site.rule in (NFPA211, STRICTEST):
        message += " Slips or tile laid on the facing later take from that."
    cure = f"Bring the hearth out to at least {wording.at_least(needed.value)}."
    return _build_finding(site, "hearth, front", site.hearth.depth, needed, message, cure, "hearth.depth")


def _check_sides(site: Site, wording: Wording) -> Finding:
    needed = least_extension(site.opening).side
    reach = (site.hearth.width - site.opening.width) / 2
    measured, least = wording.pair(max(reach, 0.0), needed.value)
    message = (
        f"The hearth reaches {measured} beyond each side of the opening; "
        f"{_format_area(site.opening)} needs {least}."
    )
    width = wording.at_least(site.opening.width + 2 * needed.value)
    cure = f"Widen the hearth to at least {width}."
    return _build_finding(site, "hearth, sides", reach, needed, message, cure, "hearth.width")


def _check_thickness(site: Site, wording: Wording) -> Finding:
    """The hearth is level with the opening's foot in every site, so that the thin exception never holds."""
    thickness = site.hearth.thickness
    needed = least_thickness(rise=0.0)
    if thickness is None:
        message = (
            f"How thick the hearth is in front is not known; {wording.distance(needed.value)} is needed."
        )
        cure = "Measure it, at an edge or a loose tile."
        return _build_finding(site, "hearth, thickness", None, needed, message, cure, "hearth.thickness")
    measured, least = wording.pair(thickness, needed.value)
    message = f"The hearth is {measured} thick in front; {least} is needed."
    if thickness >= THIN_THICKNESS.value - HAIR and thickness < needed.value - HAIR:
        thin, rise = wording.distance(THIN_THICKNESS.value), wording.distance(THIN_RISE.value)
        message += f" {thin} is enough only where the firebox's floor lies {rise} or more above the hearth."
    cure = f"Lay a hearth at least {wording.at_least(needed.value)} thick."
    return _build_finding(site, "hearth, thickness", thickness, needed, message, cure, "hearth.thickness")


def _build_finding(
    site: Site, part: str, measured: float | None, needed: Sourced, message: str, cure: str, path: str
) -> Finding:
    if measured is None:
        status = Status.UNKNOWN
    else:
        status = Status.PASS if measured >= needed.value - HAIR else Status.FAIL
    clause = "R1001.9.2" if part.endswith("thickness") else "R1001.10"
    return Finding(
        check=CHECK,
        rule={NFPA211: "NFPA 211 11.3", STRICTEST: f"IRC {clause}, NFPA 211 11.3"}.get(
            site.rule, f"IRC {clause}"
        ),
        standing=needed.standing,
        source=needed.source if site.rule != NFPA211 else NFPA_EXTENSION,
        status=status,
        part=part,
        measured=measured,
        limit=needed.value,
        unit="in",
        message=message,
        cure="" if status is Status.PASS else cure,
        path=path,
    )


def _format_area(opening: Opening) -> str:
    return f"an opening of {opening.width * opening.height / SQUARE_INCHES_PER_FOOT:.2f} sq ft"
