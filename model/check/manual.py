"""Clearances by the chart in an appliance's manual. No masonry figure is ever offered here."""

from __future__ import annotations

from dataclasses import dataclass
from math import isinf

import numpy as np

from model.check.chart import (
    AMENDMENT,
    CHART,
    HeldChart,
    list_chart_planes,
    list_clearing_sides,
    read_chart,
)
from model.check.clearance import HAIR, Held, Lengths, is_upward
from model.check.cure import Need, cure_part, find_path
from model.check.finding import Bound, Finding, Status
from model.check.mantel import CHECK, format_margin, format_place
from model.check.part import SURROUND, format_part, format_verb
from model.check.regime import APPLIANCES, AUSTRALIA, ENGLAND, MASONRY_KINDS
from model.check.wording import Wording
from model.check.worst import (
    Grouped,
    Reading,
    Rule,
    group_corners,
    group_for_cure,
    list_broken,
    list_readings,
)
from model.reference.sourced import Standing
from model.site import Site
from model.surround import Surround

SILENT = {
    AUSTRALIA: ("ABCB Housing Provisions 12.4", "no figure for wood round the opening is known here"),
    ENGLAND: ("Approved Document J", "no figure for wood round the opening is known here"),
}
"""Rules that have a hearth but no figure for a surround that is known here: name and what is lacking."""


def hold_chart(chart: HeldChart, projection: Lengths, beside: Lengths, above: Lengths) -> Held:
    """The shelf's rows for what is above the opening, the legs' for what is beside it.

    A point off the corner is clear when it is clear in either direction, and not known when the one
    direction that is known does not clear it. A point over the opening must be clear by both.
    """
    least_above, least_beside = chart.above.least(projection), chart.beside.least(projection)
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


def check_manual(surround: Surround, cured: bool = True) -> tuple[Finding, ...]:
    """One finding for each part, the tightest first; one that asks for the chart where there is none.

    Unless `cured` only what fails, without what would put it right.
    """
    site = surround.job.site
    chart = read_chart(site)
    if not chart.is_known:
        return (_ask_for_chart(site, chart),)
    rule = build_chart_rule(chart)
    planes = list_chart_planes(chart, site.opening)
    readings = sorted(
        list_readings(group_corners(surround, planes), rule), key=lambda reading: reading.badness
    )
    wording = Wording(surround.job.about.length_style)
    if not cured:
        failing = [reading for reading in readings if reading.status is Status.FAIL]
        return tuple(_build_finding(surround, chart, None, reading, wording) for reading in failing)
    grouped = None
    if readings[0].wants_cure:
        grouped = group_for_cure(surround, planes + list_clearing_sides(chart, site.opening))
    return tuple(_build_finding(surround, chart, grouped, reading, wording) for reading in readings)


def ask_for_manual(site: Site) -> Finding:
    """Masonry rules are named, but the fireplace is an appliance."""
    return _unknown(
        f"Masonry rules do not hold for {APPLIANCES[site.fireplace]}; its own manual governs.",
        "Choose the appliance's manual as the rule set and enter its chart.",
        "site.rule",
    )


def _ask_for_chart(site: Site, chart: HeldChart) -> Finding:
    if chart.rule == AMENDMENT:
        return _unknown(
            "The local amendment's figures for wood round the opening were not entered; nothing is known to "
            "hold the surround against.",
            "Enter them as the building department has them, with the text they stand in.",
            chart.above_path,
            AMENDMENT,
        )
    if site.fireplace in MASONRY_KINDS:
        return _unknown(
            "A fireplace built of masonry comes without a manual, and no chart was entered; nothing is known "
            "to hold the surround against.",
            "Choose the code's clauses as the rule set, or enter the chart of an insert standing in it.",
            "site.rule",
        )
    if chart.above_path == "chart.datum_height":
        return _unknown(
            f"The chart counts from {chart.counts_from}, and how high that lies is not entered; nothing is "
            "known to hold the surround against.",
            "Measure it over the hearth.",
            chart.above_path,
        )
    return _unknown(
        f"The clearances of {APPLIANCES[site.fireplace]} stand in its manual; until its chart is entered "
        "nothing is known to hold the surround against.",
        "Enter the chart from the manual.",
        chart.above_path,
    )


def tell_silent(site: Site) -> Finding:
    """The rules chosen have no figure for wood round the opening that is known here."""
    return Finding(
        check=CHECK,
        rule=SILENT[site.rule][0],
        standing=Standing.NOT_ENTERED,
        source=SILENT[site.rule][1],
        status=Status.UNKNOWN,
        part=SURROUND,
        measured=None,
        limit=None,
        unit="in",
        message="These rules have a hearth, but no figure for wood round the opening that is known here.",
        cure="Ask who decides locally, and enter what they ask as a local amendment.",
        path="site.rule",
    )


