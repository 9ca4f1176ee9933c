"""The board worth most: pieces of given worths filled into lanes, lanes into the width of each stock.

Two bounded knapsacks, in whole numbers. One table serves every length of stock, and a kind of lane starts
from the table of the narrower one, since it holds all that one does.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.cutting.problem import Problem

Whole = NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Filled:
    """A lane: its kind, and how many of which items are in it."""

    kind: int
    items: tuple[tuple[int, int], ...]


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
class _Stage:
    """`times` copies of an item, of `size` together, and where they were worth taking."""

    item: int
    times: int
    size: int
    taken: NDArray[np.bool_] | None = None


class Knapsack:
    """Prices boards of one problem for given worths. `copies` bounds how many of each item are of use."""

    def __init__(self, problem: Problem, copies: Sequence[int]) -> None:
        self.problem = problem
        self._chains = list(_list_chains(problem, copies))
        self._rooms = [
            np.array([max(problem.room(k, s), 0) for s in range(len(problem.sold))], dtype=np.int64)
            for k in range(len(problem.kinds))
        ]
        widest = max((sold.across for sold in problem.sold), default=0)
        self._strips = [
            _Stage(k, times, kind.width * times)
            for k, kind in enumerate(problem.kinds)
            for times in _split(widest // kind.width)
        ]
        self._widest = widest
        self._one_lane = widest < 2 * min((kind.width for kind in problem.kinds), default=1)
        self._across = np.array([sold.across for sold in problem.sold], dtype=np.int64)

    def price(self, worth: Whole) -> Whole:
        """The greatest worth of a board of each stock; `worth` of each item is a whole number from 0 up."""
        lanes = self._price_lanes(worth)
        table = np.zeros((self._widest + 1, len(self.problem.sold)), dtype=np.int64)
        for strip in self._strips:
            better = table[: self._widest + 1 - strip.size] + strip.times * lanes[strip.item]
            strip.taken = better > table[strip.size :]
            np.maximum(better, table[strip.size :], out=table[strip.size :])
        best: Whole = table[self._across, np.arange(len(self._across))]
        return best

    def _price_lanes(self, worth: Whole) -> list[Whole]:
        lanes: list[Whole] = []
        for stages, ends, top in self._chains:
            table = np.zeros(top + 1, dtype=np.int64)
            start = 0
            for kind, end in ends:
                for stage in stages[start:end]:
                    _take(stage, table, int(worth[stage.item]))
                lanes.append(table[self._rooms[kind]])
                start = end
        return lanes

    def pattern(self, sold: int) -> Pattern:
        """The board of a stock that the last pricing found worth most."""
        left = self.problem.sold[sold].across
        lanes: list[Filled] = []
        for strip in reversed(self._strips):
            if strip.taken is not None and left >= strip.size and strip.taken[left - strip.size, sold]:
                lanes += [self._lane(strip.item, self.problem.room(strip.item, sold))] * strip.times
                left -= strip.size
        return Pattern(sold, tuple(lanes))

    def _lane(self, kind: int, room: int) -> Filled:
        counts: Counter[int] = Counter()
        for stages, ends, _ in self._chains:
            for each, end in ends:
                if each == kind:
                    for stage in reversed(stages[:end]):
                        if stage.taken is not None and room >= stage.size and stage.taken[room - stage.size]:
                            counts[stage.item] += stage.times
                            room -= stage.size
        return Filled(kind, tuple(sorted(counts.items())))


def _take(stage: _Stage, table: Whole, worth: int) -> None:
    """Offer the copies of a stage to a table, in place."""
    stage.taken = None
    if worth > 0 and stage.size < len(table):
        better = table[: -stage.size] + stage.times * worth
        stage.taken = better > table[stage.size :]
        np.maximum(better, table[stage.size :], out=table[stage.size :])


def _list_chains(
    problem: Problem, copies: Sequence[int]
) -> Iterator[tuple[list[_Stage], list[tuple[int, int]], int]]:
    """Runs of kinds, each holding all that the one before holds: stages, where each kind ends, the room."""
    kinds = problem.kinds
    longest = max((sold.room for sold in problem.sold), default=0)
    start = 0
    while start < len(kinds):
        end = start + 1
        while end < len(kinds) and kinds[end].sizes[: len(kinds[end - 1].sizes)] == kinds[end - 1].sizes:
            end += 1
        stages: list[_Stage] = []
        ends = []
        seen = 0
        for kind in range(start, end):
            for item, size in kinds[kind].sizes[seen:]:
                of_use = min(copies[item], longest // size)
                stages += [_Stage(item, times, size * times) for times in _split(of_use)]
            seen = len(kinds[kind].sizes)
            ends.append((kind, len(stages)))
        yield stages, ends, longest
        start = end


def _split(count: int) -> Iterator[int]:
    """Numbers whose sums are all from 0 to `count`."""
    times = 1
    while count > 0:
        yield min(times, count)
        count -= min(times, count)
        times *= 2
