"""What goes up in one piece, and in what order: sub-assemblies, nailers, mouldings.

Nailers first, then what stands on the ground, then what it carries; mouldings after the boards they lie on,
loose panels last. Nothing goes up before what carries it, and nothing over a nail that is not driven yet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import IntEnum

from model.board import Board, StockKind
from model.build.access_panel import ACCESS_PANEL
from model.steps.bench import part_of
from model.steps.touching import Pair, Touching, group_touching
from model.takeoff.fasteners import Fixing
from model.takeoff.standing import FACING, FLOOR, HEARTH

LAPPED = 1 / 64
"""How far, in., a piece may reach below the top of another and still stand wholly over it."""


class Turn(IntEnum):
    """Whose turn it is when nothing else decides."""

    NAILER = 0
    BUILT = 1
    MOULDING = 2
    LOOSE = 3


@dataclass(frozen=True, slots=True)
class Unit:
    """Boards that go up as one; `name` is their sub-assembly, `part` what is told of them together."""

    turn: Turn
    name: str
    part: str
    boards: tuple[int, ...]


def list_units(boards: Sequence[Board], touching: Touching) -> tuple[Unit, ...]:
    """Every board in one unit. A sub-assembly whose boards do not hang together makes several."""
    singles = [i for i, board in enumerate(boards) if _goes_alone(i, boards, touching)]
    tacked = dict(_list_tacked(singles, boards, touching))
    units = [
        Unit(
            _turn(boards[i]),
            boards[i].assembly,
            part_of(boards[i]),
            (i, *(packing for packing, framing in tacked.items() if framing == i)),
        )
        for i in singles
        if i not in tacked
    ]
    alone = set(singles)
    for name in dict.fromkeys(board.assembly for board in boards):
        own = [i for i, board in enumerate(boards) if board.assembly == name and i not in alone]
        units += [Unit(Turn.BUILT, name, name, group) for group in group_touching(own, list(touching.areas))]
    return tuple(units)


def _list_tacked(
    singles: Sequence[int], boards: Sequence[Board], touching: Touching
) -> Iterator[tuple[int, int]]:
    """Packing that lies behind framing, and the framing whose back it is tacked to."""
    for i in singles:
        before = [j for j in singles if (j, i) in touching.covers and _is_framing(boards[j])]
        if boards[i].role.endswith("packing") and not _is_framing(boards[i]) and before:
            yield i, max(before, key=lambda j: touching.area(i, j))


def _is_framing(board: Board) -> bool:
    return board.stock.kind is StockKind.FRAMING


def _turn(board: Board) -> Turn:
    if board.role == ACCESS_PANEL:
        return Turn.LOOSE
    return Turn.MOULDING if board.stock.kind is StockKind.MOULDING else Turn.NAILER


def _goes_alone(i: int, boards: Sequence[Board], touching: Touching) -> bool:
    """Framing and its packing, loose panels, and mouldings of a run of their own."""
    board = boards[i]
    if board.stock.kind is StockKind.FRAMING or board.role == ACCESS_PANEL:
        return True
    if board.stock.kind is StockKind.MOULDING:
        return all(
            other.stock.kind is StockKind.MOULDING for other in boards if other.assembly == board.assembly
        )
    return board.role.endswith("packing") and any(
        touching.area(i, j) > 0 for j, other in enumerate(boards) if other.stock.kind is StockKind.FRAMING
    )


class GoingUp:
    """Orders units before the masonry."""

    def __init__(self, boards: Sequence[Board], touching: Touching, fixings: Sequence[Fixing]) -> None:
        self._boards = boards
        self._touching = touching
        self._nailed = [(f.through, f.into) for f in fixings if f.count]

    def order(self, units: Sequence[Unit]) -> tuple[tuple[Unit, ...], ...]:
        """Units in rounds: those of one round are alike and can go up in any order."""
        waiting, there = list(units), set[int]()
        rounds = []
        while waiting:
            chosen = self._choose(waiting, there)
            rounds.append(tuple(chosen))
            waiting = [unit for unit in waiting if unit not in chosen]
            there |= {i for unit in chosen for i in unit.boards}
        return tuple(rounds)

    def _choose(self, waiting: Sequence[Unit], there: set[int]) -> list[Unit]:
        can = [unit for unit in waiting if self._is_held(unit, there)] or list(waiting)
        best = min(can, key=lambda unit: self._rank(unit, waiting, there))
        most = self._waits_for(best, waiting)
        return [
            unit
            for unit in can
            if unit == best or (self._are_alike(unit, best) and self._waits_for(unit, waiting) <= most)
        ]

    def _are_alike(self, one: Unit, other: Unit) -> bool:
        if one.turn is not other.turn:
            return False
        return one.turn in (Turn.NAILER, Turn.MOULDING) and one.part == other.part

    def _is_held(self, unit: Unit, there: set[int]) -> bool:
        """Whether it touches the site or anything that is up."""
        own = set(unit.boards)
        return any(i in self._touching.site for i in own) or any(
            (one in there or other in there) and (one in own or other in own)
            for one, other in self._touching.areas
        )

    def _rank(
        self, unit: Unit, waiting: Sequence[Unit], there: set[int]
    ) -> tuple[int, int, Turn, bool, float, int]:
        others = {i for other in waiting if other != unit for i in other.boards}
        grounds = {FLOOR, HEARTH}
        stands = any(self._touching.site.get(i, frozenset()) & grounds for i in unit.boards)
        low = min(self._boards[i].bounds[0][1] for i in unit.boards)
        before = self._waits_for(unit, waiting)
        return before, self._breaks(unit, there, others), unit.turn, not stands, round(low, 3), unit.boards[0]

    def _waits_for(self, unit: Unit, waiting: Sequence[Unit]) -> int:
        """How many of those that carry it are not up: what it lies on, and for a moulding what it is on."""
        own = set(unit.boards)
        count = 0
        for other in waiting:
            if other == unit:
                continue
            theirs = set(other.boards)
            if unit.turn in (Turn.MOULDING, Turn.LOOSE) and other.turn < unit.turn:
                count += self._touching.between(unit.boards, other.boards) > 0
            elif unit.turn is Turn.BUILT and other.turn is Turn.NAILER:
                count += self._touching.between(unit.boards, other.boards) > 0 and not self._is_over(
                    other, unit
                )
            elif unit.turn is Turn.NAILER and other.turn is Turn.BUILT:
                count += self._is_over(unit, other) and self._is_carried(theirs)
            elif other.turn is unit.turn:
                count += self._rests(own, theirs) or self._covers_any(own, theirs)
        return count

    def _rests(self, own: set[int], theirs: set[int]) -> bool:
        return any((upper, lower) in self._touching.rests for upper in own for lower in theirs)

    def _covers_any(self, own: set[int], theirs: set[int]) -> bool:
        """Whether it stands before what lies between it and the masonry, as a plinth before a slip."""
        return any(
            (front, behind) in self._touching.covers
            for behind in theirs
            if FACING in self._touching.site.get(behind, frozenset())
            for front in own
        )

    def _is_carried(self, own: set[int]) -> bool:
        """Whether it rests on anything built, as a shelf does; what is fixed over it comes after it."""
        return any(
            upper in own and lower not in own and self._boards[lower].stock.kind is StockKind.BOARD
            for upper, lower in self._touching.rests
        )

    def _is_over(self, upper: Unit, lower: Unit) -> bool:
        """Whether all of one stands over all of the other."""
        foot = min(self._boards[i].bounds[0][1] for i in upper.boards)
        return foot >= max(self._boards[i].bounds[1][1] for i in lower.boards) - LAPPED

    def _breaks(self, unit: Unit, there: set[int], others: set[int]) -> int:
        """How many nails that wait for another unit it would cover if it went up now."""
        own = set(unit.boards)
        return sum(1 for pair in self._nailed if self._covers(pair, own, there, others))

    def _covers(self, pair: Pair, own: set[int], there: set[int], others: set[int]) -> bool:
        one, other = pair
        if one in own or other in own:
            return False
        if not ((one in others or other in others) and (one in there or other in there)):
            return False
        return self._touching.can_nail(*pair, there) and not self._touching.can_nail(*pair, there | own)
