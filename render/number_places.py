"""Where a number stands beside its mark, clear of lines and of other marks and numbers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from math import cos, dist, pi, sin

from render.clipping import clip_segment
from render.drawing import Hatch, Lines, Mark, Point, Polyline, Segment
from render.extent import Box
from render.hatching import hatch_segments

WAYS = 16
"""Directions that are tried round a mark, beginning to the upper right."""
FURTHEST = 10
"""Distances that are tried, each half the number's height more."""


def list_strokes(marks: Iterable[Mark]) -> tuple[Segment, ...]:
    """Every line that `marks` draw, hatching included; writing and dimensions are left out."""
    found: list[Segment] = []
    for mark in marks:
        match mark:
            case Lines():
                found += mark.segments
            case Polyline():
                ring = mark.points + mark.points[:1] if mark.closed else mark.points
                found += [(*a, *b) for a, b in pairwise(ring)]
            case Hatch():
                found += hatch_segments(mark)
    return tuple(found)


def place_numbers(
    spots: Sequence[Point], widths: Sequence[float], height: float, clear: float, strokes: Sequence[Segment]
) -> tuple[Point, ...]:
    """The middle of the box of each spot's number, `widths` wide and `height` high, in the spots' order.

    Each is as near to its spot as it can be with `clear` of it left, no line of `strokes` through it and no
    other spot or number under it. Where there is no such place it stands to the upper right.
    """
    taken = [_box(spot, 2 * clear, 2 * clear) for spot in spots]
    places: list[Point] = []
    for spot, width in zip(spots, widths, strict=True):
        reach = clear + width + FURTHEST * height
        near = [s for s in strokes if clip_segment(s, _box(spot, 2 * reach, 2 * reach))]
        tried = list(_list_around(spot, width, height, clear))
        free = (at for at in tried if _is_free(_box(at, width, height), near, taken))
        places.append(next(free, tried[0]))
        taken.append(_box(places[-1], width, height))
    return tuple(places)


def join_number(spot: Point, place: Point, size: tuple[float, float], clear: float) -> Segment:
    """The line from the edge of a mark, `clear` off its spot, to the box of its number."""
    away = dist(spot, place)
    along, up = (place[0] - spot[0]) / away, (place[1] - spot[1]) / away
    inside = clip_segment((*place, *spot), _box(place, *size))
    end = inside[2:] if inside else place
    return (spot[0] + along * clear, spot[1] + up * clear, *end)


def _list_around(spot: Point, width: float, height: float, clear: float) -> Iterator[Point]:
    """Nearest first; at every distance the upper right first and the lower left last."""
    ways = sorted((k * 2 * pi / WAYS for k in range(WAYS)), key=lambda way: -cos(way - pi / 4))
    for step in range(FURTHEST):
        away = clear + step * height / 2
        for way in ways:
            along, up = cos(way), sin(way)
            yield spot[0] + along * (away + width / 2), spot[1] + up * (away + height / 2)


def _is_free(box: Box, strokes: Sequence[Segment], taken: Sequence[Box]) -> bool:
    left, low, right, high = box
    return not any(b[0] < right and left < b[2] and b[1] < high and low < b[3] for b in taken) and not any(
        clip_segment(stroke, box) for stroke in strokes
    )


def _box(middle: Point, width: float, height: float) -> Box:
    x, y = middle
    return x - width / 2, y - height / 2, x + width / 2, y + height / 2
