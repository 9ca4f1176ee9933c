"""The hearth before a listed appliance, held against what was entered from its manual."""

from __future__ import annotations

from dataclasses import dataclass

from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.manual import cite_chart
from model.check.regime import APPLIANCES
from model.check.wording import Wording
from model.reference.hearth import IRC_LISTED
from model.reference.sourced import Standing
from model.site import Site
from model.surround import Surround

CHECK = "hearth extension"
MANUAL = "the appliance's manual"


@dataclass(frozen=True, slots=True)
class _Reach:
    """One way in which the hearth must be large enough, inches; None where not known.

    `path` is the row of the manual's figure, `own_path` that of the hearth itself. `says` is put together
    with what is measured, `cure` with what is needed.
    """

    part: str
    needed: float | None
    measured: float | None
    path: str
    own_path: str
    more: float
    says: str
    cure: str


def check_manuals_hearth(surround: Surround) -> tuple[Finding, ...]:
    """Front, sides and thickness; one finding that asks for the figures where none was entered."""
    site = surround.job.site
    reaches = _list_reaches(site)
    if all(reach.needed is None for reach in reaches):
        return (_leave_to_manual(site),)
    wording = Wording(surround.job.about.length_style)
    return tuple(_check_reach(site, reach, wording) for reach in reaches)


def _list_reaches(site: Site) -> tuple[_Reach, ...]:
    chart, hearth = site.chart, site.hearth
    beyond = max((hearth.width - site.opening.width) / 2, 0.0)
    return (
        _Reach(
            "hearth, front",
            chart.hearth_front,
            hearth.depth,
            "chart.hearth_front",
            "hearth.depth",
            0.0,
            "The hearth reaches {} in front of the facing",
            "Bring the hearth out to at least {}.",
        ),
        _Reach(
            "hearth, sides",
            chart.hearth_side,
            beyond,
            "chart.hearth_side",
            "hearth.width",
            site.opening.width,
            "The hearth reaches {} beyond each side of the opening",
            "Widen the hearth to at least {}.",
        ),
        _Reach(
            "hearth, thickness",
            chart.hearth_thickness,
            hearth.thickness,
            "chart.hearth_thickness",
            "hearth.thickness",
            0.0,
            "The hearth is {} thick in front",
            "Lay a hearth at least {} thick.",
        ),
    )


def _check_reach(site: Site, reach: _Reach, wording: Wording) -> Finding:
    if reach.needed is None:
        message = f"What the manual asks of the {reach.part} was not entered."
        return _build_finding(
            site, reach, Status.UNKNOWN, message, "Enter the manual's figure, 0 for none.", reach.path
        )
    if reach.needed <= HAIR:
        return _build_finding(site, reach, Status.PASS, "The manual asks for none.", "", reach.own_path)
    if reach.measured is None:
        needed = wording.distance(reach.needed)
        message = f"How thick the hearth is in front is not known; the manual asks for {needed}."
        cure = "Measure it, at an edge or a loose tile."
        return _build_finding(site, reach, Status.UNKNOWN, message, cure, reach.own_path)
    measured, least = wording.pair(reach.measured, reach.needed)
    message = f"{reach.says.format(measured)}; the manual asks for {least}."
    if reach.measured >= reach.needed - HAIR:
        return _build_finding(site, reach, Status.PASS, message, "", reach.own_path)
    twice = 2 if reach.more else 1
    cure = reach.cure.format(wording.at_least(reach.more + twice * reach.needed))
    return _build_finding(site, reach, Status.FAIL, message, cure, reach.own_path)


def _build_finding(site: Site, reach: _Reach, status: Status, message: str, cure: str, path: str) -> Finding:
    figure = cite_chart(site.chart)
    standing = figure.standing if reach.needed is not None else Standing.NOT_ENTERED
    return Finding(
        check=CHECK,
        rule=MANUAL,
        standing=standing,
        source=figure.source,
        status=status,
        part=reach.part,
        measured=reach.measured if reach.needed is not None else None,
        limit=reach.needed,
        unit="in",
        message=message,
        cure=cure,
        path=path,
    )


def _leave_to_manual(site: Site) -> Finding:
    listed = site.fireplace == "factory_built"
    return Finding(
        check=CHECK,
        rule="IRC R1004.2" if listed else MANUAL,
        standing=Standing.PUBLISHED if listed else Standing.NOT_ENTERED,
        source=IRC_LISTED if listed else MANUAL,
        status=Status.UNKNOWN,
        part="hearth",
        measured=None,
        limit=None,
        unit="in",
        message=f"How large the hearth before {APPLIANCES[site.fireplace]} must be stands in its manual.",
        cure="Enter the manual's figures for the hearth, 0 for none.",
        path="chart.hearth_front",
    )
