"""The most that can be cut from one sheet by cuts right through, where there is no end of any piece.

Exact for that: every first cut is tried, in parts of every size that pieces' sides add up to. As a piece can
be had as often as wanted, it is no plan for a few, but what no sheet of them can be worth more than.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from model.cutting.lanes import Whole
from model.cutting.sheet_problem import Item, Sides

MOST_PARTS = 6_000
"""Most sizes of parts; sizes are made coarser until there are no more of them."""


class Guillotine:
    """What parts of sheets hold, for any worth of pieces.

    Sizes are counted in `grain` units, pieces' rounded down and so never too large: with a grain above 1 what
    is found may be more than there is, and is never less.
    """

    def __init__(self, items: Sequence[Item], rooms: Sequence[Sides], most_parts: int = MOST_PARTS) -> None:
        self._items, self._rooms = items, rooms
        self.grain, coarsest = 1, min(min(way) for item in items for way in item.ways)
        while True:
            self._along, self._across = (self._list_sides(axis) for axis in (0, 1))
            if len(self._along) * len(self._across) <= most_parts or self.grain == coarsest:
                break
            self.grain = min(self.grain + max(1, self.grain // 4), coarsest)
        self._lows = [self._list_lows(sides) for sides in (self._along, self._across)]
        self._ways = [
            (i, *self._at(way)) for i, item in enumerate(items) for way in item.ways if self._is_within(way)
        ]

    def _list_sides(self, axis: int) -> Whole:
        """What sides of pieces add up to along an axis, 0 included, as far as a room reaches."""
        reach = max(room[axis] for room in self._rooms) // self.grain
        mask, sums = (1 << (reach + 1)) - 1, 1
        for item in self._items:
            for side in {way[axis] // self.grain for way in item.ways}:
                for _ in range(min(len(item.keys), reach // side)):
                    sums |= (sums << side) & mask
        return np.array([n for n in range(reach + 1) if sums >> n & 1], dtype=np.int64)

    def _list_lows(self, sides: Whole) -> list[tuple[Whole, Whole]]:
        """For each side the first parts it may be cut in, up to half of it, and what is left of each."""
        lows = []
        for side in sides.tolist():
            first = np.arange(1, np.searchsorted(sides, side // 2, side="right"))
            second = np.searchsorted(sides, side - sides[first], side="right") - 1
            lows.append((first, second))
        return lows

    def _is_within(self, way: Sides) -> bool:
        return any(way[0] <= room[0] and way[1] <= room[1] for room in self._rooms)

    def _at(self, sides: Sides) -> Sides:
        """The largest part that lies within sides."""
        at = [
            int(np.searchsorted(known, side // self.grain, side="right")) - 1
            for known, side in zip((self._along, self._across), sides, strict=True)
        ]
        return at[0], at[1]

    def price(self, worth: Sequence[int]) -> tuple[list[int], list[list[int]]]:
        """The most that each room is worth, and how many of each item that is."""
        table = self._fill(worth)
        at = [self._at(room) for room in self._rooms]
        counts = [self._count(table, worth, *each) for each in at]
        return [int(table[each]) for each in at], counts

    def _fill(self, worth: Sequence[int]) -> Whole:
        table = np.zeros((len(self._along), len(self._across)), dtype=np.int64)
        for i, x, y in self._ways:
            np.maximum(table[x:, y:], worth[i], out=table[x:, y:])
        for x, (first, second) in enumerate(self._lows[0]):
            row = table[x]
            if len(first):
                np.maximum(row, (table[first] + table[second]).max(axis=0), out=row)
            for y, (low, high) in enumerate(self._lows[1]):
                if len(low):
                    row[y] = max(row[y], (row[low] + row[high]).max())
                if y and row[y] < row[y - 1]:
                    row[y] = row[y - 1]
            if x:
                np.maximum(row, table[x - 1], out=row)
        return table

    def _count(self, table: Whole, worth: Sequence[int], x: int, y: int) -> list[int]:
        """How many of each item make up what a part is worth."""
        counts = [0] * len(self._items)
        parts = [(x, y)]
        while parts:
            x, y = parts.pop()
            if table[x, y]:
                found = self._split(table, worth, x, y)
                if isinstance(found, int):
                    counts[found] += 1
                else:
                    parts += found
        return counts

    def _split(self, table: Whole, worth: Sequence[int], x: int, y: int) -> int | list[Sides]:
        """The one item that makes up what a part is worth, or the parts that do."""
        value = int(table[x, y])
        for i, a, b in self._ways:
            if a <= x and b <= y and worth[i] == value:
                return i
        for low, high in zip(*(each.tolist() for each in self._lows[0][x]), strict=True):
            if table[low, y] + table[high, y] == value:
                return [(low, y), (high, y)]
        for low, high in zip(*(each.tolist() for each in self._lows[1][y]), strict=True):
            if table[x, low] + table[x, high] == value:
                return [(x, low), (x, high)]
        return [(x - 1, y) if x and table[x - 1, y] == value else (x, y - 1)]
