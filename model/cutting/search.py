"""The search for the cheapest boards: patterns made as they are needed, dives to whole boards, branching.

What is branched on is how many boards of each stock are bought: that alone decides the cost, and costs are
sums of prices, so that a bound is lifted to the next such sum. See Gilmore and Gomory, "A Linear Programming
Approach to the Cutting-Stock Problem", Operations Research 9 (1961), for the making of patterns, and
Vanderbeck, "Computational study of a column generation algorithm for bin packing and cutting stock problems",
Mathematical Programming 86 (1999), for branching with bounds that are rounded up.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from heapq import heappop, heappush
from math import ceil, floor

import numpy as np

from model.cutting.bound import SCALE, PriceSums, Shown, show_bound
from model.cutting.enumeration import list_patterns
from model.cutting.first_fit import FirstFit, cost_of, downsize
from model.cutting.knapsack import Knapsack, Pattern
from model.cutting.lanes import Filled, Whole
from model.cutting.limits import Group, Limits, list_groups
from model.cutting.master import Master, Real, Solution, whole
from model.cutting.problem import Problem
from model.cutting.whole_boards import Chosen, choose_boards

NODES = 300
"""Most parts of the search looked into."""
DIVES = 3
"""Dives from the first solution."""
LEAF_DIVES = 12
"""Dives where the number of boards of each stock is settled."""
EVERY_NODES = 2000
"""Most nodes of the search over every pattern there is."""
POOL_NODES = 400
"""Most nodes of the whole-number search over the patterns so far."""
STILL = 0.4
"""How much of the best worths so far is mixed into those that patterns are generated for."""
LIKELY = 0.9
"""Share of its price that a board must be worth by mixed worths to be looked at by the present ones."""
MORE = (0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3)
"""Shares of the items that boards are made of as well in one pricing, so that fewer pricings are needed."""
MANY = 400
CLOSE = 1e-6
REST = 12
"""Boards that a dive leaves to a search of their own."""
REST_NODES = 40
DIVE_EACH = 5
BIAS = 0.05
DIVE_ROUNDS = 8
"""Rounds of generating between two steps of a dive."""


@dataclass(order=True, slots=True)
class _Node:
    """Part of the search: nothing in it costs less than `bound`."""

    bound: int
    order: int
    limits: Limits = field(compare=False)


class Search:
    """Looks for the cheapest boards that make a problem's pieces, and shows what cannot be undercut.

    `best` is the cheapest plan so far, `bound` what no plan costs less than, `shown` the worths behind the
    bound before branching.
    """

    def __init__(
        self,
        problem: Problem,
        start: Sequence[Pattern],
        should_stop: Callable[[], bool],
        tell: Callable[[Sequence[Pattern]], None],
        most: int | None = None,
        nodes: int = NODES,
    ) -> None:
        self.problem, self._should_stop, self._tell = problem, should_stop, tell
        self.best = list(start)
        self.cost = cost_of(problem, start) if most is None else min(cost_of(problem, start), most)
        self._nodes = nodes
        self._is_large = len(start) > 2 * REST
        self.bound = 0
        self.shown = Shown(0, np.zeros(len(problem.demand), dtype=np.int64))
        self._supply = tuple(sold.supply for sold in problem.sold)
        self._all = Limits((0,) * len(problem.sold), self._supply)
        dearest = max(sold.price for sold in problem.sold)
        limited = any(supply is not None for supply in self._supply)
        self._master = Master(problem, max(self.cost, dearest) + 1 if limited else 4 * dearest + 4)
        self._knapsack = Knapsack(problem, problem.demand)
        self._sums = PriceSums(problem, self.cost)
        self._groups = list_groups(problem)
        stocks = range(len(problem.sold))
        self._membership = np.array([[s in g.sold for s in stocks] for g in self._groups], dtype=np.float64)
        self._breadth = np.log2(self._membership.sum(axis=1))
        self._random = np.random.default_rng(1)
        self._first_fit = FirstFit(problem)
        for pattern in (*start, *(Pattern(s, ()) for s in range(len(problem.sold)))):
            self._master.add(
                pattern
            )  # an empty board keeps parts that ask for a stock from seeming impossible

    def run(self) -> None:
        """Search until the plan is proven, the work allowed is done or the asker says stop."""
        root = self._evaluate(self._all)
        if root is None:
            return
        solution, self.shown = root
        self._raise_bound(self._sums.lift(self.shown.cost, self._all))
        for turn in range(DIVES):
            if not self._is_done():
                self._dive(self._all, 0.2 * turn)
        if not self._is_done():
            self._branch(solution)
        if not self._is_done():
            self._enumerate()

    def _is_done(self) -> bool:
        return self.bound >= self.cost or self._should_stop()

    def _raise_bound(self, bound: int) -> None:
        self.bound = max(self.bound, min(bound, self.cost))

    # --- patterns as they are needed

    def _evaluate(self, limits: Limits) -> tuple[Solution, Shown] | None:
        """The linear programme within limits, all patterns considered, and the bound it shows."""
        self._master.restrict(self.problem.demand, limits)
        best = Shown(-1, np.zeros(len(self.problem.demand), dtype=np.int64))
        while (solution := self._master.solve()) is not None:
            still = solution.worth
            if best.scaled >= 0:
                still = STILL * best.worth / SCALE + (1 - STILL) * solution.worth
            tolls = {group: floor(toll * SCALE) for group, toll in solution.tolls.items()}
            for worth, share in ((still, LIKELY), (solution.worth, 1.0)):
                shown, values = show_bound(self.problem, self._knapsack, limits, whole(worth), tolls)
                if shown.scaled > best.scaled:
                    best = shown
                if self._add_patterns(solution, values, self._knapsack, share):
                    break
            else:
                return solution, best
            if self._sums.lift(best.cost, limits) >= self.cost or self._should_stop():
                return solution, best
            if best.scaled >= (solution.cost - CLOSE) * SCALE:
                return solution, best
        return None

    def _add_patterns(
        self, solution: Solution, values: Whole, knapsack: Knapsack, share: float = 1.0
    ) -> bool:
        """Take in the best board of each stock that pays by the present worths; whether any does.

        Boards worth less than a share of their price by the worths they were priced for are not looked at.
        """
        added = False
        for s, sold in enumerate(self.problem.sold):
            if values[s] <= max((sold.price + solution.toll[s]) * share, 0) * SCALE:
                continue
            pattern = knapsack.pattern(s)
            added |= self._add_paying(pattern, solution)
            for share in MORE if sold.supply is None and len(values) * len(solution.worth) > MANY else ():
                added |= self._add_paying(knapsack.pattern(s, share), solution)
            if len(pattern.lanes) > 1 and knapsack.exceeds(pattern):
                added |= self._add_paying(knapsack.refill(pattern), solution)
        return added

    def _add_paying(self, pattern: Pattern, solution: Solution) -> bool:
        worth = sum(solution.worth[i] * n for i, n in pattern.counts().items())
        worth -= sum(toll * group.count(pattern) for group, toll in solution.tolls.items())
        price = self.problem.sold[pattern.sold].price + solution.toll[pattern.sold]
        return bool(worth > price + CLOSE) and self._master.add(pattern)

    # --- to whole boards

    def _dive(self, limits: Limits, noise: float) -> bool:
        """Settle boards step by step until all pieces are made; whether that gave a cheaper plan."""
        left, bounds = np.array(self.problem.demand), limits
        settled: list[Pattern] = []
        while left.any():
            if self._should_stop():
                return self._finish(settled, left, bounds)
            solution = self._generate(left, bounds)
            spent = cost_of(self.problem, settled)
            if (
                solution is None
                or solution.missing > CLOSE
                or spent + ceil(solution.cost - CLOSE) >= self.cost
            ):
                return self._finish(settled, left, bounds)
            if self._is_large and solution.times.sum() < REST:
                return self._search_rest(settled, left, bounds)
            for pattern, times in self._settle(solution.times, left, noise):
                settled += [_trimmed(pattern, left)] * times if times == 1 else [pattern] * times
                for item, count in pattern.counts().items():
                    left[item] = max(left[item] - count * times, 0)
                bounds = bounds.after(pattern, times)
        return self._keep(settled)

    def _search_rest(self, settled: Sequence[Pattern], left: Whole, bounds: Limits) -> bool:
        """The last boards of a dive by a search of their own."""
        spent = cost_of(self.problem, settled)
        start = self._first_fit.best(left.tolist(), bounds.high)
        if start is None:
            return False
        sold = tuple(replace(s, supply=most) for s, most in zip(self.problem.sold, bounds.high, strict=True))
        rest = replace(self.problem, demand=tuple(left.tolist()), sold=sold)
        known = [p for p in self._master.patterns if all(left[i] >= n for i, n in p.counts().items())]
        search = Search(rest, start, self._should_stop, lambda boards: None, self.cost - spent, REST_NODES)
        for pattern in known:
            search._master.add(pattern)
        search.run()
        return self._keep([*settled, *search.best])

    def _finish(self, settled: Sequence[Pattern], left: Whole, bounds: Limits) -> bool:
        """What a dive has left to do, done by first fit."""
        if left.sum() > len(settled) * 4 + 40:
            return False
        rest = self._first_fit.best(left.tolist(), bounds.high)
        return rest is not None and self._keep([*settled, *rest])

    def _generate(self, left: Whole, limits: Limits) -> Solution | None:
        """The linear programme for the pieces left, with a few rounds of patterns made for them."""
        self._master.restrict(left.tolist(), limits, proper=True)
        knapsack = Knapsack(self.problem, left.tolist())
        solution = self._master.solve()
        for _ in range(DIVE_ROUNDS):
            if solution is None:
                return None
            tolls = {group: floor(toll * SCALE) for group, toll in solution.tolls.items()}
            _, values = show_bound(self.problem, knapsack, limits, whole(solution.worth), tolls)
            if not self._add_patterns(solution, values, knapsack):
                return solution
            solution = self._master.solve()
        return solution

    def _settle(self, times: Real, left: Whole, noise: float) -> list[tuple[Pattern, int]]:
        """Which boards to settle next: all that are whole, or else the one nearest to it."""
        chosen, rest = [], left.copy()
        for j in np.flatnonzero(times >= 1 - CLOSE):
            pattern = self._master.patterns[j]
            most = min((int(rest[i]) // n for i, n in pattern.counts().items()), default=0)
            number = min(floor(times[j] + CLOSE), most)
            if number:
                chosen.append((pattern, number))
                for item, count in pattern.counts().items():
                    rest[item] -= count * number
        if chosen:
            return chosen
        some = np.flatnonzero(times > CLOSE)
        liking = np.minimum(times[some], 1.0) + noise * self._random.random(len(some))
        exact = np.array(
            [all(left[i] >= n for i, n in self._master.patterns[j].counts().items()) for j in some]
        )
        return [(self._master.patterns[some[int(np.argmax(liking + exact))]], 1)]

    def _keep(self, boards: Sequence[Pattern]) -> bool:
        """Make a plan the best one, if it is."""
        boards = downsize(self.problem, [board for board in boards if board.lanes], self._supply)
        cost = cost_of(self.problem, boards)
        if cost >= self.cost:
            return False
        self.best, self.cost = boards, cost
        self._tell(boards)
        return True

    # --- branching

    def _branch(self, root: Solution) -> None:
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
            if answer is None:
                continue
            solution, shown = answer
            bound = max(node.bound, self._sums.lift(shown.cost, node.limits))
            if self._should_stop():
                return
            if bound >= self.cost:
                continue
            numbers = self._count_boards(solution)
            parting = self._find_divided(numbers) or self._find_divided_lanes(solution)
            if parting is None:
                stuck = min(stuck, bound) if not self._settle_leaf(node.limits, numbers, bound) else stuck
                children = self._around(node.limits, numbers)
            else:
                if number % DIVE_EACH == 0:
                    self._dive(node.limits, 0.3)
                group, least = parting
                children = [node.limits.at_most(group, least), node.limits.at_least(group, least + 1)]
            for limits in children:
                order += 1
                heappush(heap, _Node(bound, -order, limits))
        self._raise_bound(min(heap[0].bound if heap else self.cost, stuck))

    def _count_boards(self, solution: Solution) -> Real:
        numbers = np.zeros(len(self.problem.sold))
        for pattern, times in zip(self._master.patterns, solution.times, strict=False):
            numbers[pattern.sold] += times
        return numbers

    def _find_divided(self, numbers: Real) -> tuple[Group, int] | None:
        """The group whose number of boards is furthest from whole, and that number; None if all are whole."""
        sums = self._membership @ numbers
        off = np.abs(sums - np.rint(sums))
        group = int(np.argmax(np.where(off > 1e-5, off + BIAS * self._breadth, 0)))
        return (self._groups[group], floor(sums[group])) if off[group] > 1e-5 else None

    def _find_divided_lanes(self, solution: Solution) -> tuple[Group, int] | None:
        """The same for the lanes of one kind on one stock."""
        sums: Counter[tuple[int, int]] = Counter()
        for pattern, times in zip(self._master.patterns, solution.times.tolist(), strict=False):
            if times > CLOSE:
                for lane in pattern.lanes:
                    sums[pattern.sold, lane.kind] += times
        off = {key: abs(number - round(number)) for key, number in sums.items()}
        key = max(off, key=lambda key: off[key], default=None)
        if key is None or off[key] <= 1e-5:
            return None
        return Group(frozenset({key[0]}), key[1]), floor(sums[key])

    def _settle_leaf(self, limits: Limits, numbers: Real, bound: int) -> bool:
        """Look for whole boards in settled numbers of each stock; whether a plan at the bound was found."""
        exact = tuple(int(n) for n in np.rint(numbers))
        at = replace(limits, high=exact)
        for turn in range(LEAF_DIVES):
            if self.cost <= bound or self._should_stop():
                break
            self._dive(at, 0.25 * turn)
        if self.cost > bound and not self._should_stop():
            self._search_pool(at)
        return self.cost <= bound

    def _search_pool(self, limits: Limits) -> None:
        patterns = self._master.patterns
        self._take(choose_boards(self.problem, patterns, self.problem.demand, limits, POOL_NODES))

    def _take(self, chosen: Chosen) -> None:
        """Make a plan of chosen patterns, without the pieces they make too many."""
        if chosen.boards is None:
            return
        left, boards = np.array(self.problem.demand), []
        for pattern, times in chosen.boards:
            for _ in range(times):
                boards.append(_trimmed(pattern, left))
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

    def _around(self, limits: Limits, numbers: Real) -> list[Limits]:
        """The rest of a part of the search once one mix of numbers in it was looked into."""
        children, low, high = [], list(limits.low), list(limits.high)
        for s, number in enumerate(int(n) for n in np.rint(numbers)):
            if low[s] < number:
                children.append(replace(limits, low=tuple(low), high=(*high[:s], number - 1, *high[s + 1 :])))
            if (most := high[s]) is None or most > number:
                children.append(replace(limits, low=(*low[:s], number + 1, *low[s + 1 :]), high=tuple(high)))
            low[s] = high[s] = number
        return children


def _trimmed(pattern: Pattern, left: Whole) -> Pattern:
    """A board without the pieces that are not wanted any more."""
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
