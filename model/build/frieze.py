"""The frieze between the columns, and the soffit that closes it from below."""

from __future__ import annotations

from model.board import Board, Stock, block
from model.build.frame import FrameWords, build_frame
from model.build.layout import LEAST_LAYER, PANEL_LAP, Layout

FRIEZE = "frieze"


def build_frieze(layout: Layout, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """Frame, panels and, where the frieze stands off the masonry, a soffit."""
    frame = layout.frieze_frame
    x0, y0, x1, y1 = frame.outline
    closed = soffit_depth(layout) > 0
    area = (x0, y0 + stock.thickness if closed else y0, x1, y1)
    rail = frame.rails[0][3] - y0
    lap = min(PANEL_LAP, rail - stock.thickness) if closed else PANEL_LAP
    face = build_frame(frame, FrameWords(FRIEZE, "frieze"), stock, sheet, area, lap)
    if not closed:
        return face
    y = (y0, y0 + stock.thickness)
    back = layout.wall if y0 >= layout.facing_top else 0.0
    return (*face, block("soffit", FRIEZE, stock, "x", (x0, x1), y, (back, soffit_depth(layout))))


def soffit_depth(layout: Layout) -> float:
    """How far the frame's back is off the masonry, where a soffit closes it; 0 when none is built."""
    gap = layout.frieze_front - layout.board
    return gap if gap >= LEAST_LAYER else 0.0


def frieze_hollow(layout: Layout) -> float:
    """Clear depth behind the frieze's panels and frame, where nailers find room."""
    frame = layout.frieze_frame
    return layout.frieze_front - max(layout.board, frame.reveal + layout.panel)
