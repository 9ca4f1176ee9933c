"""From parts of boards to whole ones: boards of a linear programme settled step by step."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import ceil, floor

import numpy as np

from model.cutting.first_fit import FirstFit, cost_of
from model.cutting.generation import CLOSE, Generation
from model.cutting.knapsack import Pattern
from model.cutting.lanes import Filled, Whole
from model.cutting.limits import Limits
from model.cutting.master import Real

REST = 12
"""Boards that a dive leaves to a search of their own, in problems of more than twice as many."""
REST_NODES = 40
"""Most parts of that search looked into."""
FEW = 40
"""Pieces, over four for each settled board, that first fit may end a dive with."""


class Diver:
    """Dives into one problem, each from worths to whole boards for all its pieces."""

    def __init__(self, generation: Generation, should_stop: Callable[[], bool], is_large: bool) -> None:
        self.problem = generation.problem
        self._generation, self._should_stop, self._is_large = generation, should_stop, is_large
        self._first_fit = FirstFit(generation.problem)
        self._random = np.random.default_rng(1)

    def dive(self, limits: Limits, noise: float, below: int) -> list[Pattern] | None:
        """Boards for all pieces, or None where too much is left.

        Once they cannot cost less than `below` the rest is first fit's. With more `noise` less of what is
        nearest to whole is settled first.
        """
        left, bounds = np.array(self.problem.demand), limits
        settled: list[Pattern] = []
        while left.any():
            if self._should_stop():
                return self._finish(settled, left, bounds)
            solution = self._generation.solve_rest(left, bounds)
            if solution is None or solution.missing > CLOSE:
                return self._finish(settled, left, bounds)
            if cost_of(self.problem, settled) + ceil(solution.cost - CLOSE) >= below:
                return self._finish(settled, left, bounds)
            if self._is_large and solution.times.sum() < REST:
                return self._search_rest(settled, left, bounds, below)
            for pattern, times in self._settle(solution.times, left, noise):
                settled += [trim(pattern, left)] * times if times == 1 else [pattern] * times
                for item, count in pattern.counts().items():
                    left[item] = max(left[item] - count * times, 0)
                bounds = bounds.after(pattern, times)
        return settled

    def _search_rest(
        self, settled: Sequence[Pattern], left: Whole, bounds: Limits, below: int
    ) -> list[Pattern] | None:
        """The last boards of a dive by a search of their own."""
        from model.cutting.search import Search

        start = self._first_fit.best(left.tolist(), bounds.high)
        if start is None:
            return None
        sold = tuple(replace(s, supply=most) for s, most in zip(self.problem.sold, bounds.high, strict=True))
        rest = replace(self.problem, demand=tuple(left.tolist()), sold=sold)
        known = self._generation.master.patterns
        known = [p for p in known if all(left[i] >= n for i, n in p.counts().items())]
        most = below - cost_of(self.problem, settled)
        search = Search(
            rest, start, self._should_stop, lambda boards: None, most, REST_NODES, known, reworks=0
        )
        search.run()
        return [*settled, *search.best]

    def _finish(self, settled: Sequence[Pattern], left: Whole, bounds: Limits) -> list[Pattern] | None:
        """What a dive has left to do, done by first fit."""
        if left.sum() > len(settled) * 4 + FEW:
            return None
        rest = self._first_fit.best(left.tolist(), bounds.high)
        return None if rest is None else [*settled, *rest]

    def _settle(self, times: Real, left: Whole, noise: float) -> list[tuple[Pattern, int]]:
        """Which boards to settle next: all that are whole, or else the one nearest to it."""
        patterns = self._generation.master.patterns
        chosen, rest = [], left.copy()
        for j in np.flatnonzero(times >= 1 - CLOSE):
            most = min((int(rest[i]) // n for i, n in patterns[j].counts().items()), default=0)
            number = min(floor(times[j] + CLOSE), most)
            if number:
                chosen.append((patterns[j], number))
                for item, count in patterns[j].counts().items():
                    rest[item] -= count * number
        if chosen:
            return chosen
        some = np.flatnonzero(times > CLOSE)
        liking = np.minimum(times[some], 1.0) + noise * self._random.random(len(some))
        exact = np.array([all(left[i] >= n for i, n in patterns[j].counts().items()) for j in some])
        return [(patterns[some[int(np.argmax(liking + exact))]], 1)]


def trim(pattern: Pattern, left: Whole) -> Pattern:
    """A board without the pieces that are not wanted any more; `left` is how many are, of each item."""
    rest, lanes = left.copy(), []
    for lane in pattern.lanes:
        items = []
        for item, count in lane.items:
            number = min(count, int(rest[item]))
            if number:
                items.append((item, number))
                rest[item] -= number
        if items:
            lanes.append(Filled(lane.kind, tuple(items)))
    return Pattern(pattern.sold, tuple(lanes))
