"""What stands there already, as solids that boards lie against and that hide them. Never listed or cut."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from model.board import Board, End, Point2, Stock, StockKind, block
from model.build.behind import OLD_LEDGER
from model.build.level_backs import back_line_of, list_stretches, plane_behind
from model.build.lines import Layout
from model.build.obstacles import BASEBOARD
from model.build.packing import list_packed
from model.build.shelf import RIB
from model.takeoff.tapers import list_tapers

STANDING = Stock(StockKind.STANDING, 0.0, "")
DEEP = 12.0
"""How thick the solids are made, in.; only their faces matter."""
BEYOND = 24.0
"""How far the wall runs past the surround, in.; only what is near it matters."""
SAME = 1 / 512
"""Boards that end no further than this from a foot stand on it, in."""
FACING, WALL, HEARTH, FLOOR, CEILING = "facing", "wall", "hearth", "floor", "ceiling"
ORDER = (FACING, HEARTH, BASEBOARD, OLD_LEDGER, WALL, FLOOR, CEILING)
"""Which solid counts where two of them lie in one plane."""


def list_standing(boards: Sequence[Board], layout: Layout) -> tuple[Board, ...]:
    """Facing, wall, floor, ceiling and hearth round `boards`, in ORDER, and what each foot stands on; then
    baseboards and an old ledger.

    The firebox's mouth is taken as closed: nothing is fixed there, and nobody looks at the boards from
    in there. Floor and hearth end below the foremost board, so that low undersides are looked at from over
    them. A foot that is out of level stands on a pad of its own, and the hearth lies below it.
    Where masonry is out of plumb each board that is fitted to it has a backing of its own; a shelf's ribs
    stop short of it.
    """
    return _in_order((*list_room(boards, layout), *(solid for _, solid in list_seats(boards, layout))))


def _in_order(solids: Sequence[Board]) -> tuple[Board, ...]:
    return tuple(sorted(solids, key=lambda solid: ORDER.index(solid.role)))


def list_room(boards: Sequence[Board], layout: Layout) -> tuple[Board, ...]:
    """What stands there for all `boards`: `list_standing` without pads and backings, in ORDER."""
    corners = [board.bounds for board in boards]
    reach = max(layout.facing_side, *(max(-low[0], high[0]) for low, high in corners)) + BEYOND
    front = max(high[2] for _, high in corners)
    x, wall, floor = (-reach, reach), layout.wall, layout.floor
    lowest = min((side.step.floor for side in layout.sides if side.step), default=floor)
    facing = (-layout.facing_side, layout.facing_side)
    return _in_order(
        [
            _solid(WALL, x, (floor, layout.ceiling), (wall - DEEP, wall - _sunk(layout))),
            *(
                _list_leaning(layout)
                if layout.leans
                else [_solid(FACING, facing, (floor, layout.facing_top), (wall - DEEP, 0.0))]
            ),
            _solid(FLOOR, x, (floor - DEEP, min(floor, lowest)), (wall - DEEP, front)),
            *_list_ceiling(layout.ceiling, max(high[1] for _, high in corners), x, (wall - DEEP, front)),
            *(_solid(o.kind, o.x, o.y, o.z) for o in layout.obstacles if o.kind == BASEBOARD),
            *(_solid(o.kind, o.x, o.y, o.z) for o in layout.behind if o.kind == OLD_LEDGER),
            *_list_slab(layout, min(layout.hearth_front, front)),
        ]
    )


def list_seats(boards: Sequence[Board], layout: Layout) -> list[tuple[int, Board]]:
    """The pads and backings, each with the index of the one board that lies on it.

    They run on behind and below that board only so as to be solids: what stands beside it does not touch
    them.
    """
    return [
        *_list_backings(boards, layout),
        *_list_hearth_pads(boards, layout),
        *_list_floor_pads(boards, layout),
    ]


def _sunk(layout: Layout) -> float:
    """How far behind its plane a wall is taken that leans behind a column; its boards have their backings."""
    leaning = [side for side in layout.sides if max(side.inner_back, side.outer_back) == layout.wall]
    return max((side.lean.most for side in leaning if side.lean), default=0.0)


def _list_leaning(layout: Layout) -> list[Board]:
    """Each half of a facing out of plumb, as its own column's reading has it."""
    solids = []
    for side in layout.sides:
        x = sorted((0.0, side.sign * layout.facing_side))
        levels = (
            layout.floor,
            side.lowest,
            side.lean.top if side.lean else layout.facing_top,
            layout.facing_top,
        )
        steps = sorted({min(y, layout.facing_top) for y in levels})
        rising = [*(a for a, b in pairwise(steps) if b - a > SAME), steps[-1]]
        front = [(y, -side.lean.set_back(y) if side.lean else 0.0) for y in reversed(rising)]
        back = layout.wall - DEEP
        profile = ((rising[0], back), (rising[-1], back), *front)
        solids.append(Board(FACING, "site", STANDING, "x", profile, End(x[0]), End(x[1])))
    return solids


