"""What a view from the right needs of the far column: nothing behind the masonry's front, which hides it."""

from __future__ import annotations

from dataclasses import replace

from model.board import Board, End
from model.build.layout import Layout
from model.takeoff.tapers import list_tapers


def without_far_backs(boards: tuple[Board, ...], layout: Layout) -> tuple[Board, ...]:
    """`boards`, those of a left column that follow masonry out of plumb squared off at its front."""
    if layout.left.lean is None:
        return boards
    back = max(layout.left.inner_back, layout.left.outer_back)
    return tuple(_squared(b, back) if b.bounds[1][0] < 0 else b for b in boards)


def _squared(board: Board, back: float) -> Board:
    if board.is_scribed:
        return replace(board, low=End(back))
    if not list_tapers(board):
        return board
    (foot, _), (head, _), *rest = board.section
    return replace(board, section=((foot, back), (head, back), *rest))
