"""The strokes that fill a hatched area, worked out once for paper, screen and SVG alike."""

from __future__ import annotations

from collections import defaultdict
from math import ceil, cos, floor, radians, sin

from render.drawing import Hatch, Point, Segment

MOST_LINES = 4000
"""No area is given more strokes than this; the spacing is widened in whole steps instead."""


def hatch_segments(hatch: Hatch) -> tuple[Segment, ...]:
    """Parallel strokes inside the area, holes left out (even-odd rule over all rings).

    Strokes lie on one family of lines through the drawing, half a spacing off its origin, so that
    neighbouring areas with the same angle and spacing run on into each other.
    """
    turn = radians(hatch.angle)
    along, up = cos(turn), sin(turn)
    rings = [[(x * along + y * up, y * along - x * up) for x, y in ring] for ring in hatch.rings]
    crossings = _cross_lines(rings, _spacing(rings, hatch.spacing))
    strokes = []
    for height, places in sorted(crossings.items()):
        places.sort()
        for start, end in zip(places[::2], places[1::2], strict=True):
            if end > start:
                strokes.append(_turn_back(start, end, height, along, up))
    return tuple(strokes)


def _spacing(rings: list[list[Point]], spacing: float) -> float:
    heights = [v for ring in rings for _, v in ring]
    if not heights:
        return spacing
    return spacing * max(1, ceil((max(heights) - min(heights)) / (spacing * MOST_LINES)))


def _cross_lines(rings: list[list[Point]], spacing: float) -> dict[float, list[float]]:
    """Where each hatch line meets the rings; every line meets them an even number of times."""
    crossings: dict[float, list[float]] = defaultdict(list)
    for ring in rings:
        previous = ring[-1] if ring else (0.0, 0.0)
        for point in ring:
            (u0, v0), (u1, v1) = (previous, point) if previous[1] < point[1] else (point, previous)
            previous = point
            if v0 == v1:
                continue
            slope = (u1 - u0) / (v1 - v0)
            for step in range(_first_line(v0, spacing), _first_line(v1, spacing)):
                height = (step + 0.5) * spacing
                crossings[height].append(u0 + (height - v0) * slope)
    return crossings


def _first_line(height: float, spacing: float) -> int:
    """Number of the first line at or over `height`; the same for every edge that ends there."""
    step = floor(height / spacing - 0.5)
    while (step + 0.5) * spacing < height:
        step += 1
    return step


def _turn_back(start: float, end: float, height: float, along: float, up: float) -> Segment:
    return (
        start * along - height * up,
        start * up + height * along,
        end * along - height * up,
        end * up + height * along,
    )
