"""Of plans that cost the least, one of fewer boards: the same search again, each board a little dearer.

Found, not proven; where prices can make the cost with no fewer boards, nothing is looked for.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from model.cutting.bound import PriceSums
from model.cutting.first_fit import cost_of
from model.cutting.knapsack import Pattern
from model.cutting.limits import Limits
from model.cutting.problem import Problem

NODES = 10
"""Parts of the search looked into."""
MOST = 60
"""Boards beyond which one less is not worth the time."""


def spare_boards(
    problem: Problem, boards: Sequence[Pattern], should_stop: Callable[[], bool]
) -> list[Pattern]:
    """Boards at no greater cost, and as few as were found."""
    from model.cutting.search import Search

    if len(boards) > MOST:
        return list(boards)
    weight = len(boards) + 1
    dearer = tuple(replace(sold, price=sold.price * weight + 1) for sold in problem.sold)
    counted = replace(problem, sold=dearer)
    most = cost_of(counted, boards)
    anything = Limits((0,) * len(dearer), tuple(sold.supply for sold in dearer))
    if PriceSums(counted, most).lift(cost_of(problem, boards) * weight + 1, anything) >= most:
        return list(boards)
    search = Search(counted, boards, should_stop, lambda better: None, nodes=NODES, reworks=0)
    search.run()
    return search.best
