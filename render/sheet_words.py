"""Where marks, sizes and the numbers of cuts stand on one sheet of a cutting plan, out of each other's way.

What the sheet is cut into is drawn in sheet_face.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist, hypot, inf

from render.drawing import MM, Anchor, Fill, Mark, Pen, Point, Polyline, Region, Segment, Text
from render.extent import Box, box_of, text_corners
from render.lettering import text_width
from render.symbols import circle_points
from render.tables import SMALL

AIR = 0.8 * MM
"""Clear on each side of what is written in a part. Shop choice."""
NUMBER = 5.4 * MM
"""Across the ground that a cut's number stands on, some air round it included."""
RADIUS = NUMBER / 2 - 0.3 * MM
NUMBER_SIDES = 24
STEP = NUMBER / 4
"""From one place that is tried to the next, for numbers and for words."""
ON_NUMBER, ON_WORDS, ON_LINE = 100, 10, 1
"""How bad it is for a number to stand on another one, on words, and on the line of another cut."""
DEEP = 0.25
"""Nearer than this much less than NUMBER, as a part of it, one number hides too much of another's ring."""
BEYOND = 1
"""How bad it is for a number to stand beyond its cut."""
HAIR = 1e-6
Corners = tuple[Point, Point, Point, Point]


@dataclass(frozen=True, slots=True)
class Label:
    """What may be written in a part of a sheet, from the fullest to the shortest, and what it stands for."""

    ring: Corners
    choices: tuple[str, ...]
    stands_for: str = ""


def place_words(
    labels: Sequence[Label], lines: Sequence[Segment]
) -> tuple[tuple[Text | None, ...], tuple[Point, ...]]:
    """What is written in each part, None where it has no room; the middle of each cut's number, on its line.

    Numbers keep off words where they can, those of short cuts first, since long ones leave more choice; else
    words go out of their way within their parts.
    """
    wanted = [box_of(text_corners(text)) for label in labels if (text := next(_list_texts(label), None))]
    numbers: dict[int, Point] = {}
    for i in sorted(range(len(lines)), key=lambda i: _length(lines[i])):
        others = [*lines[:i], *lines[i + 1 :]]
        numbers[i] = _place_number(lines[i], list(numbers.values()), wanted, others)
    places = tuple(numbers[i] for i in range(len(lines)))
    return tuple(_write(label, places) for label in labels), places


def list_overhang(numbers: Sequence[Point], low: float) -> tuple[float, float]:
    """How far rings of numbers reach over a sheet's upper edge, which lies at 0, and under its `low` one."""
    reach = [(y - RADIUS, y + RADIUS) for _, y in numbers]
    return max([0.0, *(top for _, top in reach)]), max([0.0, *(low - foot for foot, _ in reach)])


def draw_number(text: str, at: Point) -> Iterator[Mark]:
    """A cut's number in a ring, on a ground of its own."""
    ring = circle_points(at, RADIUS, NUMBER_SIDES)
    yield Region(Fill.PAPER, (ring,))
    yield Polyline(Pen.EDGE, ring, closed=True)
    yield Text(text, (at[0], at[1] - SMALL / 2), SMALL, Anchor.MIDDLE)


def _write(label: Label, numbers: Sequence[Point]) -> Text | None:
    """The first of the words that fits, level or else upright, nearest to the middle and clear of numbers."""
    for text in _list_texts(label):
        box = box_of(text_corners(text))
        if all(_away(at, box) >= RADIUS for at in numbers):
            return text
    return None


def _list_texts(label: Label) -> Iterator[Text]:
    (x0, y0), _, (x1, y1), _ = label.ring
    wide, tall = x1 - x0 - 2 * AIR, y1 - y0 - 2 * AIR
    for words in label.choices:
        length = text_width(words, SMALL)
        for along, across, turn in ((wide, tall, 0.0), (tall, wide, 90.0)):
            if length <= along and across >= 1.2 * SMALL:
                for aside in _list_shifts((along - length) / 2):
                    yield _text(label, words, aside, turn)


def _text(label: Label, words: str, aside: float, turn: float) -> Text:
    """Words in the middle of a part, or so far from it along them."""
    (x0, y0), _, (x1, y1), _ = label.ring
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    at = (x + SMALL / 2, y + aside) if turn else (x + aside, y - SMALL / 2)
    return Text(words, at, SMALL, Anchor.MIDDLE, turn, stands_for=label.stands_for)


def _list_shifts(most: float) -> Iterator[float]:
    """From the middle outwards, to both sides by turns, the furthest there is last."""
    yield 0.0
    for step in range(1, int(most / STEP) + 1):
        yield from (step * STEP, -step * STEP)
    yield from (most, -most)


def _place_number(
    line: Segment, numbers: Sequence[Point], words: Sequence[Box], others: Sequence[Segment]
) -> Point:
    """The first place along a cut that is in nobody's way; where there is none, the least bad one.

    Places beyond its ends count too where those on it lie deep in numbers; `join_numbers` leads there.
    """

    def how_bad(at: Point) -> float:
        return (
            ON_NUMBER * sum(max(1.0 - dist(at, other) / NUMBER, 0.0) for other in numbers)
            + ON_WORDS * sum(max(1.0 - _away(at, box) / RADIUS, 0.0) for box in words)
            + ON_LINE * sum(_away(at, _box_of(other)) < RADIUS for other in others)
        )

    least, place = inf, line[:2]
    for at in _list_along(line):
        bad = how_bad(at)
        if not bad:
            return at
        if bad < least:
            least, place = bad, at
    for at in _list_beyond(line) if least > DEEP * ON_NUMBER else ():
        if (bad := how_bad(at) + BEYOND) < least:
            least, place = bad, at
    return place


def _list_along(line: Segment) -> Iterator[Point]:
    """Places along a cut from where it begins, its middle first where it is shorter than a number."""
    x0, y0, x1, y1 = line
    length = _length(line)
    room = max(length - NUMBER, 0.0)
    steps = max(int(room / STEP), 1)
    for step in range(steps + 1):
        part = (NUMBER / 2 + room * step / steps) / length if room else 0.5
        yield x0 + (x1 - x0) * part, y0 + (y1 - y0) * part


def _list_beyond(line: Segment) -> Iterator[Point]:
    """Places on the line of a cut past its ends, nearest first."""
    x0, y0, x1, y1 = line
    length = _length(line)
    for step in range(8):
        part = (NUMBER / 2 + step * STEP) / length
        yield x1 + (x1 - x0) * part, y1 + (y1 - y0) * part
        yield x0 - (x1 - x0) * part, y0 - (y1 - y0) * part


def join_numbers(lines: Sequence[Segment], numbers: Sequence[Point]) -> tuple[Segment, ...]:
    """A line from the nearer end of each cut whose number stands beyond it."""
    joins = []
    for line, at in zip(lines, numbers, strict=True):
        if _away(at, _box_of(line)) > HAIR:
            end = min(line[:2], line[2:], key=lambda point: dist(point, at))
            joins.append((*end, *at))
    return tuple(joins)


def _length(line: Segment) -> float:
    x0, y0, x1, y1 = line
    return hypot(x1 - x0, y1 - y0)


def _box_of(line: Segment) -> Box:
    """A level or plumb line as a box without width."""
    x0, y0, x1, y1 = line
    return min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)


def _away(at: Point, box: Box) -> float:
    """How far a point is from a box; nothing inside it."""
    x, y = at
    return hypot(max(box[0] - x, 0.0, x - box[2]), max(box[1] - y, 0.0, y - box[3]))
