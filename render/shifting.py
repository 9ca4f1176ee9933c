"""The same marks elsewhere: nothing turned, nothing scaled, nothing else changed."""

from __future__ import annotations

from dataclasses import replace

from render.drawing import Dimension, Hatch, Leader, Lines, Mark, Point, Polyline, Region, Ring, Text


def shift_mark(mark: Mark, by: Point) -> Mark:
    """One mark moved. A hatch keeps its family of lines where the drawing has it."""
    dx, dy = by
    match mark:
        case Lines():
            moved = tuple((x1 + dx, y1 + dy, x2 + dx, y2 + dy) for x1, y1, x2, y2 in mark.segments)
            return replace(mark, segments=moved)
        case Polyline() | Leader():
            return replace(mark, points=_shift_ring(mark.points, by))
        case Region() | Hatch():
            return replace(mark, rings=tuple(_shift_ring(ring, by) for ring in mark.rings))
        case Text():
            return replace(mark, at=(mark.at[0] + dx, mark.at[1] + dy))
        case Dimension():
            first, second, text_at = _shift_ring((mark.first, mark.second, mark.text_at), by)
            line = mark.line + (dx if mark.vertical else dy)
            return replace(mark, first=first, second=second, text_at=text_at, line=line)


def _shift_ring(ring: Ring, by: Point) -> Ring:
    return tuple((x + by[0], y + by[1]) for x, y in ring)
