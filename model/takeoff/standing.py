"""What stands there already, as solids that boards lie against and that hide them. Never listed or cut."""

from __future__ import annotations

from collections.abc import Sequence

from model.board import Board, Point2, Stock, StockKind, block
from model.build.layout import Layout

STANDING = Stock(StockKind.STANDING, 0.0, "")
DEEP = 12.0
"""How thick the solids are made, in.; only their faces matter."""
BEYOND = 24.0
"""How far the wall runs past the surround, in.; only what is near it matters."""
SAME = 1 / 512
"""Boards that end no further than this from a foot stand on it, in."""
FACING, WALL, HEARTH, FLOOR, CEILING = "facing", "wall", "hearth", "floor", "ceiling"
ORDER = (FACING, HEARTH, WALL, FLOOR, CEILING)
"""Which solid counts where two of them lie in one plane."""


def list_standing(boards: Sequence[Board], layout: Layout) -> tuple[Board, ...]:
    """Facing, wall, floor, ceiling and hearth round `boards`, in ORDER, and what each foot stands on.

    The firebox's mouth is taken as closed: nothing is fixed there, and nobody looks at the boards from
    in there. Floor and hearth end below the foremost board, so that low undersides are looked at from over
    them. A foot that is out of level stands on a pad of its own, and the hearth lies below it.
    """
    corners = [board.bounds for board in boards]
    reach = max(layout.facing_side, *(max(-low[0], high[0]) for low, high in corners)) + BEYOND
    front = max(high[2] for _, high in corners)
    x, wall, floor = (-reach, reach), layout.wall, layout.floor
    facing = (-layout.facing_side, layout.facing_side)
    solids = [
        _solid(WALL, x, (floor, layout.ceiling), (wall - DEEP, wall)),
        _solid(FACING, facing, (floor, layout.facing_top), (wall - DEEP, 0.0)),
        _solid(FLOOR, x, (floor - DEEP, floor), (wall - DEEP, front)),
        *_list_ceiling(layout.ceiling, max(high[1] for _, high in corners), x, (wall - DEEP, front)),
        *_list_hearth(boards, layout, min(layout.hearth_front, front)),
    ]
    return tuple(sorted(solids, key=lambda solid: ORDER.index(solid.role)))


def _list_ceiling(ceiling: float, top: float, x: Point2, z: Point2) -> list[Board]:
    """None where boards run through it: then it was measured wrong, and says nothing of what touches it."""
    return [_solid(CEILING, x, (ceiling, ceiling + DEEP), z)] if top <= ceiling + SAME else []


def _list_hearth(boards: Sequence[Board], layout: Layout, front: float) -> list[Board]:
    """The slab where it is raised, as high as the lowest foot on it, and a pad under each board of a foot."""
    slab = front > SAME and layout.floor < -SAME
    on_hearth = [y for y in list_feet(layout) if abs(y) < abs(y - layout.floor) or not slab]
    top = min([0.0, *on_hearth])
    side = (-layout.hearth_side, layout.hearth_side)
    solids = [_solid(HEARTH, side, (layout.floor, top), (0.0, front))] if slab else []
    for board in boards:
        low, high = board.bounds
        if any(abs(low[1] - y) <= SAME for y in on_hearth) and abs(low[1] - top) > SAME:
            pad = (low[1] - DEEP, low[1])
            solids.append(_solid(HEARTH, (low[0], high[0]), pad, (low[2], high[2])))
    return solids


def list_feet(layout: Layout) -> tuple[float, ...]:
    """y of where each column stands."""
    return tuple(side.base for side in layout.sides)


def _solid(role: str, x: Point2, y: Point2, z: Point2) -> Board:
    return block(role, "site", STANDING, "x", x, y, z)
