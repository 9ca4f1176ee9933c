"""Marks that lead from one drawing to another: where a section is cut, and what of a view is drawn larger.

A circle carries the section's letter or the detail's number over the sheet it is on, as is common practice;
a note beside the drawing itself says on which sheet it is marked. Numbers come late: render.references.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from model.surround import Surround
from render.detail_list import list_details
from render.details import detail_box
from render.drawing import (
    MM,
    Anchor,
    Drawing,
    Fill,
    Hatch,
    Lines,
    Mark,
    Pen,
    Point,
    Polyline,
    Region,
    Segment,
    Text,
)
from render.extent import Box, box_sides, drawing_extent, list_words
from render.names import list_dark
from render.note_places import part_at_boxes
from render.number_places import Paper, join_number, list_strokes, place_numbers
from render.references import HELD, sheet_of
from render.section_places import section_level, section_station
from render.sheets import DETAILS, LABELS, MARKED_ON
from render.symbols import circle_points
from render.view_context import AROUND_TEXT, Frame
from render.view_layout import DrawView

RADIUS = 4.6 * MM
LETTERS = 2.5 * MM
STROKE = 4 * MM
"""Length of the heavy stroke at either end of a cutting plane. Shop choice."""
AIR = 1.2 * MM
"""Kept clear round a mark. Shop choice."""
STEP = 1.5 * MM
FURTHEST = 80
"""How far from the view, in steps, a place for a cutting plane's end is looked for. Shop choice."""


def mark_references(surround: Surround, name: str, drawing: Drawing) -> Drawing:
    """The drawing with the marks of all that is cut or enlarged from it."""
    marks: list[Mark] = []
    for target, view in MARKED_ON.items():
        if view != name:
            continue
        under = (*drawing.marks, *marks)
        if target in DETAILS or target.endswith("_detail"):
            box = _find_box(surround, target)
            marks += _mark_detail(target, box, under, drawing.ratio) if box else ()
        else:
            marks += _mark_section(surround, target, under, drawing.ratio)
    return drawing.plus(*marks)


def say_marked(names: Sequence[str]) -> tuple[str, ...]:
    """A note for each of the drawings on a sheet that is marked on another; in a packet that holds both."""
    return tuple(
        f"{LABELS[name]} is marked on sheet {sheet_of(view)}."
        for name in names
        if (view := MARKED_ON.get(name)) and view not in names
    )


def marked(surround: Surround, draw: DrawView) -> DrawView:
    """Draws as `draw` does, with the marks of what is cut or enlarged from each view."""

    @lru_cache(maxsize=64)
    def draw_marked(name: str, ratio: float) -> Drawing:
        return mark_references(surround, name, draw(name, ratio))

    return draw_marked


@dataclass(frozen=True, slots=True)
class _Plane:
    """A cutting plane seen from the front: level or plumb, where it runs, which way it is looked along."""

    target: str
    level: bool
    at: float
    look: Point

    def place(self, along: float) -> Point:
        """The point of the plane's line that lies there along it."""
        return (along, self.at) if self.level else (self.at, along)


def _find_plane(surround: Surround, target: str) -> _Plane:
    if target == "plan_section":
        return _Plane(target, True, section_level(surround), (0.0, -1.0))
    return _Plane(target, False, section_station(surround), (-1.0, 0.0))


def _mark_section(surround: Surround, target: str, under: Sequence[Mark], ratio: float) -> Iterator[Mark]:
    """The ends of a cutting plane over the front, both where the drawing has room; at least one."""
    plane, frame = _find_plane(surround, target), Frame.around(surround, "front")
    ends = (frame.right, frame.left) if plane.level else (frame.top, frame.bottom)
    papers = _paper(under, ratio), _paper(under, ratio, only_aslant=True)
    extent = drawing_extent(Drawing(tuple(under), ratio))
    found = [
        (along, way)
        for end, way in zip(ends, (1.0, -1.0), strict=True)
        if (along := _find_end(plane, end, way, papers, ratio, extent)) is not None
    ]
    for along, way in found or [(_outside(plane, extent, ratio), 1.0)]:
        inner = along - way * RADIUS * ratio
        outer = inner - way * STROKE * ratio
        yield from _draw_mark(
            target, plane.place(along), ratio, plane.look, (*plane.place(inner), *plane.place(outer))
        )


