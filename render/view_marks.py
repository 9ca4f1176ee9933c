"""What is marked over a view on request: the keep-out, the allowed projection, and what fails.

A failing part is marked by a heavy outline, a cross at its worst point and words; never by colour alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from model.check.finding import STATUS_WORD, Finding, Status
from model.check.keep_out import list_allowed_beside, list_allowed_slope, list_keep_out_rings
from model.surround import Surround
from model.units import format_length
from render.clipping import clip_segment
from render.dimension_strings import TEXT_HEIGHT
from render.dimension_strokes import dimension_strokes
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
    Ring,
    Segment,
    Text,
)
from render.extent import box_of, box_ring, text_corners
from render.symbols import circle_points
from render.visibility import Look, Projection

KEEP_OUT_HATCH = (60.0, 0.22)
"""Angle in degrees and spacing in inches on paper of the keep-out's hatch. Shop choice."""
CROSS = 0.07
"""Half the size of the cross at a worst point, inches on paper. Shop choice."""
FLAG = 0.1
FLAG_SIDES = 24
"""Radius of the ring round a number, inches on paper, and how many sides it is drawn with. Shop choice."""
RING_WORDS = ("no wood inside", "projection limited inside")
"""What the inner and the outer outline of the keep-out mean."""
LIST_GAP = 0.15
LIST_STEP = 0.18
"""From the lowest dimension to the list of what fails, and from line to line, inches on paper."""
BESIDE_WORDS = "wood beside the opening stays out of this shape"
SLOPE_WORDS = ("wood over the opening", "stays above and", "behind this line")
SLOPE_STEP, SLOPE_TRIES = 0.4, 30
"""From one height tried for them to the next, in their capitals, and how many are tried each way."""
NOTE_SIZE = 0.85
"""Notes over a view beside its dimensions. Shop choice."""


def draw_clearance(
    surround: Surround, view: str, ratio: float, dimensions: Sequence[Dimension] = ()
) -> list[Mark]:
    """The band that no wood may enter (front), how far wood may come forward at each height (side) or at each
    distance beside the opening (from above).

    What the side's line means stands clear of `dimensions` where there is such a place.
    """
    site = surround.job.site
    if view == "front":
        mouth = surround.layout.opening_side
        top = surround.layout.opening_top
        opening = ((-mouth, 0.0), (mouth, 0.0), (mouth, top), (-mouth, top))
        rings = list_keep_out_rings(site)
        outlines = [Polyline(Pen.CLEARANCE, ring, closed=True, stands_for="keep-out") for ring in rings]
        words = [
            mark
            for ring, text in zip(rings, RING_WORDS, strict=False)
            for mark in _ring_words(ring, text, ratio)
        ]
        return [_no_wood(rings[0], opening, ratio), *outlines, *words] if rings else []
    if view in ("side", "vertical_section"):
        return _slope(surround, ratio, dimensions)
    return _beside(surround, ratio)


def _no_wood(ring: Ring, opening: Ring, ratio: float) -> Hatch:
    angle, spacing = KEEP_OUT_HATCH
    return Hatch(Pen.CLEARANCE, (ring, opening), angle, spacing * ratio, "keep-out")


def _ring_words(ring: Ring, text: str, ratio: float) -> tuple[Region, Text]:
    """What an outline of the keep-out means, under its top, on a ground that keeps lines off it."""
    height = TEXT_HEIGHT * NOTE_SIZE * ratio
    at = (0.0, max(y for _, y in ring) - 1.6 * height)
    said = Text(text, at, height, Anchor.MIDDLE, pen=Pen.CLEARANCE, stands_for="keep-out")
    return Region(Fill.PAPER, (box_ring(box_of(text_corners(said))),), "keep-out"), said


def _slope(surround: Surround, ratio: float, dimensions: Sequence[Dimension]) -> list[Mark]:
    """Over the opening, the line that wood may reach but not pass."""
    slope = list_allowed_slope(surround.job.site)
    if len(slope) < 2:
        return []
    top = surround.layout.opening_top
    line = tuple((-projection, top + above) for above, projection in slope)
    x, y = min(line)
    height = TEXT_HEIGHT * NOTE_SIZE * ratio
    notes = _slope_words((x - 0.08 * ratio, y), height, dimensions, ratio)
    return [Polyline(Pen.CLEARANCE, line, stands_for="keep-out"), *notes]


def _beside(surround: Surround, ratio: float) -> list[Mark]:
    """From above, the shape before and beside the opening that wood in front of the masonry stays out of."""
    boundary = list_allowed_beside(surround.job.site)
    if len(boundary) < 2:
        return []
    mouth = surround.layout.opening_side
    right = tuple((mouth + beside, -out) for beside, out in boundary)
    ring = (*right, *((-x, y) for x, y in reversed(right)))
    angle, spacing = KEEP_OUT_HATCH
    height = TEXT_HEIGHT * NOTE_SIZE * ratio
    low = min(y for _, y in ring)
    words = Text(BESIDE_WORDS, (0.0, low - 1.6 * height), height, Anchor.MIDDLE, pen=Pen.CLEARANCE)
    return [
        Hatch(Pen.CLEARANCE, (ring,), angle, spacing * ratio, "keep-out"),
        Polyline(Pen.CLEARANCE, ring, closed=True, stands_for="keep-out"),
        words,
    ]


