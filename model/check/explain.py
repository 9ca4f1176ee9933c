"""One finding explained: the rule in plain words, the arithmetic with this surround's numbers, its source.

What it looks like is drawn in render.explained; worked out on demand, never on the way of an edit.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from model.check.all import WHO_DECIDES
from model.check.anchors import CHECK as ANCHORS
from model.check.clauses import ASKED, CLAUSES
from model.check.concealed import BESIDE
from model.check.concealed import CHECK as CONCEALED
from model.check.cord_way import CHECK as CORD_WAY
from model.check.finding import STATUS_WORD, Finding
from model.check.holding import FIXING, SAG, WEIGHED
from model.check.house import CHECK as HOUSE
from model.check.in_force import list_rules
from model.check.joinery import CHECK as JOINTS
from model.check.mantel import CHECK as MANTEL
from model.check.manuals_hearth import CHECK as HEARTH
from model.check.panels import CHECK as PANELS
from model.check.plain import FIT
from model.check.sums import Sums
from model.check.sums_built import (
    list_anchor_sums,
    list_cord_sums,
    list_fit_sums,
    list_house_sums,
    list_joint_sums,
    list_panel_sums,
    list_pull_sums,
    list_sag_sums,
    list_screen_sums,
    list_weight_sums,
)
from model.check.television import CHECK as TELEVISION
from model.check.zone import CHECK as ZONE
from model.sentences import capitalise, end_sentence, merge_stops
from model.surround import Surround


@dataclass(frozen=True, slots=True)
class Explanation:
    """What the page says: sentences and lines of arithmetic, in the order in which they are read."""

    title: str
    answer: str
    clauses: tuple[str, ...]
    arithmetic: tuple[str, ...]
    source: str
    decides: str = WHO_DECIDES


def explain_finding(surround: Surround, finding: Finding) -> Explanation:
    """The page of one finding."""
    part = capitalise(finding.part)
    return Explanation(
        f"{part}: {finding.check}",
        f"{STATUS_WORD[finding.status].capitalize()}: {finding.message}",
        tuple(capitalise(clause) for clause in _list_clauses(finding)),
        tuple(merge_stops(line) for line in _list_arithmetic(surround, finding)),
        f"{end_sentence(_name_source(finding))} Standing of the figure: {end_sentence(finding.standing)}",
    )


def _name_source(finding: Finding) -> str:
    """Rule and source, the rule left out where the source says it or no clause stands behind it."""
    named = any(name in finding.source for name in finding.rule.split(", ")) or finding.rule[:1].islower()
    source = capitalise(finding.source)
    return source if named else f"{finding.rule}. {source}"


def _list_clauses(finding: Finding) -> Iterator[str]:
    names = [name for name in CLAUSES if name in finding.rule.split(", ")]
    for name in names:
        yield f"{name}. {CLAUSES[name]}"
    if not names and finding.check in ASKED:
        yield ASKED[finding.check]


def _list_arithmetic(surround: Surround, finding: Finding) -> Iterator[str]:
    sums = Sums(surround)
    yield from ARITHMETIC.get(finding.check, _list_nothing)(sums, finding)
    if finding.measured is not None and finding.limit is not None:
        yield sums.compare(finding)


def _list_nothing(sums: Sums, finding: Finding) -> Iterator[str]:
    return iter(())


def _list_mantel_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    rules, _ = list_rules(sums.surround.job.site)
    if finding.at is None or not rules:
        return
    yield from sums.place(finding)
    for rule in rules:
        yield from sums.need(rule.name, finding)
    yield from sums.boards(finding)


def _list_hearth_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    return sums.hearth(finding) if finding.measured is not None else iter(())


def _list_concealed_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    if finding.at is None:
        return
    if finding.part == BESIDE:
        side, near = sums.surround.layout.facing_side, abs(finding.at[0])
        off = f"{sums.bare(near)} \N{MINUS SIGN} {sums.bare(side)} = {sums.text(near - side)}"
        yield f"Off the facing's side, from the centre line: {off}."
    else:
        yield f"The nearest nailer's back lies {sums.text(finding.at[2])} out from the masonry."


ARITHMETIC: dict[str, Callable[[Sums, Finding], Iterator[str]]] = {
    MANTEL: _list_mantel_sums,
    HEARTH: _list_hearth_sums,
    CONCEALED: _list_concealed_sums,
    ZONE: Sums.zone,
    SAG: list_sag_sums,
    WEIGHED: list_weight_sums,
    FIXING: list_pull_sums,
    TELEVISION: list_screen_sums,
    ANCHORS: list_anchor_sums,
    CORD_WAY: list_cord_sums,
    JOINTS: list_joint_sums,
    PANELS: list_panel_sums,
    HOUSE: list_house_sums,
    FIT: list_fit_sums,
}
"""What is worked out for the findings of each check, before what is measured is held against its limit."""
