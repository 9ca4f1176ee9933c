"""Whole boards out of given patterns for the least money, by branching in the solver."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from model.cutting.knapsack import Pattern
from model.cutting.limits import Limits
from model.cutting.problem import Problem


@dataclass(frozen=True, slots=True)
class Chosen:
    """How often which patterns are cut, None where nothing was found; `is_best` if nothing out of these
    patterns is cheaper, or makes all pieces at all.
    """

    boards: tuple[tuple[Pattern, int], ...] | None
    is_best: bool


def choose_boards(
    problem: Problem, patterns: Sequence[Pattern], demand: Sequence[int], limits: Limits, nodes: int
) -> Chosen:
    """The cheapest choice found within a number of nodes.

    How many boards of each stock are bought is a column of its own: branching on it settles the cost.
    """
    model = _build_model(problem, patterns, demand, limits)
    model.setOptionValue("mip_max_nodes", nodes)
    is_best = model.solved() or model.is_infeasible()
    if not model.has_solution():
        return Chosen(None, is_best)
    times = np.rint(np.array(model.getSolution().col_value)).astype(int).tolist()
    return Chosen(tuple((p, n) for p, n in zip(patterns, times, strict=False) if n), is_best)


def _build_model(problem: Problem, patterns: Sequence[Pattern], demand: Sequence[int], limits: Limits) -> Any:
    from model.cutting.solver import INFINITY, Solver

    model = Solver()
    for count in demand:
        model.addRow(count, INFINITY, 0, [], [])
    for _ in problem.sold:
        model.addRow(0, 0, 0, [], [])
    for pattern in patterns:
        counts = pattern.counts()
        rows = [*counts, len(demand) + pattern.sold]
        model.addCol(0, 0, INFINITY, len(rows), rows, [*map(float, counts.values()), 1.0])
    for s, (sold, low, most) in enumerate(zip(problem.sold, limits.low, limits.high, strict=True)):
        model.addCol(sold.price, low, INFINITY if most is None else most, 1, [len(demand) + s], [-1.0])
    columns = np.arange(len(patterns) + len(problem.sold), dtype=np.int32)
    model.changeColsIntegrality(len(columns), columns, np.ones(len(columns), dtype=np.uint8))
    return model
