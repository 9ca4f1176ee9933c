"""The drawing files of a job as texts: all views, each sub-assembly, each moulding.

What stands in one is decided in export; which files there are and what they are called, here.
Nothing is saved.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from export.dxf_file import R12, R2010
from export.progress import Step
from model.units import MILLIMETRES_ONLY

if TYPE_CHECKING:
    from model.surround import Surround
    from model.takeoff.cut_list import Cut
    from model.takeoff.takeoff import Takeoff
    from render.drawing import Drawing, Sheet
    from render.part_views import Part

USUAL_VERSION = R2010
VERSION_WORDS = {
    R2010: "R2010, with layouts and line weights",
    R12: "R12, for older programs and machines",
}
"""What the versions of the format are called in the window, by their name; the usual one first."""
VIEWS = ("front", "side", "vertical_section", "plan", "plan_section")
RATIO = {False: 12.0, True: 10.0}
"""Lettering in model space comes out right when it is plotted at 1" = 1'-0", or at 1:10 for a job in
millimetres. Shop choice."""
PART_RATIO = {False: 8.0, True: 10.0}
"""The same for a sub-assembly alone: 1 1/2" = 1'-0" or 1:10. Shop choice."""
STEP = "step_"
"""What the names of the pictures of the assembly begin with, which show no view as it is."""
OVER_SHEETS = 24.0
"""Views stand this far over what the largest sheet takes up, inches, for programs that show paper and model
in one space. Shop choice."""


def build_drawing(
    surround: Surround, cuts: Sequence[Cut], sheets: Sequence[Sheet], version: str, tell: Step
) -> str:
    """All views in model space, boards as blocks, details beside them, and a layout for each of `sheets`.

    A sheet of tables or pictures is none. Shop drawings are left to the files of their sub-assemblies.
    """
    from export.dxf import write_dxf
    from export.dxf_boards import list_board_notes
    from export.dxf_sheets import list_unshown
    from render.third_angle import place_beside, place_third_angle

    about = surround.job.about
    ratio = RATIO[about.units == MILLIMETRES_ONLY]
    whole = [sheet for sheet in sheets if not _is_of_part(sheet)]
    highest = max((sheet.height for sheet in whole), default=0.0)
    placed = place_third_angle(_draw_views(surround, ratio, tell), highest + OVER_SHEETS)
    further = [sheet for sheet in whole if not any(placed.name.startswith(STEP) for placed in sheet.placed)]
    placed += place_beside(placed, list_unshown(further, placed))
    tell(0.3, "Writing the drawing file")
    style = about.length_style
    notes = list_board_notes(cuts, style)
    return write_dxf(placed, ratio, surround.job.about.title, style, notes, whole, version)


def _is_of_part(sheet: Sheet) -> bool:
    """Whether it is the shop drawing of a sub-assembly."""
    from render.sheets import PART_VIEWS

    return any(placed.name in PART_VIEWS for placed in sheet.placed)


def _draw_views(surround: Surround, ratio: float, tell: Step) -> Iterator[tuple[str, Drawing]]:
    from render.board_marks import mark_seen
    from render.sheets import VIEW_TITLES
    from render.views import ViewOptions, draw_view

    for i, view in enumerate(VIEWS):
        tell(0.3 * i / len(VIEWS), f"Drawing the {VIEW_TITLES[view].lower()}")
        drawing = draw_view(surround, view, ViewOptions(ratio=ratio, true_heights=True, by_board=True))
        yield view, drawing.plus(*mark_seen(surround, view, ratio, drawing.marks).marks)


def build_assembly_drawings(
    surround: Surround,
    cuts: Sequence[Cut],
    sheets: Sequence[Sheet],
    version: str,
    tell: Step,
    takeoff: Takeoff | None = None,
    date_text: str = "",
) -> Iterator[tuple[str, str]]:
    """Each sub-assembly alone in all its views, with those of `sheets` that show them as layouts.

    One that the sheets show by its mirror twin has layouts of its own, with the numbers of the twin's. The
    name of its file and its text.
    """
    from export.dxf import write_dxf
    from export.dxf_boards import list_board_notes
    from model.takeoff.assemblies import list_assemblies
    from render.desk import Desk
    from render.packet import build_twin_sheets
    from render.part_views import Part
    from render.third_angle import place_third_angle

    about = surround.job.about
    ratio = PART_RATIO[about.units == MILLIMETRES_ONLY]
    notes = list_board_notes(cuts, about.length_style)
    own = [sheet for sheet in sheets if _is_of_part(sheet)]
    highest = max((sheet.height for sheet in own), default=0.0)
    assemblies = list_assemblies(surround.boards)
    drawn: set[str] = set()
    for i, assembly in enumerate(assemblies):
        tell(i / len(assemblies), f"Drawing the {assembly.name}")
        layouts: Sequence[Sheet] = own
        if own and assembly.twin in drawn:
            desk = Desk(surround, (own[0].width, own[0].height), cuts=tuple(cuts), takeoff=takeoff)
            layouts = build_twin_sheets(desk, assembly, sheets, date_text)
        drawn.add(assembly.name)
        views = _draw_part_views(Part(surround, assembly), ratio)
        placed = place_third_angle(views, highest + OVER_SHEETS)
        title = f"{surround.job.about.title}: {assembly.name}"
        text = write_dxf(placed, ratio, title, about.length_style, notes, layouts, version)
        yield name_drawing(assembly.name), text


def leave_titles(sheets: Sequence[Sheet]) -> tuple[Sheet, ...]:
    """The sheets with what `build_assembly_drawings` looks at: of those that show no sub-assembly the titles.

    To be handed to another process, which takes as long as there is much of it.
    """
    return tuple(sheet if _is_of_part(sheet) else replace(sheet, placed=(), pictures=()) for sheet in sheets)


def _draw_part_views(part: Part, ratio: float) -> Iterator[tuple[str, Drawing]]:
    from render.part_sheet import list_views
    from render.part_views import draw_part, mark_part

    views = list_views(part)
    for view in views:
        drawing = draw_part(part, view, ratio, views, by_board=True)
        yield view, drawing.plus(*mark_part(part, drawing, view).marks)


def build_moulding_drawings(surround: Surround, version: str, tell: Step) -> Iterator[tuple[str, str]]:
    """Each section of the job's mouldings, full size: the name of its file and its text."""
    from export.section_dxf import write_section_dxf
    from render.moulding_sheet import list_used

    entries = list_used(surround.layout.mouldings, surround.job.about.length_style)
    for i, entry in enumerate(entries):
        tell(i / len(entries), f"Writing the section of the {entry.heading.lower()}")
        yield (
            name_drawing(f"{entry.heading} - {entry.section.name}"),
            write_section_dxf(entry.section, version),
        )


def name_drawing(title: str) -> str:
    """A drawing file's name: `title` as far as every system lets it stand in one."""
    kept = "".join(c if c.isalnum() or c in " -,°" else " " for c in title)
    return " ".join(kept.split())[:80].rstrip(" .") + ".dxf"
