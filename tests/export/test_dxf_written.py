"""Entities that are written as text are letter for letter what ezdxf writes for the same attributes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from ezdxf.document import Drawing as Document
from ezdxf.enums import TextEntityAlignment

from export.dxf_boards import BoardNote, write_board
from export.dxf_dimensions import DimensionDress, write_dimension
from export.dxf_entities import Pencil
from export.dxf_file import R12, R2010, document_text, fixed_dates, open_document
from export.dxf_layers import find_layer
from export.dxf_marks import Page
from export.dxf_written import ANONYMOUS, add_block
from model.units import INCHES_16
from render.drawing import Anchor, Dimension, Lines, Pen, Text

SOLID, DASHED = find_layer("front", Pen.EDGE), find_layer("front", Pen.CENTRE)
VERSIONS = pytest.mark.parametrize("version", [R2010, R12])
PAPER = pytest.mark.parametrize("on_paper", [False, True])


@pytest.fixture(autouse=True)
def _no_clock() -> Iterator[None]:
    with fixed_dates():
        yield


def _open(version: str, on_paper: bool = False) -> tuple[Document, Any]:
    document = open_document(version)
    return document, document.paperspace() if on_paper else document.modelspace()


@VERSIONS
@PAPER
def test_lines_and_areas_are_what_ezdxf_writes(version: str, on_paper: bool) -> None:
    document, space = _open(version, on_paper)
    pencil = Pencil(document, space, 1.0)
    pencil.draw_path([(0, 1), (2.5, 3)], False, SOLID)
    pencil.draw_path([(0, 1), (2.5, 3), (-0.1, 1 / 3)], True, SOLID)
    pencil.mark_point((1, 2), "Defpoints")
    pencil.fill(((0, 0), (1, 0), (1, 1)), SOLID)
    pencil.fill(((0, 0), (1, 0), (1, 1), (0, 1)), SOLID)

    expected, space = _open(version, on_paper)
    look = {"layer": SOLID.name}
    space.add_line((0, 1), (2.5, 3), dxfattribs=look)
    draw = space.add_polyline2d if version == R12 else space.add_lwpolyline
    draw([(0, 1), (2.5, 3), (-0.1, 1 / 3)], close=True, dxfattribs=look)
    space.add_point((1, 2), dxfattribs={"layer": "Defpoints"})
    space.add_solid([(0, 0), (1, 0), (1, 1), (1, 1)], dxfattribs=look)
    space.add_solid([(0, 0), (1, 0), (0, 1), (1, 1)], dxfattribs=look)
    assert document_text(document) == document_text(expected)


@VERSIONS
def test_dashes_are_scaled_as_ezdxf_writes_it(version: str) -> None:
    document, space = _open(version)
    Pencil(document, space, 12.0).draw_strokes([(0, 0, 1, 1)], DASHED)

    expected, space = _open(version)
    scale: dict[str, object] = (
        {"linetype": f"{DASHED.linetype}-1-12"} if version == R12 else {"ltscale": 12.0}
    )
    space.add_line((0, 0), (1, 1), dxfattribs={"layer": DASHED.name} | scale)
    assert DASHED.pattern
    assert document_text(document) == document_text(expected)


@VERSIONS
@PAPER
def test_writing_is_what_ezdxf_writes(version: str, on_paper: bool) -> None:
    document, space = _open(version, on_paper)
    pencil = Pencil(document, space, 1.0)
    pencil.write(Text("plain", (1, 2), 0.25), SOLID)
    pencil.write(Text("turned", (1, 2), 0.25, Anchor.END, rotation=90, bold=True), SOLID)
    pencil.write_centred('9"', (1, 2), 0.25, 90, SOLID)

    expected, space = _open(version, on_paper)
    look: dict[str, object] = {"layer": SOLID.name, "style": "LETTERING"}
    space.add_text("plain", height=0.25, dxfattribs=look | {"insert": (1, 2)})
    turned = {"insert": (1, 2), "align_point": (1, 2), "halign": 2, "rotation": 90}
    space.add_text("turned", height=0.25, dxfattribs=look | turned | {"style": "LETTERING-BOLD"})
    if version == R12:
        entity = space.add_text('9"', height=0.25, dxfattribs=look | {"rotation": 90})
        entity.set_placement((1, 2), align=TextEntityAlignment.MIDDLE_CENTER)
    else:
        placing = {"insert": (1, 2), "attachment_point": 5, "char_height": 0.25, "rotation": 90}
        space.add_mtext('9"', dxfattribs=look | placing)
    assert document_text(document) == document_text(expected)


@VERSIONS
def test_a_board_s_block_is_what_ezdxf_writes(version: str) -> None:
    document, space = _open(version)
    pencil = Pencil(document, space, 12.0)
    page = Page(pencil, DimensionDress("Standard", SOLID, 12.0, INCHES_16), "front", (0.0, 0.0))
    note = BoardNote("C1", "Shelf", "3/4 x 8 x 60", "1x10 poplar")
    write_board(page, "C1a", [Lines(Pen.EDGE, ((1.0, 2.0, 4.0, 2.0),), "C1a")], note)

    expected, space = _open(version)
    block = expected.blocks.new("C1A-FRONT")
    block.add_line((0, 0), (3, 0), dxfattribs={"layer": SOLID.name})
    insert = space.add_blockref("C1A-FRONT", (1, 2), dxfattribs={"layer": "0"})
    look = {"layer": "A-ELEV-IDEN", "style": "LETTERING", "height": 0.1 * 12, "flags": 1}
    for tag, prompt, value in (
        ("MARK", "Mark", "C1"),
        ("PIECE", "Piece", "C1a"),
        ("DESCRIPTION", "What it is", "Shelf"),
        ("SIZE", "Finished size", "3/4 x 8 x 60"),
        ("STOCK", "Cut from", "1x10 poplar"),
    ):
        block.add_attdef(tag, dxfattribs=look | {"prompt": prompt})
        insert.add_attrib(tag, value, (1, 2), dxfattribs=look)
    assert document_text(document) == document_text(expected)


@VERSIONS
@PAPER
@pytest.mark.parametrize("vertical", [False, True])
def test_a_dimension_is_what_ezdxf_writes(version: str, on_paper: bool, vertical: bool) -> None:
    document, space = _open(version, on_paper)
    document.dimstyles.new("OWN")
    pencil = Pencil(document, space, 1.0)
    dimension = Dimension((0.0, 0.0), (2.0, 3.0), vertical, 4.0, 'by hand 2"', (1.0, 1.5), 0.1)
    write_dimension(pencil, dimension, DimensionDress("OWN", SOLID, 1.0, INCHES_16))

    expected, space = _open(version, on_paper)
    expected.dimstyles.new("OWN")
    override = space.add_linear_dim(
        base=(4.0, 3.0) if vertical else (2.0, 4.0),
        p1=(0, 0),
        p2=(2, 3),
        text=dimension.text,
        angle=90 if vertical else 0,
        dimstyle="OWN",
        dxfattribs={"layer": SOLID.name},
    )
    block = expected.blocks.new_anonymous_block(type_char="D")
    override.dimension.dxf.geometry = block.name
    override.dimension.dxf.text_midpoint = (1, 1.5, 0)
    override.dimension.dxf.attachment_point = 5
    override.dimension.dxf.actual_measurement = dimension.measure
    own = document_text(document)
    ours, theirs = (_part(text, "DIMENSION") for text in (own, document_text(expected)))
    assert ours == theirs
    assert f"  2\n{block.name}\n" in ours


def _part(text: str, kind: str) -> str:
    """The one entity of a kind."""
    _, found = text.split(f"  0\n{kind}\n")
    return found.split("\n  0\n")[0]


@VERSIONS
def test_an_empty_block_is_what_ezdxf_writes(version: str) -> None:
    document, _ = _open(version)
    add_block(document, document.blocks.anonymous_block_name("D"), ANONYMOUS)
    expected, _ = _open(version)
    expected.blocks.new_anonymous_block(type_char="D")
    assert document_text(document) == document_text(expected)
