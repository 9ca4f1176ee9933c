"""Solids cut by a plane square to a room axis: what is left on the far side of a section."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from model.board import AXES, CROSS, Board, End, Point2


def cut_boards(boards: Iterable[Board], axis: str, at: float) -> tuple[Board, ...]:
    """The parts of `boards` below `at` along `axis`, in their order; those wholly above are left out.

    A board whose mitred end the plane passes through is cut square there: its joint is shown whole.
    """
    return tuple(board for _, board in cut_numbered(boards, axis, at))


def cut_numbered(boards: Iterable[Board], axis: str, at: float) -> tuple[tuple[int, Board], ...]:
    """The same parts, each with the place of its board in `boards`."""
    cut = ((i, _cut(board, axis, at)) for i, board in enumerate(boards))
    return tuple((i, board) for i, board in cut if board is not None)


def _cut(board: Board, axis: str, at: float) -> Board | None:
    i = AXES.index(axis)
    low, high = board.bounds[0][i], board.bounds[1][i]
    if high <= at:
        return board
    if low >= at:
        return None
    if board.axis == axis:
        return replace(board, high=End(at))
    u_is_cut = CROSS[board.axis][0] == i
    section = _keep_below(board.section, 0 if u_is_cut else 1, at)
    return replace(board, section=section, curved=frozenset()) if len(section) > 2 else None


def _keep_below(section: Sequence[Point2], k: int, at: float) -> tuple[Point2, ...]:
    """The polygon's part whose coordinate `k` is at most `at` (Sutherland and Hodgman 1974)."""
    kept: list[Point2] = []
    for start, stop in zip(section, [*section[1:], section[0]], strict=True):
        if start[k] <= at:
            kept.append(start)
        if (start[k] < at) != (stop[k] < at) and start[k] != at and stop[k] != at:
            part = (at - start[k]) / (stop[k] - start[k])
            crossing = [start[0] + part * (stop[0] - start[0]), start[1] + part * (stop[1] - start[1])]
            crossing[k] = at
            kept.append((crossing[0], crossing[1]))
    return tuple(kept)
