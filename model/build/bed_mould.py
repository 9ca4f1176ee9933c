"""The bed mould in the angle under the shelf, mitred round the columns and returned to the wall."""

from __future__ import annotations

from math import cos, pi, sin

from model.board import Board, Point2, Stock, StockKind
from model.build.layout import LEAST_LAYER, Layout, Side
from model.build.run import run_section

BED_MOULD = "bed mould"
ARC_STEPS = 8
"""Facets a quarter circle is built from; the sagitta is under 1/200 of the radius."""
FILLET = 0.125
"""Height of each fillet as a part of the moulding's size. Shop choice."""


def bed_mould_profile(size: float) -> tuple[tuple[Point2, ...], frozenset[int]]:
    """Fillet, cavetto, fillet: (out, down) points from the inner top corner, and which lie in the curve.

    As high as it is deep. Out is 0 at the face it lies against, down is 0 at the shelf's underside.
    """
    fillet = FILLET * size
    radius = size - 2 * fillet
    centre = (size - fillet, -(size - fillet))
    angles = [pi / 2 * (1 + i / ARC_STEPS) for i in range(ARC_STEPS + 1)]
    arc = [(centre[0] + radius * cos(a), centre[1] + radius * sin(a)) for a in angles]
    points = [(0.0, 0.0), (size, 0.0), (size, -fillet), *arc, (fillet, -size), (0.0, -size)]
    return tuple(points), frozenset(range(4, 3 + ARC_STEPS))


def build_bed_mould(layout: Layout, wood: str) -> tuple[Board, ...]:
    """The run from wall to wall, nothing when it is off or has no room."""
    size = layout.mould_size
    if size <= 0:
        return ()
    profile, curved = bed_mould_profile(size)
    stock = Stock(StockKind.MOULDING, size, wood)
    placed = [(out, layout.shelf_bottom + down) for out, down in profile]
    path = _path(layout)
    return run_section([BED_MOULD] * (len(path) - 1), BED_MOULD, stock, path, placed, curved)


def _path(layout: Layout) -> list[Point2]:
    """From the wall on the right round both columns to the wall on the left."""
    left = [(-x, z) for x, z in reversed(_half_path(layout, layout.left))]
    return _half_path(layout, layout.right) + left


def _half_path(layout: Layout, side: Side) -> list[Point2]:
    column, frieze = layout.column_front, layout.frieze_front
    top = layout.step_up(side.base, side.outer_back)
    reaches_wall = top is not None and top <= layout.shelf_bottom - layout.mould_size
    back = layout.wall if reaches_wall else side.outer_back
    if abs(column - frieze) < LEAST_LAYER / 2:
        # Too small a step to mitre round: straight across, along whichever stands further out.
        return [(side.outer, back), (side.outer, max(column, frieze))]
    return [(side.outer, back), (side.outer, column), (side.inner, column), (side.inner, frieze)]
