"""Lines of arithmetic for findings of clearance and hearth, with the surround's own numbers.

Those of what is built, held up or hung over it are model.check.sums_built's.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot, isfinite

import numpy as np

from model.check.board_distance import list_board_distances
from model.check.chart import read_chart
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding
from model.check.hearth_rules import is_large
from model.check.mantel import IRC_RULE, NBC_RULE, NFPA211_RULE
from model.measures import SQUARE_INCHES
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


class Sums:
    """Lines of arithmetic for one surround, in the unit of its job."""

    def __init__(self, surround: Surround) -> None:
        self.surround = surround
        self._site = surround.job.site
        self.metric = surround.job.about.length_style.units == MILLIMETRES_ONLY

    def text(self, inches: float) -> str:
        """A length in decimals: four of an inch at most, one of a millimetre."""
        return f"{self.bare(inches)} {'mm' if self.metric else 'in.'}"

    def bare(self, inches: float) -> str:
        """The same without its unit."""
        digits = f"{inches * MM_PER_INCH:z.1f}" if self.metric else f"{inches:z.4f}"
        return digits.rstrip("0").rstrip(".").replace("-", "\N{MINUS SIGN}") or "0"

    def boards(self, finding: Finding) -> Iterator[str]:
        """The distance of each board of the part at its own tightest place, the nearest first."""
        found = list_board_distances(self.surround)
        own = sorted(
            (b for b in found if b.part == finding.part and isfinite(b.measured)), key=lambda b: b.measured
        )
        if len(own) > 1:
            said = ", ".join(f"{b.mark} {self.bare(b.measured)}" for b in own)
            yield f"Its boards, each where it is tightest: {said} {'mm' if self.metric else 'in.'}."

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
        if name == IRC_RULE.name:
            yield f"By IRC: {self._irc(z)}"
        elif name == NFPA211_RULE.name:
            yield f"By NFPA 211: {self._nfpa(z)}"
        elif name == NBC_RULE.name:
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
            area = opening.area / SQUARE_INCHES
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

    def zone(self, finding: Finding) -> Iterator[str]:
        """How far the facing covers what lies round the opening."""
        opening, facing, b = self._site.opening, self._site.facing, self.bare
        if finding.path == "facing.height":
            yield (
                f"Above: {b(facing.height)} \N{MINUS SIGN} {b(opening.height)} = "
                f"{self.text(facing.height - opening.height)}."
            )
        else:
            both = f"{b(facing.width)} \N{MINUS SIGN} {b(opening.width)}"
            yield f"Each side: ({both}) / 2 = {self.text((facing.width - opening.width) / 2)}."

    def compare(self, finding: Finding) -> str:
        """The two against each other, and what is between them."""
        measured, limit = finding.measured or 0.0, finding.limit or 0.0
        spare = measured - limit if finding.bound is Bound.LEAST else limit - measured
        within, over = ("≥", "<") if finding.bound is Bound.LEAST else ("≤", ">")
        sign = within if spare >= -HAIR else over
        if finding.unit != "in":
            return f"{measured:g} {sign} {limit:g} {finding.unit}".strip() + "."
        missed = "short" if finding.bound is Bound.LEAST else "too much"
        rest = f"{self.text(abs(spare))} {'to spare' if spare >= -HAIR else missed}"
        if abs(spare) <= HAIR:
            rest = "just met"
        return f"{self.bare(measured)} {sign} {self.text(limit)}: {rest}."
