"""The back band: a moulding on the facing along the inner edge of columns and frieze, on the plinths."""

from __future__ import annotations

from model.board import Board
from model.build.lines import Layout
from model.build.run import ON_FACE, against, moulding_stock, run_section

BACK_BAND = "back band"


def build_back_band(layout: Layout, wood: str) -> tuple[Board, ...]:
    """Up the left column, along under the frieze and down the right one; nothing when there is none."""
    section = layout.mouldings.back_band
    if section is None:
        return ()
    cap = layout.mouldings.plinth_cap
    left, right = (side.plinth_top + (cap.height if cap else 0.0) for side in layout.sides)
    inner, top = layout.column_inner, layout.frieze_bottom
    path = [(-inner, left), (-inner, top), (inner, top), (inner, right)]
    stock, profile = moulding_stock(section, wood), against(section, 0.0)
    return run_section(
        [f"{BACK_BAND} {word}" for word in ("leg", "head", "leg")], BACK_BAND, stock, path, profile, ON_FACE
    )
