"""What fails, marked over a view: a heavy outline, a cross at its worst point and a number; words in a list.

Never by colour alone. What else is marked over a view on request is in render.view_marks.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import cos, dist, pi, sin

from model.check.finding import STATUS_WORD, Finding, Status
from model.check.wording import Wording
from model.surround import Surround
from render.clipping import clip_segment
from render.dimension_strings import TEXT_HEIGHT
from render.drawing import (
    Anchor,
    Dimension,
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
from render.extent import Box, list_words
from render.number_places import box_round, list_strokes
from render.symbols import circle_points
from render.view_marks import NOTE_SIZE
from render.visibility import Look, Projection

CROSS = 0.07
"""Half the size of the cross at a worst point, inches on paper. Shop choice."""
FLAG = 0.1
FLAG_SIDES = 24
"""Radius of the ring round a number, inches on paper, and how many sides it is drawn with. Shop choice."""
LIST_GAP = 0.15
LIST_STEP = 0.18
"""From the lowest dimension to the list of what fails, and from line to line, inches on paper."""
KEPT = frozenset({Pen.DIMENSION, Pen.TEXT, Pen.CLEARANCE, Pen.FAULT, Pen.BEYOND})
"""Lines that no number's ground hides any of."""
FURTHEST = 30
"""How many distances are tried for a number. Shop choice."""
_TURNS = sorted(range(-7, 9), key=abs)
_WAYS = tuple((cos(pi / 4 + turn * pi / 8), sin(pi / 4 + turn * pi / 8)) for turn in _TURNS)
"""Directions that are tried, the upper right first and the lower left last."""


def draw_faults(
    surround: Surround,
    view: str,
    look: Look,
    findings: Sequence[Finding],
    projection: Projection,
    ratio: float,
) -> list[Mark]:
    """Failing findings that have a place: parts outlined, worst points crossed."""
    placed = _list_placed(findings)
    if not placed:
        return []
    marks = _outline_parts(surround, placed, projection) if view in ("front", "side", "plan") else []
    return [*marks, *(_cross(point, part, ratio) for point, part in _list_spots(placed, look))]


def number_faults(
    surround: Surround,
    view: str,
    look: Look,
    findings: Sequence[Finding],
    under: Sequence[Mark],
    ratio: float,
) -> list[Mark]:
    """A number in a ring for each of them beside its worst point, clear of what is `under` it.

    What the numbers stand for is listed under the front view, below its dimensions.
    """
    placed = _list_placed(findings)
    if not placed:
        return []
    marks = _place_flags(_list_spots(placed, look), under, ratio)
    if view == "front":
        marks += _list_words(surround, placed, [m for m in under if isinstance(m, Dimension)], ratio)
    return marks


def _list_placed(findings: Sequence[Finding]) -> list[Finding]:
    return [f for f in findings if f.status is Status.FAIL and f.at is not None]


def _list_spots(placed: Sequence[Finding], look: Look) -> list[tuple[Point, str]]:
    """Where each is worst in the view, and the part it is about."""
    return [(look.point(finding.at), finding.part) for finding in placed if finding.at is not None]


def _place_flags(spots: Sequence[tuple[Point, str]], under: Sequence[Mark], ratio: float) -> list[Mark]:
    """Rings with numbers, joined to their spots by lines that go under all of them."""
    kept = [mark for mark in under if isinstance(mark, Dimension) or getattr(mark, "pen", None) in KEPT]
    strokes = list_strokes([mark for mark in kept if not isinstance(mark, Hatch)], ratio)
    room = _Room(strokes, list_words(under), 1.1 * FLAG * ratio)
    centres: list[Point] = []
    for point, _ in spots:
        centres.append(_find_centre(point, room, ratio))
        room.take(centres[-1])
    joins = [_join(point, centre, part, ratio) for (point, part), centre in zip(spots, centres, strict=True)]
    rings = (
        mark
        for number, ((_, part), centre) in enumerate(zip(spots, centres, strict=True), start=1)
        for mark in _flag(centre, number, part, ratio)
    )
    return [*joins, *rings]


