"""Pieces moved from one lane to others, so that one offcut becomes long: found by trying, not proven.

Stocks, their number and the lanes stay as they are.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

from model.cutting.knapsack import Pattern
from model.cutting.lanes import Filled
from model.cutting.problem import Problem

MOST = 60
"""Lanes beyond which nothing is tried."""


@dataclass(slots=True)
class _Lane:
    """A lane as a list of items, with the room it has and takes of it."""

    board: int
    place: int
    kind: int
    room: int
    items: list[int]


def lengthen_offcut(problem: Problem, boards: Sequence[Pattern]) -> list[Pattern]:
    """The same boards with the longest rest of a lane that was found."""
    if sum(len(board.lanes) for board in boards) > MOST:
        return list(boards)
    sizes = [dict(kind.sizes) for kind in problem.kinds]
    best, longest = boards, max(_rest(lane, sizes) for lane in _open(problem, boards))
    for at in range(sum(len(board.lanes) for board in boards)):
        lanes = _open(problem, boards)
        if problem.kinds[lanes[at].kind].shared:
            continue
        _empty(lanes[at], [lane for lane in lanes if lane is not lanes[at]], problem, sizes)
        if _rest(lanes[at], sizes) > longest:
            best, longest = _close(boards, lanes), _rest(lanes[at], sizes)
    return list(best)


def _open(problem: Problem, boards: Sequence[Pattern]) -> list[_Lane]:
    return [
        _Lane(b, p, lane.kind, problem.sold[board.sold].room, [i for i, n in lane.items for _ in range(n)])
        for b, board in enumerate(boards)
        for p, lane in enumerate(board.lanes)
    ]


def _rest(lane: _Lane, sizes: Sequence[dict[int, int]]) -> int:
    return lane.room - sum(sizes[lane.kind][item] for item in lane.items)


def _empty(lane: _Lane, others: Sequence[_Lane], problem: Problem, sizes: Sequence[dict[int, int]]) -> None:
    """Fill each of the other lanes from this one and itself as full as it gets, until that moves nothing."""
    moved = True
    while moved and lane.items:
        moved = False
        for other in others:
            if not problem.kinds[other.kind].shared:
                moved |= _fill(other, lane, sizes)


def _fill(lane: _Lane, source: _Lane, sizes: Sequence[dict[int, int]]) -> bool:
    """Whether a lane could be filled better out of both lanes' pieces; then they are exchanged."""
    into, back = sizes[lane.kind], sizes[source.kind]
    pool = [item for item in (*lane.items, *source.items) if item in into]
    stay = [item for item in source.items if item not in into]
    taken = lane.room - _rest(lane, sizes)
    chosen = _fullest([into[item] for item in pool], lane.room)
    kept = [pool[at] for at in chosen]
    left = Counter(pool) - Counter(kept)
    if sum(into[item] for item in kept) <= taken or any(item not in back for item in left):
        return False
    rest = [*stay, *left.elements()]
    if sum(back[item] for item in rest) >= source.room - _rest(source, sizes):
        return False
    lane.items, source.items = kept, rest
    return True


def _fullest(sizes: Sequence[int], room: int) -> list[int]:
    """Places of sizes whose sum comes nearest to the room. Bit n of a stage: n can be filled so far."""
    stages = [1]
    mask = (1 << (room + 1)) - 1
    for size in sizes:
        stages.append((stages[-1] | stages[-1] << size) & mask)
    left = stages[-1].bit_length() - 1
    chosen = []
    for at in range(len(sizes) - 1, -1, -1):
        if not stages[at] >> left & 1:
            chosen.append(at)
            left -= sizes[at]
    return chosen


def _close(boards: Sequence[Pattern], lanes: Sequence[_Lane]) -> list[Pattern]:
    """Boards with the lanes' new items; a lane that came out empty is gone."""
    filled: list[list[Filled]] = [[] for _ in boards]
    for lane in lanes:
        if lane.items:
            filled[lane.board].append(Filled(lane.kind, tuple(sorted(Counter(lane.items).items()))))
    return [replace(board, lanes=tuple(f)) for board, f in zip(boards, filled, strict=True) if f]
