"""Every board that is seen or cut, with its mark."""

from __future__ import annotations

from dataclasses import replace

from render.boards_sheet import BOARDS_OF, draw_bare, draw_boards, list_left_out
from render.chapters.elevations import PARTED_RATIO
from render.desk import Desk, Draft, draft_layout, each_once, lay, put_notes
from render.sheet_notes import list_notes
from render.sheets import BOARDS_COLUMN, BOARDS_FRONT, BOARDS_SHELF, BOARDS_SIDE
from render.view_layout import Layout, lay_views

ALIKE = "Boards alike carry one mark; the cut list has a letter for each piece."


def draft_boards(desk: Desk) -> list[Draft]:
    """Both elevations, then both details side by side."""
    draw, bare = (each_once(desk.surround, draw) for draw in (draw_boards, draw_bare))
    elevations = lay(desk, draw, (BOARDS_FRONT, BOARDS_SIDE), bare)
    alone = lay(desk, draw, (BOARDS_FRONT,), bare)
    left, bottom, right, top = desk.area
    middle = (left + right) / 2
    column, shelf = (
        lay_views((name,), draw, desk.scales, room, bare)
        for name, room in (
            (BOARDS_COLUMN, (left, bottom, middle, top)),
            (BOARDS_SHELF, (middle, bottom, right, top)),
        )
    )
    details = Layout(column.scale, column.placed + shelf.placed, (right - left, top - bottom))
    large = elevations.scale == alone.scale or elevations.scale.ratio <= PARTED_RATIO
    together = large and elevations.fits(desk.area)
    sides = [elevations] if together else [alone, lay(desk, draw, (BOARDS_SIDE,), bare)]
    return [_draft_marked(desk, layout) for layout in (*sides, details)]


def _draft_marked(desk: Desk, layout: Layout) -> Draft:
    names = tuple(placed.name for placed in layout.placed if placed.name in BOARDS_OF)
    draft = draft_layout(desk, names, layout)
    missing = [
        mark
        for placed in layout.placed
        if placed.name in BOARDS_OF
        for mark in list_left_out(desk.surround, placed.name, placed.drawing.ratio)
    ]
    notes = [ALIKE]
    if missing:
        notes.append(f"Seen here but without room for their marks: {', '.join(missing)}.")
    title = "Boards, details" if BOARDS_COLUMN in names else "Boards, elevations"
    known = list_notes(desk.surround, names, desk.findings)
    return put_notes(desk, replace(draft, title=title), (*notes, *known))
