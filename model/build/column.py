"""A boxed column: framed face, side returns back to the masonry, and the plinth wrapped round its foot."""

from __future__ import annotations

from model.board import Board, Stock, block
from model.build.frame import FrameWords, build_frame
from model.build.layout import LEAST_LAYER, PANEL_LAP, Layout
from model.build.run import run_section

RIGHT, LEFT = "right column", "left column"


def build_columns(layout: Layout, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """Both columns; the left one is the right one's twin."""
    right = _face(layout, stock, sheet) + _returns(layout, stock) + _plinth(layout, stock)
    return tuple(board.mirrored(LEFT) for board in right) + right


def _face(layout: Layout, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    frame = layout.column_frame
    x0, _, x1, top = frame.outline
    between_returns = (x0 + stock.thickness, frame.rails[0][1], x1 - stock.thickness, top)
    stile = frame.stiles[0][2] - frame.stiles[0][0]
    lap = min(PANEL_LAP, stile - stock.thickness)
    return build_frame(frame, FrameWords(RIGHT, "column"), stock, sheet, between_returns, lap)


def _returns(layout: Layout, stock: Stock) -> tuple[Board, ...]:
    t = stock.thickness
    y = (layout.column_base, layout.shelf_bottom)
    back_of_face = layout.column_front - t
    inner_back = layout.wall if layout.column_inner >= layout.facing_side else 0.0
    inner, outer = layout.column_inner, layout.column_outer
    return (
        block("column inner return", RIGHT, stock, "y", (inner, inner + t), y, (inner_back, back_of_face)),
        block(
            "column outer return",
            RIGHT,
            stock,
            "y",
            (outer - t, outer),
            y,
            (layout.column_back, back_of_face),
        ),
    )


def _plinth(layout: Layout, stock: Stock) -> tuple[Board, ...]:
    """Boards mitred round the foot, on packing where they stand out further than they are thick."""
    inner, outer, front = layout.column_inner, layout.column_outer, layout.column_front
    y0, y1 = layout.column_base, layout.plinth_top
    packed = layout.plinth_out - stock.thickness
    start = packed if packed >= LEAST_LAYER else 0.0
    profile = [(start, y0), (layout.plinth_out, y0), (layout.plinth_out, y1), (start, y1)]
    inner_back = layout.wall if inner >= layout.facing_side else 0.0
    path = [(outer, layout.column_back), (outer, front), (inner, front), (inner, inner_back)]
    boards = run_section(["plinth return", "plinth front", "plinth return"], RIGHT, stock, path, profile)
    if not start:
        return boards
    y = (y0, y1)
    return (
        *boards,
        block("plinth packing", RIGHT, stock, "x", (inner, outer), y, (front, front + start)),
        block("plinth packing", RIGHT, stock, "z", (inner - start, inner), y, (inner_back, front + start)),
        block(
            "plinth packing",
            RIGHT,
            stock,
            "z",
            (outer, outer + start),
            y,
            (layout.column_back, front + start),
        ),
    )
