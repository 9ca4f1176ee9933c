"""What stands in the way of what on a sheet: writing, lines, edges, drawings. For tests and for looking.

Every mark counts as it is drawn on paper: a line that a later area covers is not there. Paper inches.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import cos, radians, sin

import numpy as np
import shapely
from shapely import Polygon, STRtree
from shapely.geometry.base import BaseGeometry

from model.units import MM_PER_INCH
from render.dimension_strokes import dimension_strokes, dimension_text
from render.drawing import (
    Anchor,
    Dimension,
    Fill,
    Hatch,
    Lines,
    Mark,
    Pen,
    Placed,
    Polyline,
    Region,
    Segment,
    Sheet,
    Text,
)
from render.extent import drawing_extent
from render.hatching import hatch_segments
from render.lettering import ASCENT, DESCENT, text_width
from render.pens import STROKES, TINTS, contrast
from render.sheets import TITLES, Block, safe_area
from render.template_pages import LEFT_EDGE, OTHER_EDGE

MM = 1 / MM_PER_INCH
LEAST_CAPITALS = 2.5 * MM
SKIN = 0.12 * MM
"""Boxes of writing are taken this much smaller, half a fine line and a little more."""
LEAST_CONTRAST = 4.5
"""Of writing with what is under it: WCAG 2.1, 1.4.3."""
HANGING = set("gjpqyQ,;()[]{}|_@$/")
RISING = set("bdfhkltij'\"()[]{}|/!?°’“”ÄÖÜÉ%")
FRAME = "frame"
TEMPLATE, BESIDE_TEMPLATE = "template", ("joins", "key", FRAME)
"""Names of what is placed on sheets without a border."""
PRINTER = 5 * MM
"""What a printer may leave blank at the paper's edges: common practice."""


@dataclass(frozen=True)
class Collision:
    """What is wrong, on which sheet, and the words and the place concerned."""

    kind: str
    sheet: str
    words: str
    other: str
    at: tuple[float, float]

    def __str__(self) -> str:
        x, y = self.at
        return f"{self.kind}: {self.words!r} / {self.other} on {self.sheet} at {x:.2f}, {y:.2f}"


@dataclass(frozen=True)
class _Word:
    """A line of writing on paper: its box, when it is laid down, and its size and ink."""

    text: Text
    box: Polygon
    order: int
    part: str
    height: float


@dataclass(frozen=True)
class _Stroke:
    segment: Segment
    order: int
    part: str
    pen: Pen


@dataclass(frozen=True)
class _Area:
    shape: BaseGeometry
    order: int
    fill: Fill


def list_collisions(sheet: Sheet) -> tuple[Collision, ...]:
    """Everything on a sheet that stands in the way of something else, or is too small or too faint."""
    words, strokes, areas = _take_apart(sheet)
    found = [
        *_list_small(sheet, words),
        *_list_overlaps(sheet, words),
        *_list_crossed(sheet, words, strokes, areas),
        *_list_faint(sheet, words, areas),
        *_list_outside(sheet),
        *_list_on_each_other(sheet),
    ]
    return tuple(found)


def _take_apart(sheet: Sheet) -> tuple[list[_Word], list[_Stroke], list[_Area]]:
    words: list[_Word] = []
    strokes: list[_Stroke] = []
    areas: list[_Area] = []
    order = 0
    for placed in sheet.placed:
        for mark in placed.drawing.marks:
            order += 1
            words += [_to_word(text, placed, order) for text in _list_texts(mark)]
            strokes += [
                _Stroke(_to_paper(segment, placed), order, placed.name, pen)
                for pen, segments in _list_strokes(mark, placed.drawing.ratio)
                for segment in segments
            ]
            if isinstance(mark, Region):
                areas.append(_Area(_to_shape(mark, placed), order, mark.fill))
    return words, strokes, areas


def _list_texts(mark: Mark) -> Iterator[Text]:
    match mark:
        case Text() if mark.text:
            yield mark
        case Dimension() if mark.text:
            yield dimension_text(mark)


