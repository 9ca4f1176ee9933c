"""The plinth cap: a moulding on each plinth round its column, returned to the masonry on both sides."""

from __future__ import annotations

from model.board import Board
from model.build.facing import follow_masonry
from model.build.layout import LEFT, Layout, Side
from model.build.run import moulding_stock, run_section, upon

ROLES = ("plinth cap return", "plinth cap front", "plinth cap return")


def build_plinth_caps(layout: Layout, wood: str) -> tuple[Board, ...]:
    """Both plinths' caps, left first; nothing where there are none."""
    boards: tuple[Board, ...] = ()
    for side in layout.sides:
        own = _build_cap(layout, side, wood)
        boards += tuple(board.mirrored(board.assembly) for board in own) if side.name == LEFT else own
    return boards


def _build_cap(layout: Layout, side: Side, wood: str) -> tuple[Board, ...]:
    """As if it stood on the right."""
    section = layout.mouldings.plinth_cap
    if section is None:
        return ()
    front, level = layout.column_front, side.plinth_top
    outer_back = layout.back_at(side, side.outer_back, level)
    inner_back = layout.slip_front or layout.back_at(side, side.inner_back, level)
    path = [(side.outer, outer_back), (side.outer, front), (side.inner, front), (side.inner, inner_back)]
    profile = upon(section, level)
    boards = run_section(ROLES, f"{side.name} column", moulding_stock(section, wood), path, profile)
    return follow_masonry(side, boards)
