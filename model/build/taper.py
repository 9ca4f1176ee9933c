"""Columns whose edges lean: how far, from where to where, and the edges and strips that follow from it.

A column leans on its shaft alone: from the top of the plinth and its cap, or its foot, up to the foot of
the capital, or the frieze's lower edge. Below and above it stands upright. So plinth, caps, frieze and bed
mould meet upright wood, square as on a straight column, and only the shaft has angled cuts. A face is sawn
to shape from flat boards; a return is a flat board and cannot follow a bend, so it is a foot, a leaning
shaft and a head, one on the other. Boards that lean keep their thickness as measured level: at the
steepest, square through them is less by one part in a thousand.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from model.board import Board, End, Point2, Stock, block
from model.build.ledger import Ledger
from model.design import BOTH, OUTER, Design
from model.half_plane import keep_side

STEEPEST_EDGE = 1 / 24
"""Most that a column's edge may lean for each inch of height; beyond it stiles and rails no longer serve
upright joints. Shop choice."""
LEAST_TAPER = 1 / 16
"""Least difference between foot and top that is worth an angled cut, in. Shop choice."""
LEAST_WIDTH = 4.0
"""Narrowest that a column's face may become, in. Shop choice."""
HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class Line:
    """An edge on a face: at x = `foot` up to y = `low`, straight to `head` at `high`, upright again."""

    low: float
    high: float
    foot: float
    head: float

    @property
    def slope(self) -> float:
        """How far it moves along x for each inch up where it leans."""
        return (self.head - self.foot) / (self.high - self.low) if self.leans else 0.0

    @property
    def leans(self) -> bool:
        """Whether it does at all."""
        return self.head != self.foot

    def at(self, y: float) -> float:
        """x at a level."""
        if y <= self.low:
            return self.foot
        return self.head if y >= self.high else self.foot + self.slope * (y - self.low)

    def moved(self, dx: float) -> Line:
        """The same edge `dx` further along x."""
        return replace(self, foot=self.foot + dx, head=self.head + dx)

    def held(self, low: float, high: float) -> Line:
        """The same edge, upright below `low` and above `high`, which lie within its own."""
        return Line(low, high, self.at(low), self.at(high))

    def points(self, y: Point2) -> list[Point2]:
        """Its corners (x, y) from y[0] up to y[1]."""
        bends = [level for level in (self.low, self.high) if self.leans and y[0] < level < y[1]]
        return [(self.at(level), level) for level in (y[0], *bends, y[1])]

    def cut(self, y: Point2) -> End:
        """The plane along it that cuts a piece along x, between two levels with no bend between them."""
        slope = self.slope if self.low <= y[0] and y[1] <= self.high else 0.0
        return End(self.at(y[0]) - slope * y[0], slope, 0.0)


def upright(x: float) -> Line:
    """An edge that does not lean."""
    return Line(0.0, 0.0, x, x)


@dataclass(frozen=True, slots=True)
class Edges:
    """Two edges that bound a part of a column, as if it stood on the right."""

    inner: Line
    outer: Line

    def section(self, y: Point2) -> tuple[Point2, ...]:
        """The (x, y) outline of what lies between both from y[0] up to y[1], counter-clockwise."""
        left, right = self.inner.points(y), self.outer.points(y)
        return (left[0], *right, *reversed(left[1:]))

    def inset(self, by: float) -> Edges:
        """The same, narrower by that on either side."""
        return Edges(self.inner.moved(by), self.outer.moved(-by))

    @property
    def narrowest(self) -> Point2:
        """x of an upright strip that fits between both at every level."""
        return max(self.inner.foot, self.inner.head), min(self.outer.foot, self.outer.head)

    def at(self, y: float) -> Point2:
        """x of both at a level."""
        return self.inner.at(y), self.outer.at(y)

    def within(self, y: Point2) -> Point2:
        """The same between two levels with no bend between them."""
        inner, outer = ([line.at(level) for level in y] for line in (self.inner, self.outer))
        return max(inner), min(outer)


