"""A section run along a path in plan and mitred at its corners: mouldings, edge bands, plinths."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from model.board import Board, End, Point2, Stock


def run_section(
    roles: Sequence[str],
    assembly: str,
    stock: Stock,
    path: Sequence[Point2],
    profile: Sequence[Point2],
    curved: frozenset[int] = frozenset(),
) -> tuple[Board, ...]:
    """One board for each leg of `path`, square at the path's two ends and mitred between.

    `path` is (x, z) points of the line the run lies against, legs along x or z by turns, with the
    outer side on the right hand of travel (x right, z up). `profile` is (out, y) points: distance off
    that line, and height in the room. `roles` names the legs in order.

    >>> from model.board import StockKind
    >>> pine = Stock(StockKind.BOARD, 1.0, "pine")
    >>> legs = run_section(["end", "front"], "shelf", pine, [(10, 0), (10, 5), (0, 5)],
    ...                    [(0, 0), (1, 0), (1, 2), (0, 2)])
    >>> [round(leg.length, 3) for leg in legs], [leg.high.mitre for leg in legs]
    ([6.0, 11.0], [45.0, 45.0])
    """
    legs = list(pairwise(path))
    normals = [_outward(start, stop) for start, stop in legs]
    boards = []
    for i, (start, stop) in enumerate(legs):
        before = normals[i - 1] if i > 0 else None
        after = normals[i + 1] if i + 1 < len(legs) else None
        boards.append(
            _leg(roles[i], assembly, stock, (start, stop), normals[i], before, after, profile, curved)
        )
    return tuple(boards)


def _outward(start: Point2, stop: Point2) -> Point2:
    dx, dz = stop[0] - start[0], stop[1] - start[1]
    size = abs(dx) + abs(dz)
    return (dz / size, -dx / size)


def _leg(
    role: str,
    assembly: str,
    stock: Stock,
    leg: tuple[Point2, Point2],
    normal: Point2,
    before: Point2 | None,
    after: Point2 | None,
    profile: Sequence[Point2],
    curved: frozenset[int],
) -> Board:
    axis = "x" if normal[0] == 0 else "z"
    along, off = (0, 1) if axis == "x" else (1, 0)
    line, sign = leg[0][off], normal[off]
    # In room coordinates across the grain: x runs over (y, z), z over (x, y).
    section = [(y, line + sign * out) if axis == "x" else (line + sign * out, y) for out, y in profile]
    slope_of = (lambda s: (0.0, s)) if axis == "x" else (lambda s: (s, 0.0))

    def end(corner: float, neighbour: Point2 | None) -> End:
        slope = 0.0 if neighbour is None else neighbour[along] * sign
        return End(corner - slope * line, *slope_of(slope))

    ends = (end(leg[0][along], before), end(leg[1][along], after))
    low, high = ends if leg[0][along] < leg[1][along] else ends[::-1]
    if _area(section) < 0:
        section.reverse()
        curved = frozenset(len(section) - 1 - i for i in curved)
    return Board(role, assembly, stock, axis, tuple(section), low, high, curved)


def _area(section: Sequence[Point2]) -> float:
    closed = [*section, section[0]]
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise(closed)) / 2
