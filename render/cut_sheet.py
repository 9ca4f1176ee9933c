"""The cut list as it stands on paper: large figures, tall rows, a box to tick and room to write.

What is on the list is decided in model.takeoff.cut_list.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from model.takeoff.cut_list import Cut
from model.units import LengthStyle, format_length, without_feet
from render.drawing import MM
from render.tables import FIGURES, Cell, Row, Strip, Table, opening_strips, share_columns, table_strips

ROW = 11 * MM
"""Least row height: tall enough to write in with a carpenter's pencil. Shop choice."""
SIZES_ARE = (
    "Finished sizes, length from long point to long point. Tick a line when its pieces are cut; "
    "pencil the mark on each piece where it will not show."
)
_FIGURES = {"Qty", "Length", "Width", "Thick"}


def cut_strips(cuts: Sequence[Cut], style: LengthStyle, width: float) -> tuple[Strip, ...]:
    """The cut list for a page `width` wide; widths and thicknesses are never written in feet."""
    names = ("Cut", "Mark", "Piece", "Qty", "Length", "Width", "Thick", "Stock", "Ends", "Notes")
    shares = (9, 20, 29, 9, 25, 20, 17, 30, 46, 36)
    columns = share_columns(width, names, shares, _FIGURES, ("Mark",))
    pieces = sum(cut.quantity for cut in cuts)
    rows = tuple(list_under_names(cuts, lambda cut: _row(cut, style)))
    return (
        *opening_strips(f"Cut list: {pieces} pieces on {len(cuts)} lines", SIZES_ARE, width),
        *table_strips(Table(columns, rows, FIGURES, ROW, ruled=True)),
    )


def list_under_names(cuts: Sequence[Cut], build_row: Callable[[Cut], Row | None]) -> Iterator[Row]:
    """The lines of each sub-assembly below its name; a cut without a row of its own is left out."""
    assembly = None
    for cut in cuts:
        if cut.assembly != assembly:
            assembly = cut.assembly
            yield say_assembly(assembly)
        row = build_row(cut)
        if row is not None:
            yield row


def say_assembly(assembly: str) -> str:
    """A sub-assembly's name as a heading: ``left column, right column`` is ``Left and right column``."""
    names = assembly.split(", ")
    first, last = (name.rpartition(" ") for name in (names[0], names[-1]))
    if len(names) == 2 and first[2] == last[2] and first[0] and last[0]:
        return f"{first[0]} and {last[0]} {first[2]}".capitalize()
    return assembly.capitalize()


def _row(cut: Cut, style: LengthStyle) -> tuple[Cell, ...]:
    across = without_feet(style, 32)
    return (
        Cell(box=True),
        Cell(pieces_text(cut)),
        Cell(cut.name),
        Cell(str(cut.quantity)),
        Cell(format_length(cut.length, style)),
        Cell(format_length(cut.width, across)),
        Cell(format_length(cut.thickness, across)),
        Cell(cut.stock),
        Cell(cut.ends),
        Cell(cut.notes),
    )


def pieces_text(cut: Cut) -> str:
    """The marks to pencil on the pieces: ``C3`` for one, ``C4a, b`` for two, ``C4a–d`` for more."""
    first, last = cut.pieces[0], cut.pieces[-1]
    if first == last:
        return first
    return first + (", " if len(cut.pieces) == 2 else "–") + last.removeprefix(cut.mark)
