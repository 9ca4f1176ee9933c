"""Which pieces are left out where stock is too little for all: little wood first, then little money.

Each item may also come out of an invented board just as large as it is and dearer than all stock together;
the pieces in such boards of the cheapest plan are those left out.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from model.cutting.first_fit import FirstFit
from model.cutting.knapsack import Pattern
from model.cutting.problem import Problem, Sold

FINEST = 64
"""How many times the least piece's weight the largest one's is at most, so that sums stay whole numbers."""


def leave_out(problem: Problem, should_stop: Callable[[], bool]) -> tuple[Problem, list[Pattern]]:
    """The problem without the pieces left out, and boards that make the rest."""
    from model.cutting.search import Search

    extended = replace(problem, sold=(*problem.sold, *_invent(problem)))
    start = FirstFit(extended).plan(extended.demand, [sold.supply for sold in extended.sold], 0)
    assert start is not None, "an invented board holds each item"
    search = Search(extended, start, should_stop, lambda boards: None)
    search.run()
    real = len(problem.sold)
    demand = list(problem.demand)
    for board in search.best:
        if board.sold >= real:
            for item, count in board.counts().items():
                demand[item] -= count
    return replace(problem, demand=tuple(demand)), [board for board in search.best if board.sold < real]


def _invent(problem: Problem) -> list[Sold]:
    sizes = [_size(problem, item) for item in range(len(problem.demand))]
    largest = max(room * across for room, across in sizes)
    total = sum(problem.demand)
    dearest = 1 + sum(sold.price * min(sold.supply or total, total) for sold in problem.sold)
    return [
        Sold(dearest * max(FINEST * room * across // largest, 1), None, room, across)
        for room, across in sizes
    ]


def _size(problem: Problem, item: int) -> tuple[int, int]:
    """The least lane that holds an item: its length, its width."""
    lanes = (
        (size, kind.width)
        for kind in problem.kinds
        if not kind.whole and not kind.shared
        for each, size in kind.sizes
        if each == item
    )
    return min(lanes, key=lambda lane: (lane[1], lane[0]))
