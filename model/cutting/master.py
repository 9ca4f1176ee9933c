"""The linear programme over the boards thought of so far: which of them, how often, for the least money."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.cutting.bound import SCALE, Limits
from model.cutting.knapsack import Pattern
from model.cutting.lanes import Whole
from model.cutting.problem import Problem

Real = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Solution:
    """How often each pattern is cut, what that costs, the worth of each item and the toll on each stock.

    `missing` is how many pieces the patterns so far leave unmade. A stock's toll is what one board less of it
    would save: 0 unless its number is limited.
    """

    cost: float
    times: Real
    worth: Real
    toll: Real
    missing: float


class Master:
    """Patterns as columns, pieces and stocks as rows. A piece that is not made costs `penalty`."""

    def __init__(self, problem: Problem, penalty: int) -> None:
        from model.cutting.solver import INFINITY, Solver

        self.problem = problem
        self.patterns: list[Pattern] = []
        self._known: set[Pattern] = set()
        self._model: Any = Solver()
        self._infinity = INFINITY
        self._items, self._stocks = len(problem.demand), len(problem.sold)
        for count in problem.demand:
            self._model.addRow(count, INFINITY, 0, [], [])
        for sold in problem.sold:
            most = INFINITY if sold.supply is None else sold.supply
            self._model.addRow(0, most, 0, [], [])
        for item in range(self._items):
            self._model.addCol(penalty, 0, INFINITY, 1, [item], [1.0])

    def add(self, pattern: Pattern) -> bool:
        """Take a pattern in; False where it is known."""
        if pattern in self._known:
            return False
        self._known.add(pattern)
        self.patterns.append(pattern)
        counts = pattern.counts()
        rows = [*counts, self._items + pattern.sold]
        values = [*map(float, counts.values()), 1.0]
        price = self.problem.sold[pattern.sold].price
        self._model.addCol(price, 0, self._infinity, len(rows), rows, values)
        return True

    def restrict(self, demand: Sequence[int], limits: Limits) -> None:
        """Ask for other numbers of pieces, and bound the boards of each stock otherwise."""
        rows = np.arange(self._items + self._stocks, dtype=np.int32)
        high = [self._infinity if most is None else most for most in limits.high]
        lower = np.array([*demand, *limits.low], dtype=np.float64)
        upper = np.array([self._infinity] * self._items + high, dtype=np.float64)
        self._model.changeRowsBounds(len(rows), rows, lower, upper)

    def solve(self) -> Solution | None:
        """The cheapest mix of patterns, parts of boards allowed; None where stock is bounded impossibly."""
        if not self._model.solved():
            return None
        answer = self._model.getSolution()
        values, duals = np.array(answer.col_value), np.array(answer.row_dual)
        return Solution(
            cost=float(self._model.getObjectiveValue()),
            times=values[self._items :],
            worth=np.maximum(duals[: self._items], 0.0),
            toll=-duals[self._items :],
            missing=float(values[: self._items].sum()),
        )


def whole(worth: Real) -> Whole:
    """Worths as whole numbers of the bound's scale, rounded down."""
    return np.floor(worth * SCALE).astype(np.int64)
