"""The cheapest sheets of a few pieces, exactly: all sets that a sheet holds, and the cheapest choice of sets.

A set of pieces is cut from a box if and only if a first cut parts it in two sets whose boxes stand side by
side or one on the other in it; the smallest boxes of a set, neither of whose sides can be less without the
other being more, are all that is needed to know.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from math import ceil
from typing import Any

import numpy as np

from model.cutting.packer import Layout
from model.cutting.sheet_bounds import HUNDREDTH
from model.cutting.sheet_cuts import Lying
from model.cutting.sheet_problem import SheetProblem, Sides, fits

Pieces = tuple[int, ...]
"""Items, one for each piece, in order."""
WORK = 800_000
"""Most pairs of boxes put together."""
MOST_SETS = 12_000
NODES = 3_000
"""Most nodes of the choice among sets."""
ASKED = 4
"""Sets between two questions whether to stop."""


class TooMuch(Exception):
    """More work than allowed, or told to stop."""


class Boxes:
    """The smallest boxes that sets of pieces are cut from, as far as they lie within some sheet."""

    def __init__(self, problem: SheetProblem, should_stop: Callable[[], bool], work: int = WORK) -> None:
        self._problem, self._should_stop = problem, should_stop
        self._rooms = [room for room in problem.rooms if not _is_within_another(room, problem.rooms)]
        self._known: dict[Pieces, tuple[Sides, ...]] = {}
        self._work = work

    def list_boxes(self, pieces: Pieces) -> tuple[Sides, ...]:
        """The smallest boxes of pieces; none where no sheet holds them."""
        if (known := self._known.get(pieces)) is None:
            known = self._known[pieces] = self._find(pieces)
        return known

    def _find(self, pieces: Pieces) -> tuple[Sides, ...]:
        if len(pieces) == 1:
            return _smallest(self._held(self._problem.items[pieces[0]].ways))
        if len(self._known) % ASKED == 0 and self._should_stop():
            raise TooMuch
        found: set[Sides] = set()
        for one, two in list_partings(pieces):
            mine, others = self.list_boxes(one), self.list_boxes(two)
            if not mine or not others:
                return ()
            self._work -= len(mine) * len(others) + 1
            found.update(self._held(box for a in mine for b in others for box in _join(a, b)))
        if self._work < 0:
            raise TooMuch
        return _smallest(found)

    def _held(self, boxes: Any) -> list[Sides]:
        return [box for box in boxes if any(fits(box, room) for room in self._rooms)]

    def lay(self, pieces: Pieces, room: Sides) -> tuple[Lying, ...]:
        """Pieces laid in a room that holds a box of theirs."""
        box = next(each for each in self.list_boxes(pieces) if fits(each, room))
        return tuple(self._lay(pieces, box, 0, 0))

    def _lay(self, pieces: Pieces, box: Sides, x: int, y: int) -> Iterator[Lying]:
        if len(pieces) == 1:
            yield Lying(pieces[0], x, y, box)
            return
        one, two, a, b, beside = next(self._list_ways(pieces, box))
        yield from self._lay(one, a, x, y)
        yield from self._lay(two, b, x + a[0] * beside, y + a[1] * (1 - beside))

    def _list_ways(self, pieces: Pieces, box: Sides) -> Iterator[tuple[Pieces, Pieces, Sides, Sides, int]]:
        for one, two in list_partings(pieces):
            for a in self.list_boxes(one):
                for b in self.list_boxes(two):
                    beside, above = _join(a, b)
                    if box in (beside, above):
                        yield one, two, a, b, int(box == beside)


def _join(a: Sides, b: Sides) -> tuple[Sides, Sides]:
    """Two boxes side by side, and one on the other."""
    return (a[0] + b[0], max(a[1], b[1])), (max(a[0], b[0]), a[1] + b[1])


def _smallest(boxes: Any) -> tuple[Sides, ...]:
    kept: list[Sides] = []
    for box in sorted(boxes):
        if not kept or box[1] < kept[-1][1]:
            kept.append(box)
    return tuple(kept)


def _is_within_another(room: Sides, rooms: Sequence[Sides]) -> bool:
    return any(other != room and fits(room, other) for other in rooms)


def list_partings(pieces: Pieces) -> list[tuple[Pieces, Pieces]]:
    """All ways to part pieces in two, the first piece in the first part; like pieces are not told apart."""
    first, *others = pieces
    partings: dict[Pieces, Pieces] = {}
    for mask in range((1 << len(others)) - 1):
        one = (first, *(piece for n, piece in enumerate(others) if mask >> n & 1))
        if one not in partings:
            partings[one] = tuple(piece for n, piece in enumerate(others) if not mask >> n & 1)
    return list(partings.items())


class ExactSheets:
    """The choice among all sets of pieces that one sheet holds; `bound` is what no plan costs less than."""

    def __init__(self, problem: SheetProblem, should_stop: Callable[[], bool]) -> None:
        self.problem, self._should_stop = problem, should_stop
        self.bound = 0
        self._boxes = Boxes(problem, should_stop)
        self._largest = max(a * b for a, b in problem.rooms)

    def solve(self) -> list[Layout] | None:
        """The cheapest plan; None where that would be too much work."""
        try:
            sets = self._list_sets()
        except TooMuch:
            return None
        chosen = self._choose(sets)
        return None if chosen is None else self._lay(chosen)

    def _list_sets(self) -> list[tuple[Pieces, int]]:
        """Sets to which no piece can be added, each with its stock."""
        found: list[tuple[Pieces, int]] = []
        level: list[Pieces] = [(i,) for i in range(len(self.problem.items))]
        while level:
            for pieces in level:
                found += [(pieces, sold) for sold in self._list_holders(pieces)]
            if len(found) > MOST_SETS:
                raise TooMuch
            level = [more for pieces in level for more in self._list_larger(pieces)]
        lesser = {(pieces[:n] + pieces[n + 1 :], sold) for pieces, sold in found for n in range(len(pieces))}
        return [each for each in found if each not in lesser]

    def _list_larger(self, pieces: Pieces) -> Iterator[Pieces]:
        for item in range(pieces[-1], len(self.problem.items)):
            more = (*pieces, item)
            if more.count(item) > self.problem.demand[item]:
                continue
            area = sum(self.problem.items[each].area for each in more)
            if area <= self._largest and self._boxes.list_boxes(more):
                yield more

    def _list_holders(self, pieces: Pieces) -> list[int]:
        boxes = self._boxes.list_boxes(pieces)
        return [k for k, room in enumerate(self.problem.rooms) if any(fits(box, room) for box in boxes)]

    def _choose(self, sets: Sequence[tuple[Pieces, int]]) -> list[tuple[Pieces, int]] | None:
        from model.cutting.solver import INFINITY, Solver

        model: Any = Solver()
        model.heed(self._should_stop)
        model.setOptionValue("mip_max_nodes", NODES)
        for count in self.problem.demand:
            model.addRow(count, INFINITY, 0, [], [])
        for sold in self.problem.sold:
            model.addRow(0, INFINITY if sold.supply is None else sold.supply, 0, [], [])
        for pieces, k in sets:
            rows = [*sorted(set(pieces)), len(self.problem.items) + k]
            values = [float(pieces.count(row)) for row in rows[:-1]]
            model.addCol(self.problem.sold[k].price, 0, INFINITY, len(rows), rows, [*values, 1.0])
        every = np.arange(len(sets), dtype=np.int32)
        model.changeColsIntegrality(len(every), every, np.ones(len(every), dtype=np.uint8))
        proven = model.solved()
        dual = float(model.getInfo().mip_dual_bound)
        if 0 < dual < INFINITY:
            self.bound = ceil(dual - HUNDREDTH)
        if not proven:
            return None
        times = np.rint(np.array(model.getSolution().col_value)).astype(int).tolist()
        return [each for each, count in zip(sets, times, strict=True) for _ in range(count)]

    def _lay(self, chosen: Sequence[tuple[Pieces, int]]) -> list[Layout]:
        """Sheets of the sets, pieces that several of them hold on the first alone."""
        left = list(self.problem.demand)
        plan = []
        for pieces, sold in chosen:
            mine = []
            for piece in pieces:
                if left[piece]:
                    left[piece] -= 1
                    mine.append(piece)
            if mine:
                plan.append(Layout(sold, self._boxes.lay(tuple(mine), self.problem.rooms[sold])))
        return plan
