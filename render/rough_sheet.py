"""Rough sizes on paper: what to take from the rack for each line of the cut list, each allowance by itself.

How much is left on is worked out in model.takeoff.rough.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.reference.lumber import WIDEST_BOARD
from model.takeoff.cut_list import Cut
from model.takeoff.rough import Rough, Stretch
from model.units import LengthStyle, format_length, without_feet
from render.cut_sheet import list_under_names, pieces_text
from render.tables import (
    FIGURES,
    ROW,
    Cell,
    Row,
    Strip,
    Table,
    opening_strips,
    share_columns,
    table_strips,
)

WHAT = (
    "What to take from the rack: the finished size, what is scribed off at the fireplace, what is trimmed "
    "off in the shop, and what a glue-up is made larger by. Short points are of mitred ends, along the piece."
)
COLUMNS = ("Mark", "Piece", "Qty", "Length", "Width", "Short points", "Grain", "Hand", "Shows")
SHARES = (21, 29, 12, 51, 46, 20, 19, 19, 30)
_FIGURES = {"Qty", "Short points"}


def rough_strips(cuts: Sequence[Cut], style: LengthStyle, width: float) -> tuple[Strip, ...]:
    """The table for a page `width` wide; widths are never written in feet."""
    columns = share_columns(width, COLUMNS, SHARES, _FIGURES, ("Mark",))
    rows = tuple(list_under_names(cuts, lambda cut: _row(cut, style)))
    return (
        *opening_strips("Rough sizes", WHAT, width),
        *table_strips(Table(columns, rows, FIGURES, ROW, ruled=True)),
    )


def _row(cut: Cut, style: LengthStyle) -> Row | None:
    rough = cut.rough
    if rough is None:
        return None
    across = without_feet(style, 32)
    mitred = cut.short_length < cut.length - 1e-6
    return (
        Cell(pieces_text(cut)),
        Cell(cut.name),
        Cell(str(cut.quantity)),
        Cell(describe_stretch(rough.length, style, across)),
        Cell(_describe_width(rough, across)),
        Cell(format_length(cut.short_length, style) if mitred else ""),
        Cell(cut.grain),
        Cell(cut.hand.replace("-hand", " hand")),
        Cell(cut.shows),
    )


def describe_stretch(stretch: Stretch, style: LengthStyle, small: LengthStyle) -> str:
    """The rough size, and below it what it is made of where anything is left on."""
    parts = (("scribe", stretch.scribe), ("trim", stretch.trim), ("glue-up", stretch.glue_up))
    left_on = [f"{format_length(size, small)} {name}" for name, size in parts if size > 0]
    total = format_length(stretch.rough, style)
    if not left_on:
        return total
    return f"{total}\n= {' + '.join([format_length(stretch.finished, style), *left_on])}"


def _describe_width(rough: Rough, style: LengthStyle) -> str:
    lines = [describe_stretch(rough.width, style, style)]
    if rough.strips > 1:
        lines.append(f"{rough.strips} strips of {format_length(rough.strip_width, style)}, edge-glued")
    if rough.layers > 1:
        lines.append(f"{rough.layers} layers")
    if rough.too_wide > 0:
        widest, over = (format_length(size, style) for size in (WIDEST_BOARD, rough.too_wide))
        lines.append(f"one board of {widest} does with {over} less left on")
    return "\n".join(lines)