def _list_backings(boards: Sequence[Board], layout: Layout) -> list[tuple[int, Board]]:
    """What each board before masonry out of plumb is fitted to, scribed or packed: flush with its back."""
    if not layout.leans:
        return []
    packed = list_packed(boards)
    backings = [(i, _back(board, layout)) for i, board in enumerate(boards) if i not in packed]
    return [(i, backing) for i, backing in backings if backing is not None]


def _back(board: Board, layout: Layout) -> Board | None:
    """A solid behind a board that lies on the facing, or is cut to follow it."""
    low, high = board.bounds
    if not _is_before_masonry(board, layout):
        return None
    if board.is_scribed:
        return replace(
            board, role=FACING, stock=STANDING, low=End(low[2] - DEEP), high=board.low, worked=None, bores=()
        )
    tapers = list_tapers(board)
    if tapers:
        (y0, w0), (y1, w1) = tapers[0]
        back, edge = low[2] - DEEP, ((y1, high[2] - w1), (y0, high[2] - w0))
        return Board(FACING, "site", STANDING, "x", ((y0, back), (y1, back), *edge), board.low, board.high)
    if list_stretches(board):
        deep = low[2] - DEEP
        section = ((deep, high[0]), (deep, low[0]), *((z, x) for x, z in back_line_of(board)))
        return Board(FACING, "site", STANDING, "y", section, board.low, board.high)
    plane = plane_behind(layout, board)
    if plane is None and low[2] in (0.0, layout.wall) and board.role != RIB:
        plane = low[2]
    top = layout.facing_top if plane != layout.wall else high[1]
    if plane is None or low[1] >= top:
        return None
    return _solid(FACING, (low[0], high[0]), (low[1], min(high[1], top)), (low[2] - DEEP, low[2]))


def _is_before_masonry(board: Board, layout: Layout) -> bool:
    """Not beside or over the facing, out in front of the wall: a shelf's end may run on past the facing."""
    (x0, y0, z), (x1, _, _) = board.bounds
    beside = x0 >= layout.facing_side - SAME or x1 <= SAME - layout.facing_side
    return z <= layout.wall or not (beside or y0 >= layout.facing_top)


def _list_ceiling(ceiling: float, top: float, x: Point2, z: Point2) -> list[Board]:
    """None where boards run through it: then it was measured wrong, and says nothing of what touches it."""
    return [_solid(CEILING, x, (ceiling, ceiling + DEEP), z)] if top <= ceiling + SAME else []


def _has_slab(layout: Layout, front: float) -> bool:
    """Whether the hearth is raised off the floor, and reaches out under the boards."""
    return front > SAME and layout.floor < -SAME


def _list_on_hearth(layout: Layout, front: float) -> list[float]:
    """y of the feet that stand on the hearth, raised or not."""
    slab = _has_slab(layout, front)
    return [y for y in list_feet(layout) if abs(y) < abs(y - layout.floor) or not slab]


def _list_slab(layout: Layout, front: float) -> list[Board]:
    """The hearth where it is raised, as high as the lowest foot on it."""
    if not _has_slab(layout, front):
        return []
    top = min([0.0, *_list_on_hearth(layout, front)])
    return [_solid(HEARTH, (-layout.hearth_side, layout.hearth_side), (layout.floor, top), (0.0, front))]


def _list_hearth_pads(boards: Sequence[Board], layout: Layout) -> list[tuple[int, Board]]:
    """One under each board of a foot that is out of level."""
    front = min(layout.hearth_front, max(board.bounds[1][2] for board in boards))
    on_hearth = _list_on_hearth(layout, front)
    top = min([0.0, *on_hearth])
    pads = []
    for i, (low, high) in enumerate(board.bounds for board in boards):
        if any(abs(low[1] - y) <= SAME for y in on_hearth) and abs(low[1] - top) > SAME:
            pad = (low[1] - DEEP, low[1])
            pads.append((i, _solid(HEARTH, (low[0], high[0]), pad, (low[2], high[2]))))
    return pads


def list_feet(layout: Layout) -> tuple[float, ...]:
    """y of where each column stands."""
    return tuple(side.base for side in layout.sides)


def _list_floor_pads(boards: Sequence[Board], layout: Layout) -> list[tuple[int, Board]]:
    """What the legs stand on that step off the hearth to a floor out of level."""
    levels = [side.step.floor for side in layout.sides if side.step and side.step.floor > layout.floor + SAME]
    pads = []
    for i, (low, high) in enumerate(board.bounds for board in boards):
        if any(abs(low[1] - y) <= SAME for y in levels):
            x = (max(low[0], layout.hearth_side), high[0])
            x = x if low[0] > 0 else (low[0], min(high[0], -layout.hearth_side))
            pads.append((i, _solid(FLOOR, x, (low[1] - DEEP, low[1]), (low[2], high[2]))))
    return pads


def _solid(role: str, x: Point2, y: Point2, z: Point2) -> Board:
    return block(role, "site", STANDING, "x", x, y, z)
