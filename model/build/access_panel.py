"""The loose panel over a cord way: it lies in a frame's opening on the fixed sheet, cut out behind it.

Where the way runs and which holes it takes stands in model.build.cord_way.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.board import Board, Stock, StockKind, block
from model.build.lines import LEFT, Frame, Layout
from model.design import Design
from model.fixing import IN_FRIEZE

ACCESS_PANEL = "access panel"
LIP = 0.75
"""Width of the fixed sheet left round the cut-out for the loose panel to lie on, in. Shop choice."""
LEAST_HAND = 2.0
"""Narrowest cut-out worth reaching through, in. Shop choice."""
HAIR = 1e-9


def build_access_panel(
    design: Design, layout: Layout, boards: Sequence[Board], sheet: Stock
) -> tuple[Board, ...]:
    """The loose panel in the lowest opening of the way's column, or in the frieze's nearest the middle.

    Nothing where no cords run, where there is no panel, or where it is too small or too little behind its
    frame to take another in front of it.
    """
    cord = design.cord
    if not cord.on:
        return ()
    if cord.place == IN_FRIEZE:
        return _build(design, layout.frieze_frame, IN_FRIEZE, False, layout, boards, sheet)
    side = layout.left if cord.place == LEFT else layout.right
    assembly = f"{side.name} column"
    return _build(design, side.frame, assembly, side.name == LEFT, layout, boards, sheet)


def _build(
    design: Design,
    frame: Frame,
    assembly: str,
    mirrored: bool,
    layout: Layout,
    boards: Sequence[Board],
    sheet: Stock,
) -> tuple[Board, ...]:
    if not frame.openings:
        return ()
    x0, y0, x1, y1 = min(frame.openings, key=lambda o: abs(o[0] + o[2]) if assembly == IN_FRIEZE else o[1])
    moulding = layout.mouldings.panel
    off = design.cord.panel_clearance + (moulding.height if moulding else 0.0)
    x, y = (x0 + off, x1 - off), (y0 + off, y1 - off)
    if min(x[1] - x[0], y[1] - y[0]) < LEAST_HAND + 2 * LIP:
        return ()
    face = frame.front - frame.reveal
    axis = "y" if y[1] - y[0] >= x[1] - x[0] else "x"
    panel = block(ACCESS_PANEL, assembly, sheet, axis, x, y, (face, face + sheet.thickness))
    panel = panel.mirrored(assembly) if mirrored else panel
    behind_frame = face + sheet.thickness <= frame.front + HAIR
    lies_on_sheet = find_fixed_sheet(panel, boards) is not None
    return (panel,) if behind_frame and lies_on_sheet and not _meets(panel, boards) else ()


def find_fixed_sheet(panel: Board, boards: Sequence[Board]) -> int | None:
    """Index of the sheet that a loose panel lies on; None where none reaches all round it."""
    (x0, y0, z0), (x1, y1, _) = panel.bounds
    for i, board in enumerate(boards):
        if board.stock.kind is StockKind.PANEL and board.role != ACCESS_PANEL:
            low, high = board.bounds
            around = low[0] <= x0 and low[1] <= y0 and high[0] >= x1 and high[1] >= y1
            if around and abs(high[2] - z0) < HAIR:
                return i
    return None


def _meets(panel: Board, boards: Sequence[Board]) -> bool:
    """Whether something else is in the loose panel's place."""
    low, high = panel.bounds
    return any(
        all(b.bounds[0][i] < high[i] - HAIR and low[i] + HAIR < b.bounds[1][i] for i in range(3))
        for b in boards
    )
