"""What no plan of sheets can cost less than, told by what a sheet can hold if no piece has an end.

The linear programme is that of choosing among sets, but its sets are thought of as they are needed, by
`Guillotine`. It is close where there are many of each piece, as in an order of many like jobs.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

import numpy as np

from model.cutting.bound import SCALE
from model.cutting.guillotine import Guillotine
from model.cutting.packer import Layout, pieces_of
from model.cutting.set_choice import show_sheets
from model.cutting.sheet_problem import SheetProblem

ROUNDS = 250
"""Most times that sets are added."""
MOST_ITEMS = 120
"""Items up to which it is worth the work."""
CLOSE = 1e-3
"""Hundredths by which a set must be worth more than it costs to be added."""


class PatternBound:
    """Finds the bound; `bound` is valid at every moment."""

    def __init__(self, problem: SheetProblem, should_stop: Callable[[], bool]) -> None:
        self.problem, self._should_stop = problem, should_stop
        self.bound = 0

    def find(self, plan: Sequence[Layout], cost: int, low: int) -> int:
        """What no plan costs less than; `plan` is one and costs `cost`, and nothing below `low` is known."""
        if len(self.problem.items) > MOST_ITEMS:
            return self.bound
        guillotine = Guillotine(self.problem.items, self.problem.rooms)
        model = self._make(plan, cost)
        for _ in range(ROUNDS):
            if self._should_stop() or not model.solved() or model.getInfo().objective_function_value <= low:
                break
            if not self._add_sets(model, guillotine):
                break
        return self.bound

    def _make(self, plan: Sequence[Layout], cost: int) -> Any:
        """Rows for items and for stocks; the sets of a plan, and each item at a cost that no plan pays."""
        from model.cutting.solver import INFINITY, Solver

        model: Any = Solver()
        for count in self.problem.demand:
            model.addRow(count, INFINITY, 0, [], [])
        for sold in self.problem.sold:
            model.addRow(0, INFINITY if sold.supply is None else sold.supply, 0, [], [])
        for i in range(len(self.problem.demand)):
            model.addCol(cost + 1, 0, INFINITY, 1, [i], [1.0])
        for layout in plan:
            counts = np.bincount(pieces_of(layout), minlength=len(self.problem.demand))
            self._add(model, counts.tolist(), layout.sold)
        return model

    def _add(self, model: Any, counts: Sequence[int], sold: int) -> None:
        from model.cutting.solver import INFINITY

        items = [i for i, count in enumerate(counts) if count]
        rows = [*items, len(counts) + sold]
        values = [*(float(counts[i]) for i in items), 1.0]
        model.addCol(self.problem.sold[sold].price, 0, INFINITY, len(rows), rows, values)

    def _add_sets(self, model: Any, guillotine: Guillotine) -> bool:
        """Add the best set of each stock by the worths of the programme; whether there was a worthy one."""
        number = len(self.problem.demand)
        dual = np.array(model.getSolution().row_dual)
        worth = np.floor(np.maximum(dual[:number], 0) * SCALE).astype(np.int64)
        best, counts = guillotine.price(worth.tolist())
        scaled, _, _ = show_sheets(self.problem, worth, best)
        self.bound = max(self.bound, -(-scaled // SCALE))
        added = False
        for k, sold in enumerate(self.problem.sold):
            if best[k] + (min(dual[number + k], 0) - sold.price - CLOSE) * SCALE > 0:
                self._add(model, counts[k], k)
                added = True
        return added
