"""Clearances by the chart in an appliance's manual. No masonry figure is ever offered here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isinf

import numpy as np

from model.check.clearance import HAIR, Held, Lengths, is_upward
from model.check.cure import Need, cure_part, find_path
from model.check.finding import Bound, Finding, Status
from model.check.mantel import CHECK, format_margin, format_place
from model.check.nearest import (
    Plane,
    list_clearing_planes,
    list_step_planes,
    list_tie_planes,
)
from model.check.part import SURROUND, format_part, format_verb
from model.check.regime import APPLIANCES, MASONRY_KINDS
from model.check.wording import Wording
from model.check.worst import Grouped, Reading, Rule, group_corners, list_broken, list_readings
from model.reference.sourced import Sourced, Standing
from model.site import Chart, Site
from model.surround import Surround

CHART = "the manual's chart"
NOT_NAMED = "the chart as entered; its manual and page are not named"

Rows = Sequence[tuple[float, float]]
"""Greatest projection and the least distance up to it, by rising projection."""


def least_by_chart(rows: Rows, projection: Lengths) -> Lengths:
    """Least distance at each projection: the next row up; infinite past the last, NaN without rows."""
    if not rows:
        return np.full(np.shape(projection), np.nan)
    greatest = np.array([row[0] for row in rows]) + HAIR
    least = np.array([*(row[1] for row in rows), np.inf])
    found: Lengths = least[np.searchsorted(greatest, projection)]
    return found


def hold_chart(chart: Chart, projection: Lengths, beside: Lengths, above: Lengths) -> Held:
    """The shelf's rows for what is above the opening, the legs' for what is beside it.

    A point off the corner is clear when it is clear in either direction, and not known when the one
    direction that is known does not clear it. A point over the opening must be clear by both.
    """
    least_above, least_beside = (
        least_by_chart(chart.shelf, projection),
        least_by_chart(chart.legs, projection),
    )
    spare_above, spare_beside = above - least_above, beside - least_beside
    corner = (beside >= -HAIR) & (above >= -HAIR)
    upward = is_upward(beside, above, spare_above, spare_beside) & ~(corner & np.isnan(spare_above))
    clear = np.fmax(spare_above, spare_beside) >= -HAIR
    unknown = corner & (np.isnan(spare_above) | np.isnan(spare_beside)) & ~clear
    over = (beside < -HAIR) & (above < -HAIR)
    needed = np.where(upward, least_above, least_beside)
    needed = np.where(over, np.fmax(least_above, least_beside), needed)
    measured = np.maximum(np.where(upward, above, beside), 0.0)
    return Held(np.where(unknown, np.nan, measured), np.where(unknown, np.nan, needed), upward)


def check_manual(surround: Surround) -> tuple[Finding, ...]:
    """One finding for each part, the tightest first; one that asks for the chart where there is none."""
    site = surround.job.site
    if not site.chart.shelf and not site.chart.legs:
        return (_ask_for_chart(site),)
    rule = build_chart_rule(site.chart)
    planes = list_chart_planes(site)
    grouped = group_corners(surround, planes)
    readings = sorted(list_readings(grouped, rule), key=lambda reading: reading.badness)
    if readings[0].wants_cure:
        grouped = group_corners(surround, planes + _list_cure_planes(site))
    wording = Wording(surround.job.about.length_style)
    return tuple(_build_finding(surround, grouped, reading, wording) for reading in readings)


def _list_cure_planes(site: Site) -> tuple[Plane, ...]:
    """Where a part that is moved one way only, up or aside, would be tightest next."""
    above, beside = ([row[1] for row in rows] for rows in (site.chart.shelf, site.chart.legs))
    return list_clearing_planes(site.opening, above, beside)


def ask_for_manual(site: Site) -> Finding:
    """Masonry rules are named, but the fireplace is an appliance."""
    return _unknown(
        f"Masonry rules do not hold for {APPLIANCES[site.fireplace]}; its own manual governs.",
        "Choose the appliance's manual as governing rules and enter its chart.",
        "site.rule",
    )


def _ask_for_chart(site: Site) -> Finding:
    if site.fireplace in MASONRY_KINDS:
        return _unknown(
            "A fireplace built of masonry comes without a manual, and no chart was entered; nothing is known "
            "to hold the surround against.",
            "Choose the code's clauses as governing rules, or enter the chart of an insert standing in it.",
            "site.rule",
        )
    return _unknown(
        f"The clearances of {APPLIANCES[site.fireplace]} stand in its manual; until its chart is entered "
        "nothing is known to hold the surround against.",
        "Enter the chart from the manual.",
        "chart.shelf",
    )


def _unknown(message: str, cure: str, path: str) -> Finding:
    return Finding(
        check=CHECK,
        rule=CHART,
        standing=Standing.NOT_ENTERED,
        source="the appliance's manual",
        status=Status.UNKNOWN,
        part=SURROUND,
        measured=None,
        limit=None,
        unit="in",
        message=message,
        cure=cure,
        path=path,
    )


def build_chart_rule(chart: Chart) -> Rule:
    figure = cite_chart(chart)
    return Rule(
        CHART,
        "the chart",
        lambda projection, beside, above, distance: hold_chart(chart, projection, beside, above),
        lambda projection: least_by_chart(chart.legs, projection),
        lambda projection: least_by_chart(chart.shelf, projection),
        lambda projection, beside: figure,
    )


def cite_chart(chart: Chart) -> Sourced:
    """Where the user says that what was entered was read, with no value of its own."""
    named = chart.source.strip()
    return Sourced(0.0, "in", Standing.ENTERED, named or NOT_NAMED)


def list_chart_planes(site: Site) -> tuple[Plane, ...]:
    """Where the chart takes a step, and where its two tables leave equally much at a corner."""
    steps = np.array(sorted({row[0] for row in (*site.chart.shelf, *site.chart.legs)}))
    excess = least_by_chart(site.chart.shelf, steps) - least_by_chart(site.chart.legs, steps)
    ties = [
        plane
        for e in np.unique(excess[np.isfinite(excess)])
        for plane in list_tie_planes(site.opening, float(e))
    ]
    return (*list_step_planes(steps.tolist()), *ties)


@dataclass(frozen=True, slots=True)
class _Said:
    """What a finding says: its numbers, its sentences and the parameter it points to."""

    measured: float | None
    limit: float | None
    message: str
    cure: str
    path: str
    bound: Bound = Bound.LEAST


def _build_finding(surround: Surround, grouped: Grouped, reading: Reading, wording: Wording) -> Finding:
    said = _say(surround, grouped, reading, wording)
    figure = reading.rule.cite(reading.projection, not reading.upward)
    return Finding(
        check=CHECK,
        rule=CHART,
        standing=figure.standing,
        source=figure.source,
        status=reading.status,
        part=reading.part,
        measured=said.measured,
        limit=said.limit,
        unit="in",
        message=said.message,
        cure=said.cure,
        at=reading.at,
        boards=tuple(surround.marks[i] for i in reading.boards),
        path=said.path,
        bound=said.bound,
    )


def _say(surround: Surround, grouped: Grouped, reading: Reading, wording: Wording) -> _Said:
    chart = surround.job.site.chart
    if reading.status is Status.UNKNOWN:
        return _say_missing(chart, reading)
    path, cure = find_path(surround, reading.part), ""
    if reading.status is Status.FAIL:
        found = cure_part(surround, reading.part, _list_need(grouped, reading), wording)
        path, cure = found.path or path, found.sentence
    if isinf(reading.needed):
        rows = (chart.shelf if reading.upward else chart.legs) or chart.legs or chart.shelf
        message = _format_not_permitted(reading, rows[-1][0], wording)
        return _Said(reading.projection, rows[-1][0], message, cure, path, Bound.MOST)
    message = format_place(reading, wording) + format_margin(reading, wording)
    return _Said(reading.measured, reading.needed, message, cure, path)


def _list_need(grouped: Grouped, reading: Reading) -> Need:
    broken = list_broken(grouped, reading.part, (reading.rule,))
    return Need(broken.room, broken.projection, reading.rule.beside, reading.rule.above)


def _say_missing(chart: Chart, reading: Reading) -> _Said:
    """For parts that rows the chart lacks would decide."""
    where, path = ("beside", "chart.legs") if not chart.legs else ("above", "chart.shelf")
    message = f"The chart has no rows for parts {where} the opening; nothing is known for the {reading.part}."
    return _Said(None, None, message, f"Enter the manual's rows for parts {where} the opening.", path)


def _format_not_permitted(reading: Reading, greatest: float, wording: Wording) -> str:
    out, last = wording.distance(reading.projection), wording.distance(greatest)
    verb = format_verb(reading.part, "stand")
    return f"{format_part(reading.part)} {verb} out {out}; the chart ends at {last} and permits no more."
