"""What of a sub-assembly goes up before the rest of it, so that it can be nailed to what carries it.

A shelf that is closed all round can be nailed to nothing below it: its underside goes up by itself, nailed
from above, and the rest over it.
"""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import replace

from model.board import Board
from model.steps.reach import Reach
from model.steps.touching import Touching, group_touching, list_pairs
from model.steps.units import Turn, Unit
from model.takeoff.fasteners import Fixing, Means

Rounds = tuple[tuple[Unit, ...], ...]


class Parting:
    """Parts units where that brings nails into reach that nothing gets at once the unit is whole."""

    def __init__(
        self, boards: Sequence[Board], touching: Touching, fixings: Sequence[Fixing], reach: Reach
    ) -> None:
        self._boards = boards
        self._touching = touching
        self._fixings = [fixing for fixing in fixings if fixing.count]
        self._reach = reach

    def part(self, rounds: Rounds) -> Rounds:
        """The rounds in their order, some units in two of them."""
        there: set[int] = set()
        parted: list[tuple[Unit, ...]] = []
        for units in rounds:
            built = len(units) == 1 and units[0].turn is Turn.BUILT
            parted += self._part(units[0], there) if built else [units]
            there |= {i for unit in units for i in unit.boards}
        return tuple(parted)

    def _part(self, unit: Unit, there: Set[int]) -> list[tuple[Unit, ...]]:
        own = set(unit.boards)
        first = self._grow(self._list_gained(own, own, there), own)
        first = self._grow(self._list_gained(own, first, there), own)
        if not first or not self._comes_apart(first, own - first):
            return [(unit,)]
        sole, rest = (tuple(i for i in unit.boards if (i in first) is is_sole) for is_sole in (True, False))
        return [(replace(unit, part=self._boards[sole[0]].role, boards=sole),), (replace(unit, boards=rest),)]

    def _list_gained(self, own: Set[int], first: Set[int], there: Set[int]) -> set[int]:
        """Boards of `own` that can be nailed straight with `first` alone there, but not with all of it."""
        gained = set()
        for fixing in self._fixings:
            mine = {fixing.through, fixing.into} & own
            if len(mine) == 1 and {fixing.through, fixing.into} & there and mine <= first:
                alone = there | (mine if first == own else first)
                whole = self._reach.goes_straight(fixing, there | own)
                if not whole and self._reach.goes_straight(fixing, alone):
                    gained |= mine
        return gained

    def _grow(self, first: set[int], own: Set[int]) -> set[int]:
        """With the boards that are glued edge to edge to them."""
        alike = [pair for pair in list_pairs(sorted(own)) if self._are_edged(*pair)]
        return {i for group in group_touching(sorted(own), alike) if set(group) & first for i in group}

    def _are_edged(self, one: int, other: int) -> bool:
        alike = self._boards[one].role == self._boards[other].role
        return alike and self._touching.area(one, other) > 0

    def _comes_apart(self, first: Set[int], rest: Set[int]) -> bool:
        """Whether each part holds together, and the rest can be set down on all of the first from above."""
        between = [(one, other) for one in first for other in rest]
        screwed = any(
            f.means is Means.SCREW and {f.through, f.into} & first and {f.through, f.into} & rest
            for f in self._fixings
        )
        under = any((one, other) in self._touching.rests for one, other in between)
        carried = all(any((other, one) in self._touching.rests for other in rest) for one in first)
        behind = any((one, other) in self._touching.covers for one, other in between)
        whole = all(
            len(group_touching(sorted(part), list(self._touching.areas))) == 1 for part in (first, rest)
        )
        return bool(rest) and whole and carried and not (screwed or under or behind)
