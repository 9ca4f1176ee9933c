"""A boxed column: face, side returns back to the masonry, and the plinth wrapped round its foot."""

from __future__ import annotations

from model.board import Board, End, Point2, Stock, block
from model.build.behind import list_notches, notch_edge, turn_over
from model.build.both_sides import build_both
from model.build.facing import back_edge
from model.build.frame import FrameWords, build_frame
from model.build.hearth_step import step_down
from model.build.lines import PANEL_LAP, Layout, Side
from model.build.plain_face import build_plain_face
from model.build.plinth import build_plinth
from model.build.tapered_column import build_tapered_frame, build_tapered_returns

COLUMN = {"left": "left column", "right": "right column"}


def build_columns(layout: Layout, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """Both columns with their plinths, left first."""
    return build_both(
        layout,
        lambda side: (
            _shaft(layout, side, stock, sheet) + build_plinth(layout, side, COLUMN[side.name], stock)
        ),
    )


def _shaft(layout: Layout, side: Side, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """Face and returns."""
    face, straight = _face(layout, side, stock, sheet), _returns(layout, side, stock)
    if side.taper is None:
        return _on_floor(layout, side, face) + straight
    return face + build_tapered_returns(side.taper, straight)


def _face(layout: Layout, side: Side, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """A frame and its panels, or the boards of a face without any."""
    frame = side.frame
    if not frame.openings:
        return build_plain_face(layout, side, stock)
    if side.taper:
        return build_tapered_frame(side, side.taper, stock, sheet)
    x0, _, x1, top = frame.outline
    between_returns = (x0 + stock.thickness, frame.rails[0][1], x1 - stock.thickness, top)
    stile = frame.stiles[0][2] - frame.stiles[0][0]
    lap = min(PANEL_LAP, stile - stock.thickness)
    return build_frame(frame, FrameWords(COLUMN[side.name], "column"), stock, sheet, between_returns, lap)


def _on_floor(layout: Layout, side: Side, face: tuple[Board, ...]) -> tuple[Board, ...]:
    """The face's boards, on down to the floor where the column steps over the hearth's end."""
    if side.step is None:
        return face
    front = layout.column_front
    return tuple(step_down(side, board) if board.bounds[1][2] == front else board for board in face)


def _returns(layout: Layout, side: Side, stock: Stock) -> tuple[Board, ...]:
    t = stock.thickness
    return (
        _return(layout, side, "column inner return", stock, (side.inner, side.inner + t), side.inner_back),
        _return(layout, side, "column outer return", stock, (side.outer - t, side.outer), side.outer_back),
    )


def _return(layout: Layout, side: Side, role: str, stock: Stock, x: Point2, back: float) -> Board:
    """A side back to the facing, cut there to one that leans; over its top it steps back to the wall."""
    words, y = COLUMN[side.name], (side.foot_at(x[0]), layout.shelf_bottom)
    front = layout.column_front - stock.thickness
    step = layout.step_up(side.base, back)
    lean = side.lean_behind(back)
    swept = side.swept(x)
    notch = layout.foot_notch(side, swept)
    notches = [(y[0], *notch)] if notch else []
    if layout.behind:
        notches += list_notches(turn_over(layout.behind, side.sign), (swept, 0), 1, front)
    edge = back_edge(y, back, lean, step, layout.wall)
    edge = notch_edge(edge, notches) if notches else edge
    if step is None and lean is None and len(edge) == 2:
        return block(role, words, stock, "y", x, y, (edge[0][1], front))
    face = (*edge, (y[1], front), (y[0], front))
    return Board(role, words, stock, "x", face, End(x[0]), End(x[1]), grain="y")
