"""All sets of pieces that are cut from one sheet, exactly, and the smallest boxes that each is cut from.

A set is cut from a box if and only if a first cut parts it in two sets whose boxes stand side by side or one
on the other in it. So sets of one piece more are put together from smaller ones, many at a time; of a set's
boxes only those are kept neither of whose sides can be less without the other being more.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from random import Random

import numpy as np
from numpy.typing import NDArray

from model.cutting.lanes import Whole
from model.cutting.sheet_problem import SheetProblem, Sides, fits

Yes = NDArray[np.bool_]
CHUNK = 1 << 17
"""About how many boxes are put together at a time."""
KEY_BITS = 63
"""A set's key is the sum of numbers drawn for its items; no two sets of a level may have the same."""
MOST_SETS = 250_000
"""Most sets of as many pieces."""
ASKED = 50_000
"""Work between two questions whether to stop."""
EXPECTED = 1.5
"""How many times the work left may seem to be needed: what is expected is often too much."""
SIDE_BITS = 20
"""Sides are below this power of 2, so that one number orders boxes."""


class TooMuch(Exception):
    """More work than allowed, or told to stop."""


@dataclass(frozen=True, slots=True)
class Level:
    """Sets of so many pieces, by rising key: a row of items each, and its boxes from `starts` on.

    `maximal` says for each stock whether it holds the set and no larger one.
    """

    rows: Whole
    keys: Whole
    starts: Whole
    boxes: Whole
    holders: Yes
    maximal: Yes


