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
from model.cutting.lanes import Whole
from model.cutting.packer import Layout, pieces_of
from model.cutting.set_choice import show_sheets
from model.cutting.set_programme import CLOSE, add_set, make_set_programme, read_worths
from model.cutting.sheet_problem import SheetProblem

ROUNDS = 250
"""Most times that sets are added."""
MOST_ITEMS = 120
"""Items up to which it is worth the work."""


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
        """The programme with the sets of a plan."""
        model = make_set_programme(self.problem, cost)
        for layout in plan:
            counts = np.bincount(pieces_of(layout), minlength=len(self.problem.demand))
            self._add(model, counts, layout.sold)
        return model

    def _add(self, model: Any, counts: Whole, sold: int) -> None:
        add_set(model, counts, sold, self.problem.sold[sold].price)

    def _add_sets(self, model: Any, guillotine: Guillotine) -> bool:
        """Add the best set of each stock by the worths of the programme; whether there was a worthy one."""
        worth, paid = read_worths(model, len(self.problem.demand))
        best, counts = guillotine.price(worth.tolist())
        scaled, _, _ = show_sheets(self.problem, worth, best)
        self.bound = max(self.bound, -(-scaled // SCALE))
        added = False
        for k, sold in enumerate(self.problem.sold):
            if best[k] + (paid[k] - sold.price - CLOSE) * SCALE > 0:
                self._add(model, np.array(counts[k]), k)
                added = True
        return added