def _find_end(
    plane: _Plane, end: float, way: float, papers: Sequence[Paper], ratio: float, extent: Box
) -> float | None:
    """Where along the plane the circle's middle has room: on the first of `papers`, or else on the next."""
    reach, back = (RADIUS + AIR) * ratio, STROKE * ratio
    places = end + way * (back + reach + np.arange(FURTHEST) * STEP * ratio)
    middles = np.array([plane.place(along) for along in places.tolist()])
    low, high = middles - reach, middles + reach
    (low if way > 0 else high)[:, 0 if plane.level else 1] -= way * back
    boxes = np.hstack([low, high])
    within = (boxes[:, :2] >= extent[:2]).all(axis=1) & (boxes[:, 2:] <= extent[2:]).all(axis=1)
    for paper in papers:
        good = paper.is_free(boxes) & within
        if good.any():
            return float(places[np.flatnonzero(good)[0]])
    return None


def _outside(plane: _Plane, extent: Box, ratio: float) -> float:
    """Just past all that is drawn, to the right or above."""
    return extent[2 if plane.level else 3] + (STROKE + RADIUS + AIR) * ratio


def _find_box(surround: Surround, target: str) -> Box | None:
    """What a detail shows in the picture of its section; None where there is no such detail."""
    if target not in DETAILS:
        return detail_box(surround, target.removesuffix("_detail"))
    return next((detail.box for detail in list_details(surround) if detail.name == target), None)


def _mark_detail(target: str, box: Box, under: Sequence[Mark], ratio: float) -> Iterator[Mark]:
    """A dashed line round what is drawn larger, and its mark beside it."""
    words = list_words(under)
    round_it = [part for side in box_sides(box) for part in part_at_boxes(side, words, AROUND_TEXT * ratio)]
    yield Lines(Pen.GUIDE, tuple(round_it), HELD + target)
    paper = _paper((*under, Lines(Pen.GUIDE, tuple(round_it))), ratio)
    size = (2 * (RADIUS + AIR) * ratio,) * 2
    left, bottom, right, top = box
    for spot in ((left, bottom), (left, top), (right, bottom), (right, top)):
        (found,) = place_numbers((spot,), (size,), 0.0, paper)
        if found:
            yield Lines(Pen.TEXT, (join_number(spot, found, size, 0.0),), HELD + target)
            yield from _draw_mark(target, found, ratio)
            return
    yield from _draw_mark(target, (left, bottom - 2 * RADIUS * ratio), ratio)


def _paper(under: Sequence[Mark], ratio: float, only_aslant: bool = False) -> Paper:
    """What is clear of dark areas, words and lines, or of lines aslant only: leaders among them.

    A level or plumb line that goes on behind a circle is not misread.
    """
    strokes = list_strokes([mark for mark in under if not isinstance(mark, Hatch)], ratio)
    if only_aslant:
        strokes = tuple(s for s in strokes if s[0] != s[2] and s[1] != s[3])
    return Paper(strokes, list_dark(under), list_words(under))


def _draw_mark(
    target: str, centre: Point, ratio: float, look: Point | None = None, stroke: Segment | None = None
) -> Iterator[Mark]:
    """A circle in two halves; with a `look` an arrow head on it that way, and the heavy stroke."""
    (x, y), r = centre, RADIUS * ratio
    whose = HELD + target
    if look and stroke:
        yield Lines(Pen.CUT, (stroke,), whose)
        yield Region(Fill.OPENING, (_arrow(centre, r, look),), whose)
    ring = circle_points(centre, r)
    yield Region(Fill.PAPER, (ring,), whose)
    yield Polyline(Pen.EDGE, ring, True, whose)
    yield Lines(Pen.ARRIS, ((x - r, y, x + r, y),), whose)
    height, off = LETTERS * ratio, 0.8 * MM * ratio
    yield Text(LABELS[target], (x, y + off), height, Anchor.MIDDLE, bold=True, stands_for=whose)
    yield Text(sheet_of(target), (x, y - off - height), height, Anchor.MIDDLE, stands_for=whose)


def _arrow(centre: Point, radius: float, look: Point) -> tuple[Point, ...]:
    """A right angle round the circle with its tip in the direction of view."""
    (x, y), (u, v) = centre, look
    tip = radius * 2**0.5
    return (x + u * tip, y + v * tip), (x - v * tip, y + u * tip), (x + v * tip, y - u * tip)
