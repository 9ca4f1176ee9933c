"""A task made ready to be solved: items with the saw's cut in them, lanes of each kind, boards as rooms.

A piece and the cut after it take `length + kerf`, and a board offers its usable length and one cut more: the
last piece needs none after it. That is exact, not an approximation, along the grain and across it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import reduce
from math import gcd

from model.cutting.items import Item
from model.cutting.mitre import HIGH, LOW, count_joints, list_ends, saving
from model.cutting.task import Stock

WIDEST = 4096
"""Units across that are counted at any rate; 64 in."""


@dataclass(frozen=True, slots=True)
class LaneKind:
    """Lanes of one width: the items they hold with the room each takes, in the order they are offered.

    `width` has a cut in it. `whole` lists the stocks of just that width whose edges would be trimmed if they
    were ripped: they are such a lane as they are, and no other is. `shared` is what is saved where two mitred
    ends are freed by one cut, `ends` which ends of each of `sizes` that can be; sizes do not allow for it.
    """

    width: int
    sizes: tuple[tuple[int, int], ...]
    whole: tuple[int, ...] = ()
    shared: int = 0
    ends: tuple[int, ...] = ()

    def taken(self, items: Iterable[tuple[int, int]]) -> int:
        """The room that so many of each item take together."""
        sizes = dict(self.sizes)
        counts = list(items)
        plain = sum(sizes[item] * number for item, number in counts)
        if not self.shared:
            return plain
        ends = {item: bits for (item, _), bits in zip(self.sizes, self.ends, strict=True)}
        of_sort = [sum(n for item, n in counts if ends[item] == sort) for sort in (LOW | HIGH, LOW, HIGH)]
        return plain - self.shared * count_joints(*of_sort)


@dataclass(frozen=True, slots=True)
class Sold:
    """A stock as the solver sees it: hundredths, how many, and room along and across with one cut over."""

    price: int
    supply: int | None
    room: int
    across: int


@dataclass(frozen=True, slots=True)
class Problem:
    """`demand` of each item; the kinds of lanes, those first that hold what the one before them does."""

    demand: tuple[int, ...]
    kinds: tuple[LaneKind, ...]
    sold: tuple[Sold, ...]

    def holds(self, kind: int, sold: int, taken: int) -> bool:
        """Whether a lane of a kind with `taken` in it comes out of a stock, alone."""
        lane, stock = self.kinds[kind], self.sold[sold]
        wide = sold in lane.whole if lane.whole else lane.width <= stock.across
        return wide and taken <= stock.room


def make_problem(items: Sequence[Item], stock: Sequence[Stock], kerf: int) -> Problem:
    """The problem of items that all fit some stock; room beyond what all of them take is not counted."""
    widths = sorted({item.width for item in items})
    kinds = [_make_lane(items, width, kerf) for width in widths]
    kinds += [lane for width in widths for lane in _list_whole(items, stock, width, kerf)]
    kinds += [lane for width in widths for lane in _list_mitred(items, width, kerf)]
    most = (
        sum((item.length + kerf) * len(item.blocks) for item in items),
        max(sum((item.width + kerf) * len(item.blocks) for item in items), WIDEST),
    )
    sold = tuple(
        Sold(
            each.price,
            each.supply,
            min(each.length - 2 * each.trim_ends + kerf, most[0]),
            min(each.width - 2 * each.trim_edges + kerf, most[1]),
        )
        for each in stock
    )
    return reduce_units(Problem(tuple(len(item.blocks) for item in items), tuple(kinds), sold))


def _make_lane(items: Sequence[Item], width: int, kerf: int, most: int | None = None) -> LaneKind:
    """A lane of any items up to its width, and none between `most` and it."""
    sizes = [
        (i, (item.snug if item.width == width else item.length) + kerf)
        for i, item in sorted(enumerate(items), key=lambda each: each[1].width)
        if item.width == width or item.width <= (width if most is None else most)
    ]
    return LaneKind(width + kerf, tuple(sizes))


def _list_whole(items: Sequence[Item], stock: Sequence[Stock], width: int, kerf: int) -> list[LaneKind]:
    """Lanes that are whole boards: what is narrower is ripped off between trimmed edges."""
    trims = sorted({each.trim_edges for each in stock if each.width == width and each.trim_edges})
    lanes = []
    for trim in trims:
        alike = tuple(s for s, each in enumerate(stock) if (each.width, each.trim_edges) == (width, trim))
        lanes.append(replace(_make_lane(items, width, kerf, width - 2 * trim), whole=alike))
    return lanes


def _list_mitred(items: Sequence[Item], width: int, kerf: int) -> list[LaneKind]:
    """Lanes in which ends of one mitre share cuts, one for each mitre that saves anything."""
    pieces = [item.piece for item in items if item.width == width and not item.is_batch]
    mitres = sorted({m for piece in pieces for m in (piece.mitre_low, piece.mitre_high) if m})
    plain = _make_lane(items, width, kerf)
    lanes = []
    for mitre in mitres:
        ends = tuple(
            0 if items[i].is_batch else list_ends(items[i].piece, width, mitre) for i, _ in plain.sizes
        )
        shared = saving(mitre, width, kerf)
        if shared and any(ends):
            lanes.append(replace(plain, shared=shared, ends=ends))
    return lanes


def reduce_units(problem: Problem) -> Problem:
    """The same in the largest units that all pieces are whole numbers of; rooms are rounded down."""
    along = _divisor([size for kind in problem.kinds for _, size in kind.sizes])
    along = gcd(along, _divisor(kind.shared for kind in problem.kinds)) or 1
    across = _divisor(kind.width for kind in problem.kinds) or 1
    kinds = tuple(
        replace(
            kind,
            width=kind.width // across,
            sizes=tuple((i, size // along) for i, size in kind.sizes),
            shared=kind.shared // along,
        )
        for kind in problem.kinds
    )
    sold = tuple(
        replace(each, room=each.room // along, across=each.across // across) for each in problem.sold
    )
    return Problem(problem.demand, kinds, sold)


def _divisor(numbers: Iterable[int]) -> int:
    return reduce(gcd, numbers, 0)
