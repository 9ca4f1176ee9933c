"""The lane worth most: pieces of given worths filled into a lane, in whole numbers.

A bounded knapsack whose one table serves every length of stock. A kind of lane starts from the table of the
narrower one where it holds all that one does. Lanes in which mitred ends share cuts have a table for each way
the ends so far can be left over.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import ceil
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from model.cutting.mitre import HIGH, LOW, count_joints
from model.cutting.problem import LaneKind, Problem

Whole = NDArray[np.int64]
FEW_STAGES = 7
"""Up to so many a lane is filled by trying what goes into it; with more a table is sooner done."""


@dataclass(frozen=True, slots=True)
class Filled:
    """A lane: its kind, and how many of which items are in it."""

    kind: int
    items: tuple[tuple[int, int], ...]


class Lanes(Protocol):
    """Kinds of lanes priced together."""

    def price(self, worth: Whole, rooms: Whole) -> Iterator[tuple[int, Whole]]:
        """Each kind with the most that a lane of it is worth in each of `rooms`."""

    def fill(self, kind: int, room: int, share: float = 1.0) -> Filled:
        """The lane of a kind that the last pricing found worth most, or that of a share of the items."""


def list_lanes(problem: Problem, copies: Sequence[int]) -> list[Lanes]:
    """All kinds of a problem; `copies` bounds how many of each item are of use."""
    longest = max((sold.room for sold in problem.sold), default=0)
    lanes: list[Lanes] = []
    start = 0
    while start < len(problem.kinds):
        end = start + 1
        if problem.kinds[start].shared:
            lanes.append(MitredLanes(start, problem.kinds[start], copies, longest))
        else:
            while end < len(problem.kinds) and _goes_on(problem.kinds[end - 1], problem.kinds[end]):
                end += 1
            lanes.append(SquareLanes(range(start, end), problem.kinds, copies, longest))
        start = end
    return lanes


class Filler:
    """Single lanes filled out of what is left of each item, each once, for given worths."""

    def __init__(self, problem: Problem, worth: Whole) -> None:
        self._problem, self._worth = problem, worth
        self._paying: dict[int, list[tuple[int, int, int]]] = {}
        self._known: dict[tuple[int, int, tuple[int, ...]], Filled] = {}

    def fill(self, kind: int, copies: Sequence[int], room: int) -> Filled:
        """The lane of one kind and length that is worth most, as `Lanes.fill` gives it for that room."""
        paying = self._paying.get(kind)
        if paying is None:
            paying = self._paying[kind] = self._list_paying(kind)
        of_use = tuple([min(copies[item], room // size) for item, size, _ in paying])
        key = kind, room, of_use
        if key not in self._known:
            self._known[key] = self._fill(kind, room, of_use, copies)
        return self._known[key]

    def _list_paying(self, kind: int) -> list[tuple[int, int, int]]:
        """Items of a kind with sizes and worths; mitred ones may be of use as often as they are left."""
        lane = self._problem.kinds[kind]
        sizes = [(item, 1 if lane.shared else size) for item, size in lane.sizes]
        return [(item, size, int(self._worth[item])) for item, size in sizes if self._worth[item] > 0]

    def _fill(self, kind: int, room: int, of_use: Sequence[int], copies: Sequence[int]) -> Filled:
        if not self._problem.kinds[kind].shared:
            stages = [
                (item, times, size * times, value * times)
                for (item, size, value), most in zip(self._paying[kind], of_use, strict=True)
                for times in split(most)
            ]
            if len(stages) <= FEW_STAGES:
                return Filled(kind, _fill_room(stages, room))
        lanes = make_lanes(self._problem, kind, copies, room)
        for _ in lanes.price(self._worth, np.array([room])):
            pass
        return lanes.fill(kind, room)


def make_lanes(problem: Problem, kind: int, copies: Sequence[int], room: int) -> Lanes:
    """One kind alone, for lanes no longer than `room`."""
    if problem.kinds[kind].shared:
        return MitredLanes(kind, problem.kinds[kind], copies, room)
    return SquareLanes(range(kind, kind + 1), problem.kinds, copies, room)


def _fill_room(stages: Sequence[tuple[int, int, int, int]], room: int) -> tuple[tuple[int, int], ...]:
    """What one room is filled with best; a stage is an item, copies of it, their size and their worth.

    The same as by tables, but only for those rooms that come of this one.
    """
    sizes = list(accumulate((size for _, _, size, _ in stages), initial=0))
    worths = list(accumulate((worth for _, _, _, worth in stages), initial=0))
    known: dict[tuple[int, int], tuple[int, bool]] = {}

    def look(count: int, left: int) -> int:
        """The most that the first `count` stages are worth in what is `left` of the room."""
        if sizes[count] <= left:
            return worths[count]
        found = known.get((count, left))
        if found is None:
            _, _, size, worth = stages[count - 1]
            most, takes = look(count - 1, left), False
            if size <= left and (better := look(count - 1, left - size) + worth) > most:
                most, takes = better, True
            found = known[count, left] = most, takes
        return found[0]

    look(len(stages), room)
    counts: Counter[int] = Counter()
    for count in range(len(stages), 0, -1):
        item, times, size, _ = stages[count - 1]
        if sizes[count] <= room or known[count, room][1]:
            counts[item] += times
            room -= size
    return tuple(sorted(counts.items()))


def _goes_on(one: LaneKind, other: LaneKind) -> bool:
    return not other.shared and other.sizes[: len(one.sizes)] == one.sizes


@dataclass(slots=True)
class _Stage:
    """`times` copies of an item, of `size` together, and where they were worth taking."""

    item: int
    times: int
    size: int
    taken: NDArray[np.bool_] | None = None


class SquareLanes:
    """Kinds each of which holds all that the one before does."""

    def __init__(self, kinds: range, lanes: Sequence[LaneKind], copies: Sequence[int], longest: int) -> None:
        self._stages: list[_Stage] = []
        self._ends: dict[int, int] = {}
        self._longest = longest
        seen = 0
        for kind in kinds:
            for item, size in lanes[kind].sizes[seen:]:
                of_use = min(copies[item], longest // size)
                self._stages += [_Stage(item, times, size * times) for times in split(of_use)]
            seen = len(lanes[kind].sizes)
            self._ends[kind] = len(self._stages)

    def price(self, worth: Whole, rooms: Whole) -> Iterator[tuple[int, Whole]]:
        """Each kind with the most that a lane of it is worth in each of `rooms`."""
        table = np.zeros(self._longest + 1, dtype=np.int64)
        start = 0
        for kind, end in self._ends.items():
            for stage in self._stages[start:end]:
                _take(stage, table, int(worth[stage.item]))
            yield kind, table[rooms]
            start = end

    def fill(self, kind: int, room: int, share: float = 1.0) -> Filled:
        """The lane of a kind that the last pricing found worth most, or that of a share of the items."""
        counts: Counter[int] = Counter()
        for stage in reversed(self._stages[: ceil(share * self._ends[kind])]):
            if stage.taken is not None and room >= stage.size and stage.taken[room - stage.size]:
                counts[stage.item] += stage.times
                room -= stage.size
        return Filled(kind, tuple(sorted(counts.items())))


def _take(stage: _Stage, table: Whole, worth: int) -> None:
    """Offer the copies of a stage to a table, in place."""
    stage.taken = None
    if worth > 0 and stage.size < len(table):
        better = table[: -stage.size] + stage.times * worth
        stage.taken = better > table[stage.size :]
        np.maximum(better, table[stage.size :], out=table[stage.size :])


Sorts = tuple[int, int, int]
"""How many pieces have both ends, the low end or the high end to share."""
STATES: tuple[Sorts, ...] = (
    (0, 0, 0),
    (1, 0, 0),
    (2, 0, 0),
    (0, 2, 2),
    (0, 3, 2),
    (0, 2, 3),
    (0, 3, 3),
)
"""Stand for all numbers of pieces from which any more pieces share as many cuts more."""
_FEW = -(1 << 62)


def state_of(sorts: Sorts) -> int:
    """The place in STATES of what shares as many cuts with any pieces more."""
    both, low, high = sorts
    if not low and not high:
        return 0 if not both else 2 - both % 2
    return 3 + (both + low) % 2 + 2 * ((both + high) % 2)


def _add(sorts: Sorts, ends: int, times: int) -> Sorts:
    both, low, high = sorts
    return (
        both + times * (ends == LOW | HIGH),
        low + times * (ends == LOW),
        high + times * (ends == HIGH),
    )


@dataclass(slots=True)
class _Turn:
    """A stage among mitred ends: for each state the one it leads to and the room it takes from there."""

    item: int
    times: int
    steps: tuple[tuple[int, int], ...]
    came: NDArray[np.int8] | None = None


class MitredLanes:
    """One kind in which ends share cuts."""

    def __init__(self, number: int, kind: LaneKind, copies: Sequence[int], longest: int) -> None:
        self._number, self._longest = number, longest
        self._turns: list[_Turn] = []
        for (item, size), ends in zip(kind.sizes, kind.ends, strict=True):
            least = max(size - 2 * kind.shared, 1) if ends else size
            for times in split(min(copies[item], longest // least)):
                steps = tuple(_step(state, ends, times, size, kind.shared) for state in STATES)
                self._turns.append(_Turn(item, times, steps))
        self._last: Whole = np.zeros((len(STATES), 0), dtype=np.int64)

    def price(self, worth: Whole, rooms: Whole) -> Iterator[tuple[int, Whole]]:
        """The kind with the most that a lane of it is worth in each of `rooms`."""
        table = np.full((len(STATES), self._longest + 1), _FEW, dtype=np.int64)
        table[0] = 0
        for turn in self._turns:
            turn.came = None
            if worth[turn.item] > 0:
                table = self._turn(turn, table, turn.times * int(worth[turn.item]))
        self._last = table
        yield self._number, table[:, rooms].max(axis=0)

    def _turn(self, turn: _Turn, table: Whole, worth: int) -> Whole:
        new = table.copy()
        turn.came = np.full(table.shape, -1, dtype=np.int8)
        for state, (to, size) in enumerate(turn.steps):
            if size <= self._longest:
                offered = table[state, : self._longest + 1 - size] + worth
                better = offered > new[to, size:]
                new[to, size:][better] = offered[better]
                turn.came[to, size:][better] = state
        return new

    def fill(self, kind: int, room: int, share: float = 1.0) -> Filled:
        """The lane that the last pricing found worth most, whatever the share."""
        counts: Counter[int] = Counter()
        state = int(np.argmax(self._last[:, room]))
        for turn in reversed(self._turns):
            if turn.came is not None and (came := int(turn.came[state, room])) >= 0:
                counts[turn.item] += turn.times
                state, room = came, room - turn.steps[came][1]
        return Filled(kind, tuple(sorted(counts.items())))


def _step(state: Sorts, ends: int, times: int, size: int, shared: int) -> tuple[int, int]:
    after = _add(state, ends, times)
    joints = count_joints(*after) - count_joints(*state)
    return state_of(after), size * times - shared * joints


def split(count: int) -> Iterator[int]:
    """Numbers whose sums are all from 0 to `count`."""
    times = 1
    while count > 0:
        yield min(times, count)
        count -= min(times, count)
        times *= 2
