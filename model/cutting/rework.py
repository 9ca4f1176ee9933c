"""A few boards of a plan cut anew for less, the others left as they are."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np

from model.cutting.first_fit import cost_of
from model.cutting.knapsack import Pattern
from model.cutting.problem import Problem

BOARDS = 4
"""Boards that are cut anew together."""
NODES = 6
"""Parts of the search for them looked into."""


def rework(
    problem: Problem,
    boards: Sequence[Pattern],
    random: np.random.Generator,
    should_stop: Callable[[], bool],
    known: Sequence[Pattern],
) -> list[Pattern] | None:
    """A cheaper plan with some boards exchanged; None where none was found for those that were drawn."""
    from model.cutting.search import Search

    paid = [b for b, board in enumerate(boards) if problem.sold[board.sold].price]
    if len(paid) <= BOARDS:
        return None
    drawn = set(random.choice(paid, BOARDS, replace=False).tolist())
    drawn |= {b for b in range(len(boards)) if b not in paid and random.random() < 0.5}
    out = [boards[b] for b in sorted(drawn)]
    kept = [board for b, board in enumerate(boards) if b not in drawn]
    rest = _leave(problem, out, kept)
    useful = [p for p in known if all(rest.demand[i] >= n for i, n in p.counts().items())]
    search = Search(rest, out, should_stop, lambda better: None, None, NODES, useful, reworks=0)
    search.run()
    return [*kept, *search.best] if search.cost < cost_of(problem, out) else None


def _leave(problem: Problem, out: Sequence[Pattern], kept: Sequence[Pattern]) -> Problem:
    """The problem of the pieces of some boards, with the stock that the others leave."""
    demand = [0] * len(problem.demand)
    for board in out:
        for item, count in board.counts().items():
            demand[item] += count
    used = [sum(board.sold == s for board in kept) for s in range(len(problem.sold))]
    sold = tuple(
        each if each.supply is None else replace(each, supply=each.supply - number)
        for each, number in zip(problem.sold, used, strict=True)
    )
    return replace(problem, demand=tuple(demand), sold=sold)
