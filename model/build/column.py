"""A boxed column: framed face, side returns back to the masonry, and the plinth wrapped round its foot."""

from __future__ import annotations

from model.board import Board, End, Point2, Stock, block
from model.build.facing import back_edge, follow_masonry
from model.build.frame import FrameWords, build_frame
from model.build.layout import LEAST_LAYER, LEFT, PANEL_LAP, Layout, Rect, Side
from model.build.run import Profile, run_section

COLUMN = {"left": "left column", "right": "right column"}


def build_columns(layout: Layout, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """Both columns, left first; the left one is built as if it stood on the right, then turned over."""
    boards: tuple[Board, ...] = ()
    for side in layout.sides:
        words = COLUMN[side.name]
        own = _face(layout, side, stock, sheet) + _returns(layout, side, stock) + _plinth(layout, side, stock)
        boards += tuple(board.mirrored(words) for board in own) if side.name == LEFT else own
    return boards


def _face(layout: Layout, side: Side, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    frame = side.frame
    if not frame.openings:
        return tuple(_face_board(layout, side, board, stock) for board in frame.stiles)
    x0, _, x1, top = frame.outline
    between_returns = (x0 + stock.thickness, frame.rails[0][1], x1 - stock.thickness, top)
    stile = frame.stiles[0][2] - frame.stiles[0][0]
    lap = min(PANEL_LAP, stile - stock.thickness)
    return build_frame(frame, FrameWords(COLUMN[side.name], "column"), stock, sheet, between_returns, lap)


def _face_board(layout: Layout, side: Side, rect: Rect, stock: Stock) -> Board:
    """A board of a plain face, over the edges of both returns; fluted where the layout says so."""
    x0, y0, x1, y1 = rect
    words, z = COLUMN[side.name], (layout.column_front - stock.thickness, layout.column_front)
    if layout.flutes is None:
        return block("column face", words, stock, "y", (x0, x1), (y0, y1), z)
    if rect != side.frame.flutes:
        return block("column flute stop", words, stock, "y", (x0, x1), (y0, y1), z)
    section, curved = layout.flutes.section((x0, x1), z)
    return Board("column fluted face", words, stock, "y", section, End(y0), End(y1), curved)


def _returns(layout: Layout, side: Side, stock: Stock) -> tuple[Board, ...]:
    t = stock.thickness
    return (
        _return(layout, side, "column inner return", stock, (side.inner, side.inner + t), side.inner_back),
        _return(layout, side, "column outer return", stock, (side.outer - t, side.outer), side.outer_back),
    )


def _return(layout: Layout, side: Side, role: str, stock: Stock, x: Point2, back: float) -> Board:
    """A side back to the facing, cut there to one that leans; over its top it steps back to the wall."""
    words, y = COLUMN[side.name], (side.base, layout.shelf_bottom)
    front = layout.column_front - stock.thickness
    step = layout.step_up(side.base, back)
    lean = side.lean_behind(back)
    notch = layout.foot_notch(side, back)
    if step is None and lean is None and notch is None:
        return block(role, words, stock, "y", x, y, (back, front))
    edge = back_edge(y, back, lean, step, layout.wall)
    if notch is not None:
        edge = ((y[0], notch[1]), notch, (notch[0], back), *edge[1:])
    face = (*edge, (y[1], front), (y[0], front))
    return Board(role, words, stock, "x", face, End(x[0]), End(x[1]), grain="y")


def _plinth(layout: Layout, side: Side, stock: Stock) -> tuple[Board, ...]:
    """Boards mitred round the foot, on packing where they stand out further than they are thick; or none."""
    if not layout.plinth_out:
        return ()
    words = COLUMN[side.name]
    inner, outer, front = side.inner, side.outer, layout.column_front
    y0, y1 = side.base, side.plinth_top
    packed = layout.plinth_out - stock.thickness
    start = packed if packed >= LEAST_LAYER else 0.0
    profile = Profile([(start, y0), (layout.plinth_out, y0), (layout.plinth_out, y1), (start, y1)])
    inner_back = layout.slip_front or side.inner_back
    path = [(outer, side.outer_back), (outer, front), (inner, front), (inner, inner_back)]
    boards = run_section(["plinth return", "plinth front", "plinth return"], words, stock, path, profile)
    if start:
        boards += _packing(layout, side, stock, inner_back, start)
    return follow_masonry(side, boards)


def _packing(layout: Layout, side: Side, stock: Stock, inner_back: float, start: float) -> tuple[Board, ...]:
    """Strips behind the plinth's boards, `start` thick."""
    words, y = COLUMN[side.name], (side.base, side.plinth_top)
    inner, outer, front = side.inner, side.outer, layout.column_front
    return (
        block("plinth front packing", words, stock, "x", (inner, outer), y, (front, front + start)),
        block(
            "plinth return packing", words, stock, "z", (inner - start, inner), y, (inner_back, front + start)
        ),
        block(
            "plinth return packing",
            words,
            stock,
            "z",
            (outer, outer + start),
            y,
            (side.outer_back, front + start),
        ),
    )
