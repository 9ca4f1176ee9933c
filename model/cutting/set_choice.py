"""The cheapest choice among sets of pieces that sheets hold, each piece in one at least.

The linear programme gives each piece a worth, and the worths a bound in whole numbers that anyone can add up
again. A set that costs too much more than its pieces are worth is in no cheaper plan; whole numbers are asked
of the others alone, with how many of each sheet are bought as numbers of their own: they decide the cost.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil, gcd, isfinite
from typing import Any

import numpy as np

from model.cutting.bound import SCALE
from model.cutting.lanes import Whole
from model.cutting.set_programme import CLOSE, Real, add_set, make_set_programme, read_worths
from model.cutting.sheet_problem import SheetProblem
from model.cutting.sheet_sets import Level, Yes

Pieces = tuple[int, ...]
"""Items, one for each piece, in order."""
ADDED = 15
"""Most sets of one stock added to the linear programme at a time."""
HUNDREDTH = 1e-3
"""A solver's cost this close to a whole number of hundredths is that number."""


@dataclass(frozen=True, slots=True)
class Columns:
    """Sets, each with how many of each item it has, and the stock that it is cut from."""

    counts: Whole
    sold: Whole


def list_columns(problem: SheetProblem, levels: Sequence[Level]) -> Columns:
    """Sets to which no piece can be added, on each stock that no cheaper one stands in for."""
    found = [
        (_count(level.rows[_list_best(problem, level, k)], len(problem.items)), k)
        for level in levels
        for k in range(len(problem.sold))
    ]
    sold = [np.full(len(counts), k, dtype=np.int64) for counts, k in found]
    return Columns(np.concatenate([counts for counts, _ in found]), np.concatenate(sold))


def _list_best(problem: SheetProblem, level: Level, k: int) -> Yes:
    mine = level.maximal[:, k].copy()
    for other, sold in enumerate(problem.sold):
        if sold.supply is None and (sold.price, other) < (problem.sold[k].price, k):
            mine &= ~level.holders[:, other]
    return mine


def _count(rows: Whole, items: int) -> Whole:
    counts = np.zeros((len(rows), items), dtype=np.int64)
    for place in range(rows.shape[1]):
        counts[np.arange(len(rows)), rows[:, place]] += 1
    return counts


