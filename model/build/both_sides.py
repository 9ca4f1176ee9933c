"""What stands left and right alike: built as if on the right, the left one turned over."""

from __future__ import annotations

from collections.abc import Callable

from model.board import Board
from model.build.lines import Layout, Side


def build_both(layout: Layout, build_one: Callable[[Side], tuple[Board, ...]]) -> tuple[Board, ...]:
    """The boards of both sides, left first; `build_one` gives a side's as if it stood on the right."""
    left, right = build_one(layout.left), build_one(layout.right)
    return tuple(board.mirrored(board.assembly) for board in left) + right
