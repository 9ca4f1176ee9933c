"""Boards thought of as they are needed: the linear programme, and patterns that pay by its worths.

See Gilmore and Gomory, "A Linear Programming Approach to the Cutting-Stock Problem", Operations Research 9
(1961).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import floor

import numpy as np

from model.cutting.bound import SCALE, Shown, show_bound
from model.cutting.knapsack import Knapsack, Pattern
from model.cutting.lanes import Whole
from model.cutting.limits import Limits
from model.cutting.master import Master, Solution, whole
from model.cutting.problem import Problem

STILL = 0.4
"""How much of the best worths so far is mixed into those that patterns are generated for."""
LIKELY = 0.9
"""Share of its price that a board must be worth by mixed worths to be looked at by the present ones."""
MORE = (0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3)
"""Shares of the items that boards are made of as well in one pricing, so that fewer pricings are needed."""
MANY = 60
"""Items from which on that is worth its time."""
STOCKS = 6
"""Stocks, those first that pay most, whose boards are taken in at one pricing."""
CLOSE = 1e-6
DIVE_ROUNDS = 8
"""Rounds of generating between two steps of a dive."""


class Generation:
    """The patterns of one problem so far, and more of them. A piece that is not made costs `penalty`."""

    def __init__(self, problem: Problem, known: Sequence[Pattern], penalty: int) -> None:
        self.problem = problem
        self.master = Master(problem, penalty)
        self._knapsack = Knapsack(problem, problem.demand)
        for pattern in known:
            self.master.add(pattern)
        for sold in range(len(problem.sold)):  # so that no part that asks for a stock seems impossible
            self.master.add(Pattern(sold, ()))

    def evaluate(self, limits: Limits, is_enough: Callable[[int], bool]) -> tuple[Solution, Shown] | None:
        """The linear programme within limits, all patterns considered, and the bound it shows.

        None where there is no solution; no better bound is looked for than one that is enough.
        """
        self.master.restrict(self.problem.demand, limits)
        best = Shown(-1, np.zeros(len(self.problem.demand), dtype=np.int64))
        while (solution := self.master.solve()) is not None:
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
            if is_enough(best.cost) or best.scaled >= (solution.cost - CLOSE) * SCALE:
                return solution, best
        return None

    def solve_rest(self, left: Whole, limits: Limits) -> Solution | None:
        """The linear programme for the pieces left, with a few rounds of patterns made for them.

        None where stock is bounded impossibly.
        """
        self.master.restrict(left.tolist(), limits, proper=True)
        knapsack = Knapsack(self.problem, left.tolist())
        solution = self.master.solve()
        for _ in range(DIVE_ROUNDS):
            if solution is None:
                return None
            tolls = {group: floor(toll * SCALE) for group, toll in solution.tolls.items()}
            _, values = show_bound(self.problem, knapsack, limits, whole(solution.worth), tolls)
            if not self._add_patterns(solution, values, knapsack, 1.0):
                return solution
            solution = self.master.solve()
        return solution

    def _add_patterns(self, solution: Solution, values: Whole, knapsack: Knapsack, share: float) -> bool:
        """Take in the best board of each stock that pays by the present worths; whether any does.

        Boards worth less than a share of their price by the worths they were priced for are not looked at.
        """
        price = np.array([sold.price for sold in self.problem.sold]) + solution.toll
        gain = values / SCALE - np.maximum(price * share, 0)
        added = 0
        for s in np.argsort(-gain, kind="stable").tolist():
            if gain[s] <= 0 or added >= STOCKS:
                break
            added += self._add_boards(s, solution, knapsack)
        return added > 0

    def _add_boards(self, sold: int, solution: Solution, knapsack: Knapsack) -> bool:
        """Take in boards of one stock; whether any pays."""
        pattern = knapsack.pattern(sold)
        added = self._add_paying(pattern, solution)
        if self.problem.sold[sold].supply is None and len(solution.worth) > MANY:
            for part in MORE:
                added |= self._add_paying(knapsack.pattern(sold, part), solution)
        if len(pattern.lanes) > 1 and knapsack.exceeds(pattern):
            added |= self._add_paying(knapsack.refill(pattern), solution)
        return added

    def _add_paying(self, pattern: Pattern, solution: Solution) -> bool:
        worth = sum(solution.worth[i] * n for i, n in pattern.counts().items())
        worth -= sum(toll * group.count(pattern) for group, toll in solution.tolls.items())
        price = self.problem.sold[pattern.sold].price + solution.toll[pattern.sold]
        return bool(worth > price + CLOSE) and self.master.add(pattern)
