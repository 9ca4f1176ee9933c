"""Where a number or a mark stands beside what it names, clear of lines and of each other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import dist, pi

import numpy as np

from render.clipping import clip_segment
from render.crossing import Floats as Floats
from render.crossing import Mask, are_crossed, find_hits, to_rows
from render.dimension_strings import TEXT_HEIGHT
from render.dimension_strokes import dimension_strokes
from render.drawing import (
    Anchor,
    Dimension,
    Hatch,
    Lines,
    Mark,
    Point,
    Polyline,
    Segment,
    Text,
)
from render.extent import Box
from render.extent import list_words as list_words
from render.hatching import hatch_segments
from render.lettering import ASCENT, DESCENT, text_width

SMALL = 0.85
"""Numbers and marks beside the dimensions' lettering. Shop choice."""
HAIR = 1e-6
"""What only touches a box by this much, in., is beside it."""
INWARD = np.array([HAIR, HAIR, -HAIR, -HAIR])
"""What a box is less by to leave that out."""
WAYS = 16
"""Directions that are tried round a mark, beginning to the upper right."""
AT_ONCE = (WAYS, 4 * WAYS, 16 * WAYS)
"""So many places are tried before those further out."""
FURTHEST = 10
"""Distances that are tried as a rule, each half the number's height more."""


def number_height(ratio: float) -> float:
    """The height of a number's capitals on a drawing, model inches."""
    return SMALL * TEXT_HEIGHT * ratio


def number_size(text: str, height: float) -> tuple[float, float]:
    """Width and height of the box that is kept free for a number, some air beside it included."""
    return text_width(text, height) + height / 2, (ASCENT + DESCENT) * height


def write_number(text: str, middle: Point, height: float, stands_for: str, rotation: float = 0.0) -> Text:
    """A number whose box has its middle there, level or at 90 degrees reading upward."""
    base = (ASCENT + DESCENT) * height / 2 - ASCENT * height
    x, y = middle
    at = (x - base, y) if rotation else (x, y + base)
    return Text(text, at, height, Anchor.MIDDLE, rotation, stands_for=stands_for)


def list_strokes(marks: Iterable[Mark], ratio: float = 1.0) -> tuple[Segment, ...]:
    """Every line that `marks` draw, hatching included; `ratio` is that of the drawing, for its dimensions."""
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
            case Dimension():
                found += dimension_strokes(mark, ratio)
    return tuple(found)


class Paper:
    """Where on a drawing there is room: off its lines, its words and areas that were taken.

    A line may join a number to its mark across lines and areas, but through no word and no other such line.
    """

    def __init__(
        self, strokes: Sequence[Segment] = (), taken: Sequence[Box] = (), words: Sequence[Box] = ()
    ) -> None:
        self._words, self._blocked = to_rows(words), to_rows([*taken, *words])
        self._joins, self._lines = to_rows([]), to_rows(strokes)

    def take(self, box: Box) -> None:
        """Keep numbers off `box` from now on."""
        self._blocked = np.vstack([self._blocked, box])

    def write(self, box: Box, join: Segment | None = None) -> None:
        """A number stands in `box`, joined to its mark by `join`."""
        self._words, self._blocked = np.vstack([self._words, box]), np.vstack([self._blocked, box])
        if join is not None:
            self._joins, self._lines = np.vstack([self._joins, join]), np.vstack([self._lines, join])

    def is_free(self, boxes: Floats) -> Mask:
        """Which of `boxes` (n, 4) no line goes through and nothing taken or written lies under."""
        free = _lie_clear(boxes, self._blocked)
        still = np.flatnonzero(free)
        free[still[find_hits(boxes[still] + INWARD, self._lines)[0]]] = False
        return free

    def has_no_words(self, boxes: Floats) -> Mask:
        """Which of `boxes` (n, 4) lie over nothing written, whatever lines go through them."""
        return _lie_clear(boxes, self._words)

    def is_open(self, joins: Floats) -> Mask:
        """Which of `joins` (n, 4) go through no word and cross no other."""
        free = ~are_crossed(joins, self._joins)
        free[find_hits(self._words, joins)[1]] = False
        return free


def _lie_clear(boxes: Floats, others: Floats) -> Mask:
    """Which of `boxes` (n, 4) lie over none of `others` (m, 4)."""
    left, low, right, high = boxes.T[:, :, None]
    x0, y0, x1, y1 = others.T
    under = (x0 < right) & (left < x1) & (y0 < high) & (low < y1)
    clear: Mask = np.logical_not(under.any(axis=1))
    return clear


def place_numbers(
    spots: Sequence[Point],
    sizes: Sequence[tuple[float, float]],
    clear: float,
    paper: Paper,
    furthest: int = FURTHEST,
) -> tuple[Point | None, ...]:
    """The middle of the box of each spot's number, of its width and height, in the spots' order.

    Each is as near to its spot as it can be with `clear` of it left, on free `paper` and on an open way from
    its spot, both of which it takes; None where `furthest` tries outward find no such place.
    """
    for spot in spots:
        paper.take(box_round(spot, 2 * clear, 2 * clear))
    places: list[Point | None] = []
    for spot, (width, height) in zip(spots, sizes, strict=True):
        tried = list_around(spot, width, height, clear, furthest)
        place = _find_first(spot, tried, (width, height), paper)
        places.append(place)
        if place is not None:
            paper.write(box_round(place, width, height), join_number(spot, place, (width, height), clear))
    return tuple(places)


def find_first_free(boxes: Floats, paper: Paper) -> int | None:
    """The first of `boxes` (n, 4) that is free, None where none is; the first few are looked at alone."""
    start = 0
    for part in np.split(boxes, AT_ONCE):
        free = paper.is_free(part)
        if free.any():
            return start + int(np.argmax(free))
        start += len(part)
    return None


def _find_first(spot: Point, tried: Floats, size: tuple[float, float], paper: Paper) -> Point | None:
    """The first of the middles `tried` that is free and open; the nearest are looked at alone first."""
    half = np.array(size) / 2
    for part in np.split(tried, AT_ONCE):
        left = part[paper.is_free(np.hstack([part - half, part + half]))]
        left = left[paper.is_open(np.hstack([np.broadcast_to(spot, left.shape), left]))]
        if len(left):
            x, y = left[0].tolist()
            return x, y
    return None


def join_number(spot: Point, place: Point, size: tuple[float, float], clear: float) -> Segment:
    """The line from the edge of a mark, `clear` off its spot, to the box of its number."""
    away = dist(spot, place)
    along, up = (place[0] - spot[0]) / away, (place[1] - spot[1]) / away
    inside = clip_segment((*place, *spot), box_round(place, *size))
    end = inside[2:] if inside else place
    return (spot[0] + along * clear, spot[1] + up * clear, *end)


def list_around(spot: Point, width: float, height: float, clear: float, furthest: int) -> Floats:
    """Middles (n, 2) of boxes that leave `clear` of a spot, nearest first.

    At every distance the upper right comes first and the lower left last.
    """
    ways = np.arange(WAYS) * 2 * pi / WAYS
    ways = ways[np.argsort(-np.cos(ways - pi / 4), kind="stable")]
    away = (clear + np.arange(furthest) * height / 2)[:, None]
    along, up = np.cos(ways) * (away + width / 2), np.sin(ways) * (away + height / 2)
    return np.stack([spot[0] + along, spot[1] + up], axis=2).reshape(-1, 2)


def box_round(middle: Point, width: float, height: float) -> Box:
    """The box about a point."""
    x, y = middle
    return x - width / 2, y - height / 2, x + width / 2, y + height / 2
