"""Tapered packing between masonry that leans and what lies flat on it: inner slip, back band, cleat, ledger.

These keep their shape and stay plumb; a wedge ripped to what is behind them takes up the rest.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import ceil

from model.board import Board, End, Point2, Stock
from model.build.level_backs import PACKING, back_line
from model.build.lines import Layout

PACKED = {
    "slip leg": "slip packing",
    "slip head": "slip packing",
    "back band leg": "back band packing",
    "back band head": "back band packing",
    "soffit nailer": "cleat packing",
    "shelf nailer": "ledger packing",
}
"""What is packed, and what its packing is called."""
FRIEZE = "frieze"
LEAST_PACKING = 1 / 16
"""What falls back no more than this, in., is taken up by scribing and caulk. Shop choice."""
FEATHER = 1 / 128
"""Thinner than this, in., a wedge ends in an edge. Shop choice."""


def build_packing(layout: Layout, stock: Stock, boards: tuple[Board, ...]) -> tuple[Board, ...]:
    """A wedge behind each of `boards` named in PACKED that masonry falls back from by more than a hair."""
    if not layout.leans:
        return ()
    packed = (_pack(layout, stock, board) for board in boards if board.role in PACKED)
    return tuple(_bought(wedge) for wedge in packed if wedge is not None)


def _bought(wedge: Board) -> Board:
    """Of stock no thicker than it needs, in eighths."""
    needed = ceil(wedge.extent("z") * 8 - FEATHER) / 8
    return replace(wedge, stock=replace(wedge.stock, thickness=min(wedge.stock.thickness, needed)))


def list_packed(boards: Sequence[Board]) -> set[int]:
    """Indices of the boards that have packing behind them."""
    wedges = [(board.role, board.bounds) for board in boards if board.role in PACKING]
    return {
        i
        for i, board in enumerate(boards)
        if board.role in PACKED
        for role, (low, high) in wedges
        if role == PACKED[board.role]
        and all(low[k] < board.bounds[1][k] and board.bounds[0][k] < high[k] for k in (0, 1))
    }


def _pack(layout: Layout, stock: Stock, board: Board) -> Board | None:
    back = board.bounds[0][2]
    if back not in (0.0, layout.wall):
        return None
    assembly = FRIEZE if "nailer" in board.role else board.assembly
    named = PACKED[board.role], assembly, stock
    (x0, y0, _), (x1, y1, _) = board.bounds
    if board.axis == "x":
        (left, right), ends = (z for _, z in back_line(layout, back, (y0, y1), (x0, x1))), (End(y0), End(y1))
        corners = _wedge(back, [(right, x1), (left, x0)], [(back, x0), (back, x1)], 0)
        return Board(*named, "y", corners, *ends, grain="x") if corners else None
    # A leg's packing stops where the head begins, whose own runs past both legs.
    y1 = min(board.high.position(u, v) for u, v in board.section)
    foot, head = (max(z for _, z in back_line(layout, back, (y, y), (x0, x1))) for y in (y0, y1))
    corners = _wedge(back, [(y0, foot), (y1, head)], [(y1, back), (y0, back)], 1)
    return Board(*named, "x", corners, End(x0), End(x1), grain="y") if corners else None


def _wedge(back: float, rear: Sequence[Point2], front: Sequence[Point2], z: int) -> tuple[Point2, ...] | None:
    """The section between `rear` and `front`, an edge where it feathers out; None where it is too thin.

    `z` says which of a point's coordinates is z; `front` lies at z = `back`.
    """
    if max(back - point[z] for point in rear) <= LEAST_PACKING:
        return None
    return (*(point for point in rear if back - point[z] > FEATHER), *front)
