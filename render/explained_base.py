"""What the small drawings of findings are put together from: the site, the boards, crosses and distances.

Which of them a finding shows is render.explained's and that of the files named after what they show.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from model.board import Point3
from model.once import once
from model.surround import Surround
from model.units import format_length
from render.board_outline import outline_board, place_point
from render.dimension_strings import TEXT_HEIGHT
from render.drawing import (
    Anchor,
    Dimension,
    Drawing,
    Fill,
    Lines,
    Mark,
    Pen,
    Point,
    Polyline,
    Region,
    Segment,
    Text,
)
from render.extent import box_ring, drawing_extent
from render.shifting import shift_mark

CROSS = 0.07
LINE = 0.3
"""Half a cross, and how far a dimension line keeps off what it measures, inches on paper."""
APART = 0.9
"""Between two views, inches on paper."""
DEEP = 8.0
"""How much of the masonry is shown from above, in."""


def stand_beside(first: Iterable[Mark], second: Iterable[Mark], ratio: float) -> list[Mark]:
    """Two views, the second right of the first."""
    left, right = list(first), list(second)
    edge = drawing_extent(Drawing(tuple(left), ratio))[2]
    start = drawing_extent(Drawing(tuple(right), ratio))[0]
    return [*left, *(shift_mark(mark, (edge - start + APART * ratio, 0.0)) for mark in right)]


def stand_under(first: Iterable[Mark], second: Iterable[Mark], ratio: float) -> list[Mark]:
    """Two views, the second under the first."""
    upper, lower = list(first), list(second)
    edge = drawing_extent(Drawing(tuple(upper), ratio))[1]
    top = drawing_extent(Drawing(tuple(lower), ratio))[3]
    return [*upper, *(shift_mark(mark, (0.0, edge - top - APART / 2 * ratio)) for mark in lower)]


def draw_front(surround: Surround, tinted: Collection[str]) -> Iterator[Mark]:
    """Facing, opening, all boards, the floor."""
    layout = surround.layout
    mouth, top, foot = layout.opening_side, layout.opening_top, layout.opening_foot
    facing = (-layout.facing_side, min(layout.floor, 0.0), layout.facing_side, layout.facing_top)
    yield Region(Fill.FACING, (box_ring(facing),))
    yield Region(Fill.OPENING, (box_ring((-mouth, foot, mouth, top)),))
    yield from draw_boards(surround, tinted, "front")
    reach = max(layout.facing_side, layout.hearth_side)
    yield Lines(Pen.GROUND, ((-reach, layout.floor, reach, layout.floor),))


def draw_side(surround: Surround, tinted: Collection[str]) -> Iterator[Mark]:
    """The masonry's face, all boards seen from the right, the floor."""
    layout = surround.layout
    yield Lines(Pen.SITE, ((0.0, layout.floor, 0.0, max(layout.shelf_top, layout.facing_top)),))
    yield Lines(Pen.GROUND, ((-max(layout.hearth_front, 12.0), layout.floor, 2.0, layout.floor),))
    yield from draw_boards(surround, tinted, "side")


def draw_above(surround: Surround, tinted: Collection[str]) -> Iterator[Mark]:
    """Masonry and opening cut through, all boards seen from above."""
    yield from draw_masonry(surround)
    yield from draw_boards(surround, tinted, "plan")


def draw_masonry(surround: Surround) -> Iterator[Mark]:
    """Both sides of the opening from above."""
    for x0, x1 in list_jambs(surround):
        yield Region(Fill.MASONRY, (box_ring((x0, 0.0, x1, DEEP)),))


def list_jambs(surround: Surround) -> Iterator[tuple[float, float]]:
    """From where to where the masonry beside the opening runs, left and right."""
    mouth = surround.layout.opening_side
    out = max(surround.layout.facing_side, mouth + 4)
    yield -out, -mouth
    yield mouth, out


def draw_boards(surround: Surround, tinted: Collection[str], view: str) -> Iterator[Mark]:
    """All boards thinly, those whose marks are named heavily."""
    outlines = once(
        surround, ("outlines", view), lambda: tuple(outline_board(board, view) for board in surround.boards)
    )
    pairs = list(zip(outlines, surround.marks, strict=True))
    for ring, mark in pairs:
        if mark not in tinted:
            yield Polyline(Pen.ARRIS, ring, True)
    for ring, mark in pairs:
        if mark in tinted:
            yield Region(Fill.FAULT, (ring,))
            yield Polyline(Pen.OUTLINE, ring, True)


def draw_cross(at: Point3, view: str, ratio: float) -> Lines:
    """A slanted cross at a point of the room."""
    arm, (x, y) = CROSS * ratio, place_point(at, view)
    strokes: tuple[Segment, ...] = (
        (x - arm, y - arm, x + arm, y + arm),
        (x - arm, y + arm, x + arm, y - arm),
    )
    return Lines(Pen.FAULT, strokes)


def measure(
    surround: Surround, first: Point, second: Point, vertical: bool, line: float, ratio: float
) -> Dimension:
    """One distance with its text in the middle, its line at `line` across the way it is measured."""
    i = 1 if vertical else 0
    height = TEXT_HEIGHT * ratio
    middle = (first[i] + second[i]) / 2
    off = line - 0.9 * height
    at = (off, middle) if vertical else (middle, off)
    text = format_length(abs(second[i] - first[i]), surround.job.about.length_style)
    return Dimension(first, second, vertical, line, text, at, height)


def write(text: str, at: Point, ratio: float, anchor: Anchor = Anchor.MIDDLE, pen: Pen = Pen.TEXT) -> Text:
    """A word in a drawing, as high as a dimension."""
    return Text(text, at, TEXT_HEIGHT * ratio, anchor, pen=pen)


def list_boards_of(surround: Surround, word: str) -> tuple[str, ...]:
    """Marks of the boards that are lifted with what a part is called."""
    return surround.marks_of(lambda board: bool(word) and word.rstrip("s") in board.assembly)
