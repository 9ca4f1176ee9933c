"""What is on the wall already, as far as a view shows it: boxes cut off at its edge, and their names."""

from __future__ import annotations

from dataclasses import replace

from model.build.lines import Layout
from model.build.obstacles import BASEBOARD, Obstacle
from render.drawing import Point
from render.names import Name

NEAR = 10.0
"""What lies further than this beyond shelf, facing and hearth is not drawn, in. Shop choice."""
STUB = 9.0
"""How much of a baseboard is shown beyond a column, in.: enough for its name. Shop choice."""
ABOVE = 4.0
"""How far over the surround a casing is shown, in. Shop choice."""


def drawn_reach(layout: Layout) -> float:
    """How far a front view goes to either side: to the widest thing, or an obstacle near it."""
    reach = max(layout.shelf_reach, layout.facing_side, layout.hearth_side)
    if not layout.obstacles:
        return reach
    near = [o for o in layout.obstacles if _inner_edge(o) < reach + NEAR]
    return max(reach, *(_drawn_end(layout, o) for o in near)) if near else reach


def _drawn_end(layout: Layout, obstacle: Obstacle) -> float:
    """How far out it is drawn; a baseboard, which runs on, as far as its name needs."""
    if obstacle.kind == BASEBOARD:
        return _shows_from(layout, obstacle) + STUB
    return max(abs(x) for x in obstacle.x)


def _shows_from(layout: Layout, obstacle: Obstacle) -> float:
    """Where a baseboard comes out from behind a column's foot, or begins beyond it."""
    side = layout.left if obstacle.side == "left" else layout.right
    return max(_inner_edge(obstacle), side.outer + layout.plinth_out)


def list_drawn(layout: Layout) -> tuple[Obstacle, ...]:
    """The obstacles within the view's reach, no higher than a little over the surround."""
    if not layout.obstacles:
        return ()
    reach = drawn_reach(layout)
    top = max(layout.over.top if layout.over else layout.shelf_top, layout.facing_top) + ABOVE
    cut = [
        replace(
            o,
            x=(max(o.x[0], -reach), min(o.x[1], reach)),
            y=(o.y[0], min(o.y[1], top)),
        )
        for o in layout.obstacles
    ]
    return tuple(o for o in cut if o.x[1] > o.x[0] and o.y[1] > o.y[0])


def name_obstacles(layout: Layout) -> list[Name]:
    """What each one is, at its upper edge; a baseboard's name at what of it shows."""
    return [Name(o.kind, _upper_edge(layout, o), 0.0, o.path) for o in list_drawn(layout)]


def _upper_edge(layout: Layout, obstacle: Obstacle) -> Point:
    middle = (obstacle.x[0] + obstacle.x[1]) / 2
    if obstacle.kind == BASEBOARD:
        first, last = _shows_from(layout, obstacle), max(abs(x) for x in obstacle.x)
        middle = (first + last) / 2 * (-1.0 if obstacle.side == "left" else 1.0)
    return middle, obstacle.y[1]


def _inner_edge(obstacle: Obstacle) -> float:
    return min(abs(x) for x in obstacle.x)
