"""Where a single board lies in a view, seen through everything in front of it: for pointing at boards."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from model.board import Board, Point3
from model.surround import Surround
from render.drawing import Point, Ring


def _from_front(at: Point3) -> tuple[float, float, float]:
    return at[0], at[1], at[2]


def _from_right(at: Point3) -> tuple[float, float, float]:
    return -at[2], at[1], at[0]


def _from_above(at: Point3) -> tuple[float, float, float]:
    return at[0], -at[2], at[1]


_SIGHTS: Mapping[str, Callable[[Point3], tuple[float, float, float]]] = {
    "front": _from_front,
    "side": _from_right,
    "vertical_section": _from_right,
    "plan": _from_above,
    "plan_section": _from_above,
}
"""For each view: across, up, and how near to the viewer a point of the room lies."""


def place_point(at: Point3, view: str) -> Point:
    """Where a point of the room is drawn in `view`. Raises KeyError for a view that is not known."""
    return _SIGHTS[view](at)[:2]


def outline_board(board: Board, view: str) -> Ring:
    """The board's outline in `view`, counter-clockwise: the hull of its corners."""
    corners = sorted({place_point(corner, view) for corner in board.vertices})
    return tuple(_half_hull(corners)[:-1] + _half_hull(corners[::-1])[:-1])


def find_board(surround: Surround, view: str, point: Point) -> str:
    """The mark of the board nearest to the viewer whose outline holds `point`, "" for none."""
    best, mark = float("-inf"), ""
    for board, name in zip(surround.boards, surround.marks, strict=True):
        near = max(_SIGHTS[view](corner)[2] for corner in board.vertices)
        if near > best and _holds(outline_board(board, view), point):
            best, mark = near, name
    return mark


def _half_hull(corners: list[Point]) -> list[Point]:
    """The hull's lower half for corners from left to right, its upper half for the way back."""
    hull: list[Point] = []
    for corner in corners:
        while len(hull) > 1 and _turn(hull[-2], hull[-1], corner) <= 0:
            hull.pop()
        hull.append(corner)
    return hull


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _holds(ring: Ring, point: Point) -> bool:
    return all(_turn(a, b, point) >= 0 for a, b in zip(ring, ring[1:] + ring[:1], strict=True))
