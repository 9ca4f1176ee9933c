"""A plan at once: each piece, the largest first, into the first lane that holds it, or a new board.

It is where the search starts from, what benchmarks compare with, and how a plan's boards are made cheaper.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from model.cutting.knapsack import Pattern
from model.cutting.lanes import Filled
from model.cutting.problem import LaneKind, Problem

MOST_MAINS = 100
"""How many stocks, those that cost least by their length first, are tried as the one to prefer."""


@dataclass(slots=True)
class _Lane:
    kind: int
    taken: int = 0
    items: Counter[int] = field(default_factory=Counter)


@dataclass(slots=True)
class _Open:
    """A board being filled: its stock, its lanes, the width not ripped yet, and the most room in any lane."""

    sold: int
    across: int
    free: int = 0
    lanes: list[_Lane] = field(default_factory=list)


class FirstFit:
    """First fit over one problem, for any demand and supply of it."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self._kinds_of: list[list[tuple[int, int]]] = [[] for _ in problem.demand]
        for k, kind in enumerate(problem.kinds):
            for item, size in () if kind.shared else kind.sizes:
                self._kinds_of[item].append((k, size))
        widths = [problem.kinds[kinds[0][0]].width for kinds in self._kinds_of]
        lengths = [min(size for _, size in kinds) for kinds in self._kinds_of]
        self._least = min(lengths, default=0), min(widths, default=0)
        narrowest = [min(problem.kinds[k].width for k, _ in kinds) for kinds in self._kinds_of]
        self._wants = list(zip(lengths, narrowest, strict=True))
        self._fitting = [self._list_fitting(kinds) for kinds in self._kinds_of]
        self._order = sorted(range(len(problem.demand)), key=lambda i: (-widths[i], -lengths[i]))

    def _list_fitting(self, kinds: Sequence[tuple[int, int]]) -> list[int]:
        """The stocks that hold a piece of these sizes in lanes, the cheapest first."""
        holds, sold = self.problem.holds, self.problem.sold
        fitting = [s for s in range(len(sold)) if any(holds(k, s, size) for k, size in kinds)]
        return sorted(fitting, key=lambda s: sold[s].price)

    def best(self, demand: Sequence[int], supply: Sequence[int | None]) -> list[Pattern] | None:
        """The cheapest of the plans that prefer one stock each, made cheaper after; None where none goes."""
        mains = [s for s, most in enumerate(supply) if most is None] or [0]
        if len(mains) > MOST_MAINS:
            sold = self.problem.sold
            mains = sorted(mains, key=lambda s: sold[s].price / max(sold[s].room, 1))[:MOST_MAINS]
        plans = (self.plan(demand, supply, main) for main in mains)
        made = [downsize(self.problem, plan, supply) for plan in plans if plan is not None]
        return min(made, key=lambda plan: cost_of(self.problem, plan), default=None)

    def plan(self, demand: Sequence[int], supply: Sequence[int | None], main: int) -> list[Pattern] | None:
        """Boards that make all pieces, or None where stock runs out.

        `main` is the stock that a new board is of as long as it holds the piece.
        """
        left = list(supply)
        boards: list[_Open] = []
        fillable: list[_Open] = []
        for item in self._order:
            number = demand[item]
            along, across = self._wants[item]
            for board in fillable:
                if not number:
                    break
                if board.free >= along or board.across >= across:
                    number -= self._put(board, item, number)
            while number:
                sold = self._choose(item, left, main)
                if sold is None:
                    return None
                board = _Open(sold, self.problem.sold[sold].across)
                placed = self._put(board, item, number)
                if not placed:
                    return None
                number -= placed
                boards.append(board)
                fillable.append(board)
            fillable = [board for board in fillable if self._is_fillable(board)]
        return [self._closed(board) for board in boards]

    def _is_fillable(self, board: _Open) -> bool:
        """Whether the least piece of all might still go in."""
        if board.across >= self._least[1]:
            return True
        return board.free >= self._least[0]

    def _put(self, board: _Open, item: int, number: int) -> int:
        """Put as many of an item into a board as go, into the lanes there are first; how many."""
        sizes = self._kinds_of[item]
        room = self.problem.sold[board.sold].room
        rest = number
        for lane in board.lanes:
            if lane.taken + self._least[0] <= room:
                rest -= _put_in(lane, item, sizes, room, rest)
        for kind, size in sizes:
            while rest and size <= room and self._is_free(board, self.problem.kinds[kind]):
                board.lanes.append(_Lane(kind))
                board.across -= self.problem.kinds[kind].width
                rest -= _put_in(board.lanes[-1], item, ((kind, size),), room, rest)
        if rest < number:
            board.free = room - min(lane.taken for lane in board.lanes)
        return number - rest

    @staticmethod
    def _is_free(board: _Open, kind: LaneKind) -> bool:
        """Whether a new lane of a kind can still come out of a board."""
        if kind.whole:
            return not board.lanes and board.sold in kind.whole
        return kind.width <= board.across

    def _choose(self, item: int, left: list[int | None], main: int) -> int | None:
        """A stock for a new board: what lies there, the main one, or the cheapest that holds the item."""
        there = [s for s in self._fitting[item] if left[s] != 0]
        if not there:
            return None
        is_bought = self.problem.sold[there[0]].price > 0
        chosen = main if is_bought and main in there else there[0]
        if (number := left[chosen]) is not None:
            left[chosen] = number - 1
        return chosen

    @staticmethod
    def _closed(board: _Open) -> Pattern:
        return Pattern(board.sold, tuple(Filled(e.kind, tuple(sorted(e.items.items()))) for e in board.lanes))


def _put_in(lane: _Lane, item: int, sizes: Sequence[tuple[int, int]], room: int, number: int) -> int:
    """How many of an item went into a lane."""
    for kind, size in sizes:
        if kind == lane.kind:
            fitting = min(number, (room - lane.taken) // size)
            if fitting:
                lane.taken += fitting * size
                lane.items[item] += fitting
            return fitting
    return 0


def cost_of(problem: Problem, boards: Iterable[Pattern]) -> int:
    """Hundredths that boards cost together."""
    return sum(problem.sold[board.sold].price for board in boards)


def downsize(problem: Problem, boards: Sequence[Pattern], supply: Sequence[int | None]) -> list[Pattern]:
    """The same lanes, each board's out of the cheapest stock that holds them and is left."""
    left = list(supply)
    for board in boards:
        if (number := left[board.sold]) is not None:
            left[board.sold] = number - 1
    by_price = sorted(range(len(problem.sold)), key=lambda s: problem.sold[s].price)
    cheaper = []
    for board in boards:
        across = sum(problem.kinds[lane.kind].width for lane in board.lanes)
        taken = [(e.kind, problem.kinds[e.kind].taken(e.items)) for e in board.lanes]
        best = board.sold
        for s in by_price:
            if problem.sold[s].price >= problem.sold[board.sold].price:
                break
            ripped = across <= problem.sold[s].across or len(taken) == 1
            if left[s] != 0 and ripped and all(problem.holds(kind, s, room) for kind, room in taken):
                best = s
                break
        if best != board.sold:
            for s, step in ((board.sold, 1), (best, -1)):
                if (number := left[s]) is not None:
                    left[s] = number + step
        cheaper.append(Pattern(best, board.lanes))
    return cheaper
