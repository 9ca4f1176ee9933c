"""Mantel and trim clearance of masonry fireplaces: the clauses held against every board of a surround."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from model.check.clearance import HAIR, Lengths, hold_irc, hold_nbc, hold_nfpa211, irc_least_distance
from model.check.cure import Need, cure_part, find_path
from model.check.finding import STATUS_WORD, Finding, Status
from model.check.nearest import (
    Plane,
    list_clearing_planes,
    list_sloping_planes,
    list_step_planes,
    list_tie_planes,
)
from model.check.part import format_part, format_verb
from model.check.regime import CANADA, IRC, NFPA211, STRICTEST
from model.check.wording import Wording
from model.check.worst import (
    Grouped,
    Reading,
    Rule,
    group_corners,
    group_for_cure,
    group_suspects,
    list_broken,
    list_readings,
)
from model.reference.clearance import (
    BUILD_TOLERANCE,
    IRC_NONE_WITHIN,
    IRC_PROJECTION_PER_INCH,
    IRC_ZONE,
    NBC_ABOVE,
    NBC_NONE_WITHIN,
    NBC_PROJECTION,
    NFPA_ABOVE,
    NFPA_BESIDE,
    NFPA_NONE_WITHIN,
    NFPA_PROJECTION,
)
from model.reference.sourced import Sourced
from model.site import Opening
from model.surround import Surround

CHECK = "mantel clearance"


def _cite_irc(projection: float, beside: bool) -> Sourced:
    if projection > IRC_ZONE.value * IRC_PROJECTION_PER_INCH.value + HAIR:
        return IRC_ZONE
    within = projection <= IRC_NONE_WITHIN.value * IRC_PROJECTION_PER_INCH.value + HAIR
    return IRC_NONE_WITHIN if within else IRC_PROJECTION_PER_INCH


def _cite_nfpa211(projection: float, beside: bool) -> Sourced:
    if projection <= NFPA_PROJECTION.value + HAIR:
        return NFPA_NONE_WITHIN
    return NFPA_BESIDE if beside else NFPA_ABOVE


def _cite_nbc(projection: float, beside: bool) -> Sourced:
    return NBC_NONE_WITHIN if beside or projection <= NBC_PROJECTION.inches + HAIR else NBC_ABOVE


def _nfpa_beside(projection: Lengths) -> Lengths:
    bold = projection > NFPA_PROJECTION.value + HAIR
    return np.where(bold, NFPA_BESIDE.value + projection, NFPA_NONE_WITHIN.value)


def _nfpa_above(projection: Lengths) -> Lengths:
    bold = projection > NFPA_PROJECTION.value + HAIR
    return np.where(bold, NFPA_ABOVE.value, NFPA_NONE_WITHIN.value)


def _nbc_beside(projection: Lengths) -> Lengths:
    return np.full(np.shape(projection), NBC_NONE_WITHIN.inches)


def _nbc_above(projection: Lengths) -> Lengths:
    bold = projection > NBC_PROJECTION.inches + HAIR
    return np.where(bold, NBC_ABOVE.inches, NBC_NONE_WITHIN.inches)


IRC_RULE = Rule(
    "IRC R1001.11 exception 4", "IRC", hold_irc, irc_least_distance, irc_least_distance, _cite_irc
)
NFPA211_RULE = Rule("NFPA 211 11.2.5.4", "NFPA 211", hold_nfpa211, _nfpa_beside, _nfpa_above, _cite_nfpa211)
NBC_RULE = Rule("NBC 9.22.9.1", "NBC", hold_nbc, _nbc_beside, _nbc_above, _cite_nbc)
RULES = {
    IRC: (IRC_RULE,),
    NFPA211: (NFPA211_RULE,),
    STRICTEST: (IRC_RULE, NFPA211_RULE),
    CANADA: (NBC_RULE,),
}
"""The clauses in force for each choice of the site."""


def list_planes(opening: Opening, rule: str = STRICTEST) -> tuple[Plane, ...]:
    """Where the clauses chosen take a step or turn from one limit to another; IRC and NFPA 211 together."""
    if rule == CANADA:
        excess = NBC_ABOVE.inches - NBC_NONE_WITHIN.inches
        return list_step_planes((NBC_PROJECTION.inches,)) + list_tie_planes(opening, excess)
    steps = (IRC_NONE_WITHIN.value * IRC_PROJECTION_PER_INCH.value, NFPA_PROJECTION.value)
    return list_step_planes(steps) + list_tie_planes(opening, NFPA_ABOVE.value - NFPA_BESIDE.value, 1.0)


def list_cure_planes(opening: Opening, rule: str = STRICTEST) -> tuple[Plane, ...]:
    """Where a part that is moved one way only, up or aside, would be tightest next."""
    if rule == CANADA:
        near = NBC_NONE_WITHIN.inches
        return list_clearing_planes(opening, (near, NBC_ABOVE.inches), (near,))
    fixed = (IRC_NONE_WITHIN.value, IRC_ZONE.value)
    return (
        *list_clearing_planes(opening, fixed, fixed),
        *list_sloping_planes(opening, 1 / IRC_PROJECTION_PER_INCH.value),
        *list_sloping_planes(opening, 1.0, NFPA_BESIDE.value, above=False),
    )


def check_mantel(surround: Surround, cured: bool = True) -> tuple[Finding, ...]:
    """One finding for each part, the tightest first, by the clause that leaves it the least to spare.

    For masonry regimes only. Unless `cured` only what fails, without what would put it right.
    """
    site = surround.job.site
    planes, rules = list_planes(site.opening, site.rule), RULES[site.rule]
    wording = Wording(surround.job.about.length_style)
    if not cured:
        by_part = _read_parts(group_suspects(surround, planes, rules), rules)
        failing = [readings for readings in by_part if readings[0].status is Status.FAIL]
        return tuple(_build_finding(surround, None, readings, wording) for readings in failing)
    by_part = _read_parts(group_corners(surround, planes), rules)
    grouped = None
    if any(readings[0].wants_cure for readings in by_part):
        grouped = group_for_cure(surround, planes + list_cure_planes(site.opening, site.rule))
    return tuple(_build_finding(surround, grouped, readings, wording) for readings in by_part)


def _read_parts(grouped: Grouped, rules: Sequence[Rule]) -> list[list[Reading]]:
    """Each part's readings by all rules, the worst first, of parts and of rules alike."""
    if not grouped.spans:
        return []
    by_rule = [list_readings(grouped, rule) for rule in rules]
    by_part = [sorted(readings, key=lambda r: r.badness) for readings in zip(*by_rule, strict=True)]
    return sorted(by_part, key=lambda readings: readings[0].badness)


