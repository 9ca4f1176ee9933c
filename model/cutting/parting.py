"""How a part of the search is parted further: by the boards of some stocks, by lanes, or round one mix."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from math import floor

import numpy as np

from model.cutting.knapsack import Pattern
from model.cutting.limits import Group, Limits, list_groups
from model.cutting.master import Real
from model.cutting.problem import Problem

OFF = 1e-5
"""How far from whole a number of boards counts as divided."""
BREADTH = 0.05
"""What doubling the stocks of a group is worth, in parts of a board that its number is off."""


class Parting:
    """Looks for divided numbers in solutions for one problem."""

    def __init__(self, problem: Problem) -> None:
        self._problem = problem
        self._groups = list_groups(problem)
        stocks = range(len(problem.sold))
        self._members = np.array([[s in g.sold for s in stocks] for g in self._groups], dtype=np.float64)
        self._breadth = BREADTH * np.log2(self._members.sum(axis=1))

    def part(self, limits: Limits, patterns: Sequence[Pattern], times: Real) -> list[Limits] | None:
        """Two parts without what is divided in a solution; None where nothing is.

        `times` is how often each of `patterns` is cut in it.
        """
        found = self._find_boards(self.count(patterns, times)) or self._find_lanes(patterns, times)
        if found is None:
            return None
        group, number = found
        return [limits.at_most(group, number), limits.at_least(group, number + 1)]

    def count(self, patterns: Sequence[Pattern], times: Real) -> Real:
        """How many boards of each stock, where each of `patterns` is cut so many `times`."""
        numbers = np.zeros(len(self._problem.sold))
        for pattern, number in zip(patterns, times, strict=False):
            numbers[pattern.sold] += number
        return numbers

    def _find_boards(self, numbers: Real) -> tuple[Group, int] | None:
        """The group that is furthest from whole, broad ones rather, and the whole number below."""
        sums = self._members @ numbers
        off = np.abs(sums - np.rint(sums))
        group = int(np.argmax(np.where(off > OFF, off + self._breadth, 0)))
        return (self._groups[group], floor(sums[group])) if off[group] > OFF else None

    @staticmethod
    def _find_lanes(patterns: Sequence[Pattern], times: Real) -> tuple[Group, int] | None:
        """The same for the lanes of one kind on one stock."""
        sums: defaultdict[tuple[int, int], float] = defaultdict(float)
        for j in np.flatnonzero(times > OFF).tolist():
            for lane in patterns[j].lanes:
                sums[patterns[j].sold, lane.kind] += float(times[j])
        off = {key: abs(number - round(number)) for key, number in sums.items()}
        key = max(off, key=lambda key: off[key], default=None)
        if key is None or off[key] <= OFF:
            return None
        return Group(frozenset({key[0]}), key[1]), floor(sums[key])


def part_around(limits: Limits, numbers: Sequence[int]) -> list[Limits]:
    """The rest of a part once one mix of whole numbers of boards in it was looked into."""
    children, low, high = [], list(limits.low), list(limits.high)
    for s, number in enumerate(numbers):
        if low[s] < number:
            children.append(replace(limits, low=tuple(low), high=(*high[:s], number - 1, *high[s + 1 :])))
        if (most := high[s]) is None or most > number:
            children.append(replace(limits, low=(*low[:s], number + 1, *low[s + 1 :]), high=tuple(high)))
        low[s] = high[s] = number
    return children
