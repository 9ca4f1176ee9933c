"""What fixes a surround and runs inside it, over a view: anchors on request, and a cord way with its holes.

Where they lie is worked out in model.takeoff.anchors and model.build.cord_way.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import cos, dist, pi, sin

from model.board import AXES, Point3
from model.build.bores import is_bored, is_of
from model.build.cord_way import Hole, plan_cord_way
from model.surround import Surround
from model.takeoff.anchors import plan_anchors
from model.units import format_length
from render.drawing import Anchor, Lines, Mark, Pen, Point, Polyline, Text
from render.number_places import (
    Paper,
    join_number,
    list_strokes,
    list_words,
    number_height,
    number_size,
    place_numbers,
    write_number,
)
from render.visibility import Look, Projection

SIDES = 32
"""Sides that a circle is drawn with."""
OVER = 1.3
"""How far a centre cross passes its circle. Common practice: a little."""
ANCHOR = 0.05
"""Radius of an anchor's circle, inches on paper. Shop choice."""
BESIDE, ROUND = 1 / 32, 8
"""How far beside a hole's rim it is looked for, in., and at how many places. Shop choice."""
FAR = 0.5
"""A number further from its mark than this, in its own heights, is joined to it by a line. Shop choice."""


def draw_anchors(surround: Surround, ratio: float, under: Sequence[Mark] = ()) -> list[Mark]:
    """Each anchor as a numbered circle and cross on the front view, in the order of its table.

    A number stands clear of the lines of `under`, with a line to its anchor where it cannot stand close.
    """
    spots = [(anchor.x, anchor.y) for anchor in plan_anchors(surround).anchors]
    numbers = [str(n) for n in range(1, len(spots) + 1)]
    radius, height = ANCHOR * ratio, number_height(ratio)
    sizes = [number_size(number, height) for number in numbers]
    clear = OVER * radius
    marks: list[Mark] = []
    places = place_numbers(spots, sizes, clear, Paper(list_strokes(under), words=list_words(under)))
    for spot, number, size, found in zip(spots, numbers, sizes, places, strict=True):
        place = found or (spot[0] + clear + size[0] / 2, spot[1] + clear + size[1] / 2)
        marks += _target(spot, radius, "anchor")
        marks.append(write_number(number, place, height, "anchor"))
        join = join_number(spot, place, size, clear)
        if dist(join[:2], join[2:]) > FAR * height:
            marks.append(Lines(Pen.TEXT, (join,), "anchor"))
    return marks


def draw_cord_way(surround: Surround, projection: Projection, look: Look, ratio: float) -> list[Mark]:
    """The line the cords run along, its holes and what is sawn out of the sheet behind the loose panel.

    What is hidden in `projection` is dashed, what was cut away is left out. A hole that is looked through
    is drawn there; it gets its centre lines and its size.
    """
    way = plan_cord_way(surround)
    if way is None:
        return []
    x, z = way.middle
    marks: list[Mark] = []
    if look.axes[2] != 1:
        ends = [look.point((x, y, z)) for y in (way.low, way.high)]
        marks.append(Lines(Pen.CENTRE, ((*ends[0], *ends[1]),), "cord way"))
    for hole in way.holes:
        marks += _draw_hole(surround, hole, projection, look, ratio)
    if way.sheet is not None and look.axes[2] == 2:
        cut_out = [bore for bore in surround.boards[way.sheet].bores if not bore.is_round]
        marks += [Polyline(Pen.GUIDE, bore.ring, True, "cord way") for bore in cut_out]
    return marks


def _draw_hole(
    surround: Surround, hole: Hole, projection: Projection, look: Look, ratio: float
) -> list[Mark]:
    along = AXES.index(hole.axis)
    if along == look.axes[2]:
        return _draw_end(surround, hole, projection, look, ratio)
    across = look.axes[1] if along == look.axes[0] else look.axes[0]
    bored = [b for board in surround.boards for b in board.bores if is_of(b, hole) and not b.breaks]
    if not bored:
        return []
    span = min(bore.span[0] for bore in bored), max(bore.span[1] for bore in bored)
    edges = []
    for way in (-1.0, 1.0):
        first, last = (_point(hole, along, end, across, way) for end in span)
        edges.append((*look.point(first), *look.point(last)))
    return [Lines(Pen.GUIDE, tuple(edges), "cord way")]


def _draw_end(surround: Surround, hole: Hole, projection: Projection, look: Look, ratio: float) -> list[Mark]:
    """A hole looked at along its axis."""
    left = [b for b in projection.solids.boards[: projection.solids.site_start] if is_bored(b, hole)]
    if not left:
        return []
    at, radius = look.point(hole.centre), hole.diameter / 2
    size = format_length(hole.diameter, surround.job.about.length_style)
    height = number_height(ratio)
    place = (at[0], at[1] - OVER * radius - 1.4 * height)
    words = Text(f"{size} hole, cords", place, height, Anchor.MIDDLE, stands_for="cord way")
    ring, cross = _target(at, radius, "cord way")
    if _is_seen(projection, hole, at):
        return [cross, words]
    return [replace(ring, pen=Pen.GUIDE), cross, words]


def _is_seen(projection: Projection, hole: Hole, at: Point) -> bool:
    """Whether wood that has the hole is the nearest all round it."""
    reach = hole.diameter / 2 + BESIDE
    turns = [2 * pi * (k + 0.3) / ROUND for k in range(ROUND)]
    owners = [projection.owner_at((at[0] + reach * cos(t), at[1] + reach * sin(t))) for t in turns]
    boards = projection.solids.boards
    return all(owner >= 0 and is_bored(boards[owner], hole) for owner in owners)


def _point(hole: Hole, along: int, end: float, across: int, way: float) -> Point3:
    """An end of one of a hole's two edges."""
    room = list(hole.centre)
    room[along] = end
    room[across] += way * hole.diameter / 2
    return (room[0], room[1], room[2])


def _target(at: Point, radius: float, stands_for: str) -> tuple[Polyline, Lines]:
    turns = [2 * pi * k / SIDES for k in range(SIDES)]
    ring = tuple((at[0] + radius * cos(turn), at[1] + radius * sin(turn)) for turn in turns)
    (x, y), reach = at, OVER * radius
    cross = ((x - reach, y, x + reach, y), (x, y - reach, x, y + reach))
    return Polyline(Pen.EDGE, ring, True, stands_for), Lines(Pen.CENTRE, cross, stands_for)
