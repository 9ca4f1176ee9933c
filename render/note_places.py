"""Where a note of a view has room between its dimensions. What the note says is decided elsewhere."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import inf

from render.clipping import clip_segment
from render.dimension_strokes import dimension_strokes, dimension_text
from render.drawing import Dimension, Point, Segment
from render.extent import Box, list_words, text_corners
from render.lettering import ASCENT, DESCENT

STEP = 0.1
"""From one place that is tried to the next, inches on paper. Shop choice."""
APART = 0.25
"""Between a note and a text beside it, inches on paper: the two are not read as one. Shop choice."""
AROUND = 0.5
"""No tick or overrun reaches further than this past a dimension's points, inches on paper; a text reaches no
further than its letters would if each were as wide as high."""


def free_place(
    size: tuple[float, float],
    reach: tuple[float, float],
    levels: Sequence[float],
    dimensions: Sequence[Dimension],
    ratio: float,
) -> Point | None:
    """The middle of the baseline for a note of `size` (width, capitals), nearest the middle of `reach`.

    Tried on each of `levels` in turn between the ends of `reach`, then as far again beyond them, clear of
    every stroke and text of `dimensions`; None where no place is free.
    """
    width, height = size
    middle, half = sum(reach) / 2, (reach[1] - reach[0]) / 2
    for most in (half - width / 2, 2 * half):
        for y in levels:
            blocked = _list_blocked(y - DESCENT * height, y + ASCENT * height, dimensions, ratio)
            for aside in _outward(most, STEP * ratio):
                low, high = middle + aside - width / 2, middle + aside + width / 2
                if not any(low < end and start < high for start, end in blocked):
                    return middle + aside, y
    return None


def part_line(segment: Segment, dimensions: Sequence[Dimension], clear: float) -> tuple[Segment, ...]:
    """A level or plumb line without what of it runs through the texts of `dimensions`, `clear` of them."""
    return part_at_boxes(segment, list_words(dimensions), clear)


def part_at_boxes(segment: Segment, boxes: Iterable[Box], clear: float) -> tuple[Segment, ...]:
    """A level or plumb line without what of it lies in `boxes` or nearer to them than `clear`."""
    x0, y0, _, y1 = segment
    i = 0 if y0 == y1 else 1
    low, high = sorted((segment[i], segment[i + 2]))
    gaps = [
        (box[i] - clear, box[i + 2] + clear)
        for box in boxes
        if box[1 - i] - clear < segment[1 - i] < box[3 - i] + clear
    ]
    parts, start = [], low
    for first, last in sorted(gaps):
        if first > start:
            parts.append((start, min(first, high)))
        start = max(start, last)
    if start < high:
        parts.append((start, high))
    return tuple((a, y0, b, y0) if i == 0 else (x0, a, x0, b) for a, b in parts if b > a)


def _outward(most: float, step: float) -> Iterable[float]:
    """0, then a step to the left and to the right, and so on up to `most`."""
    yield 0.0
    for n in range(1, int(most / step) + 1):
        yield -n * step
        yield n * step


def _list_blocked(
    low: float, high: float, dimensions: Sequence[Dimension], ratio: float
) -> list[tuple[float, float]]:
    """From where to where along the level between `low` and `high` strokes and texts are in the way."""
    band = (-inf, low, inf, high)
    blocked = []
    for dimension in dimensions:
        if not _may_reach(dimension, low - AROUND * ratio, high + AROUND * ratio):
            continue
        strokes = (stroke for stroke in dimension_strokes(dimension, ratio) if clip_segment(stroke, band))
        blocked += [(min(x1, x2), max(x1, x2)) for x1, _, x2, _ in strokes]
        xs, ys = zip(*text_corners(dimension_text(dimension)), strict=True)
        if min(ys) < high and low < max(ys):
            blocked.append((min(xs) - APART * ratio, max(xs) + APART * ratio))
    return blocked


def _may_reach(dimension: Dimension, low: float, high: float) -> bool:
    """Whether a dimension can have anything between `low` and `high`; seen from its points alone."""
    y = dimension.text_at[1]
    ys = [dimension.first[1], dimension.second[1]]
    if dimension.vertical:
        half = len(dimension.text) * dimension.height / 2
        ys += [y - half, y + half]
    else:
        ys += [y, dimension.line]
    return min(ys) <= high and max(ys) >= low
