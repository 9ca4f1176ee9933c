"""The linear programme over sets of pieces on sheets: rows for items, then for stocks, sets as columns.

Which sets come into it is model.cutting.set_choice's and model.cutting.pattern_bound's business.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.cutting.lanes import Whole
from model.cutting.master import whole
from model.cutting.sheet_problem import SheetProblem

Real = NDArray[np.float64]
CLOSE = 1e-3
"""Hundredths by which a set must be worth more than it costs to be added."""


def make_set_programme(problem: SheetProblem, most: int) -> Any:
    """A programme without sets yet; each item can be had at a cost that no plan below `most` pays."""
    from model.cutting.solver import INFINITY, Solver

    model: Any = Solver()
    for count in problem.demand:
        model.addRow(count, INFINITY, 0, [], [])
    for sold in problem.sold:
        model.addRow(0, INFINITY if sold.supply is None else sold.supply, 0, [], [])
    for i in range(len(problem.demand)):
        model.addCol(most + 1, 0, INFINITY, 1, [i], [1.0])
    return model


def add_set(model: Any, counts: Whole, sold: int, cost: float) -> None:
    """A column: `counts` of each item on one sheet of the stock `sold`, for `cost` hundredths."""
    from model.cutting.solver import INFINITY

    items = np.flatnonzero(counts)
    rows = [*items.tolist(), len(counts) + sold]
    values = [*counts[items].astype(float).tolist(), 1.0]
    model.addCol(cost, 0, INFINITY, len(rows), rows, values)


def read_worths(model: Any, items: int) -> tuple[Whole, Real]:
    """What each item is worth, in whole parts of the bound's scale, and what the limit on each stock saves.

    The second is in hundredths, 0 or below.
    """
    dual = np.array(model.getSolution().row_dual)
    return whole(np.maximum(dual[:items], 0)), np.asarray(np.minimum(dual[items:], 0))
