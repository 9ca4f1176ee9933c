"""The cuts that part a sheet's pieces: as few as can be, then the largest part left, then the least sawing.

Least sawing settles what a hand-held saw asks for: a short crosscut comes before a long rip where both would
do, so that the guide need not be as long as the sheet and its parts are soon light enough to turn. Parallel
cuts of one part follow each other from its near end, and the largest part on the trestles is sawn next.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush

from model.cutting.sheet_problem import Sides
from model.cutting.task import ThroughCut

X, Y = 0, 1
AXES = "xy"


@dataclass(frozen=True, slots=True)
class Lying:
    """A piece of an item on a sheet: its near corner, and its sides with a cut in each."""

    item: int
    x: int
    y: int
    sides: Sides

    def low(self, axis: int) -> int:
        """Where it begins along an axis."""
        return self.y if axis else self.x

    def high(self, axis: int) -> int:
        """Where it ends, its cut included, along an axis."""
        return self.low(axis) + self.sides[axis]


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a sheet with a cut over each way, and what becomes of it.

    It is parted along `axis` into `parts`, one after the other; without parts it is a piece, or left if
    `piece` is None.
    """

    room: Sides
    piece: Lying | None = None
    axis: int = X
    parts: tuple[Part, ...] = ()


@dataclass(frozen=True, slots=True)
class Sawing:
    """A way to saw a part. `worth` is compared: cuts, less the largest rectangle left, length sawn."""

    worth: tuple[int, int, int]
    part: Part


class Sawyer:
    """Finds the best way to saw the pieces of a layout apart that through cuts can part at all."""

    def __init__(self, kerf: int, least_left: Sides = (0, 0)) -> None:
        self._kerf, self._least_left = kerf, least_left
        self._known: dict[tuple[tuple[Lying, ...], Sides], Sawing] = {}

    def saw(self, pieces: Sequence[Lying], room: Sides) -> Sawing:
        """The best way to saw them out of a room; `Unsawable` where no cut right through parts them."""
        self._known.clear()
        return self._saw(tuple(pieces), room)

    def _saw(self, pieces: tuple[Lying, ...], room: Sides) -> Sawing:
        key = pieces, room
        if (known := self._known.get(key)) is None:
            ways = list(self._list_ways(pieces, room))
            if not ways:
                raise Unsawable
            known = self._known[key] = min(ways, key=lambda way: way.worth)
        return known

    def _list_ways(self, pieces: tuple[Lying, ...], room: Sides) -> Iterator[Sawing]:
        size = _extent(pieces, X), _extent(pieces, Y)
        for axis in (X, Y):
            if size[axis] < room[axis]:
                yield self._trim(pieces, room, axis, size[axis])
        if len(pieces) == 1 and size == room:
            yield Sawing((0, 0, 0), Part(room, pieces[0]))
        for axis in (X, Y):
            strips = part_along(pieces, axis)
            if len(strips) > 1:
                yield self._part(strips, room, axis)

    def _trim(self, pieces: tuple[Lying, ...], room: Sides, axis: int, size: int) -> Sawing:
        sawn = self._saw(pieces, _with_side(room, axis, size))
        rest = _with_side(room, axis, room[axis] - size)
        return self._join(room, axis, [sawn, Sawing((0, -self.worth_left(rest), 0), Part(rest))])

    def _part(self, strips: Sequence[tuple[Lying, ...]], room: Sides, axis: int) -> Sawing:
        sizes = [_extent(strip, axis) for strip in strips]
        sizes[-1] += room[axis] - sum(sizes)
        sawn = [
            self._saw(strip, _with_side(room, axis, size)) for strip, size in zip(strips, sizes, strict=True)
        ]
        return self._join(room, axis, sawn)

    def _join(self, room: Sides, axis: int, sawn: Sequence[Sawing]) -> Sawing:
        cuts = len(sawn) - 1
        worth = (
            cuts + sum(each.worth[0] for each in sawn),
            min(each.worth[1] for each in sawn),
            cuts * (room[1 - axis] - self._kerf) + sum(each.worth[2] for each in sawn),
        )
        return Sawing(worth, Part(room, None, axis, tuple(each.part for each in sawn)))

    def worth_left(self, room: Sides) -> int:
        """The area of a part that is left once its cuts are taken off; 0 where it is not worth keeping."""
        length, width = room[0] - self._kerf, room[1] - self._kerf
        longer, shorter = max(length, width), min(length, width)
        if shorter <= 0 or longer < self._least_left[0] or shorter < self._least_left[1]:
            return 0
        return length * width


class Unsawable(ValueError):
    """Pieces lie so that no cut right through parts them."""


def part_along(pieces: Sequence[Lying], axis: int) -> list[tuple[Lying, ...]]:
    """Strips of pieces that straight cuts part along an axis."""
    strips: list[list[Lying]] = []
    reach = 0
    for piece in sorted(pieces, key=lambda each: each.low(axis)):
        if not strips or piece.low(axis) >= reach:
            strips.append([])
        strips[-1].append(piece)
        reach = max(reach, piece.high(axis))
    return [tuple(strip) for strip in strips]


def _extent(pieces: Sequence[Lying], axis: int) -> int:
    return max(each.high(axis) for each in pieces) - min(each.low(axis) for each in pieces)


def _with_side(room: Sides, axis: int, side: int) -> Sides:
    return (room[0], side) if axis else (side, room[1])


@dataclass(frozen=True, slots=True)
class Sawn:
    """A sheet sawn: cuts in their order, pieces where they come to lie, and the parts that are left."""

    cuts: tuple[ThroughCut, ...]
    pieces: tuple[Lying, ...]
    left: tuple[tuple[int, int, Sides], ...]


def order_cuts(whole: Part, kerf: int) -> Sawn:
    """Put the cuts of a sheet in order: all of one part's parallel cuts, then the largest part there is."""
    cuts: list[ThroughCut] = []
    pieces: list[Lying] = []
    left: list[tuple[int, int, Sides]] = []
    waiting: list[tuple[int, int, int, Part]] = []

    def lay(part: Part, x: int, y: int) -> None:
        if part.parts:
            heappush(waiting, (-part.room[0] * part.room[1], y, x, part))
        elif part.piece:
            pieces.append(Lying(part.piece.item, x, y, part.piece.sides))
        else:
            left.append((x, y, part.room))

    lay(whole, 0, 0)
    while waiting:
        _, y, x, part = heappop(waiting)
        corner = [x, y]
        end = x + part.room[0] - kerf, y + part.room[1] - kerf
        for each in part.parts[:-1]:
            at = corner[part.axis] + each.room[part.axis] - kerf
            cuts.append(ThroughCut(AXES[part.axis], at, corner[0], corner[1], *end))
            lay(each, corner[0], corner[1])
            corner[part.axis] = at + kerf
        lay(part.parts[-1], corner[0], corner[1])
    return Sawn(tuple(cuts), tuple(pieces), tuple(left))
