"""The bed mould in the angle under the shelf, mitred round the columns and returned to the wall."""

from __future__ import annotations

from model.board import Board, Point2
from model.build.facing import follow_masonry
from model.build.lines import Layout, Side, is_broken
from model.build.run import moulding_stock, run_section, under

BED_MOULD = "bed mould"
STRAIGHT = ("outer return", "front", "outer return")
STEPPED = (
    "outer return", "column front", "inner return", "frieze front",
    "inner return", "column front", "outer return",
)  # fmt: skip
"""The legs from right to left, in words after the mould's own."""


def build_bed_mould(layout: Layout, wood: str) -> tuple[Board, ...]:
    """The run from wall to wall, nothing when it is off or has no room."""
    section = layout.mouldings.bed
    if section is None:
        return ()
    path = _path(layout)
    roles = [f"{BED_MOULD} {word}" for word in (STEPPED if len(path) > 4 else STRAIGHT)]
    stock = moulding_stock(section, wood)
    boards = run_section(roles, BED_MOULD, stock, path, under(section, layout.shelf_bottom))
    right, rest, left = boards[:1], boards[1:-1], boards[-1:]
    return follow_masonry(layout.right, right) + rest + follow_masonry(layout.left, left)


def _path(layout: Layout) -> list[Point2]:
    """From the wall on the right round both columns to the wall on the left."""
    left = [(-x, z) for x, z in reversed(_half_path(layout, layout.left))]
    return _half_path(layout, layout.right) + left


def _half_path(layout: Layout, side: Side) -> list[Point2]:
    column, frieze = layout.column_front, layout.frieze_front
    back = layout.back_at(side, side.outer_back, layout.shelf_bottom - layout.mould_size)
    if not is_broken(layout.frieze_over, column, frieze):
        return [(side.outer_top, back), (side.outer_top, max(column, frieze))]
    inner, outer = side.inner_top, side.outer_top
    return [(outer, back), (outer, column), (inner, column), (inner, frieze)]
