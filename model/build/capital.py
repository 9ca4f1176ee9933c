"""The capital: a moulding round each column below the frieze, returned to the masonry on both sides."""

from __future__ import annotations

from model.board import Board
from model.build.both_sides import build_both
from model.build.facing import follow_masonry
from model.build.lines import Layout, Side
from model.build.run import moulding_stock, run_section, under

ROLES = ("capital return", "capital front", "capital return")


def build_capitals(layout: Layout, wood: str) -> tuple[Board, ...]:
    """Both capitals, left first; nothing where there are none."""
    return build_both(layout, lambda side: _build_capital(layout, side, wood))


def _build_capital(layout: Layout, side: Side, wood: str) -> tuple[Board, ...]:
    """As if it stood on the right. Its inner return stops at the back band and slip behind it."""
    section = layout.mouldings.capital
    if section is None:
        return ()
    front, foot = layout.column_front, layout.frieze_bottom - section.height
    outer_back = layout.back_at(side, side.outer_back, foot)
    band = layout.mouldings.back_band
    before = max(band.projection if band else 0.0, layout.slip_front)
    inner_back = before or layout.back_at(side, side.inner_back, foot)
    inner, outer = side.inner_top, side.outer_top
    path = [(outer, outer_back), (outer, front), (inner, front), (inner, inner_back)]
    profile = under(section, layout.frieze_bottom)
    boards = run_section(ROLES, f"{side.name} column", moulding_stock(section, wood), path, profile)
    return follow_masonry(side, boards)
