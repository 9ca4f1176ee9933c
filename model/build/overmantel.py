"""The overmantel: a framed field standing on the shelf, returned to what is behind it and closed on top."""

from __future__ import annotations

from model.board import Board, End, Stock, block
from model.build.frame import FrameWords, build_frame
from model.build.lines import LEAST_LAYER, LEAST_STEP, PANEL_LAP, Layout, Overmantel

OVERMANTEL = "overmantel"


def build_overmantel(layout: Layout, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """Frame and panels, and a box behind where it stands off the wall; nothing when there is none."""
    over = layout.over
    if over is None:
        return ()
    words, frame, t = FrameWords(OVERMANTEL, "overmantel"), over.frame, stock.thickness
    x0, y0, x1, y1 = frame.outline
    if frame.front - t - over.back < LEAST_LAYER:
        return build_frame(frame, words, stock, sheet, frame.outline)
    _, low, right, _ = frame.stiles[0]
    lap = min(PANEL_LAP, right - x0 - t, low - y0 - t)
    face = build_frame(frame, words, stock, sheet, (x0 + t, y0, x1 - t, y1 - t), lap)
    ends = (_return(layout, over, stock, x0), _return(layout, over, stock, x1 - t))
    step = _step(layout, over, over.back)
    back = layout.wall if step is not None and step <= y1 - t else over.back
    z = (back, frame.front - t)
    return (*face, *ends, block("overmantel top", OVERMANTEL, stock, "x", (x0 + t, x1 - t), (y1 - t, y1), z))


def _return(layout: Layout, over: Overmantel, stock: Stock, x: float) -> Board:
    """A side back to the facing or, beside it, to the wall; over a proud facing's top it steps back."""
    t = stock.thickness
    _, y0, _, y1 = over.frame.outline
    back = layout.wall if min(abs(x), abs(x + t)) >= layout.facing_side else over.back
    front, step = over.frame.front - t, _step(layout, over, back)
    role = "overmantel return"
    if step is None:
        return block(role, OVERMANTEL, stock, "y", (x, x + t), (y0, y1), (back, front))
    wall = layout.wall
    face = ((y0, back), (step, back), (step, wall), (y1, wall), (y1, front), (y0, front))
    return Board(role, OVERMANTEL, stock, "x", face, End(x), End(x + t), grain="y")


def _step(layout: Layout, over: Overmantel, back: float) -> float | None:
    """y at which a back on the facing goes back to the wall; None where it does not."""
    _, y0, _, y1 = over.frame.outline
    within = y0 + LEAST_LAYER <= layout.facing_top <= y1 - LEAST_LAYER
    return layout.facing_top if back == 0.0 and layout.wall < -LEAST_STEP and within else None
