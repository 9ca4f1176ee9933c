"""The tables of a shop drawing: the pieces of one sub-assembly and how they are joined.

What is listed is decided in model.takeoff; where the tables stand in render.part_sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.takeoff.assembly_joints import JointLine
from model.takeoff.cut_list import Cut
from model.units import MILLIMETRES_ONLY, LengthStyle, format_length, without_feet
from render.drawing import MM, Anchor
from render.lettering import tie_words
from render.part_views import Part
from render.tables import (
    Cell,
    Column,
    Row,
    Strip,
    Table,
    heading_strip,
    share_columns,
    share_widths,
    table_strips,
)

PIECES = ("Mark", "Piece", "No.", "Finished size")
JOINTS = ("Joint", "How it is made")
MARK, COUNT = 13 * MM, 9.5 * MM
"""Widths of the columns of marks and counts."""
HANDS, HANDED = ("left", "right", "left-hand", "right-hand", "handed"), "mirror twin of"
"""Notes of these words and notes that hold these say which of two a piece is: its drawing shows that."""


def piece_strips(part: Part, cuts: Sequence[Cut], style: LengthStyle, width: float) -> tuple[Strip, ...]:
    """The pieces of a part for a table `width` wide."""
    shares = (MARK, *share_widths(width - MARK - COUNT, (34, 31)))
    shares = (*shares[:2], COUNT, shares[2])
    columns = tuple(
        Column(name, w, Anchor.END if name == "No." else Anchor.START, bold=name == "Mark")
        for name, w in zip(PIECES, shares, strict=True)
    )
    table = Table(columns, tuple(_list_pieces(part, cuts, style)))
    return (heading_strip(f"Pieces: {len(part.boards)}"), *table_strips(table))


def joint_strips(joints: Sequence[JointLine], width: float) -> tuple[Strip, ...]:
    """How the pieces are joined, for a table `width` wide."""
    columns = share_columns(width, JOINTS, (24, 60))
    return (
        heading_strip("Joints", above=3 * MM),
        *table_strips(Table(columns, tuple(_list_joints(joints)))),
    )


def _list_pieces(part: Part, cuts: Sequence[Cut], style: LengthStyle) -> Iterator[Row]:
    for cut in cuts:
        count = part.kinds.count(cut.mark)
        if count:
            words = "; ".join((cut.name, *_list_work(cut)))
            yield Cell(cut.mark), Cell(words), Cell(str(count)), Cell(_say_size(cut, style))


def _list_work(cut: Cut) -> Iterator[str]:
    """What is done to a piece beyond sawing it square to its size."""
    if cut.ends != "both square":
        yield cut.ends
    yield from (note for note in cut.notes.split("; ") if note and note not in HANDS and HANDED not in note)


def _say_size(cut: Cut, style: LengthStyle) -> str:
    """Length, width and thickness, each kept on one line."""
    across = without_feet(style, 32)
    sizes = format_length(cut.length, style), *(format_length(s, across) for s in (cut.width, cut.thickness))
    if style.units == MILLIMETRES_ONLY:
        sizes = tuple(size.removesuffix(" mm") for size in sizes)
    return " ".join(tie_words(text) for text in (f"{sizes[0]} ×", f"{sizes[1]} ×", sizes[2]))


def _list_joints(joints: Sequence[JointLine]) -> Iterator[Row]:
    """Those made on the bench first; then what holds the part to others, below their names."""
    to = ""
    for joint in sorted(joints, key=lambda line: line.to):
        if joint.to != to:
            to = joint.to
            yield f"To the {to}, when it is fitted"
        yield Cell(f"{joint.marks[0]} to {joint.marks[1]}"), Cell(joint.words)
