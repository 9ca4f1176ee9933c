"""Solids cut by a plane square to a room axis: what is left on the far side of a section."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from model.board import AXES, CROSS, Board, End
from model.bore import Bore
from model.carving import lay_along
from model.half_plane import keep_side


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
    if board.bores:
        board = _cut_bores(board, axis, at)
    if board.axis == axis:
        return replace(board, high=End(at))
    u_is_cut = CROSS[board.axis][0] == i
    section = keep_side(board.section, 0 if u_is_cut else 1, at, above=False)
    return replace(board, section=section, curved=frozenset()) if section else None


def _cut_bores(board: Board, axis: str, at: float) -> Board:
    """`board`, still whole, with what its holes are once it is cut.

    A hole that the plane lays open becomes a hollow in the cut edge. In a piece that is no section pushed
    along the hole, a mitred one say, it is left out.
    """
    kept = [cut for bore in board.bores if (cut := _cut_bore(bore, axis, at)) is not None]
    opened = [bore for bore in kept if bore.breaks]
    laid = lay_along(board, opened[0].axis) if opened else board
    if laid is None:
        return replace(board, bores=tuple(bore for bore in kept if not bore.breaks))
    return replace(laid, bores=tuple(kept))


def _cut_bore(bore: Bore, axis: str, at: float) -> Bore | None:
    """What a plane leaves of a hole below it."""
    if bore.axis == axis:
        low, high = bore.span
        return replace(bore, span=(low, min(high, at))) if low < at else None
    k = CROSS[bore.axis].index(AXES.index(axis))
    half = max(offset[k] for offset in bore.offsets)
    if bore.at[k] - half >= at:
        return None
    return replace(bore, breaks=True) if bore.at[k] + half >= at else bore
