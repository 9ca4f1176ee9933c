"""A view drawn several times over, each time with a share of its dimensions, where one sheet is too small."""

from __future__ import annotations

from functools import partial

from model.surround import Surround
from render.desk import Desk, Draft, draft_layout, each_once, lay
from render.drawing import Drawing
from render.section_marks import marked, say_marked
from render.sheets import MORE
from render.view_dimensions import list_strings
from render.views import ViewOptions, draw_view

MOST_PARTS = 6
"""Shares that a view's dimensions are parted into at most. Shop choice."""


def draft_parted(desk: Desk, view: str) -> list[Draft]:
    """As few sheets with `view` as hold all its dimensions; MOST_PARTS where even that is too few."""
    for parts in range(1, MOST_PARTS + 1):
        names = [view, *[view + MORE] * (parts - 1)]
        draws = (partial(_draw_share, part=part, parts=parts) for part in range(parts))
        layouts = [
            lay(desk, marked(desk.surround, each_once(desk.surround, draw)), (name,))
            for name, draw in zip(names, draws, strict=True)
        ]
        if all(layout.fits(desk.area) for layout in layouts):
            break
    return [
        draft_layout(desk, (name,), layout, say_marked((name,)))
        for name, layout in zip(names, layouts, strict=True)
    ]


def _draw_share(surround: Surround, name: str, ratio: float, part: int, parts: int) -> Drawing:
    """A view with every `parts`-th of its strings, from number `part` on."""
    view = name.removesuffix(MORE)
    strings = list_strings(surround, view)[part::parts]
    return draw_view(surround, view, ViewOptions(ratio=ratio, strings=tuple(strings)))
