"""The part of a drawing inside a box, for details at a larger scale. Writing is lettered anew there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from model.half_plane import keep_side
from render.drawing import Drawing, Hatch, Lines, Mark, Polyline, Region, Ring, Segment
from render.extent import Box


def clip_drawing(drawing: Drawing, box: Box) -> Drawing:
    """Strokes, areas and hatches of `drawing` as far as they lie in `box` (left, bottom, right, top).

    Texts and dimensions are not carried over.
    """
    clipped = (_clip_mark(mark, box) for mark in drawing.marks)
    return Drawing(tuple(mark for mark in clipped if mark is not None), drawing.ratio)


def clip_segment(segment: Segment, box: Box) -> Segment | None:
    """The part of a stroke in the box, `None` when it passes by or only touches a corner.

    >>> clip_segment((-1.0, 1.0, 5.0, 1.0), (0.0, 0.0, 2.0, 2.0))
    (0.0, 1.0, 2.0, 1.0)
    """
    x1, y1, x2, y2 = segment
    dx, dy = x2 - x1, y2 - y1
    start, end = 0.0, 1.0
    for step, room in ((-dx, x1 - box[0]), (dx, box[2] - x1), (-dy, y1 - box[1]), (dy, box[3] - y1)):
        if step == 0:
            if room < 0:
                return None
        elif step < 0:
            start = max(start, room / step)
        else:
            end = min(end, room / step)
    if start >= end:
        return None
    return x1 + start * dx, y1 + start * dy, x1 + end * dx, y1 + end * dy


def clip_ring(ring: Ring, box: Box) -> Ring:
    """The ring's area in the box, empty when there is none; parts may be joined along the box's edge."""
    for axis, limit, above in ((0, box[0], True), (0, box[2], False), (1, box[1], True), (1, box[3], False)):
        ring = keep_side(ring, axis, limit, above)
    return ring


def _clip_mark(mark: Mark, box: Box) -> Mark | None:
    match mark:
        case Lines():
            return _lines(mark, mark.segments, box)
        case Polyline():
            points = mark.points + mark.points[:1] if mark.closed else mark.points
            segments = ((*a, *b) for a, b in pairwise(points))
            return _lines(Lines(mark.pen, (), mark.stands_for), segments, box)
        case Region() | Hatch():
            rings = tuple(filter(None, (clip_ring(ring, box) for ring in mark.rings)))
            return replace(mark, rings=rings) if rings else None
    return None


def _lines(mark: Lines, segments: Iterable[Segment], box: Box) -> Lines | None:
    kept = tuple(filter(None, (clip_segment(segment, box) for segment in segments)))
    return replace(mark, segments=kept) if kept else None
