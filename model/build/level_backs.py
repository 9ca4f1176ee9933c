"""What lies level against masonry out of plumb: shelf, soffit and overmantel reach back to it.

Columns follow it up their height, in model.build.facing; here it is followed from side to side: what both
columns' readings say at one level, and a straight line between the columns.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from model.board import AXES, Board, End, Point2
from model.build.lines import Layout
from model.carving import lay_along

FOLLOWS = frozenset(
    {
        "shelf top",
        "shelf underside",
        "shelf plank",
        "shelf front strip",
        "edge band end",
        "soffit",
        "overmantel return",
        "overmantel top",
    }
)
"""The roles of what reaches back. Ribs stop short of it inside; what lies flat on masonry is packed out."""
PACKING = frozenset({"slip packing", "back band packing", "cleat packing", "ledger packing"})
"""The roles of the wedges behind what lies flat on masonry; they are model.build.packing's."""
NARROW = 3.0
"""Pieces no wider than this, in., are cut square to where it stands furthest out behind them. Shop choice."""
EVEN = 1 / 64
"""Less than this from one end of a piece to its other, in., is no taper. Shop choice."""
HAIR = 1e-9


def gaps_behind(layout: Layout, back: float, y: Point2) -> Point2:
    """How far masonry at z = `back` falls back behind the left and the right column, least over heights `y`.

    Above the facing whose lean was read the wall stands where it is.
    """
    left, right = (
        min(side.lean.set_back(level) for level in y)
        if side.lean
        and back == max(side.inner_back, side.outer_back)
        and (y[1] <= layout.facing_top or side.inner >= layout.facing_side)
        else 0.0
        for side in layout.sides
    )
    return left, right


def follow_level(layout: Layout, boards: tuple[Board, ...]) -> tuple[Board, ...]:
    """`boards`, those named in FOLLOWS with their backs cut to masonry that falls back behind them."""
    if not layout.leans:
        return boards
    return tuple(_follow(layout, b) if b.role in FOLLOWS else b for b in boards)


def gap_left(layout: Layout, board: Board) -> float:
    """Most that masonry falls back behind a board that lies level against it, and does not follow it, in."""
    if not layout.leans or board.role not in FOLLOWS:
        return 0.0
    (low, high), back = board.bounds, plane_behind(layout, board)
    if back is None or list_stretches(board):
        return 0.0
    line = back_line(layout, back, (low[1], high[1]), (low[0], high[0]))
    left = max(low[2] - z for _, z in line)
    return left if left > EVEN else 0.0


def plane_behind(layout: Layout, board: Board) -> float | None:
    """z of the plane, masonry's furthest out or the wall's, that a board which follows it reaches back to.

    None for a board that follows neither.
    """
    z = board.bounds[0][2]
    planes = [p for p in (layout.wall, 0.0) if z <= p <= z + (_most(layout) if layout.leans else 0.0)]
    return planes[0] if planes and board.role in FOLLOWS | PACKING else None


def back_line_of(board: Board) -> tuple[Point2, ...]:
    """(x, z) along a tapered back edge, from the left end to the right."""
    askew = {x for stretch in list_stretches(board) for _, x in stretch}
    places = sorted(askew | {board.bounds[0][0], board.bounds[1][0]})
    return tuple((place, min(z for z, x in board.section if x == place)) for place in places)


def _most(layout: Layout) -> float:
    return max(side.lean.most for side in layout.sides if side.lean)


def _follow(layout: Layout, board: Board) -> Board:
    (x0, y0, back), (x1, y1, _) = board.bounds
    if back not in (0.0, layout.wall):
        return board
    line = back_line(layout, back, (y0, y1), (x0, x1))
    nearest = max(z for _, z in line)
    even = nearest - min(z for _, z in line) <= EVEN or x1 - x0 <= NARROW
    if not even and board.length_axis == "x":
        laid = lay_along(board, "y")
        if laid is not None:
            return replace(laid, section=_with_line(laid.section, line, back))
    return square_off(board, back, nearest) if nearest < back else board


def back_line(layout: Layout, back: float, y: Point2, x: Point2) -> tuple[Point2, ...]:
    """(x, z) of the masonry's face at z = `back`, along `x`, least over heights `y`."""
    gaps = gaps_behind(layout, back, y)
    ends = -layout.left.outer, layout.right.outer

    def at(place: float) -> float:
        part = min(max((place - ends[0]) / (ends[1] - ends[0]), 0.0), 1.0)
        return back - gaps[0] - (gaps[1] - gaps[0]) * part

    places = [x[0], *(end for end in ends if x[0] < end < x[1]), x[1]]
    return tuple((place, at(place)) for place in places)


def _with_line(section: tuple[Point2, ...], line: tuple[Point2, ...], back: float) -> tuple[Point2, ...]:
    """A section of (z, x) points with the edges that lie at the back along `line`, notches in it left out."""
    points: list[Point2] = []
    for start, stop in pairwise([*section, section[0]]):
        if start[0] != back:
            points.append(start)
            continue
        points.append((_along(line, start[1]), start[1]))
        if stop[0] == back:
            low, high = sorted((start[1], stop[1]))
            bends = [(z, x) for x, z in line if low < x < high]
            points += bends if start[1] < stop[1] else bends[::-1]
    return tuple(points)


def _along(line: tuple[Point2, ...], place: float) -> float:
    """z of a line at x = `place`, which it reaches."""
    for (x0, z0), (x1, z1) in pairwise(line):
        if x0 <= place <= x1:
            return z0 if place == x0 else z1 if place == x1 else z0 + (z1 - z0) * (place - x0) / (x1 - x0)
    raise ValueError(f"{place} lies beside the line")


def square_off(board: Board, back: float, new: float) -> Board:
    """`board` cut square at z = `new`, where it ended at `back`."""
    if board.axis == "z":
        return replace(board, low=End(new)) if board.low == End(back) else board
    z_is_u = board.axis == "y"
    section = tuple(
        (new if z_is_u and u == back else u, new if not z_is_u and v == back else v) for u, v in board.section
    )
    return replace(board, section=section)


def list_level_tapers(board: Board) -> list[tuple[Point2, Point2]]:
    """(x, width there) at the left and right of each stretch of a level piece's askew back edge."""
    front = board.bounds[1][AXES.index("z")]
    stretches = [sorted((x, front - z) for z, x in stretch) for stretch in list_stretches(board)]
    return [(left, right) for left, right in stretches]


def list_stretches(board: Board) -> list[tuple[Point2, Point2]]:
    """The corners of its section between which a level piece's back edge runs askew."""
    if board.length_axis != "x" or board.axis != "y":
        return []
    edges = pairwise([*board.section, board.section[0]])
    return [(a, b) for a, b in edges if a[0] != b[0] and a[1] != b[1]]
