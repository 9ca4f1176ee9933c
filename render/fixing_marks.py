"""What fixes a surround and runs inside it, over a view: anchors on request, and a cord way with its holes.

Where they lie is worked out in model.takeoff.anchors and model.takeoff.cord_way.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, dist, pi, sin

from model.board import AXES, Point3
from model.surround import Surround
from model.takeoff.anchors import plan_anchors
from model.takeoff.cord_way import Hole, plan_cord_way
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
from render.visibility import Look

SIDES = 32
"""Sides that a circle is drawn with."""
OVER = 1.3
"""How far a centre cross passes its circle. Common practice: a little."""
ANCHOR = 0.05
"""Radius of an anchor's circle, inches on paper. Shop choice."""
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


def draw_cord_way(surround: Surround, look: Look, ratio: float) -> list[Mark]:
    """The line the cords run along, and both holes: round where seen along them, else their two edges."""
    way = plan_cord_way(surround)
    if way is None:
        return []
    x, z = way.middle
    marks: list[Mark] = []
    if look.axes[2] != 1:
        ends = [look.point((x, y, z)) for y in (way.low, way.high)]
        marks.append(Lines(Pen.CENTRE, ((*ends[0], *ends[1]),), "cord way"))
    for hole in way.holes:
        marks += _draw_hole(surround, hole, look, ratio)
    return marks


def _draw_hole(surround: Surround, hole: Hole, look: Look, ratio: float) -> list[Mark]:
    along = AXES.index(hole.axis)
    if along == look.axes[2]:
        at, radius = look.point(hole.centre), hole.diameter / 2
        size = format_length(hole.diameter, surround.job.about.length_style)
        height = number_height(ratio)
        place = (at[0], at[1] - OVER * radius - 1.4 * height)
        words = Text(f"{size} hole, cords", place, height, Anchor.MIDDLE, stands_for="cord way")
        return [*_target(at, radius, "cord way"), words]
    across = look.axes[1] if along == look.axes[0] else look.axes[0]
    edges = []
    for way in (-1.0, 1.0):
        first, last = (_point(hole, along, end, across, way) for end in hole.span)
        edges.append((*look.point(first), *look.point(last)))
    return [Lines(Pen.GUIDE, tuple(edges), "cord way")]


def _point(hole: Hole, along: int, end: float, across: int, way: float) -> Point3:
    """An end of one of a hole's two edges."""
    room = list(hole.centre)
    room[along] = end
    room[across] += way * hole.diameter / 2
    return (room[0], room[1], room[2])


def _target(at: Point, radius: float, stands_for: str) -> list[Mark]:
    turns = [2 * pi * k / SIDES for k in range(SIDES)]
    ring = tuple((at[0] + radius * cos(turn), at[1] + radius * sin(turn)) for turn in turns)
    (x, y), reach = at, OVER * radius
    cross = ((x - reach, y, x + reach, y), (x, y - reach, x, y + reach))
    return [Polyline(Pen.EDGE, ring, True, stands_for), Lines(Pen.CENTRE, cross, stands_for)]