class SetChoice:
    """Chooses among columns; `bound` is what no plan of their sets costs less than.

    `worth` is what each piece is worth in the linear programme, in parts of `SCALE` of a hundredth.
    """

    def __init__(self, problem: SheetProblem, columns: Columns, should_stop: Callable[[], bool]) -> None:
        self.problem, self.columns, self._should_stop = problem, columns, should_stop
        self.bound = 0
        self._prices = np.array([sold.price for sold in problem.sold], dtype=np.int64)
        self._demand = np.array(problem.demand, dtype=np.int64)
        self.worth = np.zeros(len(problem.demand), dtype=np.int64)
        self._scaled, self._dearer = 0, np.zeros(len(columns.sold), dtype=np.int64)

    @property
    def size(self) -> int:
        """How many sets there are to choose among."""
        return len(self.columns.sold)

    def price_out(self, most: int) -> None:
        """Find the bound of the linear programme; `most` is what a plan is known to cost."""
        model, known = make_set_programme(self.problem, most), set[int]()
        while not self._should_stop() and model.solved():
            worth, paid = read_worths(model, len(self._demand))
            value = self.columns.counts @ worth
            self.worth = worth
            self._show(worth, value)
            saved = value + paid[self.columns.sold] * SCALE - self._prices[self.columns.sold] * SCALE
            new = [j for j in self._list_worthy(saved) if j not in known]
            if not new:
                return
            for j in new:
                self._add_set(model, j, float(self._prices[self.columns.sold[j]]))
            known.update(new)

    def _add_set(self, model: Any, j: int, cost: float) -> None:
        add_set(model, self.columns.counts[j], int(self.columns.sold[j]), cost)

    def _list_worthy(self, saved: Real) -> Iterator[int]:
        for k in range(len(self._prices)):
            mine = np.flatnonzero((self.columns.sold == k) & (saved > CLOSE * SCALE))
            yield from mine[np.argsort(-saved[mine], kind="stable")[:ADDED]].tolist()

    def _show(self, worth: Whole, value: Whole) -> None:
        """The bound that worths show, and how much more than that a plan costs with each set in it."""
        best = [int(value[self.columns.sold == k].max(initial=0)) for k in range(len(self._prices))]
        scaled, worth, spared = show_sheets(self.problem, worth, best)
        if scaled > self._scaled or not self._dearer.any():
            cost = self._prices * SCALE - np.array(spared, dtype=np.int64)
            self._scaled, self._dearer = scaled, cost[self.columns.sold] - self.columns.counts @ worth
            self.bound = max(self.bound, -(-scaled // SCALE))

    def choose(self, low: int, most: int, nodes: int) -> list[tuple[Pieces, int]] | None:
        """The cheapest choice that costs from `low` to below `most`, as sets with their stocks.

        None where none was found; `bound` is then `most` if there is none.
        """
        kept = np.flatnonzero(self._dearer < most * SCALE - self._scaled)
        model = self._make_whole(kept, low, most, nodes)
        solved = model.solved()
        if model.is_infeasible():
            self.bound = most
            return None
        dual = float(model.getInfo().mip_dual_bound) * self._step
        if isfinite(dual):
            self.bound = max(self.bound, min(ceil(dual - HUNDREDTH), most))
        if not solved and not model.has_solution():
            return None
        times = np.rint(np.array(model.getSolution().col_value)).astype(int).tolist()[len(self._prices) :]
        return [self._read(j) for j, count in zip(kept.tolist(), times, strict=True) for _ in range(count)]

    @property
    def _step(self) -> int:
        return gcd(*self._prices.tolist()) or 1

    def _make_whole(self, kept: Whole, low: int, most: int, nodes: int) -> Any:
        """Numbers of sheets first, then of sets; costs in steps of which every price is a multiple."""
        from model.cutting.solver import INFINITY, Solver

        model: Any = Solver()
        model.heed(self._should_stop)
        model.setOptionValue("mip_max_nodes", nodes)
        costs = (self._prices // self._step).astype(float).tolist()
        for cost, sold in zip(costs, self.problem.sold, strict=True):
            model.addCol(cost, 0, INFINITY if sold.supply is None else sold.supply, 0, [], [])
        for count in self.problem.demand:
            model.addRow(count, INFINITY, 0, [], [])
        for k in range(len(costs)):
            model.addRow(0, 0, 1, [k], [-1.0])
        for j in kept.tolist():
            self._add_set(model, j, 0.0)
        model.addRow(-(-low // self._step), (most - 1) // self._step, len(costs), range(len(costs)), costs)
        every = np.arange(len(costs) + len(kept), dtype=np.int32)
        model.changeColsIntegrality(len(every), every, np.ones(len(every), dtype=np.uint8))
        return model

    def leave_least(self, mix: Sequence[int], most: int, nodes: int) -> list[tuple[Pieces, int]] | None:
        """Sets on so many of each stock that leave pieces of the least area over, less than `most`.

        None where none were found.
        """
        model = self._make_fixed(mix, most, nodes)
        model.solved()
        if not model.has_solution():
            return None
        times = np.rint(np.array(model.getSolution().col_value)).astype(int).tolist()
        return [
            self._read(j) for j, count in enumerate(times[: len(self.columns.sold)]) for _ in range(count)
        ]

    def _make_fixed(self, mix: Sequence[int], most: int, nodes: int) -> Any:
        """Numbers of sets first, then of pieces left over, in parts of the area that is not to be reached."""
        from model.cutting.solver import INFINITY, Solver

        model: Any = Solver()
        model.heed(self._should_stop)
        model.setOptionValue("mip_max_nodes", nodes)
        model.setOptionValue("mip_abs_gap", 1.0 / most)
        for count in self.problem.demand:
            model.addRow(count, INFINITY, 0, [], [])
        for count in mix:
            model.addRow(0, count, 0, [], [])
        for j in range(len(self.columns.sold)):
            self._add_set(model, j, 0.0)
        shares = [item.area / most for item in self.problem.items]
        for i, share in enumerate(shares):
            model.addCol(share, 0, len(self.problem.items[i].keys), 1, [i], [1.0])
        every = np.arange(len(self.columns.sold) + len(shares), dtype=np.int32)
        model.addRow(-INFINITY, 1 - 0.5 / most, len(shares), every[-len(shares) :], shares)
        model.changeColsIntegrality(len(every), every, np.ones(len(every), dtype=np.uint8))
        return model

    def _read(self, j: int) -> tuple[Pieces, int]:
        counts = self.columns.counts[j]
        return tuple(np.repeat(np.arange(len(counts)), counts).tolist()), int(self.columns.sold[j])


def show_sheets(problem: SheetProblem, worth: Whole, best: Sequence[int]) -> tuple[int, Whole, list[int]]:
    """The bound that worths show, scaled, the worths that show it, and what a sheet of each stock spares.

    `best` is the most that a sheet of each stock is worth. Where sheets of any number would bring more than
    they cost, all is scaled down until they do not. What the others bring beyond their price is below 0 and
    counts as often as there are sheets.
    """
    num, den = 1, 1
    for sold, most in zip(problem.sold, best, strict=True):
        if sold.supply is None and most * num > sold.price * SCALE * den:
            num, den = sold.price * SCALE, most
    if num != den:
        worth = np.array([each * num // den for each in worth.tolist()], dtype=np.int64)
    most_worth = [-(-each * num // den) for each in best]
    spared = [min(sold.price * SCALE - b, 0) for sold, b in zip(problem.sold, most_worth, strict=True)]
    total = sum(w * d for w, d in zip(worth.tolist(), problem.demand, strict=True))
    total += sum(s * (sold.supply or 0) for s, sold in zip(spared, problem.sold, strict=True))
    return total, worth, spared