def _build_finding(
    surround: Surround, grouped: Grouped | None, readings: Sequence[Reading], wording: Wording
) -> Finding:
    """The finding of one part; `readings` are those of every clause in force, the governing one first.

    What would put it right is found among the `grouped` points, if they are given.
    """
    worst = readings[0]
    figure = worst.rule.cite(worst.projection, not worst.upward)
    path, sentence = find_path(worst.part), ""
    if worst.wants_cure and grouped is not None:
        cure = cure_part(surround, worst.part, _list_need(grouped, readings), wording)
        path, sentence = cure.path or path, cure.sentence
    return Finding(
        check=CHECK,
        rule=worst.rule.name,
        standing=figure.standing,
        source=figure.source,
        status=worst.status,
        part=worst.part,
        measured=worst.measured,
        limit=worst.needed,
        unit="in",
        message=format_place(worst, wording)
        + format_margin(worst, wording)
        + _format_others(worst, readings[1:]),
        cure=sentence,
        at=worst.at,
        boards=tuple(surround.marks[i] for i in worst.boards),
        path=path,
    )


def _list_need(grouped: Grouped, readings: Sequence[Reading]) -> Need:
    """All points of a part that break any clause in force, and what satisfies every clause at once."""
    rules = [reading.rule for reading in readings]
    broken = list_broken(grouped, readings[0].part, rules)
    return Need(
        broken.room,
        broken.projection,
        lambda projection: np.max([rule.beside(projection) for rule in rules], axis=0),
        lambda projection: np.max([rule.above(projection) for rule in rules], axis=0),
    )


def format_place(reading: Reading, wording: Wording) -> str:
    """How far out and how far off the part is at its tightest, and what it must be."""
    measured, needed = wording.pair(reading.measured, reading.needed)
    subject = format_part(reading.part)
    if reading.measured <= HAIR < reading.needed:
        leaves = format_verb(reading.part, "leave")
        return f"{subject} {leaves} nothing clear of the opening; {needed} is needed."
    out = f"{format_verb(reading.part, 'stand')} out {wording.distance(max(reading.projection, 0.0))}"
    return f"{subject} {out} at {measured} {_format_side(reading)} the opening; {needed} is needed."


def _format_side(reading: Reading) -> str:
    if reading.measured > max(reading.beside, reading.above) + HAIR:
        return "from the corner of"
    return "above" if reading.upward else "beside"


def format_margin(reading: Reading, wording: Wording) -> str:
    """What is to be said of a part that is only just clear; empty otherwise."""
    if reading.status is not Status.WARN:
        return ""
    if not reading.square:
        return f" That leaves less than {wording.distance(BUILD_TOLERANCE.value)} for fixing it in place."
    straight = wording.distance(float(np.hypot(reading.beside, reading.above)))
    return (
        f" Straight to the corner it is {straight}, which is enough; "
        "some inspectors take the larger of the level and the plumb distance."
    )


def _format_others(worst: Reading, others: Sequence[Reading]) -> str:
    if worst.status is Status.PASS:
        return ""
    words = [
        f" {worst.rule.short} governs here; by {o.rule.short} it is {STATUS_WORD[o.status]}." for o in others
    ]
    return "".join(words)
