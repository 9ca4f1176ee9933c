"""The flutes of a column's face: how many fit, and the section of the board they are cut into."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, cos, sin

from model.board import Point2
from model.build.ledger import Ledger
from model.design import FLUTED, Design

LEAST_BESIDE = 0.25
"""Least flat left beside the outermost flutes, in. Shop choice."""
LEAST_MARGIN = 0.25
"""Least width of the tapered strip beside the fluted board of a tapered column, in. Shop choice."""
LEAST_BEHIND = 0.1875
"""Least wood left behind a flute, in. Shop choice."""
LEAST_STOP = 0.25
"""Shortest plain piece at the end of flutes, in. Shop choice."""
FACETS = 8
"""Flat strips that a flute's hollow is drawn with."""


@dataclass(frozen=True, slots=True)
class Flutes:
    """As built, alike on both columns; a hollow is an arc `width` across and `depth` deep, inches."""

    count: int
    width: float
    depth: float
    between: float

    @property
    def across(self) -> float:
        """From the first one's outer edge to the last one's."""
        return self.count * self.width + (self.count - 1) * self.between

    def lefts(self, x0: float, x1: float) -> list[float]:
        """x of each one's left edge on a face from x0 to x1."""
        first = (x0 + x1 - self.across) / 2
        return [first + i * (self.width + self.between) for i in range(self.count)]

    def strip(self, x: Point2) -> Point2:
        """x of the fluted board on a face whose narrowest upright strip is `x`."""
        middle, half = (x[0] + x[1]) / 2, self.across / 2 + LEAST_BESIDE
        return middle - half, middle + half

    def section(self, x: Point2, z: Point2) -> tuple[tuple[Point2, ...], frozenset[int]]:
        """A board's section over (z, x), counter-clockwise, and which of its corners lie within a hollow."""
        points: list[Point2] = [(z[0], x[0]), (z[1], x[0])]
        curved: set[int] = set()
        for left in self.lefts(*x):
            curved |= set(range(len(points) + 1, len(points) + FACETS))
            points += [(z[1] - deep, left + along) for along, deep in self._hollow()]
        return (*points, (z[1], x[1]), (z[0], x[1])), frozenset(curved)

    def _hollow(self) -> list[Point2]:
        """(along the face from the left edge, depth), both edges included."""
        half = self.width / 2
        radius = (half * half + self.depth * self.depth) / (2 * self.depth)
        turn = 2 * atan(self.depth / half)
        angles = [turn * (2 * i / FACETS - 1) for i in range(1, FACETS)]
        inside = [(half + radius * sin(a), self.depth - radius * (1 - cos(a))) for a in angles]
        return [(0.0, 0.0), *inside, (self.width, 0.0)]


def fit_flutes(design: Design, face: float, tapered: bool, ledger: Ledger) -> Flutes | None:
    """As many and as deep as a face `face` wide at its narrowest takes; None where columns are not fluted.

    Flutes stay parallel up a `tapered` face, cut along a straight guide: what leans is a margin glued to
    either side of the fluted board, no narrower than LEAST_MARGIN.
    """
    if design.column.kind != FLUTED:
        return None
    asked = design.flute
    face -= 2 * LEAST_MARGIN if tapered else 0.0
    step, room = asked.width + asked.between, face - 2 * LEAST_BESIDE + asked.between
    count = max(1, min(asked.count, int(room / step + 1e-9)))
    ledger.hold("flute.count", asked.count, count, "the column's face is not wide enough for more")
    depth = min(asked.depth, asked.width / 2, design.board.thickness - LEAST_BEHIND)
    reason = "it may be half as deep as it is wide, and must leave wood behind it"
    ledger.hold("flute.depth", asked.depth, depth, reason)
    return Flutes(count, asked.width, depth, asked.between)
