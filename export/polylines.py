"""Loose strokes joined into runs, for writers whose users would rather pick one line than ten."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from render.drawing import Point, Segment

_STEP = 1e-6
"""Ends nearer than this (model inches) are one point."""

Key = tuple[int, int]


def join_segments(segments: Sequence[Segment]) -> tuple[tuple[tuple[Point, ...], bool], ...]:
    """The same strokes as runs of points, each with whether it closes on itself.

    Strokes join where exactly two of them meet; points in the middle of a straight run are left out;
    strokes of no length and strokes drawn twice are dropped. The order follows that of `segments`.

    >>> join_segments([(0, 0, 2, 0), (2, 0, 2, 1), (5, 5, 6, 5)])
    ((((0, 0), (2, 0), (2, 1)), False), (((5, 5), (6, 5)), False))
    """
    net = _Net(segments)
    runs = [net.follow(index) for index in net.list_starts() if not net.used[index]]
    runs += [net.follow(index) for index in range(len(net.ends)) if not net.used[index]]
    return tuple((_straighten(run, closed), closed) for run, closed in runs)


class _Net:
    """Strokes by the points they meet in; `follow` takes each stroke once."""

    def __init__(self, segments: Sequence[Segment]) -> None:
        self.at: dict[Key, Point] = {}
        self.ends: list[tuple[Key, Key]] = []
        self.meeting: dict[Key, list[int]] = defaultdict(list)
        seen: set[frozenset[Key]] = set()
        for x1, y1, x2, y2 in segments:
            a, b = self._key((x1, y1)), self._key((x2, y2))
            if a != b and frozenset((a, b)) not in seen:
                seen.add(frozenset((a, b)))
                self.meeting[a].append(len(self.ends))
                self.meeting[b].append(len(self.ends))
                self.ends.append((a, b))
        self.used = [False] * len(self.ends)

    def _key(self, point: Point) -> Key:
        key = (round(point[0] / _STEP), round(point[1] / _STEP))
        self.at.setdefault(key, point)
        return key

    def list_starts(self) -> list[int]:
        """Strokes with an end that is not passed through."""
        return [
            i for i, (a, b) in enumerate(self.ends) if len(self.meeting[a]) != 2 or len(self.meeting[b]) != 2
        ]

    def follow(self, index: int) -> tuple[tuple[Point, ...], bool]:
        a, b = self.ends[index]
        if len(self.meeting[a]) == 2 and len(self.meeting[b]) != 2:
            a, b = b, a
        self.used[index] = True
        keys = [a, b]
        while len(self.meeting[keys[-1]]) == 2:
            onward = [i for i in self.meeting[keys[-1]] if not self.used[i]]
            if not onward:
                break
            self.used[onward[0]] = True
            first, second = self.ends[onward[0]]
            keys.append(second if first == keys[-1] else first)
        closed = keys[0] == keys[-1] and len(keys) > 3
        return tuple(self.at[key] for key in (keys[:-1] if closed else keys)), closed


def _straighten(run: tuple[Point, ...], closed: bool) -> tuple[Point, ...]:
    last = len(run) - 1
    kept = [
        point
        for i, point in enumerate(run)
        if (not closed and i in (0, last)) or _bends(run[i - 1], point, run[(i + 1) % len(run)])
    ]
    return tuple(kept)


def _bends(before: Point, point: Point, after: Point) -> bool:
    ux, uy = point[0] - before[0], point[1] - before[1]
    vx, vy = after[0] - point[0], after[1] - point[1]
    reach = max(abs(ux), abs(uy)) * max(abs(vx), abs(vy))
    return abs(ux * vy - uy * vx) > _STEP * reach or ux * vx + uy * vy < 0
