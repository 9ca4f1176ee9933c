"""The hearth held against figures that were entered: a listed appliance's manual, or a local amendment."""

from __future__ import annotations

from dataclasses import dataclass, replace

from model.check.chart import AMENDMENT, cite_chart
from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.regime import APPLIANCES, LOCAL, MASONRY_KINDS
from model.check.wording import Wording
from model.reference.hearth import IRC_LISTED
from model.reference.sourced import Standing
from model.sentences import merge_stops
from model.site import Chart, Local, Site
from model.surround import Surround

CHECK = "hearth extension"
MANUAL = "the appliance's manual"


@dataclass(frozen=True, slots=True)
class _Text:
    """What the figures stand in: where they were entered, their rule's name and what sentences call it."""

    path: str
    figures: Chart | Local
    rule: str
    whose: str


def _find_text(site: Site) -> _Text:
    if site.rule == LOCAL and site.fireplace in MASONRY_KINDS:
        return _Text("local", site.local, AMENDMENT, "amendment")
    return _Text("chart", site.chart, MANUAL, "manual")


@dataclass(frozen=True, slots=True)
class _Reach:
    """One way in which the hearth must be large enough, inches; None where not known.

    `path` is the row of the manual's figure, `own_path` that of the hearth itself. `says` is put together
    with what is measured, `cure` with what the hearth itself must be: `more` and so many `times` the figure.
    """

    part: str
    needed: float | None
    measured: float | None
    path: str
    own_path: str
    more: float
    times: int
    says: str
    cure: str


def check_manuals_hearth(surround: Surround) -> tuple[Finding, ...]:
    """Front, sides and thickness; one finding that asks for the figures where none was entered."""
    site = surround.job.site
    text = _find_text(site)
    reaches = _list_reaches(site, text)
    if all(reach.needed is None for reach in reaches):
        return (_ask_for_amendment() if text.rule == AMENDMENT else _leave_to_manual(site),)
    wording = Wording(surround.job.about.length_style)
    return tuple(_check_reach(text, reach, wording) for reach in reaches)


def _list_reaches(site: Site, text: _Text) -> tuple[_Reach, ...]:
    chart, hearth = text.figures, site.hearth
    beyond = max((hearth.width - site.opening.width) / 2, 0.0)
    return (
        _Reach(
            "hearth, front",
            chart.hearth_front,
            hearth.depth - site.facing.added,
            f"{text.path}.hearth_front",
            "hearth.depth",
            site.facing.added,
            1,
            "The hearth reaches {} in front of "
            + ("the slips to be laid" if site.facing.added > HAIR else "the facing"),
            "Bring the hearth out to at least {}.",
        ),
        _Reach(
            "hearth, sides",
            chart.hearth_side,
            beyond,
            f"{text.path}.hearth_side",
            "hearth.width",
            site.opening.width,
            2,
            "The hearth reaches {} beyond each side of the opening",
            "Widen the hearth to at least {}.",
        ),
        _Reach(
            "hearth, thickness",
            chart.hearth_thickness,
            hearth.thickness,
            f"{text.path}.hearth_thickness",
            "hearth.thickness",
            0.0,
            1,
            "The hearth is {} thick in front",
            "Lay a hearth at least {} thick.",
        ),
    )


def _check_reach(text: _Text, reach: _Reach, wording: Wording) -> Finding:
    if reach.needed is None:
        message = f"What the {text.whose} asks of the {reach.part} was not entered."
        return _build_finding(
            text, reach, Status.UNKNOWN, message, f"Enter the {text.whose}'s figure, 0 for none.", reach.path
        )
    if reach.needed <= HAIR:
        # A facing that is added may reach out beyond the hearth.
        out = None if reach.measured is None else max(reach.measured, 0.0)
        message = f"The {text.whose} asks for none."
        return _build_finding(text, replace(reach, measured=out), Status.PASS, message, "", reach.own_path)
    if reach.measured is None:
        needed = wording.distance(reach.needed)
        message = f"How thick the hearth is in front is not known; the {text.whose} asks for {needed}."
        cure = "Measure it, at an edge or a loose tile."
        return _build_finding(text, reach, Status.UNKNOWN, message, cure, reach.own_path)
    measured, least = wording.pair(reach.measured, reach.needed)
    message = f"{reach.says.format(measured)}; the {text.whose} asks for {least}."
    if reach.measured >= reach.needed - HAIR:
        return _build_finding(text, reach, Status.PASS, message, "", reach.own_path)
    cure = reach.cure.format(wording.at_least(reach.more + reach.times * reach.needed))
    return _build_finding(text, reach, Status.FAIL, message, cure, reach.own_path)


def _build_finding(text: _Text, reach: _Reach, status: Status, message: str, cure: str, path: str) -> Finding:
    figure = cite_chart(text.figures)
    standing = figure.standing if reach.needed is not None else Standing.NOT_ENTERED
    return Finding(
        check=CHECK,
        rule=text.rule,
        standing=standing,
        source=figure.source,
        status=status,
        part=reach.part,
        measured=reach.measured if reach.needed is not None else None,
        limit=reach.needed,
        unit="in",
        message=merge_stops(message),
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


def _ask_for_amendment() -> Finding:
    return Finding(
        check=CHECK,
        rule=AMENDMENT,
        standing=Standing.NOT_ENTERED,
        source="the text of the amendment",
        status=Status.UNKNOWN,
        part="hearth",
        measured=None,
        limit=None,
        unit="in",
        message="What the local amendment asks of the hearth was not entered.",
        cure="Enter its figures for the hearth, 0 for none.",
        path="local.hearth_front",
    )
