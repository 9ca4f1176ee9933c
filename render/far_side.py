"""What a view from the right needs of the far column: nothing behind the masonry's front, which hides it."""

from __future__ import annotations

from dataclasses import replace

from model.board import Board, End
from model.build.level_backs import PACKING, back_line_of, list_stretches, plane_behind, square_off
from model.build.lines import Layout
from model.takeoff.tapers import list_tapers


def without_far_backs(boards: tuple[Board, ...], layout: Layout) -> tuple[Board, ...]:
    """`boards` without packing; those of a left column that follow masonry squared off at its front."""
    boards = tuple(board for board in boards if board.role not in PACKING)
    if layout.left.lean is not None:
        back = max(layout.left.inner_back, layout.left.outer_back)
        boards = tuple(_squared(b, back, layout) if b.bounds[1][0] < 0 else b for b in boards)
    return tuple(_levelled(b) if list_stretches(b) else b for b in boards) if layout.leans else boards


def _levelled(board: Board) -> Board:
    """A level board with a tapered back, that back square as it is at the right end."""
    askew = back_line_of(board)
    at, behind = askew[-1][1], set(askew)
    section = tuple((at if (x, z) in behind else z, x) for z, x in board.section)
    return replace(board, section=section)


def _squared(board: Board, back: float, layout: Layout) -> Board:
    if board.is_scribed:
        return replace(board, low=End(back))
    plane = plane_behind(layout, board)
    if plane is not None and not list_stretches(board):
        return square_off(board, board.bounds[0][2], plane)
    if not list_tapers(board):
        return board
    (foot, _), (head, _), *rest = board.section
    return replace(board, section=((foot, back), (head, back), *rest))
