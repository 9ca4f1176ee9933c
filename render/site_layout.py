"""The sketch of a site on its sheet: front, cut and plan together, and words in the corner that is left.

What is drawn is render.site_sketch's.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from model.surround import Surround
from render.desk import Desk, each_once
from render.drawing import MM, Drawing, Placed
from render.extent import Box, paper_extent
from render.lettering import LEADING
from render.sheets import SITE_CUT, SITE_FRONT, SITE_PLAN, Block, safe_area
from render.site_sketch import draw_site
from render.tables import SMALL, Strip, paragraph_strips, pour_strips, strips_height
from render.view_layout import BETWEEN, Layout, lay_views

VIEWS = (SITE_FRONT, SITE_CUT, SITE_PLAN)
MOST_WORDS = 100 * MM
"""Width of a column of words that is read easily. Shop choice."""


def lay_site(desk: Desk, surround: Surround, notes: Sequence[str]) -> Layout:
    """The three views of the site of `surround` and `notes` over the cut, on a sheet with its block below.

    At the largest usual scale that leaves room for the words.
    """
    room, draw = safe_area(*desk.size, Block.BELOW), each_once(surround, draw_site)
    largest = lay_views(VIEWS, draw, desk.scales, room).scale
    for scale in desk.scales[desk.scales.index(largest) :]:
        layout = lay_views(VIEWS, draw, (scale,), room)
        words, fit = _place_words(notes, layout, room)
        if fit:
            break
    return Layout(layout.scale, (*layout.placed, words), layout.size)


def _place_words(notes: Sequence[str], layout: Layout, room: Box) -> tuple[Placed, bool]:
    """Paragraphs at the room's top, right of front and plan; whether they stand clear of the cut."""
    _, bottom, right, top = room
    boxes = {each.name: _box_of(each) for each in layout.placed}
    left = max(boxes[name][2] for name in (SITE_FRONT, SITE_PLAN)) + BETWEEN
    width = min(max(right - left, MOST_WORDS / 2), MOST_WORDS)
    write = partial(paragraph_strips, width=width)
    strips = [strip for note in notes for strip in (*write(note), Strip(0.5 * LEADING * SMALL))]
    page, *_ = pour_strips(strips, (right - width, top), top - bottom)
    fit = right - width >= left and top - strips_height(strips) >= boxes[SITE_CUT][3]
    return Placed(Drawing(page), (0.0, 0.0), "table"), fit


def _box_of(placed: Placed) -> Box:
    """Its extent on the sheet."""
    (x, y), (x0, y0, x1, y1) = placed.at, paper_extent(placed.drawing)
    return x + x0, y + y0, x + x1, y + y1
