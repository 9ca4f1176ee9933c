"""The inner slip: a flat frame on the facing inside columns and frieze, down to what they stand on."""

from __future__ import annotations

from dataclasses import replace

from model.board import Board, Stock
from model.build.lines import Layout, Side
from model.build.run import ON_FACE, Profile, run_section

SLIP = "slip"


def build_slip(layout: Layout, stock: Stock) -> tuple[Board, ...]:
    """Two legs and a head, mitred; nothing when there is none."""
    slip = layout.slip
    if slip is None:
        return ()
    inner, top = layout.column_inner - slip.offset, layout.frieze_bottom - slip.offset
    left, right = (_foot(layout, side, inner - slip.width) for side in layout.sides)
    path = [(-inner, left), (-inner, top), (inner, top), (inner, right)]
    w, t = slip.width, slip.thickness
    profile = Profile([(0.0, 0.0), (w, 0.0), (w, t), (0.0, t)])
    thin = replace(stock, thickness=min(stock.thickness, t))
    return run_section(["slip leg", "slip head", "slip leg"], SLIP, thin, path, profile, ON_FACE)


def _foot(layout: Layout, side: Side, edge: float) -> float:
    """Where the column stands, but on a hearth that reaches under the leg."""
    return side.base if edge >= layout.hearth_side else max(side.base, 0.0)
