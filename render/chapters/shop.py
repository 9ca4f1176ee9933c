"""A shop drawing for each sub-assembly: its views and section, its pieces and how they are joined."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache, partial

from model.takeoff.assemblies import Assembly, list_assemblies
from model.takeoff.assembly_joints import JointLine, list_joint_lines
from model.takeoff.cut_list import list_cuts
from render.cut_fills import CUT_WOOD
from render.cut_sheet import say_assembly
from render.desk import NO_SCALE, Desk, Draft, place_table, put_notes, title_of_page
from render.drawing import MM
from render.part_sheet import PartLayout, SetTable, lay_part
from render.part_tables import joint_strips, piece_strips
from render.part_views import Part
from render.references import sheet_of
from render.sheets import PART_LEVEL_CUT, PART_UPRIGHT_CUT, Block, safe_area
from render.shifting import shift_mark
from render.tables import Strip, heading_strip, pour_strips
from render.view_layout import BETWEEN

CUT_VIEWS = (PART_LEVEL_CUT, PART_UPRIGHT_CUT)
TABLES = "Pieces and joints"
MARKS = "Marks are those of the cut list."


def draft_shop(desk: Desk) -> list[Draft]:
    """A sheet for each sub-assembly, one for two that are mirror twins; then the tables that had no room."""
    drafts: list[Draft] = []
    strips: list[Strip] = []
    drawn: set[str] = set()
    for assembly in list_assemblies(desk.surround.boards):
        if assembly.twin not in drawn:
            sheets, rest = _draft_part(desk, assembly)
            drafts += sheets
            strips += rest
            drawn.add(assembly.name)
    return [*drafts, *(_draft_columns(desk, strips) if strips else [])]


def draft_twin(desk: Desk, assembly: Assembly) -> list[Draft]:
    """The sheets of a part that the packet shows by its mirror twin, as it lies itself."""
    return _draft_part(desk, replace(assembly, twin=""))[0]


def title_of_part(assembly: Assembly) -> str:
    """What its sheet is called: both names where its twin is made by it."""
    return say_assembly(f"{assembly.name}, {assembly.twin}" if assembly.twin else assembly.name)


def _draft_part(desk: Desk, assembly: Assembly) -> tuple[list[Draft], list[Strip]]:
    """The sheets of a part, and its tables that stand on none of them."""
    part, style = Part(desk.surround, assembly), desk.surround.job.about.length_style
    cuts = desk.cuts or list_cuts(desk.surround)
    fixings = desk.takeoff.fixings if desk.takeoff else ()
    joints = list_joint_lines(desk.surround, assembly, fixings)
    pieces = cache(partial(piece_strips, part, cuts, style))
    tables = [pieces, cache(partial(joint_strips, joints))] if joints else [pieces]
    layouts = lay_part(part, desk.scales, desk.area, tables)
    title = title_of_part(assembly)
    left = tables[max(layout.tables for layout in layouts) :]
    notes = (
        *_list_notes(part, layouts),
        *([f"Its {_say_tables(left, joints)}: sheet {sheet_of(TABLES)}."] if left else []),
    )
    drafts = [
        put_notes(
            desk,
            Draft(title_of_page(title, number), layout.scales[0].name, layout.placed, Block.BESIDE),
            notes,
        )
        for number, layout in enumerate(layouts)
    ]
    strips = [strip for table in left for strip in table(_column_width(desk))]
    return drafts, [heading_strip(title, above=4 * MM), *strips] if strips else []


def _column_width(desk: Desk) -> float:
    return (desk.width - BETWEEN) / 2


def _draft_columns(desk: Desk, strips: Sequence[Strip]) -> list[Draft]:
    """Sheets of tables in two columns."""
    left, bottom, _, top = safe_area(*desk.size, Block.BELOW)
    columns = pour_strips(strips, (left, top), top - bottom)
    aside = (_column_width(desk) + BETWEEN, 0.0)
    drafts = []
    for number in range(0, len(columns), 2):
        first, *second = columns[number : number + 2]
        marks = (*first, *(shift_mark(mark, aside) for column in second for mark in column))
        drafts.append(Draft(title_of_page(TABLES, number), NO_SCALE, (place_table(marks),), Block.BELOW))
    return drafts


def _say_tables(left: Sequence[SetTable], joints: Sequence[JointLine]) -> str:
    return "pieces and joints" if len(left) > 1 else "joints" if joints else "pieces"


def _list_notes(part: Part, layouts: Sequence[PartLayout]) -> Iterator[str]:
    if part.assembly.twin:
        yield f"{part.assembly.name.capitalize()} as shown; {part.assembly.twin} opposite hand."
    yield MARKS
    if any(placed.name in CUT_VIEWS for layout in layouts for placed in layout.placed):
        yield CUT_WOOD
    unmarked = set(part.kinds).intersection(*(layout.unmarked for layout in layouts))
    if unmarked:
        yield f"Without room for their marks here: {', '.join(sorted(unmarked))}."
