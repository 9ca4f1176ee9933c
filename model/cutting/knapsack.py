"""The board worth most: the lanes worth most filled into the width of each stock, in whole numbers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.cutting.lanes import Filled, Filler, Lanes, Whole, list_lanes, split
from model.cutting.problem import Problem


@dataclass(frozen=True, slots=True)
class Pattern:
    """A board of a stock cut into lanes. Lanes may hold more of an item, taken together, than is wanted."""

    sold: int
    lanes: tuple[Filled, ...]

    def counts(self) -> Counter[int]:
        """How many of each item come out of it."""
        counts: Counter[int] = Counter()
        for lane in self.lanes:
            for item, count in lane.items:
                counts[item] += count
        return counts


@dataclass(slots=True)
class _Strip:
    """`times` lanes of a kind, `width` together, and in which rooms and for which stocks they paid."""

    kind: int
    times: int
    width: int
    taken: NDArray[np.bool_] | None = None


class Knapsack:
    """Prices boards of one problem for given worths. `copies` bounds how many of each item are of use."""

    def __init__(self, problem: Problem, copies: Sequence[int]) -> None:
        self.problem = problem
        self._copies = list(copies)
        self._filler = Filler(problem, np.zeros(len(copies), dtype=np.int64))
        self._lanes: dict[int, Lanes] = {}
        self._priced = list_lanes(problem, copies)
        self._rooms = np.array([max(sold.room, 0) for sold in problem.sold], dtype=np.int64)
        _, self._first, self._alike = np.unique(self._rooms, return_index=True, return_inverse=True)
        self._columns = self._alike
        self._across = np.array([max(sold.across, 0) for sold in problem.sold], dtype=np.int64)
        self._widest = int(self._across.max(initial=0))
        ripped = [(k, kind) for k, kind in enumerate(problem.kinds) if not kind.whole]
        self._strips = [
            _Strip(k, times, kind.width * times)
            for k, kind in ripped
            for times in split(self._widest // kind.width)
        ]
        self._whole: list[int | None] = [None] * len(problem.sold)

    def price(self, worth: Whole, tolls: Whole | None = None) -> Whole:
        """The greatest worth of a board of each stock; `worth` of each item is a whole number from 0 up.

        `tolls` are taken off for each lane, one row for a kind and one column for a stock.
        """
        self._filler = Filler(self.problem, worth)
        values = self._price_lanes(worth)
        if tolls is not None:
            values = {kind: value - tolls[kind] for kind, value in values.items()}
        each = self._share_columns(tolls is None)
        table = np.zeros((self._widest + 1, len(each)), dtype=np.int64)
        for strip in self._strips:
            better = table[: self._widest + 1 - strip.width] + strip.times * values[strip.kind][each]
            strip.taken = better > table[strip.width :]
            np.maximum(better, table[strip.width :], out=table[strip.width :])
        best: Whole = table[self._across, self._columns]
        self._whole = [None] * len(best)
        for k, kind in enumerate(self.problem.kinds):
            for s in kind.whole:
                if values[k][s] > best[s]:
                    best[s], self._whole[s] = values[k][s], k
        return best

    def _share_columns(self, is_shared: bool) -> Whole:
        """The stocks that stand for all in the table: one of each length where those are worth the same."""
        all_of_them = np.arange(len(self._rooms))
        self._columns = self._alike if is_shared else all_of_them
        return self._first if is_shared else all_of_them

    def _price_lanes(self, worth: Whole) -> dict[int, Whole]:
        values = {}
        for lanes in self._priced:
            for kind, most in lanes.price(worth, self._rooms):
                values[kind] = most
                self._lanes[kind] = lanes
        return values

    def pattern(self, sold: int, share: float = 1.0) -> Pattern:
        """The board of a stock that the last pricing found worth most, or that of a share of the items."""
        room = int(self._rooms[sold])
        if (whole := self._whole[sold]) is not None:
            return Pattern(sold, (self._lanes[whole].fill(whole, room, share),))
        left, column = int(self._across[sold]), int(self._columns[sold])
        lanes: list[Filled] = []
        for strip in reversed(self._strips):
            if strip.taken is not None and left >= strip.width and strip.taken[left - strip.width, column]:
                lanes += [self._lanes[strip.kind].fill(strip.kind, room, share)] * strip.times
                left -= strip.width
        return Pattern(sold, tuple(lanes))

    def refill(self, pattern: Pattern) -> Pattern:
        """A board with lanes of the same kinds that makes no more of an item than is of use.

        Lanes are filled one after the other out of what those before them left.
        """
        left, room = list(self._copies), int(self._rooms[pattern.sold])
        filled = []
        for lane in pattern.lanes:
            filled.append(self._filler.fill(lane.kind, left, room))
            for item, count in filled[-1].items:
                left[item] -= count
        return Pattern(pattern.sold, tuple(lane for lane in filled if lane.items))

    def exceeds(self, pattern: Pattern) -> bool:
        """Whether a board makes more of an item than is of use."""
        return any(count > self._copies[item] for item, count in pattern.counts().items())
