"""In what order the boards of one sub-assembly are put together on the bench.

What is screwed into a frame, solid panels in its grooves, or glued edge to edge is made first; then boards go
on as they touch what is there, thin panels first, hidden pieces before those that show, and none over a nail
that is not driven yet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from model.board import Board, StockKind
from model.build.groove import is_floating
from model.steps.touching import Pair, Touching, group_touching, list_pairs
from model.takeoff.fasteners import Fixing, Means

PARTS = (
    ("bed mould", "bed mould"),
    ("back band", "back band"),
    ("slip", "slip"),
    ("panel mould", "panel mouldings"),
    ("plinth cap", "plinth caps"),
    ("capital", "capital"),
    ("edge band", "edge band"),
    ("flute", "face"),
    ("raised", "raised board"),
    ("packing", "packing"),
    ("plinth", "plinth"),
    ("panel", "panels"),
    ("return", "returns"),
    ("break rib", "ribs and strips"),
    ("rib", "ribs and strips"),
    ("strip", "ribs and strips"),
    ("rail", "frame"),
    ("stile", "frame"),
    ("nailer", "nailers"),
)
"""What pieces are called together, by words of their role; others go by the role itself."""


SHOWS = 1.0
"""Square inches to be seen from which a piece shows."""


@dataclass(frozen=True, slots=True)
class Round:
    """What goes on at one time: `new` boards, or `ready` ones that were made into one before."""

    part: str
    new: tuple[int, ...] = ()
    ready: tuple[int, ...] = ()
    joined: bool = True
    """Whether they are fastened to what is there, or made by themselves."""

    @property
    def all(self) -> tuple[int, ...]:
        """Everything that goes on."""
        return (*self.new, *self.ready)


def part_of(board: Board) -> str:
    """What a piece belongs to that goes on together: ``returns``, ``edge band``; the role where unknown."""
    return next((part for word, part in PARTS if word in board.role), board.role)


class Bench:
    """Orders the boards of sub-assemblies."""

    def __init__(self, boards: Sequence[Board], touching: Touching, fixings: Sequence[Fixing]) -> None:
        self._boards = boards
        self._touching = touching
        self._fixings = fixings
        self._screwed = [(f.through, f.into) for f in fixings if f.means is Means.SCREW and f.count]
        self._nailed = [(f.through, f.into) for f in fixings if f.means is not Means.SCREW and f.count]

    def order(self, unit: Sequence[int]) -> tuple[Round, ...]:
        """Rounds that put `unit`, whose boards hang together, into one piece."""
        clumps = list(
            group_touching(
                unit, [*self._list_screwed(unit), *self._list_edged(unit), *self._list_caught(unit)]
            )
        )
        core = max(clumps, key=lambda clump: self._worth(clump, unit))
        made = [self._make(clump) for clump in clumps if len(clump) > 1 and clump != core]
        there, waiting = list(core), [clump for clump in clumps if clump != core]
        rounds = []
        while waiting:
            chosen = self._choose(waiting, there, unit)
            rounds.append(self._join(chosen))
            waiting = [clump for clump in waiting if clump not in chosen]
            there += [i for clump in chosen for i in clump]
        first = Round(self._name_core(core), core, joined=False)
        if rounds and rounds[0].part == first.part and not rounds[0].ready:
            first = Round(first.part, (*core, *rounds.pop(0).new), joined=False)
        return (*made, first, *rounds)

    def is_one_wide(self, boards: Sequence[int]) -> bool:
        """Whether several boards are only glued edge to edge, each of them to others."""
        groups = group_touching(boards, list(self._list_edged(boards)))
        return bool(groups) and all(len(group) > 1 for group in groups)

    def _make(self, clump: tuple[int, ...]) -> Round:
        return Round(part_of(self._boards[clump[0]]), clump, joined=False)

    def _name_core(self, core: tuple[int, ...]) -> str:
        return part_of(self._boards[core[0]])

    def _join(self, chosen: Sequence[tuple[int, ...]]) -> Round:
        new = tuple(i for clump in chosen if len(clump) == 1 for i in clump)
        ready = tuple(i for clump in chosen if len(clump) > 1 for i in clump)
        return Round(part_of(self._boards[(*new, *ready)[0]]), new, ready)

    def _list_screwed(self, unit: Sequence[int]) -> Iterator[Pair]:
        own = set(unit)
        return ((a, b) for a, b in self._screwed if a in own and b in own)

    def _list_edged(self, unit: Sequence[int]) -> Iterator[Pair]:
        """Like boards of the same role that are glued edge to edge along their length into one wide one."""
        for i, j in list_pairs(unit):
            one, other = self._boards[i], self._boards[j]
            alike = (one.role, one.stock, one.length_axis) == (other.role, other.stock, other.length_axis)
            if alike and self._touching.area(i, j) > 0 and one.stock.kind is StockKind.BOARD:
                yield i, j

    def _list_caught(self, unit: Sequence[int]) -> Iterator[Pair]:
        """Solid panels and the members whose grooves they lie in: they go in as the frame is put together."""
        for i, j in list_pairs(unit):
            pair = self._boards[i], self._boards[j]
            caught = any(map(is_floating, pair)) and all(b.stock.kind is StockKind.BOARD for b in pair)
            if caught and self._touching.area(i, j) > 0:
                yield i, j

    def _worth(self, clump: Sequence[int], unit: Sequence[int]) -> tuple[bool, bool, bool, int, float]:
        """How well others are built on it: solid and seen, a frame, large and touched by many, high."""
        kinds = {self._boards[i].stock.kind for i in clump}
        touched = [j for j in unit if j not in clump and self._touches((j,), clump)]
        seen = sum(self._touching.seen[i] for i in clump)
        top = max(self._boards[i].bounds[1][1] for i in clump)
        shows = seen > SHOWS
        return (
            kinds == {StockKind.BOARD},
            shows,
            shows and len(clump) > 1,
            len(touched) * round(seen / 36),
            top,
        )

    def _choose(
        self, waiting: Sequence[tuple[int, ...]], there: Sequence[int], unit: Sequence[int]
    ) -> list[tuple[int, ...]]:
        """The clump that goes on next, and all of its part that can go on with it."""
        can = [clump for clump in waiting if self._touches(clump, there)] or list(waiting)
        first = min(can, key=lambda clump: self._rank(clump, there, unit))
        part, hidden = part_of(self._boards[first[0]]), self._breaks(first, there, unit)
        chosen, grown = [first], [*there, *first]
        more = True
        while more:
            fitting = [
                clump
                for clump in waiting
                if clump not in chosen
                and part_of(self._boards[clump[0]]) == part
                and self._touches(clump, grown)
                and self._breaks(clump, grown, unit) <= hidden
            ]
            chosen += fitting
            grown += [i for clump in fitting for i in clump]
            more = bool(fitting)
        return chosen

    def _touches(self, clump: Sequence[int], there: Sequence[int]) -> bool:
        """Whether it touches anything there, were it only as the nearest."""
        return any((min(i, j), max(i, j)) in self._touching.areas for i in clump for j in there)

    def _rank(
        self, clump: Sequence[int], there: Sequence[int], unit: Sequence[int]
    ) -> tuple[int, bool, bool, bool, float]:
        kinds = {self._boards[i].stock.kind for i in clump}
        shows = sum(self._touching.seen[i] for i in clump) > SHOWS
        return (
            self._breaks(clump, there, unit),
            StockKind.MOULDING in kinds,
            StockKind.PANEL not in kinds,
            shows,
            -self._touching.between(clump, there),
        )

    def _breaks(self, clump: Sequence[int], there: Sequence[int], unit: Sequence[int]) -> int:
        """How many nails within `unit`, not driven yet, it would cover if it went on now."""
        own, up, inside = set(clump), set(there), set(unit)
        now = up | own
        return sum(
            1
            for one, other in self._nailed
            if not (one in now and other in now)
            and (one in inside and other in inside)
            and not (one in own or other in own)
            and self._touching.can_nail(one, other, up)
            and not self._touching.can_nail(one, other, now)
        )