class SetFinder:
    """Lists the sets of a problem's pieces, within `work` boxes put together."""

    def __init__(self, problem: SheetProblem, should_stop: Callable[[], bool], work: int) -> None:
        self._should_stop, self._work, self._unasked = should_stop, work, 0
        self._rooms = np.array(problem.rooms, dtype=np.int64)
        self._outer = [room for room in problem.rooms if not _is_within_another(room, problem.rooms)]
        self._areas = np.array([item.area for item in problem.items], dtype=np.int64)
        self._most_area = max(a * b for a, b in problem.rooms)
        self._demand = np.array(
            [
                min(d, self._most_area // item.area)
                for d, item in zip(problem.demand, problem.items, strict=True)
            ]
        )
        if max(max(room) for room in problem.rooms) >> SIDE_BITS:
            raise TooMuch
        random = Random(1)
        weights = [random.getrandbits(KEY_BITS) for _ in problem.items]
        self._weights = np.array(weights, dtype=np.int64)
        self._ways = [item.ways for item in problem.items]
        self.levels: list[Level] = []

    def run(self) -> None:
        """Fill `levels`, from sets of one piece on; raises `TooMuch`."""
        level = self._first()
        while len(level.keys):
            self.levels.append(level)
            level = self._next(level)

    def list_boxes(self, pieces: Sequence[int]) -> list[Sides]:
        """The boxes of a set; none where no sheet holds it."""
        if len(pieces) > len(self.levels):
            return []
        (at,), (there,) = self._find(np.array([pieces], dtype=np.int64))
        if not there:
            return []
        level = self.levels[len(pieces) - 1]
        x, y = _sides(level.boxes[level.starts[at] : level.starts[at + 1]])
        return list(zip(x.tolist(), y.tolist(), strict=True))

    def _first(self) -> Level:
        boxes = [
            (i, *way)
            for i, ways in enumerate(self._ways)
            for way in ways
            if any(fits(way, r) for r in self._outer)
        ]
        row, x, y = np.array(boxes, dtype=np.int64).T
        return self._make(np.arange(len(self._ways), dtype=np.int64)[:, None], _pack(row, x, y))

    def _next(self, level: Level) -> Level:
        size = level.rows.shape[1] + 1
        each = (self._mean_boxes() ** 2) << size
        rows = self._list_rows(level, min(int(EXPECTED * self._work) // each, MOST_SETS))
        step = max(1, CHUNK // each)
        found = [np.zeros(0, dtype=np.int64)]
        for first in range(0, len(rows), step):
            found.append(self._join_all(rows[first : first + step], first))
        new = self._make(rows, np.concatenate(found))
        self._mark_lesser(level, new)
        return new

    def _list_rows(self, level: Level, most: int) -> Whole:
        """Rows with one item more than a level's of which all smaller sets were found, if not too many."""
        step = max(1, CHUNK // len(self._weights))
        parts, count = [], 0
        for first in range(0, len(level.rows), step):
            parts.append(self._extend(level, first, first + step))
            count += len(parts[-1])
            if count > most:
                raise TooMuch
        return np.concatenate(parts)

    def _mean_boxes(self) -> int:
        last = self.levels[-1]
        return 1 + len(last.boxes) // len(last.keys)

    def _extend(self, level: Level, first: int, end: int) -> Whole:
        """Some rows with one item more, not before their last, of which all smaller sets were found."""
        old = level.rows[first:end]
        last = old[:, -1]
        may = np.arange(len(self._weights)) >= last[:, None]
        may &= self._areas[old].sum(axis=1)[:, None] + self._areas <= self._most_area
        full = (old == last[:, None]).sum(axis=1) >= self._demand[last]
        may[full, last[full]] = False
        at, item = np.nonzero(may)
        self._count(len(at))
        rows = np.column_stack([old[at], item])
        for n in range(rows.shape[1] - 1):
            rows = rows[self._find(np.delete(rows, n, axis=1))[1]]
        return rows

    def _find(self, rows: Whole) -> tuple[Whole, Yes]:
        """Where rows stand in their level, and whether they do."""
        keys = self._weights[rows].sum(axis=1)
        level = self.levels[rows.shape[1] - 1]
        at = np.searchsorted(level.keys, keys)
        at[at == len(level.keys)] = 0
        return at, (level.keys[at] == keys) & (level.rows[at] == rows).all(axis=1)

    def _join_all(self, rows: Whole, first: int) -> Whole:
        """Boxes of rows put together from those of their parts, packed behind the rows' numbers."""
        weights = self._weights[rows]
        total = weights.sum(axis=1)
        found = [np.zeros(0, dtype=np.int64)]
        for size, parts in _list_masks(rows.shape[1]):
            keys = weights @ parts
            one, two = self.levels[size - 1], self.levels[rows.shape[1] - size - 1]
            a = np.searchsorted(one.keys, keys.ravel())
            b = np.searchsorted(two.keys, (total[:, None] - keys).ravel())
            found += self._join(one, a, two, b, np.repeat(np.arange(first, first + len(rows)), keys.shape[1]))
        return _smallest(np.concatenate(found))

    def _join(self, one: Level, a: Whole, two: Level, b: Whole, rows: Whole) -> Iterator[Whole]:
        parting, mine = _expand(one.starts[a], one.starts[a + 1])
        at, others = _expand(two.starts[b[parting]], two.starts[b[parting] + 1])
        self._count(len(at))
        row = rows[parting[at]]
        x0, y0 = _sides(one.boxes[mine[at]])
        x1, y1 = _sides(two.boxes[others])
        for x, y in ((x0 + x1, np.maximum(y0, y1)), (np.maximum(x0, x1), y0 + y1)):
            held = np.zeros(len(x), dtype=bool)
            for room in self._outer:
                held |= (x <= room[0]) & (y <= room[1])
            yield _pack(row[held], x[held], y[held])

    def _count(self, work: int) -> None:
        self._work -= work
        self._unasked += work
        if self._unasked >= ASKED:
            self._unasked = 0
            if self._should_stop():
                raise TooMuch
        if self._work < 0:
            raise TooMuch

    def _make(self, rows: Whole, packed: Whole) -> Level:
        """A level of the rows that have boxes; `packed` is in order."""
        row = packed >> (2 * SIDE_BITS)
        number, counts = np.unique(row, return_counts=True)
        keys = self._weights[rows[number]].sum(axis=1)
        order = np.argsort(keys, kind="stable")
        if not (keys[order][1:] > keys[order][:-1]).all():
            raise TooMuch
        old = np.concatenate([[0], np.cumsum(counts)])
        _, boxes_at = _expand(old[order], old[order + 1])
        boxes = packed[boxes_at] & ((1 << 2 * SIDE_BITS) - 1)
        starts = np.concatenate([[0], np.cumsum(counts[order])])
        holders = self._list_holders(boxes, starts)
        return Level(rows[number][order], keys[order], starts, boxes, holders, holders.copy())

    def _list_holders(self, boxes: Whole, starts: Whole) -> Yes:
        if not len(boxes):
            return np.zeros((0, len(self._rooms)), dtype=bool)
        x, y = _sides(boxes)
        within = (x[:, None] <= self._rooms[:, 0]) & (y[:, None] <= self._rooms[:, 1])
        return np.logical_or.reduceat(within, starts[:-1], axis=0)

    def _mark_lesser(self, level: Level, larger: Level) -> None:
        """Sets of a level that a stock holds with a piece more are not maximal for it."""
        size = larger.rows.shape[1]
        for n in range(size):
            at, _ = self._find(larger.rows[:, [m for m in range(size) if m != n]])
            for k in range(len(self._rooms)):
                level.maximal[at[larger.holders[:, k]], k] = False


def _pack(row: Whole, x: Whole, y: Whole) -> Whole:
    return (row << 2 * SIDE_BITS) | (x << SIDE_BITS) | y


def _sides(boxes: Whole) -> tuple[Whole, Whole]:
    mask = (1 << SIDE_BITS) - 1
    return (boxes >> SIDE_BITS) & mask, boxes & mask


def _smallest(packed: Whole) -> Whole:
    """Of each row's boxes those that no other lies within, in order."""
    packed = np.sort(packed)
    row, y = packed >> 2 * SIDE_BITS, packed & ((1 << SIDE_BITS) - 1)
    falling = y - (row << SIDE_BITS)
    keep = np.ones(len(packed), dtype=bool)
    keep[1:] = falling[1:] < np.minimum.accumulate(falling)[:-1]
    return packed[keep]


def _expand(starts: Whole, ends: Whole) -> tuple[Whole, Whole]:
    """For ranges, the number of the range and the place, one after the other."""
    counts = ends - starts
    number = np.repeat(np.arange(len(starts)), counts)
    before = np.cumsum(counts) - counts
    return number, np.arange(len(number)) - before[number] + starts[number]


def list_partings(size: int) -> Iterator[tuple[list[int], list[int]]]:
    """Ways to part places in two, the smaller part first."""
    for less in range(1, size // 2 + 1):
        for one in combinations(range(size), less):
            if 2 * less < size or one[0] == 0:
                yield list(one), [n for n in range(size) if n not in one]


def _list_masks(size: int) -> Iterator[tuple[int, Whole]]:
    """Ways to part places in two by how many the smaller part has: a column of ones and noughts for each."""
    masks: dict[int, list[list[int]]] = {}
    for one, _ in list_partings(size):
        masks.setdefault(len(one), []).append([int(n in one) for n in range(size)])
    for less, columns in masks.items():
        yield less, np.array(columns, dtype=np.int64).T


def _is_within_another(room: Sides, rooms: Sequence[Sides]) -> bool:
    return any(other != room and fits(room, other) for other in rooms)
