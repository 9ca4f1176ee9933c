"""The same marks elsewhere or at another size: nothing turned, nothing else changed."""

from __future__ import annotations

from dataclasses import replace

from render.drawing import Dimension, Hatch, Lines, Mark, Point, Polyline, Region, Ring, Text


def shift_mark(mark: Mark, by: Point) -> Mark:
    """One mark moved. A hatch keeps its family of lines where the drawing has it."""
    dx, dy = by
    match mark:
        case Lines():
            moved = tuple((x1 + dx, y1 + dy, x2 + dx, y2 + dy) for x1, y1, x2, y2 in mark.segments)
            return replace(mark, segments=moved)
        case Polyline():
            return replace(mark, points=_shift_ring(mark.points, by))
        case Region() | Hatch():
            return replace(mark, rings=tuple(_shift_ring(ring, by) for ring in mark.rings))
        case Text():
            return replace(mark, at=(mark.at[0] + dx, mark.at[1] + dy))
        case Dimension():
            first, second, text_at = _shift_ring((mark.first, mark.second, mark.text_at), by)
            line = mark.line + (dx if mark.vertical else dy)
            return replace(mark, first=first, second=second, text_at=text_at, line=line)


def lay_mark(mark: Mark, ratio: float, at: Point) -> Mark:
    """One mark as it lies on paper: in paper inches at 1:`ratio`, its drawing's origin at `at`.

    A dimension's text still says what it said.
    """
    return shift_mark(_shrink(mark, 1 / ratio), at)


def _shrink(mark: Mark, by: float) -> Mark:
    match mark:
        case Lines():
            small = tuple((x1 * by, y1 * by, x2 * by, y2 * by) for x1, y1, x2, y2 in mark.segments)
            return replace(mark, segments=small)
        case Polyline():
            return replace(mark, points=_shrink_ring(mark.points, by))
        case Region():
            return replace(mark, rings=tuple(_shrink_ring(ring, by) for ring in mark.rings))
        case Hatch():
            rings = tuple(_shrink_ring(ring, by) for ring in mark.rings)
            return replace(mark, rings=rings, spacing=mark.spacing * by)
        case Text():
            return replace(mark, at=(mark.at[0] * by, mark.at[1] * by), height=mark.height * by)
        case Dimension():
            first, second, text_at = _shrink_ring((mark.first, mark.second, mark.text_at), by)
            return replace(
                mark,
                first=first,
                second=second,
                text_at=text_at,
                line=mark.line * by,
                height=mark.height * by,
            )


def _shrink_ring(ring: Ring, by: float) -> Ring:
    return tuple((x * by, y * by) for x, y in ring)


def _shift_ring(ring: Ring, by: Point) -> Ring:
    return tuple((x + by[0], y + by[1]) for x, y in ring)
