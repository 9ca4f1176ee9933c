"""Where along each nailer an anchor finds sound masonry, or framing beside and over the facing.

What the anchors found carry is model.takeoff.anchors'.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil, hypot, sqrt
from typing import TYPE_CHECKING

from model.board import Board, Point2, StockKind
from model.build.behind import BOLT
from model.build.lines import Layout
from model.build.nailers import PACKING
from model.build.obstacles import Obstacle
from model.fixing import AnchorRule
from model.reference.anchors import LEAST_APART, OFF_FACING, WOOD_EDGE

if TYPE_CHECKING:
    from model.surround import Surround

END = 2.0
"""From a nailer's end to its first anchor, in., so that it does not split. Shop choice."""
HAIR = 1e-6
TIE = 6
"""Decimals of an inch to which two places are as near."""
MASONRY, WALL = "masonry", "wall framing"


@dataclass(frozen=True, slots=True)
class Anchor:
    """One anchor: x from the opening's centre line, y over the hearth, and the nailer it goes through.

    `board` is that nailer's index. `upper` ones lie high enough to hold the surround up; an overmantel's own,
    over the shelf, are not among them. `into` is MASONRY, or WALL for a screw into the framing beside the
    facing, which is planned to hold no more.
    """

    x: float
    y: float
    board: int
    upper: bool
    into: str


def list_nailers(surround: Surround) -> list[int]:
    """Places of all nailers in the list of boards; packing is screwed down to the ledger below it."""
    return [
        i
        for i, board in enumerate(surround.boards)
        if board.stock.kind is StockKind.FRAMING and board.role != PACKING
    ]


def place_anchors(surround: Surround) -> tuple[Anchor, ...]:
    """Along each nailer on the line in its width that finds most sound places, its middle where that does.

    A place that is not sound is moved along the nailer to the nearest that is, half a bay at most.
    """
    middle, top = surround.layout.shelf_bottom / 2, surround.layout.shelf_top
    found: list[Anchor] = []
    for i in list_nailers(surround):
        ground = _Ground(surround.layout, surround.job.design.anchor, surround.boards[i], found)
        for x, y in ground.find_spots():
            found.append(Anchor(x, y, i, middle < y < top, ground.into(x, y)))
    return tuple(found)


def count_wanted(board: Board, spacing: float) -> int:
    """How many anchors a nailer has where all of it lies on sound ground."""
    along = 1 if board.length_axis == "y" else 0
    return len(_share(board.bounds[0][along], board.bounds[1][along], spacing))


def _share(low: float, high: float, spacing: float) -> list[float]:
    """One near each end and the rest no further apart than asked; one in the middle of a short piece."""
    if high - low < 4 * END:
        return [(low + high) / 2]
    first, last = low + END, high - END
    bays = max(1, ceil((last - first) / spacing - HAIR))
    return [first + (last - first) * i / bays for i in range(bays + 1)]