def _unknown(message: str, cure: str, path: str, rule: str = CHART) -> Finding:
    return Finding(
        check=CHECK,
        rule=rule,
        standing=Standing.NOT_ENTERED,
        source="the appliance's manual" if rule == CHART else "the text of the amendment",
        status=Status.UNKNOWN,
        part=SURROUND,
        measured=None,
        limit=None,
        unit="in",
        message=message,
        cure=cure,
        path=path,
    )


def build_chart_rule(chart: HeldChart) -> Rule:
    """The chart as points are held against it."""
    return Rule(
        chart.rule,
        "the chart" if chart.rule == CHART else "the amendment",
        lambda projection, beside, above, distance: hold_chart(chart, projection, beside, above),
        chart.beside.least,
        chart.above.least,
        lambda projection, beside: chart.figure,
    )


@dataclass(frozen=True, slots=True)
class _Said:
    """What a finding says: its numbers, its sentences and the parameter it points to."""

    measured: float | None
    limit: float | None
    message: str
    cure: str
    path: str
    bound: Bound = Bound.LEAST


def _build_finding(
    surround: Surround, chart: HeldChart, grouped: Grouped | None, reading: Reading, wording: Wording
) -> Finding:
    """What would put it right is found among the `grouped` points, if they are given."""
    said = _say(surround, chart, grouped, reading, wording)
    return Finding(
        check=CHECK,
        rule=chart.rule,
        standing=chart.figure.standing,
        source=chart.figure.source,
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


def _say(
    surround: Surround, chart: HeldChart, grouped: Grouped | None, reading: Reading, wording: Wording
) -> _Said:
    if reading.status is Status.UNKNOWN:
        return _say_missing(chart, reading)
    path, cure = find_path(reading.part), ""
    if reading.status is Status.FAIL and grouped is not None:
        found = cure_part(surround, reading.part, _list_need(grouped, reading), wording)
        path, cure = found.path or path, found.sentence
    if isinf(reading.needed):
        tables = (chart.above, chart.beside) if reading.upward else (chart.beside, chart.above)
        out = np.array([reading.projection])
        ends_at = next(table.ends_at for table in tables if np.isinf(table.least(out)).all())
        message = _format_not_permitted(chart, reading, ends_at, wording)
        return _Said(reading.projection, ends_at, message, cure, path, Bound.MOST)
    message = format_place(reading, wording) + format_margin(reading, wording)
    return _Said(
        reading.measured, reading.needed, message + _format_datum(surround, chart, reading), cure, path
    )


def _format_datum(surround: Surround, chart: HeldChart, reading: Reading) -> str:
    """From where the chart itself counts, where that is not the opening's top."""
    if not (chart.counts_from and reading.upward):
        return ""
    wording = Wording(surround.job.about.length_style)
    datum, asked = (
        wording.distance(value)
        for value in (surround.layout.opening_top + chart.above.shift, reading.needed - chart.above.shift)
    )
    return f" That is {asked} over {chart.counts_from}, which lies {datum} over the hearth."


def _list_need(grouped: Grouped, reading: Reading) -> Need:
    broken = list_broken(grouped, reading.part, (reading.rule,))
    return Need(broken.room, broken.projection, reading.rule.beside, reading.rule.above)


def _say_missing(chart: HeldChart, reading: Reading) -> _Said:
    """For parts that rows the chart lacks would decide."""
    if chart.beside.is_known and chart.above_path == "chart.datum_height":
        message = (
            f"How high {chart.counts_from} lies is not entered; nothing is known for the {reading.part}."
        )
        return _Said(None, None, message, "Measure it over the hearth.", chart.above_path)
    beside = not chart.beside.is_known
    where, path = ("beside", chart.beside_path) if beside else ("above", chart.above_path)
    whose = "chart" if chart.rule == CHART else "amendment as entered"
    message = (
        f"The {whose} has no rows for parts {where} the opening; nothing is known for the {reading.part}."
    )
    whose = "manual's" if chart.rule == CHART else "amendment's"
    return _Said(None, None, message, f"Enter the {whose} rows for parts {where} the opening.", path)


def _format_not_permitted(chart: HeldChart, reading: Reading, ends_at: float, wording: Wording) -> str:
    out, last = wording.distance(reading.projection), wording.distance(ends_at)
    verb = format_verb(reading.part, "stand")
    whose = "the chart" if chart.rule == CHART else "the amendment"
    return f"{format_part(reading.part)} {verb} out {out}; {whose} ends at {last} and permits no more."