def _slope_words(at: Point, height: float, dimensions: Sequence[Dimension], ratio: float) -> tuple[Text, ...]:
    """What the line means, its lines ending at `at` or moved up and down to where nothing strikes them."""
    strokes = [stroke for dimension in dimensions for stroke in dimension_strokes(dimension, ratio)]
    places = [SLOPE_STEP * n * way for n in range(SLOPE_TRIES) for way in (-1.0, 1.0)]
    tried = (_set_words((at[0], at[1] + place * height), height) for place in places)
    free = (texts for texts in tried if not any(_strikes(s, text) for s in strokes for text in texts))
    return next(free, _set_words(at, height))


def _set_words(at: Point, height: float) -> tuple[Text, ...]:
    return tuple(
        Text(text, (at[0], at[1] + (0.3 - 1.6 * row) * height), height, Anchor.END, pen=Pen.CLEARANCE)
        for row, text in enumerate(SLOPE_WORDS)
    )


def _strikes(stroke: Segment, text: Text) -> bool:
    return clip_segment(stroke, box_of(text_corners(text))) is not None


def draw_faults(
    surround: Surround,
    view: str,
    look: Look,
    findings: Sequence[Finding],
    projection: Projection,
    dimensions: Sequence[Dimension],
    ratio: float,
) -> list[Mark]:
    """Failing findings that have a place: parts outlined, worst points crossed and numbered.

    What the numbers stand for is listed under the front view, clear of its `dimensions`.
    """
    placed = [f for f in findings if f.status is Status.FAIL and f.at is not None]
    if not placed:
        return []
    marks = _outline_parts(surround, placed, projection) if view in ("front", "side", "plan") else []
    points = [look.point(finding.at) for finding in placed if finding.at is not None]
    marks += [_cross(point, finding.part, ratio) for point, finding in zip(points, placed, strict=True)]
    flags: list[Point] = []
    for number, (point, finding) in enumerate(zip(points, placed, strict=True), start=1):
        marks += _flag(point, number, finding.part, flags, ratio)
    return marks + _list_words(surround, placed, dimensions, ratio) if view == "front" else marks


def _outline_parts(surround: Surround, findings: Sequence[Finding], projection: Projection) -> list[Mark]:
    owners = {mark: i for i, mark in enumerate(surround.marks)}
    concerned = {owners[mark]: f.part for f in findings for mark in f.boards if mark in owners}
    marks: list[Mark] = []
    for owner in projection.seen_owners():
        if owner in concerned:
            rings, part = projection.rings_of(owner), concerned[owner]
            marks.append(Region(Fill.FAULT, rings, part))
            marks += [Polyline(Pen.FAULT, ring, True, part) for ring in rings]
    return marks


def _cross(point: Point, part: str, ratio: float) -> Lines:
    (x, y), size = point, CROSS * ratio
    strokes = ((x - size, y - size, x + size, y + size), (x - size, y + size, x + size, y - size))
    return Lines(Pen.FAULT, strokes, part)


def _flag(point: Point, number: int, part: str, flags: list[Point], ratio: float) -> list[Mark]:
    """The number of a finding in a ring beside its `point`, clear of the `flags` set before."""
    (x, y), radius = point, FLAG * ratio
    aside = -1.0 if x < 0 else 1.0
    centre = (x + aside * 2.2 * radius, y + 2.2 * radius)
    while any(hypot(centre[0] - a, centre[1] - b) < 2.2 * radius for a, b in flags):
        centre = (centre[0], centre[1] + 0.6 * radius)
    flags.append(centre)
    ring = circle_points(centre, radius, FLAG_SIDES)
    height = radius
    length = hypot(centre[0] - x, centre[1] - y)
    edge = tuple(c + (p - c) * radius / length for c, p in zip(centre, point, strict=True))
    return [
        Lines(Pen.FAULT, ((edge[0], edge[1], x, y),), part),
        Region(Fill.PAPER, (ring,), part),
        Polyline(Pen.FAULT, ring, True, part),
        Text(
            str(number),
            (centre[0], centre[1] - height / 2),
            height,
            Anchor.MIDDLE,
            0.0,
            True,
            Pen.FAULT,
            part,
        ),
    ]


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
    style = surround.job.about.length_style
    words = f"{finding.part.capitalize()} {STATUS_WORD[finding.status]}"
    if finding.measured is None or finding.limit is None or finding.unit != "in":
        return words
    measured, limit = (format_length(value, style) for value in (finding.measured, finding.limit))
    return f"{words}: {measured} from the opening, {limit} needed"
