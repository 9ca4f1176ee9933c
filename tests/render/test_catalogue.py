"""Every drawing of the packet can be had alone, by a name of its own."""

from __future__ import annotations

import pytest
from shapely import box

from app.demo import list_demos, read_demo
from app.outputs import build_packet_sheets
from model.surround import plan_surround
from render.catalogue import find_named, list_named
from render.drawing import Dimension, Text
from render.extent import drawing_extent
from render.packet import build_drawing_sheet
from render.sheets import PART_VIEWS, Block, safe_area
from render.view_layout import CAPTION

OTHERS = {CAPTION, "table", "frame", "section"}
"""What is placed on sheets and has no name of its own: tables, and mouldings, which share one there."""
GONE_ON = "_more"


@pytest.mark.parametrize("name", list_demos())
def test_every_drawing_on_the_packets_sheets_has_a_name(name):
    job = read_demo(name)
    shown = {placed.name for sheet in build_packet_sheets(job, "tabloid", "") for placed in sheet.placed}
    known = {named.name for named in list_named(plan_surround(job))}
    wanted = {name.removesuffix(GONE_ON) for name in shown - OTHERS - PART_VIEWS}
    assert wanted <= known
    assert any(name.startswith("step_") for name in wanted)


def test_every_view_of_every_sub_assembly_has_a_name_and_all_its_sizes():
    surround = plan_surround(read_demo("brick"))
    parts = [named for named in list_named(surround) if named.name.startswith("part_")]
    assert {board.assembly for board in surround.boards} == {
        named.title.split(":")[0].lower() for named in parts
    }
    for named in parts:
        assert any(isinstance(mark, Dimension) for mark in named.draw(named.ratio).marks), named.name


def test_names_are_words_without_spaces_each_once():
    names = [named.name for named in list_named(plan_surround(read_demo("gas")))]
    assert len(names) == len(set(names)) > 40
    assert all(name.replace("_", "").isalnum() and name == name.lower() for name in names)


def test_another_name_is_no_drawing():
    assert find_named(plan_surround(read_demo("brick")), "back") is None


@pytest.mark.parametrize("name", ["picture", "detail_shelf_edge", "part_frieze_front", "step_2", "anchors"])
@pytest.mark.parametrize("paper", ["letter", "a3"])
def test_a_drawing_alone_stands_within_its_sheet_with_its_title(name, paper):
    surround = plan_surround(read_demo("brick"))
    named = find_named(surround, name)
    sheet = build_drawing_sheet(surround, named, paper, "2001-02-03")
    assert sheet.title == named.title
    (placed,) = (placed for placed in sheet.placed if placed.name == name)
    x0, y0, x1, y1 = (value / placed.drawing.ratio for value in drawing_extent(placed.drawing))
    left, bottom, right, top = safe_area(sheet.width, sheet.height, Block.BESIDE)
    room = box(left - 1e-9, bottom - 1e-9, right + 1e-9, top + 1e-9)
    assert room.contains(box(placed.at[0] + x0, placed.at[1] + y0, placed.at[0] + x1, placed.at[1] + y1))
    frame = next(placed for placed in sheet.placed if placed.name == "frame")
    assert any(isinstance(mark, Text) and mark.text == "1 of 1" for mark in frame.drawing.marks)
