"""How much room marks take up, their writing included. Nothing is drawn here."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from math import cos, radians, sin

from render.dimension_strokes import dimension_strokes, dimension_text
from render.drawing import (
    Anchor,
    Dimension,
    Drawing,
    Hatch,
    Lines,
    Mark,
    Placed,
    Point,
    Polyline,
    Region,
    Ring,
    Segment,
    Text,
)
from render.lettering import ASCENT, DESCENT, text_width

Box = tuple[float, float, float, float]

_BEFORE = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}


def drawing_extent(drawing: Drawing) -> Box:
    """Lowest x and y, highest x and y of everything drawn, model inches; line widths are left out.

    Raises ValueError for a drawing without marks.
    """
    points = [point for mark in drawing.marks for point in _points(mark, drawing.ratio)]
    if not points:
        raise ValueError("a drawing without marks takes up no room")
    return box_of(points)


def paper_extent(drawing: Drawing) -> Box:
    """The same in inches on paper, from where the drawing's origin lies."""
    left, bottom, right, top = (value / drawing.ratio for value in drawing_extent(drawing))
    return left, bottom, right, top


def box_of(points: Iterable[Point]) -> Box:
    """Lowest x and y, highest x and y of some points, of which there is at least one."""
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def box_ring(box: Box) -> Ring:
    """The corners of a box, from the lower left round to the upper left."""
    left, bottom, right, top = box
    return (left, bottom), (right, bottom), (right, top), (left, top)


def box_sides(box: Box) -> tuple[Segment, ...]:
    """The sides of a box one after the other, from the lower one on."""
    ring = box_ring(box)
    return tuple((*a, *b) for a, b in zip(ring, (*ring[1:], ring[0]), strict=True))


def text_corners(text: Text) -> tuple[Point, Point, Point, Point]:
    """The corners of the turned box that holds a line of writing, descenders to ascenders.

    From its lower left on, counter-clockwise as the writing is read.
    """
    width = text_width(text.text, text.height, text.bold)
    left = -width * _BEFORE[text.anchor]
    low, high = -DESCENT * text.height, ASCENT * text.height
    turn = radians(text.rotation)
    along, up = cos(turn), sin(turn)
    x, y = text.at

    def corner(u: float, v: float) -> Point:
        return x + u * along - v * up, y + u * up + v * along

    return corner(left, low), corner(left + width, low), corner(left + width, high), corner(left, high)


@lru_cache(maxsize=4096)
def text_box(text: Text) -> Box:
    """The upright box round a line of writing. Remembered, since it is asked for again and again."""
    return box_of(text_corners(text))


@lru_cache(maxsize=1024)
def dimension_box(dimension: Dimension) -> Box:
    """The same of a dimension's writing."""
    return text_box(dimension_text(dimension))


def list_texts(drawing: Drawing) -> tuple[Text, ...]:
    """Every line of writing on a drawing, that of dimensions included."""
    found = []
    for mark in drawing.marks:
        match mark:
            case Text():
                found.append(mark)
            case Dimension():
                found.append(dimension_text(mark))
    return tuple(text for text in found if text.text)


def list_words(marks: Iterable[Mark]) -> tuple[Box, ...]:
    """The boxes of all that `marks` write."""
    found: list[Box] = []
    for mark in marks:
        match mark:
            case Text() if mark.text:
                found.append(text_box(mark))
            case Dimension() if mark.text:
                found.append(dimension_box(mark))
    return tuple(found)


def list_boxes(placed: Placed, mark: Mark) -> tuple[Box, ...]:
    """The upright box on paper of each line of writing of one mark of a placed drawing."""
    ratio = placed.drawing.ratio
    x, y = placed.at
    return tuple(
        (x + left / ratio, y + bottom / ratio, x + right / ratio, y + top / ratio)
        for left, bottom, right, top in list_words((mark,))
    )


def _points(mark: Mark, ratio: float) -> Iterator[Point]:
    match mark:
        case Lines():
            yield from _ends(mark.segments)
        case Polyline():
            yield from mark.points
        case Region() | Hatch():
            for ring in mark.rings:
                yield from ring
        case Text():
            yield from text_corners(mark)
        case Dimension():
            yield from _ends(dimension_strokes(mark, ratio))
            yield from text_corners(dimension_text(mark))


def _ends(segments: Iterable[tuple[float, float, float, float]]) -> Iterator[Point]:
    for x1, y1, x2, y2 in segments:
        yield x1, y1
        yield x2, y2
