"""A task made ready to be solved: pieces as items with the saw's cut in them, boards as rooms.

A piece and the cut after it take `length + kerf`, and a board offers its usable length and one cut more: the
last piece needs none after it. That is exact, not an approximation, along the grain and across it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import reduce
from math import gcd

from model.cutting.task import Refusal, Stock, Task, Wanted


@dataclass(frozen=True, slots=True)
class LaneKind:
    """Lanes of one width: the items they hold with the room each takes, and the room lost once in each lane.

    `width` has a cut in it. Sizes stand in the order items came in.
    """

    width: int
    sizes: tuple[tuple[int, int], ...]
    less: int = 0


@dataclass(frozen=True, slots=True)
class Sold:
    """A stock as the solver sees it: hundredths, how many, and room along and across with one cut over."""

    price: int
    supply: int | None
    room: int
    across: int


@dataclass(frozen=True, slots=True)
class Problem:
    """`demand` of each item; kinds from narrow to wide, each holding what narrower ones do."""

    demand: tuple[int, ...]
    kinds: tuple[LaneKind, ...]
    sold: tuple[Sold, ...]

    def room(self, kind: int, sold: int) -> int:
        """What a lane of a kind offers on a stock; below 0 where it offers nothing."""
        return self.sold[sold].room - self.kinds[kind].less

    def holds(self, kind: int, sold: int, taken: int) -> bool:
        """Whether a lane of a kind with `taken` in it comes out of a stock."""
        return self.kinds[kind].width <= self.sold[sold].across and taken <= self.room(kind, sold)


def list_refused(task: Task) -> tuple[Refusal, ...]:
    """Pieces that no stock holds, whatever else is cut from it."""
    refused = []
    for piece in task.wanted:
        if piece.count > 0 and not any(fits(piece, stock) for stock in task.stock):
            refused.append(_refuse(piece, task.stock))
    return tuple(refused)


def fits(piece: Wanted, stock: Stock) -> bool:
    """Whether one piece comes out of a whole board of a stock."""
    return (
        stock.supply != 0
        and piece.length <= stock.length - 2 * stock.trim_ends
        and piece.width <= stock.width - 2 * stock.trim_edges
    )


def _refuse(piece: Wanted, stock: Sequence[Stock]) -> Refusal:
    there = [each for each in stock if each.supply != 0]
    trims = min((each.trim_ends for each in there), default=0), min((e.trim_edges for e in there), default=0)
    wants = piece.length + 2 * trims[0], piece.width + 2 * trims[1]
    return Refusal(piece.key, piece.count, _why(piece, there), *wants)


def _why(piece: Wanted, there: Sequence[Stock]) -> str:
    if not there:
        return "nothing to cut it from is listed"
    if not any(piece.length <= each.length - 2 * each.trim_ends for each in there):
        return "longer than any that is listed"
    if not any(piece.width <= each.width - 2 * each.trim_edges for each in there):
        return "wider than any that is listed"
    return "none that is listed is both long and wide enough"


def make_problem(wanted: Sequence[Wanted], stock: Sequence[Stock], kerf: int) -> Problem:
    """The problem of pieces that all fit some stock."""
    widths = sorted({piece.width for piece in wanted})
    kinds = []
    for width in widths:
        sizes = [
            (i, piece.length + kerf)
            for i, piece in sorted(enumerate(wanted), key=lambda each: each[1].width)
            if piece.width <= width
        ]
        kinds.append(LaneKind(width + kerf, tuple(sizes)))
    sold = tuple(
        Sold(
            each.price,
            each.supply,
            each.length - 2 * each.trim_ends + kerf,
            each.width - 2 * each.trim_edges + kerf,
        )
        for each in stock
    )
    return reduce_units(Problem(tuple(piece.count for piece in wanted), tuple(kinds), sold))


def reduce_units(problem: Problem) -> Problem:
    """The same in the largest units that all pieces are whole numbers of; rooms are rounded down."""
    along = _divisor([size for kind in problem.kinds for _, size in kind.sizes])
    along = gcd(along, _divisor(kind.less for kind in problem.kinds)) or 1
    across = _divisor(kind.width for kind in problem.kinds) or 1
    kinds = tuple(
        LaneKind(k.width // across, tuple((i, size // along) for i, size in k.sizes), k.less // along)
        for k in problem.kinds
    )
    sold = tuple(Sold(s.price, s.supply, s.room // along, s.across // across) for s in problem.sold)
    return Problem(problem.demand, kinds, sold)


def _divisor(numbers: Iterable[int]) -> int:
    return reduce(gcd, numbers, 0)
