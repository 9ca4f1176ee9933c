"""Boards as blocks: one for each board in each view, which carries its mark and what it is as attributes.

A board seen in three views is three blocks, for a block looks the same wherever it is inserted and a board
does not. What of its lines a view shows is render.visibility's business.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from export.dxf_entities import TEXT_STYLES
from export.dxf_layers import LINE_PENS, find_text_layer
from export.dxf_marks import Page, write_mark
from export.dxf_text import format_dxf_text
from model.takeoff.cut_list import Cut
from model.units import LengthStyle, format_length
from render.drawing import Drawing, Lines, Mark, Pen, Polyline
from render.extent import drawing_extent
from render.shifting import shift_mark

MARK, PIECE, DESCRIPTION, SIZE, STOCK = "MARK", "PIECE", "DESCRIPTION", "SIZE", "STOCK"
"""Tags of the attributes. MARK is that of the cut list, PIECE tells boards of one mark apart.

They are not shown. What is written on a board, and its hatch, are no part of its block: some programs leave
out attributes, and some show in a viewport what lies in a block on a layer that is frozen there.
"""
_PROMPTS = {
    MARK: "Mark",
    PIECE: "Piece",
    DESCRIPTION: "What it is",
    SIZE: "Finished size",
    STOCK: "Cut from",
}
_INVISIBLE = 1
_LONGEST_NAME = 31
"""Characters of a block's name in R12."""
_ANY_LAYER = "0"
"""Blocks are inserted on the one layer that nobody freezes: what they hold has layers of its own."""
_HEIGHT = 0.1
"""Capitals of attributes, for whoever has them shown, inches on paper. Shop choice."""


@dataclass(frozen=True, slots=True)
class BoardNote:
    """What a board's block says of it: its mark on the cut list, and in words what it is."""

    mark: str
    description: str
    size: str
    stock: str


def list_board_notes(cuts: Iterable[Cut], style: LengthStyle) -> dict[str, BoardNote]:
    """What the cut list says of each board, by the mark of the piece; sizes in the words of `style`."""
    notes: dict[str, BoardNote] = {}
    for cut in cuts:
        sizes = (cut.thickness, cut.width, cut.length)
        size = " x ".join(format_length(value, style) for value in sizes)
        notes |= dict.fromkeys(cut.pieces, BoardNote(cut.mark, cut.name, size, cut.stock))
    return notes


def part_boards(
    marks: Iterable[Mark], boards: Mapping[str, BoardNote]
) -> tuple[dict[str, list[Lines | Polyline]], tuple[Mark, ...]]:
    """The lines among `marks` of a view by the board they are edges of, and all other marks."""
    seen: dict[str, list[Lines | Polyline]] = {}
    others: list[Mark] = []
    for mark in marks:
        if isinstance(mark, Lines | Polyline) and mark.pen in LINE_PENS and mark.stands_for in boards:
            seen.setdefault(mark.stands_for, []).append(mark)
        else:
            others.append(mark)
    return seen, tuple(others)


def write_board(page: Page, piece: str, lines: Sequence[Lines | Polyline], note: BoardNote) -> None:
    """Add the block of what is seen of a board and insert it where it is; `lines` lie in the page's space."""
    pencil = page.pencil
    corner = drawing_extent(Drawing(tuple(lines)))[:2]
    block = pencil.document.blocks.new(name_block(piece, page.view))
    inside = Page(pencil.inside(block), page.dress, page.view, (0.0, 0.0))
    back = (-corner[0], -corner[1])
    for mark in lines:
        write_mark(inside, shift_mark(mark, back))
    insert = pencil.space.add_blockref(block.name, corner, dxfattribs={"layer": _ANY_LAYER})
    look = {
        "layer": find_text_layer(page.view, Pen.TEXT, piece).name,
        "style": TEXT_STYLES[False],
        "height": _HEIGHT * pencil.ratio,
        "flags": _INVISIBLE,
    }
    values = (note.mark, piece, note.description, note.size, note.stock)
    for (tag, prompt), value in zip(_PROMPTS.items(), values, strict=True):
        block.add_attdef(tag, dxfattribs={**look, "prompt": prompt})
        insert.add_attrib(tag, format_dxf_text(value), corner, dxfattribs=look)


def name_block(piece: str, view: str) -> str:
    """``C4A-FRONT``: in capitals, as short as R12 wants it."""
    return f"{piece}-{view.replace('_', '-')}".upper()[:_LONGEST_NAME]
