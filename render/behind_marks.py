"""What was left on the masonry behind the wood, dashed over a front view, with names and places.

Where it lies is worked out in model.build.behind; its solids are render.site_solids'.
"""

from __future__ import annotations

from model.build.behind import OLD_LEDGER
from model.build.obstacles import Obstacle
from model.surround import Surround
from model.units import LengthStyle, format_length
from render.drawing import Lines, Mark, Pen, Point, Polyline
from render.extent import box_ring
from render.names import Name
from render.symbols import circle_points

SIDES = 24
"""Sides that a circle is drawn with."""


def draw_behind(surround: Surround) -> list[Mark]:
    """Each one's outline."""
    return [mark for o in surround.layout.behind for mark in _outline(o)]


def name_behind(surround: Surround) -> list[Name]:
    """Each one's name and place."""
    style = surround.job.about.length_style
    return [
        Name(_name(o, style), _spot(o), 0.0 if o.kind == OLD_LEDGER else (o.x[1] - o.x[0]) / 2, o.path)
        for o in surround.layout.behind
    ]


def _spot(obstacle: Obstacle) -> Point:
    """The point that its name is joined to: a ledger's underside, a bolt's middle."""
    x, y = sum(obstacle.x) / 2, sum(obstacle.y) / 2
    return (x, obstacle.y[0]) if obstacle.kind == OLD_LEDGER else (x, y)


def _name(obstacle: Obstacle, style: LengthStyle) -> str:
    """``old ledger, top 4'-2"``, ``first bolt 2'-8" left, 1'-8" up``."""
    if obstacle.kind == OLD_LEDGER:
        return f"{obstacle.name}, top {format_length(obstacle.y[1], style)}"
    x, y = sum(obstacle.x) / 2, sum(obstacle.y) / 2
    return f"{obstacle.name} {format_length(abs(x), style)} {obstacle.side}, {format_length(y, style)} up"


def _outline(obstacle: Obstacle) -> list[Mark]:
    (x0, x1), (y0, y1) = obstacle.x, obstacle.y
    if obstacle.kind == OLD_LEDGER:
        return [Polyline(Pen.GUIDE, box_ring((x0, y0, x1, y1)), True, obstacle.path)]
    x, y, r = (x0 + x1) / 2, (y0 + y1) / 2, (x1 - x0) / 2
    ring = circle_points((x, y), r, SIDES)
    cross = ((x - 2 * r, y, x + 2 * r, y), (x, y - 2 * r, x, y + 2 * r))
    return [Polyline(Pen.EDGE, ring, True, obstacle.path), Lines(Pen.CENTRE, cross, obstacle.path)]
