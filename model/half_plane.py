"""What of a flat ring lies on one side of a line along an axis."""

from __future__ import annotations

from collections.abc import Sequence

Point = tuple[float, float]


def keep_side(ring: Sequence[Point], axis: int, at: float, above: bool) -> tuple[Point, ...]:
    """The part of a `ring` whose coordinate `axis`, 0 or 1, is at least (`above`) or at most `at`.

    After Sutherland and Hodgman 1974. Where a ring turns back along the line that way leaves spikes; they
    are taken off. Parts that the line separates stay joined along it. Empty where no area is left.
    """
    kept: list[Point] = []
    for before, point in zip((*ring[-1:], *ring[:-1]), ring, strict=True):
        if (before[axis] - at) * (point[axis] - at) < 0:
            kept.append(_cross(before, point, axis, at))
        if point[axis] >= at if above else point[axis] <= at:
            kept.append(point)
    corners = tuple(dict.fromkeys(kept))
    beside = zip((*corners[-1:], *corners[:-1]), corners, (*corners[1:], *corners[:1]), strict=True)
    left = tuple(point for a, point, b in beside if {a[axis], point[axis], b[axis]} != {at})
    return left if len(left) > 2 else ()


def _cross(before: Point, point: Point, axis: int, at: float) -> Point:
    part = (at - before[axis]) / (point[axis] - before[axis])
    along = before[1 - axis] + part * (point[1 - axis] - before[1 - axis])
    return (at, along) if axis == 0 else (along, at)