def _list_strokes(mark: Mark, ratio: float) -> Iterator[tuple[Pen, Iterable[Segment]]]:
    match mark:
        case Lines():
            yield mark.pen, mark.segments
        case Polyline():
            points = mark.points + mark.points[:1] if mark.closed else mark.points
            yield mark.pen, [(*a, *b) for a, b in pairwise(points)]
        case Hatch():
            yield mark.pen, hatch_segments(mark)
        case Dimension():
            yield Pen.DIMENSION, dimension_strokes(mark, ratio)


def _to_paper(segment: Segment, placed: Placed) -> Segment:
    (x, y), k = placed.at, 1 / placed.drawing.ratio
    return x + segment[0] * k, y + segment[1] * k, x + segment[2] * k, y + segment[3] * k


def _to_word(text: Text, placed: Placed, order: int) -> _Word:
    """The box round what is written, with descenders and ascenders only where there are any."""
    (x, y), k = placed.at, 1 / placed.drawing.ratio
    height, width = text.height * k, text_width(text.text, text.height, text.bold) * k
    before = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}[text.anchor] * width
    letters = set(text.text)
    low = -DESCENT * height if letters & HANGING else 0.0
    high = ASCENT * height if letters & RISING else height
    along, up = cos(radians(text.rotation)), sin(radians(text.rotation))
    x, y = x + text.at[0] * k, y + text.at[1] * k
    corners = [
        (x + u * along - v * up, y + u * up + v * along)
        for u, v in (
            (SKIN - before, low + SKIN),
            (width - before - SKIN, low + SKIN),
            (width - before - SKIN, high - SKIN),
            (SKIN - before, high - SKIN),
        )
    ]
    return _Word(text, Polygon(corners), order, placed.name, height)


def _to_shape(region: Region, placed: Placed) -> BaseGeometry:
    (x, y), k = placed.at, 1 / placed.drawing.ratio
    shape: BaseGeometry = Polygon()
    for ring in region.rings:
        if len(ring) > 2:
            part = Polygon([(x + u * k, y + v * k) for u, v in ring]).buffer(0)
            shape = shape.symmetric_difference(part)
    return shape


def _centre(word: _Word) -> tuple[float, float]:
    return word.box.centroid.x, word.box.centroid.y


def _list_small(sheet: Sheet, words: list[_Word]) -> Iterator[Collision]:
    for word in words:
        if word.height < LEAST_CAPITALS - 1e-9:
            size = f"{word.height / MM:.2f} mm"
            yield Collision("small", sheet.title, word.text.text, size, _centre(word))


def _list_overlaps(sheet: Sheet, words: list[_Word]) -> Iterator[Collision]:
    boxes = [word.box for word in words]
    for i, j in STRtree(boxes).query(boxes, "intersects").T.tolist():
        if i < j:
            yield Collision("overlap", sheet.title, words[i].text.text, words[j].text.text, _centre(words[i]))


def _list_crossed(
    sheet: Sheet, words: list[_Word], strokes: list[_Stroke], areas: list[_Area]
) -> Iterator[Collision]:
    """Writing that a line runs through, unless an area laid over the line stands under the writing."""
    if not strokes or not words:
        return
    ends = np.array([stroke.segment for stroke in strokes]).reshape(-1, 2, 2)
    lines = shapely.linestrings(ends)
    tree = STRtree(areas_shapes) if (areas_shapes := [area.shape for area in areas]) else None
    told: set[tuple[int, int]] = set()
    for i, j in STRtree([word.box for word in words]).query(lines, "intersects").T.tolist():
        stroke, word = strokes[i], words[j]
        if (stroke.order, j) in told:
            continue
        piece = lines[i].intersection(word.box)
        if tree is not None:
            for k in tree.query(piece, "intersects"):
                if areas[k].order > stroke.order:
                    piece = piece.difference(areas[k].shape.buffer(1e-6))
        if piece.length > SKIN or (not piece.is_empty and lines[i].length < 2 * SKIN):
            told.add((stroke.order, j))
            other = f"{stroke.pen} line of {stroke.part or 'the sheet'}"
            yield Collision("crossed", f"{sheet.title} ({word.part})", word.text.text, other, _centre(word))


