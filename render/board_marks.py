"""Marks of boards on a view: inside what is seen of a board where there is room, else beside it on a line.

Alike boards carry one mark, that of their line in the cut list. Which boards are seen is render.visibility's.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import dist

import numpy as np
from shapely import MultiPolygon, Polygon, box, get_parts, make_valid
from shapely.ops import polylabel

from model.surround import Surround
from render.drawing import Lines, Mark, Pen, Point, Polyline, Ring, Text
from render.extent import Box
from render.names import list_dark
from render.number_places import (
    Paper,
    box_round,
    join_number,
    list_strokes,
    list_words,
    number_height,
    number_size,
    place_numbers,
    write_number,
)
from render.views import project_boards

LEAST = 0.003
"""Square inches on paper of a board that must be seen for it to be marked. Shop choice."""
DOT = 0.012
"""Half the side of the dot a mark's line ends in, inches on paper. Shop choice."""
NEARLY = 0.8
"""A centre as far from the edges as this part of the most there is will do. Shop choice."""
OVER = 0.3
"""More room over and under a mark beside its board, in its heights: outlines are wide. Shop choice."""
FURTHEST = 40
"""How far off a mark may stand, in halves of its height. Shop choice."""
NOTHING = MultiPolygon()
"""No area: made once, for shapely reads it from text."""


@dataclass(frozen=True, slots=True)
class BoardMarks:
    """What is drawn, and the marks of boards that are seen but found no room."""

    marks: tuple[Mark, ...]
    left_out: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Seen:
    """A mark with the largest piece that is seen of its board."""

    mark: str
    area: Polygon


def mark_seen(
    surround: Surround, view: str, ratio: float, under: Sequence[Mark], within: Box | None = None
) -> BoardMarks:
    """Marks for every board that `view` shows, clear of the lines and writing of `under`.

    A mark that does not fit inside its boards is given once on either hand of the centre line. With `within`
    (left, bottom, right, top) only what is seen there is marked, and every piece of it.
    """
    return _mark(_list_seen(surround, view, ratio, within), ratio, under, within is not None)


def mark_areas(
    areas: Iterable[tuple[str, Sequence[Ring]]], ratio: float, under: Sequence[Mark], least: float = LEAST
) -> BoardMarks:
    """The same for any areas: what is written on each, and the rings that bound it by the even-odd rule.

    `least` are the square inches on paper that must be seen.
    """
    found = ((mark, _largest(rings, None)) for mark, rings in areas)
    seen = (_Seen(mark, area) for mark, area in found if area is not None and area.area > least * ratio**2)
    return _mark(seen, ratio, under, every=False)


def _mark(shown: Iterable[_Seen], ratio: float, under: Sequence[Mark], every: bool) -> BoardMarks:
    """Marks for what is `shown`; beside it for `every` piece, or once on either hand of the centre line."""
    paper = Paper(list_strokes(under, ratio), list_dark(under), list_words(under))
    height = number_height(ratio)
    placed: list[Mark] = []
    beside: list[tuple[_Seen, Point]] = []
    marked: set[tuple[str, bool]] = set()
    for seen in shown:
        spot = _middle(seen.area)
        text = _fit(seen, spot, height, paper)
        half = (seen.mark, spot[0] > 0)
        if text is not None:
            placed.append(text)
            marked.add(half)
        elif every or half not in {(other.mark, at[0] > 0) for other, at in beside}:
            beside.append((seen, spot))
    if not every:
        beside = [(seen, spot) for seen, spot in beside if (seen.mark, spot[0] > 0) not in marked]
    marks, left_out = _place_beside(beside, height, ratio, paper)
    return BoardMarks((*placed, *marks), left_out)


def kind_of(mark: str) -> str:
    """The mark of the kind: ``C4`` for the piece ``C4b``."""
    return mark.rstrip("abcdefghijklmnopqrstuvwxyz")


def _list_seen(surround: Surround, view: str, ratio: float, within: Box | None) -> Iterator[_Seen]:
    """The boards that show enough to be marked; in sections those that are cut by what is cut of them."""
    projection, places = project_boards(surround, view)
    cut = set(projection.cut_owners())
    for owner in projection.seen_owners():
        if owner >= projection.solids.site_start:
            continue
        rings = projection.cut_rings_of(owner) if owner in cut else projection.rings_of(owner)
        area = _largest(rings, within)
        if area is not None and area.area > LEAST * ratio**2:
            yield _Seen(kind_of(surround.marks[places[owner]]), area)


def _largest(rings: Sequence[Ring], within: Box | None) -> Polygon | None:
    """The largest piece of the area that `rings` bound by the even-odd rule."""
    area = NOTHING
    for ring in rings:
        area = area.symmetric_difference(make_valid(Polygon(ring)))
    if within is not None:
        area = area.intersection(box(*within))
    parts = [part for part in get_parts(area) if isinstance(part, Polygon)]
    return max(parts, key=lambda part: part.area, default=None)


def _middle(area: Polygon) -> Point:
    """The centre of `area`, or where that lies near an edge the place furthest from all of them."""
    left, low, right, high = area.bounds
    inmost = polylabel(area, max(right - left, high - low) / 50)
    edge, centre = area.boundary, area.centroid
    central = area.contains(centre) and centre.distance(edge) > NEARLY * inmost.distance(edge)
    middle = centre if central else inmost
    return middle.x, middle.y


def _fit(seen: _Seen, spot: Point, height: float, paper: Paper) -> Text | None:
    """The mark inside its board, level or else reading upward; None where it does not fit."""
    wide, tall = number_size(seen.mark, height)
    for turned in (0.0, 90.0):
        covered = box_round(spot, *((tall, wide) if turned else (wide, tall)))
        if seen.area.contains(box(*covered)) and paper.is_free(np.array([covered]))[0]:
            paper.write(covered)
            return write_number(seen.mark, spot, height, seen.mark, turned)
    return None


def _place_beside(
    beside: Sequence[tuple[_Seen, Point]], height: float, ratio: float, paper: Paper
) -> tuple[list[Mark], tuple[str, ...]]:
    spots = [spot for _, spot in beside]
    sizes = [(w, h + OVER * height) for w, h in (number_size(seen.mark, height) for seen, _ in beside)]
    dot = DOT * ratio
    places = place_numbers(spots, sizes, 2 * dot, paper, FURTHEST)
    marks: list[Mark] = []
    left_out: list[str] = []
    for (seen, spot), size, place in zip(beside, sizes, places, strict=True):
        if place is None:
            left_out.append(seen.mark)
            continue
        marks.append(write_number(seen.mark, place, height, seen.mark))
        marks.append(_draw_dot(spot, dot, seen.mark))
        join = join_number(spot, place, size, 0.0)
        if dist(join[:2], join[2:]) > dot:
            marks.append(Lines(Pen.TEXT, (join,), seen.mark))
    return marks, tuple(dict.fromkeys(left_out))


def _draw_dot(at: Point, half: float, mark: str) -> Polyline:
    x, y = at
    return Polyline(Pen.TEXT, ((x - half, y), (x, y - half), (x + half, y), (x, y + half)), True, mark)
