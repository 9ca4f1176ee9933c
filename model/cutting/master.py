"""The linear programme over the boards thought of so far: which of them, how often, for the least money."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.cutting.bound import SCALE
from model.cutting.knapsack import Pattern
from model.cutting.lanes import Whole
from model.cutting.limits import Group, Limits
from model.cutting.problem import Problem

Real = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Solution:
    """How often each pattern is cut, what that costs, the worth of each item and the toll on each stock.

    `missing` is how many pieces the patterns so far leave unmade. A stock's toll is what one board less of it
    would save: 0 unless its number is limited. `tolls` are those of groups.
    """

    cost: float
    times: Real
    worth: Real
    toll: Real
    missing: float
    tolls: dict[Group, float]


class Master:
    """Patterns as columns, pieces and stocks as rows. A piece that is not made costs `penalty`."""

    def __init__(self, problem: Problem, penalty: int) -> None:
        from model.cutting.solver import INFINITY, Solver

        self.problem = problem
        self.patterns: list[Pattern] = []
        self._known: set[Pattern] = set()
        self._counts = np.zeros((256, len(problem.demand)), dtype=np.int64)
        self._are_barred = False
        self._groups: dict[Group, int] = {}
        self._columns: list[int] = []
        self._penalty, self._width = penalty, len(problem.demand)
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
        self._columns.append(self._width)
        self._width += 1
        counts = pattern.counts()
        if len(self.patterns) > len(self._counts):
            self._counts = np.vstack([self._counts, np.zeros_like(self._counts)])
        self._counts[len(self.patterns) - 1, list(counts)] = list(counts.values())
        rows = [*counts, self._items + pattern.sold]
        values = [*map(float, counts.values()), 1.0]
        for group, row in self._groups.items():
            if count := group.count(pattern):
                rows.append(row)
                values.append(float(count))
        price = self.problem.sold[pattern.sold].price
        self._model.addCol(price, 0, self._infinity, len(rows), rows, values)
        return True

    def restrict(self, demand: Sequence[int], limits: Limits, proper: bool = False) -> None:
        """Ask for other numbers of pieces, and bound the boards of each stock otherwise.

        Of `proper` patterns none makes more of an item than that.
        """
        for each in limits.groups:
            if each.group not in self._groups:
                self._add_group(each.group)
        bounds = {each.group: (each.low, each.high) for each in limits.groups}
        of_groups = [bounds.get(group, (0, None)) for group in self._groups]
        low = [*demand, *limits.low, *(low for low, _ in of_groups)]
        most = [*limits.high, *(high for _, high in of_groups)]
        high = [self._infinity] * self._items + [self._infinity if m is None else m for m in most]
        rows = np.arange(len(low), dtype=np.int32)
        self._model.changeRowsBounds(
            len(rows), rows, np.array(low, dtype=np.float64), np.array(high, dtype=np.float64)
        )
        self._allow(np.array(demand) if proper else None)

    def _allow(self, most: Whole | None) -> None:
        """Let patterns be cut that make no more of each item than `most`; all of them for None."""
        number = len(self.patterns)
        if most is None and not self._are_barred:
            return
        self._are_barred = most is not None
        high = np.full(number, self._infinity)
        if most is not None:
            high[(self._counts[:number] > most).any(axis=1)] = 0.0
        self._model.changeColsBounds(number, np.array(self._columns, dtype=np.int32), np.zeros(number), high)

    def _add_group(self, group: Group) -> None:
        """Count a group in a row, with a column at the penalty for patterns not thought of yet."""
        counts = [(j, count) for j, p in enumerate(self.patterns) if (count := group.count(p))]
        columns = [self._columns[j] for j, _ in counts]
        row = self._items + self._stocks + len(self._groups)
        self._groups[group] = row
        self._model.addRow(0, self._infinity, len(columns), columns, [float(count) for _, count in counts])
        self._model.addCol(self._penalty, 0, self._infinity, 1, [row], [1.0])
        self._width += 1

    def is_impossible(self) -> bool:
        """Whether the last solving found that no mix keeps the bounds."""
        return bool(self._model.is_infeasible())

    def solve(self) -> Solution | None:
        """The cheapest mix of patterns, parts of boards allowed; None where stock is bounded impossibly."""
        if not self._model.solved():
            return None
        answer = self._model.getSolution()
        values, duals = np.array(answer.col_value), np.array(answer.row_dual)
        return Solution(
            cost=float(self._model.getObjectiveValue()),
            times=values[self._columns],
            worth=np.maximum(duals[: self._items], 0.0),
            toll=-duals[self._items : self._items + self._stocks],
            missing=float(values[: self._items].sum()),
            tolls={group: -float(duals[row]) for group, row in self._groups.items() if duals[row]},
        )


def whole(worth: Real) -> Whole:
    """Worths as whole numbers of the bound's scale, rounded down."""
    return np.floor(worth * SCALE).astype(np.int64)
