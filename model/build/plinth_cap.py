"""The plinth cap: a moulding on each plinth round its column, returned to the masonry on both sides."""

from __future__ import annotations

from model.board import Board, Point2
from model.build.both_sides import build_both
from model.build.facing import follow_masonry
from model.build.lines import Layout, Side
from model.build.run import moulding_stock, run_section, upon

ROLES = ("plinth cap return", "plinth cap front", "plinth cap return")


def build_plinth_caps(layout: Layout, wood: str) -> tuple[Board, ...]:
    """Both plinths' caps, left first; nothing where there are none."""
    return build_both(layout, lambda side: _build_cap(layout, side, wood))


def _build_cap(layout: Layout, side: Side, wood: str) -> tuple[Board, ...]:
    """As if it stood on the right."""
    section = layout.mouldings.plinth_cap
    if section is None:
        return ()
    front, level = layout.column_front, side.plinth_top
    outer_back = layout.back_at(side, side.outer_back, level)
    inner_back = layout.slip_front or layout.back_at(side, side.inner_back, level)
    outer_back = _before_baseboard(layout, side, (side.outer, side.outer + section.projection), outer_back)
    inner_back = _before_baseboard(layout, side, (side.inner - section.projection, side.inner), inner_back)
    path = [(side.outer, outer_back), (side.outer, front), (side.inner, front), (side.inner, inner_back)]
    profile = upon(section, level)
    boards = run_section(ROLES, f"{side.name} column", moulding_stock(section, wood), path, profile)
    return follow_masonry(side, boards)


def _before_baseboard(layout: Layout, side: Side, x: Point2, back: float) -> float:
    """z where a return at `x` ends: before a baseboard that reaches up there and is notched round below."""
    notch = layout.foot_notch(side, x)
    return max(back, notch[1]) if notch and notch[0] > side.plinth_top else back