class _Room:
    """Where rings of a `radius` and lines to them may stand: off lines, words and other rings.

    Without arrays: a ring mostly stands where it is tried first.
    """

    def __init__(self, lines: Sequence[Segment], words: Sequence[Box], radius: float) -> None:
        self._lines, self._words, self.radius = lines, [*words], radius

    def take(self, centre: Point) -> None:
        """A ring stands there."""
        self._words.append(box_round(centre, 2 * self.radius, 2 * self.radius))

    def round(self, point: Point, reach: float) -> _Room:
        """What of it lies no further off than that, level and plumb."""
        left, low, right, high = box_round(point, 2 * reach, 2 * reach)
        lines = list(_list_through(self._lines, (left, low, right, high)))
        words = [b for b in self._words if b[0] < right and left < b[2] and b[1] < high and low < b[3]]
        return _Room(lines, words, self.radius)

    def is_free(self, centre: Point) -> bool:
        """Whether a ring there covers no line and no word."""
        left, low, right, high = box = box_round(centre, 2 * self.radius, 2 * self.radius)
        for x0, y0, x1, y1 in self._words:
            if x0 < right and left < x1 and y0 < high and low < y1:
                return False
        return not any(clip_segment(line, box) for line in _list_through(self._lines, box))

    def is_open(self, join: Segment) -> bool:
        """Whether a line goes through no word and no ring."""
        return not any(clip_segment(join, box) for box in self._words)


def _list_through(lines: Sequence[Segment], box: Box) -> Iterator[Segment]:
    """Those of `lines` whose own boxes lie over `box`: few, of which each may still pass by it."""
    left, low, right, high = box
    for line in lines:
        x0, y0, x1, y1 = line
        across = (x0 < right or x1 < right) and (left < x0 or left < x1)
        if across and (y0 < high or y1 < high) and (low < y0 or low < y1):
            yield line


def _find_centre(point: Point, room: _Room, ratio: float) -> Point:
    """The nearest place for a number's ring; aside and upward where none is free."""
    x, y = point
    clear = 1.4 * CROSS * ratio + room.radius
    reach, near = 0.0, room
    for step in range(FURTHEST):
        away = clear + step * room.radius / 2
        if away + room.radius > reach:
            reach = 2 * (away + room.radius)
            near = room.round(point, reach)
        for along, up in _WAYS:
            centre = x + away * along, y + away * up
            if near.is_free(centre) and near.is_open((x, y, *centre)):
                return centre
    return x + (-clear if x < 0 else clear), y + clear


def _join(point: Point, centre: Point, part: str, ratio: float) -> Lines:
    away = dist(point, centre)
    x, y = (c + (p - c) * FLAG * ratio / away for c, p in zip(centre, point, strict=True))
    return Lines(Pen.FAULT, ((x, y, *point),), part)


def _flag(centre: Point, number: int, part: str, ratio: float) -> tuple[Mark, ...]:
    ring, height = circle_points(centre, FLAG * ratio, FLAG_SIDES), FLAG * ratio
    at = centre[0], centre[1] - height / 2
    return (
        Region(Fill.PAPER, (ring,), part),
        Polyline(Pen.FAULT, ring, True, part),
        Text(str(number), at, height, Anchor.MIDDLE, 0.0, True, Pen.FAULT, part),
    )


def _outline_parts(surround: Surround, findings: Sequence[Finding], projection: Projection) -> list[Mark]:
    owners = {mark: i for i, mark in enumerate(surround.marks)}
    concerned = {owners[mark]: f.part for f in findings for mark in f.boards if mark in owners}
    marks: list[Mark] = []
    shown = [owner for owner in projection.seen_owners() if owner in concerned]
    for owner, rings in zip(shown, projection.rings_of_each(shown), strict=True):
        part = concerned[owner]
        marks.append(Region(Fill.FAULT, rings, part))
        marks += [Polyline(Pen.FAULT, ring, True, part) for ring in rings]
    return marks


def _cross(point: Point, part: str, ratio: float) -> Lines:
    (x, y), size = point, CROSS * ratio
    strokes = ((x - size, y - size, x + size, y + size), (x - size, y + size, x + size, y - size))
    return Lines(Pen.FAULT, strokes, part)


def _list_words(
    surround: Surround, findings: Sequence[Finding], dimensions: Sequence[Dimension], ratio: float
) -> list[Mark]:
    """One line for each number, under everything that is drawn."""
    height = TEXT_HEIGHT * NOTE_SIZE * ratio
    lowest = min(
        [
            surround.layout.floor,
            *(min(d.line, d.text_at[1] - d.height / 2) for d in dimensions if not d.vertical),
        ]
    )
    left = -max(surround.layout.shelf_reach, surround.layout.facing_side)
    marks: list[Mark] = []
    for number, finding in enumerate(findings, start=1):
        at = (left, lowest - (LIST_GAP + number * LIST_STEP) * ratio)
        marks.append(
            Text(f"{number}  {_words(surround, finding)}", at, height, pen=Pen.FAULT, stands_for=finding.part)
        )
    return marks


def _words(surround: Surround, finding: Finding) -> str:
    words = f"{finding.part.capitalize()} {STATUS_WORD[finding.status]}"
    if finding.measured is None or finding.limit is None or finding.unit != "in":
        return words
    wording = Wording(surround.job.about.length_style)
    measured, limit = wording.pair(finding.measured, finding.limit)
    return f"{words}: {measured} from the opening, {limit} needed"
