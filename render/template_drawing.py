"""A template as a drawing at full size: what is sawn heavy, the board's own edges thin, holes with middles.

Which templates there are stands in model.takeoff.templates, how they are parted over pages in
render.template_pages.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice
from math import dist

import numpy as np

from model.build.mouldings import Mouldings
from model.surround import Surround
from model.takeoff.templates import Template, list_templates
from model.units import LengthStyle, format_length
from render.drawing import Anchor, Drawing, Lines, Mark, Pen, Point, Polyline, Text
from render.extent import box_of, text_corners
from render.lettering import text_width
from render.moulding_sheet import PLACES, SMOOTH
from render.number_places import Paper, box_round, list_strokes
from render.symbols import circle_points

SIDES = 96
"""A round hole is drawn with so many sides: its flats lie off the circle by less than a pen's width."""
CROSS = 0.3
"""How far a hole's middle lines run on past it, in."""
HEIGHT = 2.6 / 25.4
"""Capitals of the writing on a template, in."""
OFF = 0.09
"""From an edge to the middle of its name's capitals, in."""
SECTION = "section"


def list_all(surround: Surround) -> tuple[Template, ...]:
    """Templates of every moulding's section, then of the boards."""
    return (*_list_sections(surround), *list_templates(surround))


def _list_sections(surround: Surround) -> Iterator[Template]:
    mouldings: Mouldings = surround.layout.mouldings
    for field, place in PLACES.items():
        section = getattr(mouldings, field)
        if section is not None:
            ring, _ = section.outline.facet(SMOOTH)
            left, bottom, right, top = section.outline.bounds
            moved = tuple((x - left, y - bottom) for x, y in (*ring, ring[0]))
            marks, pieces = _marks_of(surround, "edge band" if field == "edge" else place.lower())
            what = f"{place}: {section.name[:1].lower()}{section.name[1:]}"
            yield Template(what, marks, pieces, "end of the piece", (right - left, top - bottom), (moved,))


def _marks_of(surround: Surround, words: str) -> tuple[str, int]:
    """The marks of the moulded kinds whose role has these words, and how many pieces they are."""
    kinds = [
        kind
        for kind in surround.kinds
        if words in surround.boards[kind.pieces[0]].role and surround.boards[kind.pieces[0]].worked
    ]
    return ", ".join(kind.mark for kind in kinds), sum(len(kind.pieces) for kind in kinds)


def draw_template(template: Template, style: LengthStyle) -> Drawing:
    """The template at ratio 1, its lower left corner at the origin."""
    lines: list[Mark] = [Lines(Pen.SITE, tuple((*a, *b) for a, b, _ in template.edges))]
    lines += [Polyline(Pen.CUT, stroke) for stroke in template.cuts]
    for at, diameter in template.holes:
        lines += _draw_hole(at, diameter)
    paper = Paper(list_strokes(lines))
    names = tuple(_write_names(template, paper))
    return Drawing((*lines, *names, *_write_holes(template, style, paper)))


def _draw_hole(at: Point, diameter: float) -> list[Mark]:
    (x, y), half = at, diameter / 2
    reach = half + CROSS
    middle = ((x - reach, y, x + reach, y), (x, y - reach, x, y + reach))
    return [Polyline(Pen.CUT, circle_points(at, half, SIDES), closed=True), Lines(Pen.CENTRE, middle)]


def _write_names(template: Template, paper: Paper) -> Iterator[Text]:
    """Each edge's name beside it, within the template, where it is long enough and there is room."""
    middle = template.size[0] / 2, template.size[1] / 2
    for a, b, name in template.edges:
        wide = text_width(name, HEIGHT) + HEIGHT
        if dist(a, b) < wide:
            continue
        level = abs(a[1] - b[1]) < abs(a[0] - b[0])
        inward = 1.0 if (middle[1] if level else middle[0]) > (a[1] if level else a[0]) else -1.0
        for part in (0.5, 0.25, 0.75):
            x, y = a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])
            x, y = (x, y + inward * OFF * 1.4) if level else (x + inward * OFF * 1.4, y)
            size = (wide, HEIGHT * 1.6) if level else (HEIGHT * 1.6, wide)
            covered = box_round((x, y), *size)
            if paper.is_free(np.array([covered]))[0]:
                paper.write(covered)
                at = (x, y - HEIGHT / 2) if level else (x + HEIGHT / 2, y)
                yield Text(name, at, HEIGHT, Anchor.MIDDLE, 0.0 if level else 90.0)
                break


def _write_holes(template: Template, style: LengthStyle, paper: Paper) -> Iterator[Text]:
    """What each hole is drilled with beside it, or else over or under it, clear of all else."""
    for at, diameter in template.holes:
        words = f"{format_length(diameter, style)} hole"
        wide = text_width(words, HEIGHT)
        tried = (Text(words, place, HEIGHT) for place in _list_beside(at, diameter / 2 + 0.12, wide))
        within = (text for text in tried if text.at[0] > 0 and text.at[0] + wide < template.size[0])
        yield from islice((text for text in within if _take(text, paper)), 1)


def _list_beside(at: Point, off: float, wide: float) -> Iterator[Point]:
    """Where words so wide may begin: right and left of a hole, over its middle line first, then off that."""
    x, y = at
    for up in (0.08, -0.08 - HEIGHT, 3 * HEIGHT, -4 * HEIGHT):
        yield from ((x + off, y + up), (x - off - wide, y + up))
    for up in (off, -off - HEIGHT):
        yield from ((x + 0.06, y + up), (x - 0.06 - wide, y + up))


def _take(text: Text, paper: Paper) -> bool:
    """Whether there is room for a text; if so it has it from now on."""
    box = box_of(text_corners(text))
    is_free = bool(paper.is_free(np.array([box]))[0])
    if is_free:
        paper.write(box)
    return is_free