class _Ground:
    """What one nailer lies on, and which anchors stand there already."""

    def __init__(self, layout: Layout, rule: AnchorRule, board: Board, found: Sequence[Anchor]) -> None:
        self._layout, self._rule = layout, rule
        low, high = board.bounds
        self._along = 1 if board.length_axis == "y" else 0
        self._ends = low[self._along], high[self._along]
        self._sides = low[1 - self._along], high[1 - self._along]
        self._on_wall, self._on_facing = low[2] == layout.wall, low[2] == 0.0
        bolts = [o for o in layout.behind if o.kind == BOLT]
        self._bolts = [(_middle_of(o), rule.edge + (o.x[1] - o.x[0]) / 2) for o in bolts]
        """Each bolt's middle, and how far from there an anchor keeps."""
        self._others = [(anchor.x, anchor.y) for anchor in found]

    def find_spots(self) -> list[Point2]:
        """The places on the best line; the nearest to the nailer's middle of those that hold as many."""
        wanted = _share(*self._ends, self._rule.spacing)
        best: list[Point2] = []
        for across in self._list_lines():
            spots = self._follow(across, wanted)
            if len(spots) > len(best):
                best = spots
            if len(best) == len(wanted):
                break
        return best

    def into(self, x: float, y: float) -> str:
        """MASONRY or WALL; empty where neither is sound."""
        if self._on_wall and self._is_beside_facing(x, y):
            return WALL
        return MASONRY if self._on_facing and self._is_sound(x, y) else ""

    def _list_lines(self) -> Iterator[float]:
        """Across the nailer: its middle, and where soundness begins or ends, the nearest to it first."""
        low, high = self._sides
        middle, inset = (low + high) / 2, min(WOOD_EDGE.value, (high - low) / 2)
        yield middle
        stops = (low + inset, high - inset, *self._list_stops(1 - self._along))
        yield from _nearest_first(
            (at for at in stops if low + inset - HAIR <= at <= high - inset + HAIR), middle
        )

    def _follow(self, across: float, wanted: Sequence[float]) -> list[Point2]:
        """The places along one line, each moved no further than half way to the next."""
        spots: list[Point2] = []
        bay = wanted[1] - wanted[0] if len(wanted) > 1 else self._ends[1] - self._ends[0]
        for at in wanted:
            spot: Point2 | None = self._at(across, at)
            if not self._is_free(self._at(across, at), spots):
                beside = (self._at(across, to) for to in self._list_beside(across, at, bay / 2, spots))
                spot = next((place for place in beside if self._is_free(place, spots)), None)
            if spot is not None:
                spots.append(spot)
        return spots

    def _list_beside(self, across: float, at: float, reach: float, spots: Sequence[Point2]) -> list[float]:
        """Where along a line an anchor may go instead, no further off than `reach`, the nearest first."""
        margin = min(END, (self._ends[1] - self._ends[0]) / 4)
        low, high = max(self._ends[0] + margin, at - reach), min(self._ends[1] - margin, at + reach)
        stops = (*self._list_stops(self._along), *self._list_clear(across, spots))
        return _nearest_first((to for to in stops if low - HAIR <= to <= high + HAIR), at)

    def _at(self, across: float, along: float) -> Point2:
        return (across, along) if self._along else (along, across)

    def _list_stops(self, axis: int) -> tuple[float, ...]:
        """Where soundness begins or ends along x, axis 0, or y, axis 1."""
        layout, rule = self._layout, self._rule
        if axis:
            over = layout.opening_top + max(rule.edge, rule.lintel)
            return over, layout.facing_top - rule.edge, layout.facing_top + OFF_FACING.value, END
        sides = (
            layout.opening_side + rule.edge,
            layout.facing_side - rule.edge,
            layout.facing_side + OFF_FACING.value,
        )
        return tuple(sign * side for side in sides for sign in (-1.0, 1.0))

    def _list_clear(self, across: float, spots: Sequence[Point2]) -> Iterator[float]:
        """Where along a line one comes clear of each bolt and each anchor."""
        anchors = [(other, LEAST_APART.value) for other in (*self._others, *spots)]
        for (x, y), apart in (*self._bolts, *anchors):
            along, off = (y, across - x) if self._along else (x, across - y)
            if abs(off) < apart:
                half = sqrt(apart**2 - off**2)
                yield from (along - half, along + half)

    def _is_free(self, spot: Point2, spots: Sequence[Point2]) -> bool:
        """Sound, and far enough from bolts and other anchors."""
        if not self.into(*spot):
            return False
        if any(_apart(spot, bolt) < keep - HAIR for bolt, keep in self._bolts):
            return False
        least = LEAST_APART.value - HAIR
        return all(
            abs(x - spot[0]) >= least or abs(y - spot[1]) >= least or _apart(spot, (x, y)) >= least
            for x, y in (*self._others, *spots)
        )

    def _is_sound(self, x: float, y: float) -> bool:
        """Far enough from the opening, its lintel and the masonry's own edges, and above the hearth."""
        layout, rule = self._layout, self._rule
        over = layout.opening_top + max(rule.edge, rule.lintel)
        off_opening = abs(x) >= layout.opening_side + rule.edge - HAIR or y >= over - HAIR
        within = abs(x) <= layout.facing_side - rule.edge + HAIR and y <= layout.facing_top - rule.edge + HAIR
        return off_opening and within and y >= END - HAIR

    def _is_beside_facing(self, x: float, y: float) -> bool:
        """Far enough off the facing's edge that a stud can stand there."""
        off = OFF_FACING.value - HAIR
        return abs(x) >= self._layout.facing_side + off or y >= self._layout.facing_top + off


def _middle_of(bolt: Obstacle) -> Point2:
    return sum(bolt.x) / 2, sum(bolt.y) / 2


def _apart(one: Point2, other: Point2) -> float:
    return hypot(one[0] - other[0], one[1] - other[1])


def _nearest_first(places: Iterable[float], to: float) -> list[float]:
    """Of two as near the one nearer to the centre line, or the lower."""
    return sorted(set(places), key=lambda at: (round(abs(at - to), TIE), abs(at), at))
