"""Every board worth cutting of a small problem, so that a search over them leaves nothing out."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count as count_up

from model.cutting.knapsack import Pattern
from model.cutting.lanes import Filled
from model.cutting.problem import LaneKind, Problem

PIECES = 24
"""Pieces beyond which a problem is not looked at for being small."""
MOST = 1200
"""Patterns beyond which a problem is not small."""
STEPS = 16
"""Steps to look for a lane that are spent for each of as many patterns."""


class _TooMany(Exception):
    pass


def list_patterns(problem: Problem) -> list[Pattern] | None:
    """Boards to which nothing can be added, for each stock; None where there are too many."""
    found: list[Pattern] = []
    if sum(problem.demand) > PIECES:
        return None
    try:
        for sold in range(len(problem.sold)):
            for pattern in _list_boards(problem, sold):
                found.append(pattern)
                _hold(len(found))
    except _TooMany:
        return None
    return found


def _hold(number: int) -> None:
    if number > MOST:
        raise _TooMany


def _list_boards(problem: Problem, sold: int) -> Iterator[Pattern]:
    stock = problem.sold[sold]
    lanes: list[tuple[int, list[Filled]]] = []
    for number, kind in enumerate(problem.kinds):
        if sold in kind.whole:
            for lane in _list_lanes(problem, number, stock.room):
                yield Pattern(sold, (lane,))
        elif not kind.whole and kind.width <= stock.across:
            lanes.append((kind.width, _list_lanes(problem, number, stock.room)))
    lanes.sort(key=lambda each: -each[0])
    seen: set[tuple[int, ...]] = set()
    steps = count_up()
    for board, rest in _beside(lanes, stock.across, 0, problem.demand):
        _hold(next(steps) // STEPS)
        if board and rest not in seen:
            seen.add(rest)
            yield Pattern(sold, board)


Rest = tuple[int, ...]
"""How many of each item are still wanted."""


def _beside(
    lanes: list[tuple[int, list[Filled]]], across: int, start: int, left: Rest
) -> Iterator[tuple[tuple[Filled, ...], Rest]]:
    """Lanes from wide to narrow until none fits that makes anything still wanted; and what is left then."""
    is_full = True
    for at in range(start, len(lanes)):
        width, fillings = lanes[at]
        for filling in fillings if width <= across else ():
            rest = _take_off(left, filling)
            if rest != left:
                is_full = False
                for others, last in _beside(lanes, across - width, at, rest):
                    yield (filling, *others), last
    if is_full:
        yield (), left


def _take_off(left: Rest, filling: Filled) -> Rest:
    counts = dict(filling.items)
    return tuple(max(number - counts.get(item, 0), 0) for item, number in enumerate(left))


def _list_lanes(problem: Problem, number: int, room: int) -> list[Filled]:
    """Fillings of a lane to which nothing can be added. Of narrow pieces alone a narrow lane does as well."""
    kind = problem.kinds[number]
    found: list[Filled] = []
    counts: dict[int, int] = {}
    steps = count_up()

    def extend(at: int) -> None:
        _hold(next(steps) // STEPS)
        if at == len(kind.sizes):
            if counts and not _can_add(kind, counts, problem.demand, room):
                found.append(Filled(number, tuple(sorted(counts.items()))))
                _hold(len(found))
            return
        item, _ = kind.sizes[at]
        extend(at + 1)
        for count in range(1, problem.demand[item] + 1):
            counts[item] = count
            if kind.taken(counts.items()) > room:
                break
            extend(at + 1)
        counts.pop(item, None)

    extend(0)
    return found


def _can_add(kind: LaneKind, counts: dict[int, int], demand: tuple[int, ...], room: int) -> bool:
    for item, _ in kind.sizes:
        if counts.get(item, 0) < demand[item]:
            more = {**counts, item: counts.get(item, 0) + 1}
            if kind.taken(more.items()) <= room:
                return True
    return False
