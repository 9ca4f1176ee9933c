"""The strokes and the writing that dimensions consist of, for paper, screen and SVG alike.

Where a dimension stands is its drawing's business. Sizes are in inches on paper; multiplied by the
drawing's ratio they are model inches.
"""

from __future__ import annotations

from functools import lru_cache
from math import cos, pi, sin

from render.drawing import Anchor, Dimension, Point, Segment, Text
from render.lettering import text_width

EXTENSION_GAP = 1 / 16
"""Clear between the measured point and its extension line, in. US practice, from published handouts."""
EXTENSION_OVERRUN = 1 / 8
"""How far an extension line runs past the dimension line, in. Same source."""
TICK_LENGTH = 1 / 8
"""Whole length of the 45-degree end stroke, in. Same source."""
TEXT_GAP = 1 / 20
"""Clear between writing and the leader that ends at it, in. Shop choice."""


@lru_cache(maxsize=1024)
def dimension_strokes(dimension: Dimension, ratio: float) -> tuple[Segment, ...]:
    """Extension lines, dimension line, end strokes and the leader to a text that stands aside.

    In model inches, as the dimension is. Remembered, since an edit leaves most dimensions alone.
    """
    along, across = (1, 0) if dimension.vertical else (0, 1)
    low, high = sorted((dimension.first, dimension.second), key=lambda point: point[along])
    strokes = [((low[along], dimension.line), (high[along], dimension.line))]
    for point in (low, high):
        strokes.extend(_extension(point[along], point[across], dimension.line, ratio))
        strokes.append(_tick(point[along], dimension, ratio))
    segments = [_place(a, b, dimension.vertical) for a, b in strokes]
    return tuple(segments) + _text_leader(dimension, ratio)


@lru_cache(maxsize=1024)
def dimension_text(dimension: Dimension) -> Text:
    """The writing of a dimension: its capitals are centred on `text_at` both ways."""
    x, y = dimension.text_at
    drop = dimension.height / 2
    at, turn = ((x + drop, y), 90.0) if dimension.vertical else ((x, y - drop), 0.0)
    return Text(dimension.text, at, dimension.height, Anchor.MIDDLE, turn, stands_for=dimension.stands_for)


def _extension(run: float, point: float, line: float, ratio: float) -> list[tuple[Point, Point]]:
    way = 1.0 if line > point else -1.0
    start = point + way * EXTENSION_GAP * ratio
    if (line - start) * way <= 0:
        return []
    return [((run, start), (run, line + way * EXTENSION_OVERRUN * ratio))]


def _tick(run: float, dimension: Dimension, ratio: float) -> tuple[Point, Point]:
    """The end stroke; it leans to the right for a reader of the text, whichever way that is turned."""
    reach = TICK_LENGTH * ratio / 2
    dx, dy = reach * cos(pi / 4), reach * sin(pi / 4)
    lean = -dy if dimension.vertical else dy
    return (run - dx, dimension.line - lean), (run + dx, dimension.line + lean)


def _place(start: Point, end: Point, vertical: bool) -> Segment:
    return (start[1], start[0], end[1], end[0]) if vertical else (*start, *end)


def _text_leader(dimension: Dimension, ratio: float) -> tuple[Segment, ...]:
    """From the middle of the span to the nearest point of a text that was lifted or stands beside."""
    low, high = dimension.span
    at = dimension.text_at[1] if dimension.vertical else dimension.text_at[0]
    if low <= at <= high and not dimension.lifted:
        return ()
    middle = (low + high) / 2
    start = (dimension.line, middle) if dimension.vertical else (middle, dimension.line)
    gap = TEXT_GAP * ratio
    half_run = text_width(dimension.text, dimension.height) / 2 + gap
    half_up = dimension.height / 2 + gap
    half_x, half_y = (half_up, half_run) if dimension.vertical else (half_run, half_up)
    x, y = dimension.text_at
    end = (min(max(start[0], x - half_x), x + half_x), min(max(start[1], y - half_y), y + half_y))
    return () if end == start else ((*start, *end),)