def build_strip(
    role: str, words: str, stock: Stock, edges: Edges, y: Point2, z: Point2, grain: str = "y"
) -> Board:
    """A piece sawn to shape from a flat board, between two edges from y[0] up to y[1]; a strip where both
    are upright.
    """
    if not (edges.inner.leans or edges.outer.leans):
        return block(role, words, stock, grain, (edges.inner.foot, edges.outer.foot), y, z)
    return Board(role, words, stock, "z", edges.section(y), End(z[0]), End(z[1]), grain=grain)


def clip_between(profile: Sequence[Point2], y: Point2) -> tuple[Point2, ...]:
    """What of a (y, z) outline lies between two levels."""
    return keep_side(keep_side(profile, 0, y[0], above=True), 0, y[1], above=False)


@dataclass(frozen=True, slots=True)
class Taper:
    """What of the taper asked for is built: `total` inches narrower at the top, on both edges or the outer.

    `reason` says why that is less than was asked.
    """

    total: float
    both: bool
    reason: str = ""

    @property
    def inner(self) -> float:
        """How far the inner edge moves along x up to the top."""
        return self.total / 2 if self.both else 0.0

    @property
    def outer(self) -> float:
        """How far the outer edge does."""
        return -self.total / 2 if self.both else -self.total

    def held(self, most: float, reason: str) -> Taper:
        """No more than `most` either way, with the reason for it."""
        if abs(self.total) <= most + HAIR:
            return self
        most = max(most, 0.0)
        return replace(self, total=most if self.total > 0 else -most, reason=reason)

    def edges(self, inner: float, outer: float, low: float, high: float) -> Edges | None:
        """A column's edges, from x of its foot and the levels it leans between; None where it is straight."""
        if not self.total:
            return None
        return Edges(Line(low, high, inner, inner + self.inner), Line(low, high, outer, outer + self.outer))


def fit_width(design: Design, narrowest: float, ledger: Ledger) -> Taper:
    """What the narrower column's width, the opening and what lies along the inner edge leave of the taper."""
    asked = design.column.taper
    both = design.column.taper_edges == BOTH
    if asked and both and (design.slip.on or design.back_band.on):
        reason = "a slip or back band runs straight along the columns' inner edges"
        ledger.swap("column.taper_edges", BOTH, OUTER, reason)
        both = False
    taper = Taper(asked, both)
    if asked > 0:
        return taper.held(
            narrowest - LEAST_WIDTH, f"a column is no narrower than {LEAST_WIDTH:g} in. anywhere"
        )
    if both:
        return taper.held(2 * design.column.margin, "the inner edge would reach over the opening")
    return taper


Shaft = tuple[float, float, float]
"""x of a column's inner and outer side at its foot, and y from which it leans."""


def fit_slope(
    taper: Taper, shafts: Sequence[Shaft], top: float, facing: Point2, board: float, ledger: Ledger
) -> Taper:
    """`taper` as it is built up to y = `top`, alike on both columns.

    `facing` is x of the facing's side and how far it stands proud, `board` the returns' thickness.
    """
    shaft = top - max(low for _, _, low in shafts)
    built = _hold_slope(taper, shaft)
    if built.both and any(_crosses(inner, built.inner, facing) for inner, _, _ in shafts):
        reason = "the inner returns would lean off the edge of a facing that stands proud"
        ledger.swap("column.taper_edges", BOTH, OUTER, reason)
        built = _hold_slope(replace(built, both=False), shaft)
    if any(_crosses(outer - board, built.outer, facing) for _, outer, _ in shafts):
        built = built.held(0.0, "the outer returns would lean off the edge of a facing that stands proud")
    return built


def _hold_slope(taper: Taper, shaft: float) -> Taper:
    edges = 2 if taper.both else 1
    built = taper.held(edges * shaft * STEEPEST_EDGE, "the edges would lean more than one in twenty-four")
    return (
        built.held(0.0, "that is too little for an angled cut") if abs(built.total) < LEAST_TAPER else built
    )


def _crosses(x: float, shift: float, facing: Point2) -> bool:
    side, proud = facing
    return proud > 0 and (x >= side) != (x + shift >= side)
