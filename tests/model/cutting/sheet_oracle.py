"""The least cost of a few pieces on sheets with nothing of the planner's: all sets, each first cut tried.

Which sets are bought is left to scipy's MILP, or tried out as well. Real sizes, saw cuts as gaps.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from itertools import combinations

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from model.cutting.task import Task

Group = tuple[int, ...]


def _list_pieces(task: Task) -> tuple[tuple[tuple[int, int], bool], ...]:
    return tuple(
        ((each.length, each.width), each.may_turn) for each in task.wanted for _ in range(each.count)
    )


def _list_rooms(task: Task) -> tuple[tuple[int, int], ...]:
    return tuple((each.length - 2 * each.trim_ends, each.width - 2 * each.trim_edges) for each in task.stock)


def make_holder(task: Task) -> Callable[[Group, int, int], bool]:
    """Whether a part of real size holds a group of pieces, by every place of the first cut that parts it."""
    pieces, kerf = _list_pieces(task), task.kerf

    @lru_cache(None)
    def holds(group: Group, length: int, width: int) -> bool:
        if length <= 0 or width <= 0:
            return False
        if len(group) == 1:
            (long, wide), may_turn = pieces[group[0]]
            return (long <= length and wide <= width) or (may_turn and wide <= length and long <= width)
        for one, two in _list_partings(group):
            for at in list_sums(one, length):
                if holds(one, at, width) and holds(two, length - at - kerf, width):
                    return True
            for at in list_sums(one, width):
                if holds(one, length, at) and holds(two, length, width - at - kerf):
                    return True
        return False

    @lru_cache(None)
    def list_sums(group: Group, most: int) -> tuple[int, ...]:
        """Where a cut can lie after a group: its sides added up, a saw cut between each two."""
        sums = {-kerf}
        for i in group:
            sums |= {s + side + kerf for s in sums for side in pieces[i][0]}
        return tuple(sorted(s for s in sums if 0 < s < most))

    return holds


def _list_partings(group: Group) -> Iterator[tuple[Group, Group]]:
    first, *others = group
    for size in range(len(others)):
        for with_first in combinations(others, size):
            yield (first, *with_first), tuple(i for i in others if i not in with_first)


def solve_task(task: Task) -> int | None:
    """The least cost by scipy's MILP over all sets that each sheet holds; None where stock is short."""
    holds, rooms = make_holder(task), _list_rooms(task)
    number = len(_list_pieces(task))
    found: list[tuple[Group, int]] = []
    for size in range(1, number + 1):
        for group in combinations(range(number), size):
            found += [(group, k) for k, room in enumerate(rooms) if holds(group, *room)]
    if not found:
        return None
    covers = np.array([[float(i in group) for group, _ in found] for i in range(number)])
    uses = np.array([[float(sold == k) for _, sold in found] for k in range(len(rooms))])
    most = [np.inf if each.supply is None else each.supply for each in task.stock]
    prices = np.array([float(task.stock[sold].price) for _, sold in found])
    rows = [LinearConstraint(covers, 1, 1), LinearConstraint(uses, 0, most)]
    options = {"mip_rel_gap": 0.0}
    answer = milp(
        prices, integrality=np.ones(len(found)), bounds=Bounds(0, 1), constraints=rows, options=options
    )
    return round(answer.fun) if answer.success else None


def least_cost(task: Task) -> int | None:
    """The least cost of a task of a few pieces, by trying every choice of sets; None where stock is short."""
    holds, rooms = make_holder(task), _list_rooms(task)

    @lru_cache(None)
    def cost(rest: Group, used: Group) -> float:
        if not rest:
            return 0
        best = float("inf")
        for k, stock in enumerate(task.stock):
            if stock.supply is not None and used[k] >= stock.supply:
                continue
            more = tuple(n + (j == k) for j, n in enumerate(used)) if stock.supply is not None else used
            for one, left in [*_list_partings(rest), (rest, ())]:
                if holds(one, *rooms[k]):
                    best = min(best, stock.price + cost(left, more))
        return best

    least = cost(tuple(range(len(_list_pieces(task)))), (0,) * len(task.stock))
    return None if least == float("inf") else int(least)
