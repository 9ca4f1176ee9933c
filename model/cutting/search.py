"""The search for the cheapest boards: dives to whole boards, and branching on how many are bought.

The number of boards of each stock alone decides the cost, and costs are sums of prices, so that a bound is
lifted to the next such sum. See Vanderbeck, "Computational study of a column generation algorithm for bin
packing and cutting stock problems", Mathematical Programming 86 (1999), for branching with bounds rounded up.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from heapq import heappop, heappush

import numpy as np

from model.cutting.bound import PriceSums, Shown
from model.cutting.dive import REST, Diver, trim
from model.cutting.enumeration import list_patterns
from model.cutting.first_fit import cost_of, downsize
from model.cutting.generation import Generation
from model.cutting.knapsack import Pattern
from model.cutting.limits import Limits
from model.cutting.master import Solution
from model.cutting.parting import Parting, part_around
from model.cutting.problem import Problem
from model.cutting.rework import rework
from model.cutting.whole_boards import Chosen, choose_boards

NODES = 300
"""Most parts of the search looked into."""
LANE_NODES = 6000
"""The same where boards are ripped into lanes of several kinds: bounds rise slowly there, and a shipped job
takes some 1,400 parts to its proof."""
DIVES = 3
"""Dives from the first solution."""
DIVE_EACH = 5
"""Of so many parts one is dived into at first."""
LATER = 60
"""Parts after which of one more, one is dived into."""
LEAF_DIVES = 12
"""Dives where the number of boards of each stock is settled."""
REWORKS = 5
"""How often a few boards of the best plan are cut anew in one go."""
REWORK_AT = (50, 140)
"""After how many parts of the search that is done."""
EVERY_NODES = 2000
"""Most nodes of the search over every pattern there is."""
POOL_NODES = 400
"""Most nodes of the whole-number search over the patterns so far."""


@dataclass(order=True, slots=True)
class _Node:
    """Part of the search: nothing in it costs less than `bound`."""

    bound: int
    order: int
    limits: Limits = field(compare=False)


class Search:
    """Looks for the cheapest boards that make a problem's pieces, and shows what cannot be undercut.

    `best` is the cheapest plan so far, `bound` what no plan costs less than, `shown` the worths behind the
    bound before branching. With a `most` only plans for less than it are looked for; `known` are patterns
    that may be of use.
    """

    def __init__(
        self,
        problem: Problem,
        start: Sequence[Pattern],
        should_stop: Callable[[], bool],
        tell: Callable[[Sequence[Pattern]], None],
        most: int | None = None,
        nodes: int | None = None,
        known: Sequence[Pattern] = (),
        reworks: int = REWORKS,
    ) -> None:
        self.problem, self._should_stop, self._tell = problem, should_stop, tell
        self._nodes = nodes or (NODES if len(problem.kinds) == 1 else LANE_NODES)
        self.best = list(start)
        self.cost = cost_of(problem, start) if most is None else min(cost_of(problem, start), most)
        self.bound = 0
        self.shown = Shown(0, np.zeros(len(problem.demand), dtype=np.int64))
        self._supply = tuple(sold.supply for sold in problem.sold)
        self._all = Limits((0,) * len(problem.sold), self._supply)
        is_large = len(start) > 2 * REST
        self._generation = Generation(problem, (*start, *known), self._find_penalty(is_large))
        self._diver = Diver(self._generation, should_stop, is_large)
        self._sums = PriceSums(problem, self.cost)
        self._parting = Parting(problem)
        self._reworks = reworks
        self._random = np.random.default_rng(2)

    def _find_penalty(self, is_large: bool) -> int:
        """What a piece left unmade costs: more than the plan at hand, or than boards for it alone."""
        dearest = max(sold.price for sold in self.problem.sold)
        if is_large and all(supply is None for supply in self._supply):
            return 4 * dearest + 4
        return max(self.cost, dearest) + 1

    def run(self) -> None:
        """Search until the plan is proven, the work allowed is done or the asker says stop."""
        root = self._evaluate(self._all)
        if root is None:
            return
        self.shown = root[1]
        self._raise_bound(self._sums.lift(self.shown.cost, self._all))
        for turn in range(DIVES):
            if not self._is_done():
                self._dive(self._all, 0.2 * turn)
        for step in (self._branch, self._enumerate):
            if not self._is_done():
                step()

    def _is_done(self) -> bool:
        return self.bound >= self.cost or self._should_stop()

    def _raise_bound(self, bound: int) -> None:
        self.bound = max(self.bound, min(bound, self.cost))

    def _evaluate(self, limits: Limits) -> tuple[Solution, Shown] | None:
        return self._generation.evaluate(
            limits, lambda cost: self._sums.lift(cost, limits) >= self.cost or self._should_stop()
        )

    def _dive(self, limits: Limits, noise: float) -> None:
        boards = self._diver.dive(limits, noise, self.cost)
        if boards is not None:
            self._keep(boards)

    def _keep(self, boards: Sequence[Pattern]) -> None:
        """Make a plan the best one, if it is."""
        boards = downsize(self.problem, [board for board in boards if board.lanes], self._supply)
        cost = cost_of(self.problem, boards)
        if cost < self.cost:
            self.best, self.cost = boards, cost
            self._tell(boards)

    def _rework(self) -> None:
        """Cut a few boards of the best plan anew, others each time."""
        patterns = self._generation.master.patterns
        for _ in range(self._reworks):
            if self._is_done():
                return
            boards = rework(self.problem, self.best, self._random, self._should_stop, patterns)
            if boards is not None:
                self._keep(boards)

    # --- branching

    def _branch(self) -> None:
        """Part what may hold a cheaper plan, where the bound is least first."""
        heap = [_Node(self.bound, 0, self._all)]
        stuck, order = self.cost, 0
        for number in range(self._nodes):
            while heap and heap[0].bound >= self.cost:
                heappop(heap)
            self._raise_bound(min(heap[0].bound if heap else self.cost, stuck))
            if not heap or self._is_done():
                return
            node = heappop(heap)
            answer = self._evaluate(node.limits)
            if self._should_stop():
                return
            if answer is None:
                stuck = stuck if self._generation.master.is_impossible() else min(stuck, node.bound)
                continue
            bound = max(node.bound, self._sums.lift(answer[1].cost, node.limits))
            if bound >= self.cost:
                continue
            if number in REWORK_AT:
                self._rework()
            if number % (DIVE_EACH + number // LATER) == 0:
                self._dive(node.limits, 0.3)
            children, is_settled = self._part(node.limits, answer[0], bound)
            stuck = stuck if is_settled else min(stuck, bound)
            for limits in children:
                order += 1
                heappush(heap, _Node(bound, -order, limits))
        self._raise_bound(min(heap[0].bound if heap else self.cost, stuck))

    def _part(self, limits: Limits, solution: Solution, bound: int) -> tuple[list[Limits], bool]:
        """Parts of a part; False where one was left out that may hold a plan at its bound."""
        patterns = self._generation.master.patterns
        children = self._parting.part(limits, patterns, solution.times)
        if children is not None:
            return children, True
        numbers = np.rint(self._parting.count(patterns, solution.times)).astype(int).tolist()
        return part_around(limits, numbers), self._settle(limits, numbers, bound)

    def _settle(self, limits: Limits, numbers: Sequence[int], bound: int) -> bool:
        """Look for whole boards in settled numbers of each stock; whether a plan at the bound was found."""
        at = replace(limits, high=tuple(numbers))
        for turn in range(LEAF_DIVES):
            if self.cost > bound and not self._should_stop():
                self._dive(at, 0.25 * turn)
        if self.cost > bound and not self._should_stop():
            patterns = self._generation.master.patterns
            self._take(choose_boards(self.problem, patterns, self.problem.demand, at, POOL_NODES))
        return self.cost <= bound

    def _take(self, chosen: Chosen) -> None:
        """Make a plan of chosen patterns, without the pieces they make too many."""
        if chosen.boards is None:
            return
        left, boards = np.array(self.problem.demand), []
        for pattern, times in chosen.boards:
            for _ in range(times):
                boards.append(trim(pattern, left))
                for item, count in boards[-1].counts().items():
                    left[item] -= count
        self._keep(boards)

    def _enumerate(self) -> None:
        """Settle what is still open with all patterns there are, where those are few."""
        patterns = list_patterns(self.problem)
        if patterns is None:
            return
        chosen = choose_boards(self.problem, patterns, self.problem.demand, self._all, EVERY_NODES)
        self._take(chosen)
        if chosen.is_best:
            self._raise_bound(self.cost)
