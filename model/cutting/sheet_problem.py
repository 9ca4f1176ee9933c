"""A task of sheets made ready to be solved: like pieces together, the saw's cut in every size.

A piece takes its size and one cut more each way, and a sheet offers one cut more each way: the last piece
needs none after it. That is exact for through cuts, by induction over them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.cutting.problem import Sold
from model.cutting.task import Refusal, Stock, Task, Wanted

Sides = tuple[int, int]
"""What something takes along a sheet's length and across it, a cut in each."""


@dataclass(frozen=True, slots=True)
class Item:
    """Like pieces: the ways one may lie, and the key of each."""

    ways: tuple[Sides, ...]
    keys: tuple[str, ...]

    @property
    def area(self) -> int:
        """What one takes of a sheet."""
        return self.ways[0][0] * self.ways[0][1]


@dataclass(frozen=True, slots=True)
class SheetProblem:
    """Items, the largest first, and sheets; `room` is along the length and `across` along the width."""

    items: tuple[Item, ...]
    sold: tuple[Sold, ...]
    kerf: int

    @property
    def demand(self) -> tuple[int, ...]:
        """How many there are of each item."""
        return tuple(len(item.keys) for item in self.items)

    @property
    def rooms(self) -> tuple[Sides, ...]:
        """What each sheet offers."""
        return tuple((sold.room, sold.across) for sold in self.sold)


def ways_of(piece: Wanted) -> tuple[Sides, ...]:
    """Length and width of a piece as it may lie on a sheet."""
    ways = [(piece.length, piece.width)]
    if piece.may_turn and piece.length != piece.width:
        ways.append((piece.width, piece.length))
    return tuple(ways)


def room_of(stock: Stock) -> Sides:
    """Length and width of a sheet once it is trimmed."""
    return stock.length - 2 * stock.trim_ends, stock.width - 2 * stock.trim_edges


def holds(stock: Stock, piece: Wanted) -> bool:
    """Whether one piece comes out of a whole sheet."""
    return stock.supply != 0 and any(fits(way, room_of(stock)) for way in ways_of(piece))


def fits(sides: Sides, room: Sides) -> bool:
    """Whether something lies within a room."""
    return sides[0] <= room[0] and sides[1] <= room[1]


def refuse_too_large(task: Task) -> tuple[Refusal, ...]:
    """Pieces that no sheet holds, whatever else is cut from it."""
    large = [
        each for each in task.wanted if each.count > 0 and not any(holds(sold, each) for sold in task.stock)
    ]
    there = [sold for sold in task.stock if sold.supply != 0]
    return tuple(Refusal(each.key, each.count, _why(each, there), *_least(each, there)) for each in large)


def _why(piece: Wanted, there: Sequence[Stock]) -> str:
    if not there:
        return "no sheet is listed"
    across = "either way of the grain" if piece.may_turn else "along the grain"
    if not any(way[0] <= room_of(each)[0] for each in there for way in ways_of(piece)):
        return f"longer than any sheet that is listed, {across}"
    if not any(way[1] <= room_of(each)[1] for each in there for way in ways_of(piece)):
        return f"wider than any sheet that is listed, {across}"
    return f"no sheet that is listed is both long and wide enough, {across}"


def _least(piece: Wanted, there: Sequence[Stock]) -> Sides:
    """The size of a sheet that would hold a piece as it is wanted, with the least trim that is listed."""
    ends = min((each.trim_ends for each in there), default=0)
    edges = min((each.trim_edges for each in there), default=0)
    return piece.length + 2 * ends, piece.width + 2 * edges


def make_sheet_problem(wanted: Sequence[Wanted], stock: Sequence[Stock], kerf: int) -> SheetProblem:
    """The problem of pieces that all fit some sheet."""
    like: dict[tuple[Sides, ...], list[str]] = {}
    rooms = [room_of(each) for each in stock if each.supply != 0]
    for piece in wanted:
        ways = [way for way in ways_of(piece) if any(fits(way, room) for room in rooms)]
        ways.sort(key=lambda way: -way[0])
        like.setdefault(tuple(ways), []).extend([piece.key] * piece.count)
    items = [
        Item(tuple((length + kerf, width + kerf) for length, width in ways), tuple(keys))
        for ways, keys in like.items()
    ]
    items.sort(key=lambda item: (-item.area, item.ways))
    sold = [Sold(each.price, each.supply, room_of(each)[0] + kerf, room_of(each)[1] + kerf) for each in stock]
    return SheetProblem(tuple(items), tuple(sold), kerf)