def _list_faint(sheet: Sheet, words: list[_Word], areas: list[_Area]) -> Iterator[Collision]:
    """Writing that does not stand out from any of the tints below it."""
    if not areas:
        return
    tree = STRtree([area.shape for area in areas])
    for word in words:
        bare = word.box
        below = sorted((int(k) for k in tree.query(word.box, "intersects")), key=lambda k: -areas[k].order)
        for k in below:
            if bare.is_empty or areas[k].order > word.order:
                continue
            seen = bare.intersection(areas[k].shape)
            bare = bare.difference(areas[k].shape)
            ink = STROKES[Pen.DIMENSION if word.text.stands_for == "dimension" else word.text.pen].ink
            if seen.area > 1e-6 and contrast(ink, TINTS[areas[k].fill]) < LEAST_CONTRAST:
                yield Collision("faint", sheet.title, word.text.text, str(areas[k].fill), _centre(word))
                break


def find_area(sheet: Sheet) -> tuple[float, float, float, float]:
    """The room for drawings and tables: beside a title block that stands, above one that lies."""
    frame = next(placed for placed in sheet.placed if placed.name == FRAME)
    parting = next(m for m in frame.drawing.marks if isinstance(m, Lines) and m.pen is Pen.EDGE)
    x0, _, x1, _ = parting.segments[0]
    return safe_area(sheet.width, sheet.height, Block.BESIDE if x0 == x1 else Block.BELOW)


def _list_outside(sheet: Sheet) -> Iterator[Collision]:
    """Drawings and tables that leave the room there is for them, frames and words that leave the paper."""
    has_border = any(placed.name == FRAME and _has_border(placed) for placed in sheet.placed)
    for placed in sheet.placed:
        room = _find_room(sheet, placed, has_border)
        for mark in placed.drawing.marks:
            box = _extent(placed, mark)
            if box is None:
                continue
            over = max(room[0] - box[0], room[1] - box[1], box[2] - room[2], box[3] - room[3])
            if over > 1e-6:
                words = getattr(mark, "text", "") or f"{type(mark).__name__} {mark.stands_for}"
                other = f"{placed.name} over by {over / MM:.1f} mm"
                yield Collision("outside", sheet.title, words, other, (box[0], box[1]))
                break


def _has_border(frame: Placed) -> bool:
    return any(getattr(mark, "pen", None) is Pen.BORDER for mark in frame.drawing.marks)


def _find_room(sheet: Sheet, placed: Placed, has_border: bool) -> tuple[float, float, float, float]:
    """Where something placed on a sheet may reach: what a printer prints where there is no border."""
    if has_border:
        return (0.0, 0.0, sheet.width, sheet.height) if placed.name == FRAME else find_area(sheet)
    if placed.name == TEMPLATE:
        return LEFT_EDGE, OTHER_EDGE, sheet.width - OTHER_EDGE, sheet.height - OTHER_EDGE
    edge = PRINTER if placed.name in BESIDE_TEMPLATE else 0.0
    return edge, edge, sheet.width - edge, sheet.height - edge


def _extent(placed: Placed, *marks: Mark) -> tuple[float, float, float, float] | None:
    from render.drawing import Drawing

    try:
        x0, y0, x1, y1 = drawing_extent(Drawing(marks, placed.drawing.ratio))
    except ValueError:
        return None
    return (*_to_paper((x0, y0, x1, y1), placed),)


def _list_on_each_other(sheet: Sheet) -> Iterator[Collision]:
    """Drawings that reach into each other."""
    drawn = [placed for placed in sheet.placed if placed.name in TITLES]
    boxes = [_extent(placed, *placed.drawing.marks) for placed in drawn]
    for i, one in enumerate(boxes):
        for j, other in enumerate(boxes[:i]):
            if one and other and _deep(one, other) > 0.5 * MM:
                yield Collision("on each other", sheet.title, drawn[i].name, drawn[j].name, (one[0], one[1]))


def _deep(one: tuple[float, ...], other: tuple[float, ...]) -> float:
    return min(
        min(one[2], other[2]) - max(one[0], other[0]),
        min(one[3], other[3]) - max(one[1], other[1]),
    )
