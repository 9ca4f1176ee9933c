"""Edges that are cut askew to follow masonry out of plumb, in words for the shop."""

from __future__ import annotations

from itertools import pairwise

from model.board import AXES, CROSS, Board, Point2
from model.build.level_backs import PACKING, list_level_tapers
from model.units import LengthStyle, format_length


def describe_tapers(board: Board, style: LengthStyle) -> list[str]:
    """Both widths of each stretch of a back edge that runs askew, for a piece sawn to shape."""
    if board.role in PACKING:
        return _describe_wedge(board, style)
    level = [
        f"back edge tapered to follow the masonry: {format_length(left, style)} wide "
        f"{_up_to(board, x0, style)}, {format_length(right, style)} {_from(board, x1, style)}"
        for (x0, left), (x1, right) in list_level_tapers(board)
    ]
    return level + [
        f"back edge tapered to follow the masonry: {format_length(foot, style)} wide at its foot, "
        f"{format_length(head, style)} {_where(board, top, style)}"
        for (_, foot), (top, head) in list_tapers(board)
    ]


def _describe_wedge(board: Board, style: LengthStyle) -> list[str]:
    """How thick packing is at both its ends."""
    ends = [*list_tapers(board), *list_level_tapers(board)]
    first, last = ("foot", "head") if board.length_axis == "y" else ("left end", "right end")
    return [
        f"tapered to follow the masonry: {format_length(low, style)} thick at its {first}, "
        f"{format_length(high, style)} at its {last}"
        for (_, low), (_, high) in ends
    ]


def list_tapers(board: Board) -> list[tuple[Point2, Point2]]:
    """(y, width there) at the foot and at the head of each stretch of a standing piece's askew back edge."""
    if board.length_axis != "y" or board.axis != "x":
        return []
    front = board.bounds[1][AXES.index("z")]
    iu, _ = CROSS[board.axis]
    y_first = AXES[iu] == "y"
    points = [p if y_first else p[::-1] for p in board.section]
    stretches = [sorted(pair) for pair in pairwise([*points, points[0]])]
    return [((y0, front - z0), (y1, front - z1)) for (y0, z0), (y1, z1) in stretches if y1 != y0 and z1 != z0]


def _up_to(board: Board, x: float, style: LengthStyle) -> str:
    """``at its left end``, or how far from there a taper begins."""
    left = board.bounds[0][0]
    return "at its left end" if x == left else f"up to {format_length(x - left, style)} from its left end"


def _from(board: Board, x: float, style: LengthStyle) -> str:
    """``at its right end``, or from how far off the left one on it has that width."""
    left, right = board.bounds[0][0], board.bounds[1][0]
    return "at its right end" if x == right else f"from {format_length(x - left, style)} off that end on"


def _where(board: Board, y: float, style: LengthStyle) -> str:
    """``at its head``, or how far up a taper ends."""
    foot, head = board.bounds[0][1], board.bounds[1][1]
    return "at its head" if y == head else f"{format_length(y - foot, style)} up"
