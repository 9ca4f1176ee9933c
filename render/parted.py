"""A view drawn several times over, each time with a share of its dimensions, where one sheet is too small."""

from __future__ import annotations

from functools import partial

import numpy as np

from model.surround import Surround
from render.desk import Desk, Draft, draft_layout, each_once, lay
from render.drawing import Dimension, Drawing
from render.extent import Box
from render.lettering import ASCENT, DESCENT, text_width
from render.number_places import Paper, list_strokes
from render.section_marks import marked, say_marked
from render.sheets import MORE
from render.view_dimensions import list_strings
from render.view_layout import Layout
from render.views import ViewOptions, draw_view

SKIN = 0.01
"""What only touches figures by so much, paper inches, leaves them clear. Shop choice."""
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
        if all(layout.fits(desk.area) and is_clear(layout) for layout in layouts):
            break
    return [
        draft_layout(desk, (name,), layout, say_marked((name,)))
        for name, layout in zip(names, layouts, strict=True)
    ]


def is_clear(layout: Layout) -> bool:
    """Whether no dimension's line or leader runs through another's figure, in any of its drawings."""
    return all(_is_clear(placed.drawing) for placed in layout.placed)


def _is_clear(drawing: Drawing) -> bool:
    sizes = [mark for mark in drawing.marks if isinstance(mark, Dimension)]
    if not sizes:
        return True
    skin = SKIN * drawing.ratio
    boxes = np.array([_figures_box(dimension) for dimension in sizes])
    boxes += np.array([skin, skin, -skin, -skin])
    return bool(Paper(list_strokes(sizes, drawing.ratio)).is_free(boxes).all())


def _figures_box(dimension: Dimension) -> Box:
    """Round the figures alone, whose height is that of capitals; brackets and inch signs reach past it."""
    x, y = dimension.text_at
    height, along = dimension.height, text_width(dimension.text, dimension.height) / 2
    low = DESCENT * height if "[" in dimension.text else 0.0
    high = ASCENT * height if {"[", '"'} & set(dimension.text) else height
    low, high = -height / 2 - low, high - height / 2
    if dimension.vertical:
        return x - high, y - along, x - low, y + along
    return x - along, y + low, x + along, y + high


def _draw_share(surround: Surround, name: str, ratio: float, part: int, parts: int) -> Drawing:
    """A view with every `parts`-th of its strings, from number `part` on."""
    view = name.removesuffix(MORE)
    strings = list_strings(surround, view)[part::parts]
    return draw_view(surround, view, ViewOptions(ratio=ratio, strings=tuple(strings)))
