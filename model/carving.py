"""Pieces as solids: a hole that breaks out of an edge becomes part of the outline, the faces that it pierces.

Finished sizes, marks and words for the shop are those of the piece before it is bored.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import hypot
from typing import TYPE_CHECKING

from model.board import AXES, CROSS, Board, End, Point2
from model.bore import Bore

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

HAIR = 1e-9
"""Coordinates that differ by less are one, in."""
LEAST_BITE = 1 / 64
"""A hole that takes less than this off an edge, in., is a scratch. Shop choice."""


def carve(board: Board) -> Board:
    """`board` with the holes that break its edges in its section; itself where there are none."""
    breaking = [bore for bore in board.bores if bore.breaks]
    if not breaking:
        return board
    prism = lay_along(board, breaking[0].axis)
    assert prism is not None
    left = _polygon(prism.section)
    for bore in breaking:
        left = left.difference(_polygon(bore.ring))
    section = _corners(_largest(left))
    round_points = [p for bore in breaking if bore.is_round for p in bore.ring]
    curved = frozenset(i for i, p in enumerate(section) if any(_is_same(p, q) for q in round_points))
    whole = tuple(bore for bore in board.bores if not bore.breaks)
    return replace(prism, section=section, curved=curved, bores=whole)


def lay_along(board: Board, axis: str) -> Board | None:
    """The same solid as a section pushed along `axis`; None where it is no such thing."""
    square = board.low.is_square and board.high.is_square
    if board.axis == axis:
        return board if square else None
    if not square or len(board.section) != 4 or not _fills_its_bounds(board):
        return None
    (low, high), (iu, iv), along = board.bounds, CROSS[axis], AXES.index(axis)
    section = ((low[iu], low[iv]), (high[iu], low[iv]), (high[iu], high[iv]), (low[iu], high[iv]))
    ends = End(low[along]), End(high[along])
    return replace(
        board, axis=axis, section=section, low=ends[0], high=ends[1], grain=board.length_axis,
        curved=frozenset(),
    )  # fmt: skip


def _fills_its_bounds(board: Board) -> bool:
    (iu, iv), (low, high) = CROSS[board.axis], board.bounds
    return abs(board.section_area - (high[iu] - low[iu]) * (high[iv] - low[iv])) < HAIR


def find_sides(board: Board, bore: Bore) -> tuple[int, int] | None:
    """Numbers of the two flat faces that `bore` enters and leaves a board by; None where it is not so.

    Faces are numbered along the section, then the low and the high end. The whole hole lies in both.
    """
    if board.axis == bore.axis:
        size = len(board.section)
        inside = board.low.is_square and board.high.is_square and _surrounds(board.section, bore)
        return (size, size + 1) if inside else None
    (iu, iv), k = CROSS[bore.axis], CROSS[board.axis].index(AXES.index(bore.axis))
    across = CROSS[board.axis][1 - k]
    own = (iu, iv).index(AXES.index(board.axis))
    other = (iu, iv).index(across)
    if not _is_between_ends(board, bore.at[own], bore.size[own] / 2):
        return None
    reach = bore.at[other] - bore.size[other] / 2, bore.at[other] + bore.size[other] / 2
    return _flat_sides(board.section, k, reach)


def _is_between_ends(board: Board, at: float, half: float) -> bool:
    lows, highs = ([end.position(u, v) for u, v in board.section] for end in (board.low, board.high))
    return max(lows) < at - half and at + half < min(highs)


def _flat_sides(section: Sequence[Point2], k: int, reach: Point2) -> tuple[int, int] | None:
    """The low and the high of the only two edges over `reach`, if both are level along coordinate `k`."""
    over: list[tuple[float, int]] = []
    for i, (a, b) in enumerate(zip(section, [*section[1:], section[0]], strict=True)):
        low, high = sorted((a[1 - k], b[1 - k]))
        if low >= reach[1] or high <= reach[0]:
            continue
        if a[k] != b[k] or low >= reach[0] or high <= reach[1]:
            return None
        over.append((a[k], i))
    over.sort()
    return (over[0][1], over[1][1]) if len(over) == 2 else None


def _surrounds(section: Sequence[Point2], bore: Bore) -> bool:
    """Whether a hole lies in a section without touching its outline."""
    (u, v), half = bore.at, max(bore.size) / 2
    if not bore.is_round:
        us, vs = zip(*section, strict=True)
        wide, high = bore.size[0] / 2, bore.size[1] / 2
        is_box = len(section) == 4
        return (
            is_box and min(us) < u - wide and u + wide < max(us) and min(vs) < v - high < v + high < max(vs)
        )
    edges = list(zip(section, [*section[1:], section[0]], strict=True))
    if min(_off_edge(bore.at, a, b) for a, b in edges) <= half + HAIR:
        return False
    crossed = [
        a[0] + (v - a[1]) * (b[0] - a[0]) / (b[1] - a[1]) for a, b in edges if (a[1] > v) != (b[1] > v)
    ]
    return sum(at > u for at in crossed) % 2 == 1


def _off_edge(point: Point2, a: Point2, b: Point2) -> float:
    """How far a point lies from the stretch between two others."""
    along, up = b[0] - a[0], b[1] - a[1]
    size = along**2 + up**2
    part = ((point[0] - a[0]) * along + (point[1] - a[1]) * up) / size if size else 0.0
    part = min(max(part, 0.0), 1.0)
    return hypot(point[0] - a[0] - part * along, point[1] - a[1] - part * up)


def bite_of(board: Board, ring: Sequence[Point2], axis: str) -> tuple[float, Point2] | None:
    """How much a hole takes of a board's face along `axis`, square inches, and the middle of that.

    None where the board is no section pushed along it, or where the hole would not leave it in one piece.
    """
    prism = lay_along(board, axis)
    if prism is None:
        return None
    whole, hole = _polygon(prism.section), _polygon(ring)
    taken, left = whole.intersection(hole), whole.difference(hole)
    one_piece = left.geom_type == "Polygon" and not left.interiors and taken.geom_type == "Polygon"
    if not one_piece or taken.buffer(-LEAST_BITE / 2).is_empty:
        return None
    return float(taken.area), (float(taken.centroid.x), float(taken.centroid.y))


def _polygon(ring: Sequence[Point2]) -> BaseGeometry:
    from shapely import Polygon

    return Polygon(ring)


def _largest(shape: BaseGeometry) -> BaseGeometry:
    """The largest part: what is looked at in a section may fall in two."""
    from shapely import get_parts

    return max(get_parts(shape), key=lambda part: float(part.area))


def _corners(shape: BaseGeometry) -> tuple[Point2, ...]:
    from shapely import get_coordinates, orient_polygons

    return tuple((float(u), float(v)) for u, v in get_coordinates(orient_polygons(shape))[:-1])


def _is_same(one: Point2, other: Point2) -> bool:
    return abs(one[0] - other[0]) < HAIR and abs(one[1] - other[1]) < HAIR
