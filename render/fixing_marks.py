"""What fixes a surround and runs inside it, over a view: anchors on request, and a cord way with its holes.

Where they lie is worked out in model.takeoff.anchors and model.build.cord_way.
"""

from __future__ import annotations

from dataclasses import replace
from math import cos, pi, sin

from model.board import AXES, Point3
from model.build.bores import is_bored, is_of
from model.build.cord_way import Hole, plan_cord_way
from model.surround import Surround
from model.takeoff.anchors import plan_anchors
from model.units import format_length
from render.drawing import Lines, Mark, Pen, Point, Polyline
from render.names import Name
from render.symbols import circle_points
from render.visibility import Look, Projection

SIDES = 32
"""Sides that a circle is drawn with."""
OVER = 1.3
"""How far a centre cross passes its circle. Common practice: a little."""
ANCHOR = 0.05
"""Radius of an anchor's circle, inches on paper. Shop choice."""
BESIDE, ROUND = 1 / 32, 8
"""How far beside a hole's rim it is looked for, in., and at how many places. Shop choice."""


def draw_anchors(surround: Surround, ratio: float) -> tuple[list[Mark], list[Name]]:
    """Each anchor as a circle and cross on the front view, and its number in the order of its table."""
    spots = [(anchor.x, anchor.y) for anchor in plan_anchors(surround).anchors]
    radius = ANCHOR * ratio
    targets: list[Mark] = [mark for spot in spots for mark in _target(spot, radius, "anchor")]
    names = [Name(str(n), spot, OVER * radius, "anchor") for n, spot in enumerate(spots, start=1)]
    return targets, names


def draw_cord_way(surround: Surround, projection: Projection, look: Look) -> list[Mark]:
    """The line the cords run along, its holes and what is sawn out of the sheet behind the loose panel.

    What is hidden in `projection` is dashed, what was cut away is left out. A hole that is looked through
    is drawn there; it gets its centre lines.
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
        marks += _draw_hole(surround, hole, projection, look)
    if way.sheet is not None and look.axes[2] == 2:
        cut_out = [bore for bore in surround.boards[way.sheet].bores if not bore.is_round]
        marks += [Polyline(Pen.GUIDE, bore.ring, True, "cord way") for bore in cut_out]
    return marks


def name_holes(surround: Surround, projection: Projection, look: Look) -> list[Name]:
    """The size of each hole that the view looks along, to stand beside it."""
    way = plan_cord_way(surround)
    shown = [hole for hole in way.holes if _is_end_on(hole, projection, look)] if way else []
    style = surround.job.about.length_style
    return [
        Name(
            f"{format_length(hole.diameter, style)} hole, cords",
            look.point(hole.centre),
            OVER * hole.diameter / 2,
            "cord way",
        )
        for hole in shown
    ]


def _is_end_on(hole: Hole, projection: Projection, look: Look) -> bool:
    """Whether a hole is looked at along its axis and any board that has it is left."""
    boards = projection.solids.boards[: projection.solids.site_start]
    return AXES.index(hole.axis) == look.axes[2] and any(is_bored(board, hole) for board in boards)


def _draw_hole(surround: Surround, hole: Hole, projection: Projection, look: Look) -> list[Mark]:
    along = AXES.index(hole.axis)
    if along == look.axes[2]:
        return _draw_end(hole, projection, look)
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


def _draw_end(hole: Hole, projection: Projection, look: Look) -> list[Mark]:
    """A hole looked at along its axis."""
    if not _is_end_on(hole, projection, look):
        return []
    at = look.point(hole.centre)
    ring, cross = _target(at, hole.diameter / 2, "cord way")
    return [cross] if _is_seen(projection, hole, at) else [replace(ring, pen=Pen.GUIDE), cross]


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
    ring = circle_points(at, radius, SIDES)
    (x, y), reach = at, OVER * radius
    cross = ((x - reach, y, x + reach, y), (x, y - reach, x, y + reach))
    return Polyline(Pen.EDGE, ring, True, stands_for), Lines(Pen.CENTRE, cross, stands_for)
