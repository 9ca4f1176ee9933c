"""What no plan of sheets can cost less than, told without laying anything.

A side is given a share of the sheet's side by a function such that sides that fit one after the other never
add up to more than 1; of two such functions, one each way, the products of the shares of pieces on one sheet
never add up to more than 1 either. Each piece goes to one kind of sheet one way round, and for each kind and
each two functions the shares must not exceed the number of sheets: the least cost of that is a bound. See
Fekete and Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical Programming 91
(2001), for the functions.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.cutting.bound import PriceSums
from model.cutting.limits import Limits
from model.cutting.problem import Problem
from model.cutting.sheet_problem import SheetProblem, fits

Real = NDArray[np.float64]
THRESHOLDS = (Fraction(1, 2), Fraction(2, 5), Fraction(1, 3), Fraction(1, 4), Fraction(1, 5))
STAIRS = (1, 2, 3, 4)
ROUNDS = 12
"""Most times that rows are added."""
ADDED = 4
"""Most rows added to each stock at a time."""
NODES = 2_000
"""Most nodes of the whole-number search."""
MOST_WHOLE = 150
"""Ways to place items up to which whole numbers are asked for."""
CLOSE = 1e-6
HUNDREDTH = 1e-3
"""A solver's cost this close to a whole number of hundredths is that number."""


def list_shares(side: int, room: int) -> tuple[Fraction, ...]:
    """The share of a room that each function gives a side."""
    shares = [Fraction(side, room)]
    for least in THRESHOLDS:
        shares.append(_above(Fraction(side, room), least))
    for k in STAIRS:
        shares.append(_stair(side, room, k))
    return tuple(shares)


def _above(part: Fraction, least: Fraction) -> Fraction:
    if part > 1 - least:
        return Fraction(1)
    return part if part >= least else Fraction(0)


def _stair(side: int, room: int, k: int) -> Fraction:
    steps, rest = divmod((k + 1) * side, room)
    return Fraction(side, room) if rest == 0 else Fraction(steps, k)


@dataclass(frozen=True, slots=True)
class _Place:
    """An item on a stock one way round, with its shares along and across."""

    item: int
    sold: int
    along: tuple[float, ...]
    across: tuple[float, ...]


class SheetBound:
    """The bound as a linear programme, in which numbers of sheets can be limited and costs lifted."""

    def __init__(self, problem: SheetProblem, should_stop: Callable[[], bool]) -> None:
        self.problem, self._should_stop = problem, should_stop
        self._supply = tuple(sold.supply for sold in problem.sold)
        self._none = Limits((0,) * len(problem.sold), self._supply)
        self._places = list(_list_places(problem))
        self._rows: list[tuple[int, int, int]] = [(k, 0, 0) for k in range(len(problem.sold))]

    def lift(self, cost: int, most: int) -> int:
        """The least sum of prices from `cost` on, `most` at most."""
        sums = PriceSums(Problem(self.problem.demand, (), self.problem.sold), most)
        return min(sums.lift(cost, self._none), most)

    def find(self, most: int) -> int:
        """What no plan costs less than, hundredths; `most` is what a plan is known to cost."""
        bound = 0
        for _ in range(ROUNDS):
            solved = self._solve(whole=False)
            if solved is None:
                return self.lift(bound, most)
            cost, times = solved
            bound = max(bound, ceil(cost - HUNDREDTH))
            if bound >= most or not self._add_rows(times):
                break
        if bound < most and len(self._places) <= MOST_WHOLE:
            bound = max(bound, self._find_whole(bound))
        return self.lift(bound, most)

    def _find_whole(self, bound: int) -> int:
        for _ in range(ROUNDS):
            solved = self._solve(whole=True)
            if solved is None:
                break
            cost, times = solved
            bound = max(bound, ceil(cost - HUNDREDTH))
            if not len(times) or not self._add_rows(times):
                break
        return bound

    def _solve(self, whole: bool) -> tuple[float, Real] | None:
        """Cost that is not undercut and the numbers, those of sheets first; none if it ended before."""
        model = self._make(whole)
        if model.solved():
            info = model.getInfo()
            cost = info.mip_dual_bound if whole else info.objective_function_value
            return float(cost), np.array(model.getSolution().col_value)
        if not whole or self._should_stop():
            return None
        return float(model.getInfo().mip_dual_bound), np.zeros(0)

    def _make(self, whole: bool) -> Any:
        from model.cutting.solver import INFINITY, Solver

        model: Any = Solver()
        model.heed(self._should_stop)
        model.setOptionValue("mip_max_nodes", NODES)
        for sold in self.problem.sold:
            model.addCol(sold.price, 0, INFINITY if sold.supply is None else sold.supply, 0, [], [])
        for place in self._places:
            model.addCol(0, 0, len(self.problem.items[place.item].keys), 0, [], [])
        first = len(self.problem.sold)
        of_item: list[list[int]] = [[] for _ in self.problem.items]
        for n, place in enumerate(self._places):
            of_item[place.item].append(first + n)
        for count, columns in zip(self.problem.demand, of_item, strict=True):
            model.addRow(count, INFINITY, len(columns), columns, [1.0] * len(columns))
        for row in self._rows:
            columns, values = self._row(*row)
            model.addRow(-INFINITY, 0, len(columns), columns, values)
        if whole:
            every = np.arange(first + len(self._places), dtype=np.int32)
            model.changeColsIntegrality(len(every), every, np.ones(len(every), dtype=np.uint8))
        return model

    def _row(self, sold: int, along: int, across: int) -> tuple[list[int], list[float]]:
        columns, values = [sold], [-1.0]
        for n, place in enumerate(self._places):
            share = place.along[along] * place.across[across] if place.sold == sold else 0.0
            if share:
                columns.append(len(self.problem.sold) + n)
                values.append(share)
        return columns, values

    def _add_rows(self, times: Real) -> bool:
        """Add the rows that an answer breaks most; whether there were any."""
        first, added = len(self.problem.sold), False
        for k in range(first):
            here = [n for n, place in enumerate(self._places) if place.sold == k and times[first + n] > CLOSE]
            if not here:
                continue
            along = np.array([self._places[n].along for n in here])
            across = np.array([self._places[n].across for n in here])
            over = (along * times[[first + n for n in here], None]).T @ across - times[k]
            for at in np.argsort(-over, axis=None, kind="stable")[:ADDED].tolist():
                row = k, at // over.shape[1], at % over.shape[1]
                if over[row[1:]] > CLOSE and row not in self._rows:
                    self._rows.append(row)
                    added = True
        return added


def _list_places(problem: SheetProblem) -> Sequence[_Place]:
    places = []
    for i, item in enumerate(problem.items):
        for k, room in enumerate(problem.rooms):
            for way in item.ways:
                if fits(way, room) and problem.sold[k].supply != 0:
                    along, across = (tuple(map(float, list_shares(way[axis], room[axis]))) for axis in (0, 1))
                    places.append(_Place(i, k, along, across))
    return places
