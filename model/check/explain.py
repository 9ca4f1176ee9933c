"""One finding explained: the rule in plain words, the arithmetic with this surround's numbers, its source.

What it looks like is drawn in render.explained; worked out on demand, never on the way of an edit.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot, isfinite

import numpy as np

from model.check.all import WHO_DECIDES
from model.check.board_distance import list_board_distances
from model.check.chart import AMENDMENT, CHART, read_chart
from model.check.clearance import HAIR
from model.check.concealed import CHECK as CONCEALED
from model.check.finding import STATUS_WORD, Bound, Finding
from model.check.hearth_rules import SQUARE_INCHES_PER_FOOT, is_large
from model.check.in_force import list_rules
from model.check.mantel import CHECK as MANTEL
from model.check.manuals_hearth import CHECK as HEARTH
from model.check.plain import FIT, SURVEY
from model.check.zone import CHECK as ZONE
from model.reference.clearance import (
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
from model.surround import Surround
from model.units import MILLIMETRES_ONLY, MM_PER_INCH

CLAUSES = {
    "IRC R1001.11 exception 4": (
        "Exposed wood may lie on the masonry front, but none of it within 6 in. of the opening. Within 12 "
        "in. it may stand out no more than 1/8 in. for each inch of distance; from 12 in. on it is free. "
        "Top and sides alike. Distance is taken in the plane of the front from the opening's edge, "
        "projection square out from the masonry to the finished face, furring included."
    ),
    "NFPA 211 11.2.5.4": (
        "No woodwork within 6 in. of the opening. What stands out more than 1 1/2 in. keeps 12 in. above the "
        "opening, and beside it 6 in. and as much again as it stands out."
    ),
    "NBC 9.22.9.1": (
        "Nothing that burns within 150 mm of the opening. What stands out more than 38 mm above the opening "
        "keeps 300 mm over its top."
    ),
    CHART: (
        "The appliance's manual governs, and no other figure does. Its table gives the least height for each "
        "greatest projection, and the least distance for what stands beside the opening."
    ),
    AMENDMENT: (
        "The place has enacted its own distances: the least for each greatest projection, above the opening "
        "and beside it."
    ),
    "IRC R1001.10": (
        "Before an opening under 6 sq ft the hearth reaches 16 in. out and 8 in. beyond each side; before "
        "one of 6 sq ft or more 20 in. and 12 in. The front counts from the opening."
    ),
    "IRC R1001.9.2": (
        "The hearth in front is 2 in. thick at least; 3/8 in. are enough where the firebox's floor lies 8 "
        "in. or more above it."
    ),
    "NFPA 211 11.3": (
        "Before an opening under 6 sq ft the hearth reaches 16 in. out and 8 in. beyond each side; before "
        "one of 6 sq ft or more 20 in. and 12 in. The front counts from the finished facing; 2 in. thick."
    ),
    "NBC 9.22.5.1": (
        "The hearth reaches 400 mm in front of the facing and 200 mm beyond each side; further where the "
        "fire's floor lies more than 150 mm above it."
    ),
    "NBC 9.22.5.2": "The slab is 100 mm thick at its supports and 50 mm at a cantilevered edge.",
    "ABCB 12.4.2": (
        "The hearth reaches 300 mm in front and 150 mm beyond each side of the opening; nothing that burns "
        "lies within 150 mm below its top."
    ),
    "AD J Diagrams 24 and 25": (
        "The constructional hearth reaches 500 mm in front of the jambs and 150 mm beyond each side."
    ),
    "AD J constructional hearth": "A hearth under an open fire is 125 mm thick at least.",
    "IRC R1001.11": (
        "Framing and all else that burns keeps 2 in. of air off the front and sides of a masonry fireplace "
        "and 4 in. off its back. Exposed mantels and trim are excepted; hidden blocking is not plainly so."
    ),
    "IRC R1004.2": "The hearth before a factory-built fireplace is what its listing says.",
}
"""Each clause in our own words, by the name it has in findings."""
NO_CLAUSE = {
    FIT: "No clause stands behind this: it follows from how the parts go together and what room there is.",
    SURVEY: "No clause stands behind this: measurements are held against one another.",
    ZONE: "The manual wants stone, tile, brick or metal there, and nothing that burns behind it.",
}


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
    part = finding.part[:1].upper() + finding.part[1:]
    return Explanation(
        f"{part}: {finding.check}",
        f"{STATUS_WORD[finding.status].capitalize()}: {finding.message}",
        tuple(clause[:1].upper() + clause[1:] for clause in _list_clauses(finding)),
        tuple(line.replace("..", ".") for line in _list_arithmetic(surround, finding)),
        f"{_name_source(finding)}. Standing of the figure: {finding.standing}.".replace("..", "."),
    )


def _name_source(finding: Finding) -> str:
    """Rule and source, the rule left out where the source says it."""
    return finding.source if finding.rule in finding.source else f"{finding.rule}. {finding.source}"


def _list_clauses(finding: Finding) -> Iterator[str]:
    names = [name for name in CLAUSES if name in finding.rule.split(", ")]
    for name in names:
        yield f"{name}. {CLAUSES[name]}"
    if not names and finding.check in NO_CLAUSE:
        yield NO_CLAUSE[finding.check]


def _list_arithmetic(surround: Surround, finding: Finding) -> Iterator[str]:
    sums = _Sums(surround)
    rules, _ = list_rules(surround.job.site)
    if finding.check == MANTEL and finding.at is not None and rules:
        yield from sums.place(finding)
        for rule in rules:
            yield from sums.need(rule.name, finding)
        yield from _list_boards(surround, finding, sums)
    elif finding.check == HEARTH and finding.measured is not None:
        yield from sums.hearth(finding)
    elif finding.check == CONCEALED and finding.at is not None:
        yield f"The nearest nailer's back lies {sums.text(finding.at[2])} out from the masonry."
    if finding.measured is not None and finding.limit is not None:
        yield sums.compare(finding)


def _list_boards(surround: Surround, finding: Finding, sums: _Sums) -> Iterator[str]:
    """The distance of each board of the part at its own tightest place, the nearest first."""
    own = [b for b in list_board_distances(surround) if b.part == finding.part and isfinite(b.measured)]
    if len(own) > 1:
        said = ", ".join(f"{b.mark} {sums.bare(b.measured)}" for b in sorted(own, key=lambda b: b.measured))
        yield f"Its boards, each where it is tightest: {said} {'mm' if sums.metric else 'in.'}."


class _Sums:
    """Lines of arithmetic for one surround, in the unit of its job."""

    def __init__(self, surround: Surround) -> None:
        self._surround = surround
        self._site = surround.job.site
        self.metric = surround.job.about.length_style.units == MILLIMETRES_ONLY

    def text(self, inches: float) -> str:
        """A length in decimals: four of an inch at most, one of a millimetre."""
        return f"{self.bare(inches)} {'mm' if self.metric else 'in.'}"

    def bare(self, inches: float) -> str:
        """The same without its unit."""
        digits = f"{inches * MM_PER_INCH:.1f}" if self.metric else f"{inches:.4f}"
        return digits.rstrip("0").rstrip(".").replace("-", "\N{MINUS SIGN}") or "0"

    def place(self, finding: Finding) -> Iterator[str]:
        """Where the worst point is and how far off the opening."""
        opening = self._site.opening
        x, y, z = finding.at or (0.0, 0.0, 0.0)
        yield (
            f"Worst point: {self.text(abs(x))} from the centre line, {self.text(y)} over the hearth, "
            f"{self.text(z)} out from the masonry."
        )
        beside, above = abs(x) - opening.width / 2, y - opening.height
        b, t = self.bare, self.text
        side = f"Beside the opening: {b(abs(x))} \N{MINUS SIGN} {b(opening.width)} / 2 = {t(beside)}"
        yield side + ("." if beside >= 0 else ": within its width, so that only the height counts.")
        high = f"Above the opening: {b(y)} \N{MINUS SIGN} {b(opening.height)} = {t(above)}"
        yield high + ("." if above >= 0 else ": below its top, so that only the side counts.")
        if beside > HAIR and above > HAIR:
            yield (
                f"Off the corner: straight \N{SQUARE ROOT}({b(beside)}² + {b(above)}²) = "
                f"{t(hypot(beside, above))}; the larger of the two {t(max(beside, above))}."
            )

    def need(self, name: str, finding: Finding) -> Iterator[str]:
        """What each rule asks of that point."""
        z = (finding.at or (0.0, 0.0, 0.0))[2]
        if name == "IRC R1001.11 exception 4":
            yield f"By IRC: {self._irc(z)}"
        elif name == "NFPA 211 11.2.5.4":
            yield f"By NFPA 211: {self._nfpa(z)}"
        elif name == "NBC 9.22.9.1":
            yield f"By the NBC: {self._nbc(z)}"
        else:
            yield from self._chart(z)

    def _irc(self, z: float) -> str:
        low, high, grade = IRC_NONE_WITHIN.value, IRC_ZONE.value, IRC_PROJECTION_PER_INCH.value
        b, t = self.bare, self.text
        if z <= low * grade + HAIR:
            return f"out {t(z)}, no more than {b(low)} / 8 = {t(low * grade)}: {t(low)} are needed."
        if z <= high * grade + HAIR:
            return f"out {t(z)}: 8 × {b(z)} = {t(z / grade)} are needed."
        return f"out {t(z)}, more than {b(high)} / 8 = {t(high * grade)}: {t(high)} are needed."

    def _nfpa(self, z: float) -> str:
        b, t = self.bare, self.text
        if z <= NFPA_PROJECTION.value + HAIR:
            return f"out no more than {t(NFPA_PROJECTION.value)}: {t(NFPA_NONE_WITHIN.value)} are needed."
        beside = NFPA_BESIDE.value
        return (
            f"out {t(z)}, more than {t(NFPA_PROJECTION.value)}: {t(NFPA_ABOVE.value)} above, "
            f"or {b(beside)} + {b(z)} = {t(beside + z)} beside."
        )

    def _nbc(self, z: float) -> str:
        if z <= NBC_PROJECTION.inches + HAIR:
            near = self.text(NBC_NONE_WITHIN.inches)
            return f"out no more than {self.text(NBC_PROJECTION.inches)}: {near} are needed."
        return (
            f"out {self.text(z)}, more than {self.text(NBC_PROJECTION.inches)}: "
            f"{self.text(NBC_ABOVE.inches)} above, or {self.text(NBC_NONE_WITHIN.inches)} beside."
        )

    def _chart(self, z: float) -> Iterator[str]:
        chart = read_chart(self._site)
        for where, table in (("above", chart.above), ("beside", chart.beside)):
            if not table.is_known:
                yield f"The table has no rows for what is {where}."
                continue
            rows = ", ".join(f"{self.bare(p)}: {self.bare(d)}" for p, d in table.rows)
            least = float(table.least(np.array([z]))[0])
            asked = f"{self.text(least)} {where}" if isfinite(least) else f"not permitted {where}"
            yield f"Rows {where} ({rows}); out {self.text(z)}: {asked}."
        if chart.counts_from:
            datum = self._site.opening.height + chart.above.shift
            yield f"Heights count from {chart.counts_from}, {self.text(datum)} over the hearth."

    def hearth(self, finding: Finding) -> Iterator[str]:
        """How the hearth was reckoned."""
        opening, hearth, b = self._site.opening, self._site.hearth, self.bare
        if "IRC" in finding.rule or "NFPA" in finding.rule:
            area = opening.area / SQUARE_INCHES_PER_FOOT
            clear = (
                f"({b(opening.height)} \N{MINUS SIGN} {b(opening.sill)})"
                if opening.sill
                else b(opening.height)
            )
            if not self.metric and not finding.part.endswith("thickness"):
                yield (
                    f"Area: {b(opening.width)} × {clear} / 144 = {area:.2f} sq ft, "
                    f"{'6 or more' if is_large(opening) else 'under 6'}."
                )
        if finding.part == "hearth, front" and self._site.facing.added > HAIR:
            yield f"Hearth {b(hearth.depth)}, slips to be laid {b(self._site.facing.added)}."
        if finding.part == "hearth, sides":
            reach = (hearth.width - opening.width) / 2
            both = f"{b(hearth.width)} \N{MINUS SIGN} {b(opening.width)}"
            yield f"Each side: ({both}) / 2 = {self.text(reach)}."

    def compare(self, finding: Finding) -> str:
        """The two against each other, and what is between them."""
        measured, limit = finding.measured or 0.0, finding.limit or 0.0
        spare = measured - limit if finding.bound is Bound.LEAST else limit - measured
        within, over = ("≥", "<") if finding.bound is Bound.LEAST else ("≤", ">")
        sign = within if spare >= -HAIR else over
        if finding.unit != "in":
            return f"{measured:g} {sign} {limit:g} {finding.unit}".strip() + "."
        rest = f"{self.text(abs(spare))} {'to spare' if spare >= -HAIR else 'short'}"
        if abs(spare) <= HAIR:
            rest = "just met"
        return f"{self.bare(measured)} {sign} {self.text(limit)}: {rest}."
