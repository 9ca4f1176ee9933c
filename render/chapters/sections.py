"""Plan section and vertical section, each with its detail."""

from __future__ import annotations

from render.desk import Desk, Draft, draft_layout, each_once
from render.details import detail_of, draw_detail, draw_relieved
from render.parted import draft_parted, is_clear
from render.section_marks import marked, say_marked
from render.view_layout import lay_with_detail

SECTIONS = ("plan_section", "vertical_section")


def draft_sections(desk: Desk) -> list[Draft]:
    """A sheet for each."""
    return [draft for view in SECTIONS for draft in _draft_section(desk, view)]


def _draft_section(desk: Desk, view: str) -> list[Draft]:
    """A section with its detail; alone, with all its dimensions, where no larger detail has room."""
    relieved = marked(desk.surround, each_once(desk.surround, draw_relieved))
    draws = (relieved, marked(desk.surround, each_once(desk.surround, draw_detail)))
    layout = lay_with_detail((view, detail_of(view)), draws, desk.scales, desk.area)
    if layout is None or not is_clear(layout):
        return draft_parted(desk, view)
    return [draft_layout(desk, (view,), layout, say_marked((view, detail_of(view))))]
