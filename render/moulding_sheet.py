"""Mouldings full size: each section with its outline dimensions and its name, set out on pages.

Which sections there are stands in model.moulding.library; what a job runs where, in model.build.mouldings.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from model.build.mouldings import Mouldings
from model.moulding.library import SECTIONS, SHOP_CHOICE, USES, Shipped
from model.moulding.section import Section
from model.units import LengthStyle, format_length, without_feet
from render.dimension_strings import Edge, String, measure, place_strings, strings_reach
from render.drawing import MM, Drawing, Fill, Hatch, Mark, Pen, Placed, Polyline, Region, Sheet, Text
from render.extent import Box, drawing_extent
from render.lettering import LEADING, wrap_text
from render.scales import Scale, list_scales
from render.sheets import Block, build_sheet, paper_size, safe_area
from render.title_block import TitleBlock

SMOOTH = 1 / 2000
"""How far the drawn flats may lie off an arc, inches on paper: finer than a pen. Shop choice."""
NAME, SMALL = 3 * MM, 2.5 * MM
LEAST_CELL = 2.12
"""Least width of a section's place on the page, inches. Shop choice."""
BEFORE_WALL = 0.62
"""From the place's left edge to the wall, inches: room for the upright dimension. Shop choice."""
GAP = (0.24, 0.16)
"""Between places side by side and one above the other, inches. Shop choice."""
OVER_DIMENSION = 0.15
"""From the dimension's line or lifted text up to the caption's last line, inches. Shop choice."""
AROUND = 0.1
"""How much is shown of what a moulding lies against, inches. Shop choice."""
HATCH = (45.0, 0.045)
"""Angle in degrees and spacing in inches of the hatch on cut wood."""
PLACES = {
    "bed": "Bed mould",
    "capital": "Capital",
    "plinth_cap": "Plinth cap",
    "panel": "Panel mould",
    "back_band": "Back band",
    "edge": "Shelf edge",
}
"""What the sections of a job are called by their place."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A section with what is written over it: its heading and smaller lines below that."""

    heading: str
    lines: tuple[str, ...]
    section: Section


@dataclass(frozen=True, slots=True)
class _Cell:
    """An entry drawn, with the room it takes about its own origin and the scale it is drawn at."""

    drawing: Drawing
    box: Box
    scale: Scale

    @property
    def width(self) -> float:
        return (self.box[2] - self.box[0]) / self.scale.ratio

    @property
    def above(self) -> float:
        """From its seat up."""
        return self.box[3] / self.scale.ratio

    @property
    def below(self) -> float:
        """From its seat down."""
        return -self.box[1] / self.scale.ratio


def list_library(style: LengthStyle) -> tuple[Entry, ...]:
    """Every shipped section, at the size it is given in."""
    return tuple(_library_entry(key, shipped, style) for key, shipped in SECTIONS.items())


def _library_entry(key: str, shipped: Shipped, style: LengthStyle) -> Entry:
    uses = ", ".join(use for use, keys in USES.items() if key in keys)
    source = () if shipped.source == SHOP_CHOICE else (f"after {shipped.source}",)
    back = (describe_back(shipped.section, style),) if shipped.section.is_sprung else ()
    return Entry(shipped.section.name, (*back, uses, *source), shipped.section)


def list_used(mouldings: Mouldings, style: LengthStyle) -> tuple[Entry, ...]:
    """Every section that a job is built with, at the size it is built."""
    entries = []
    for field, place in PLACES.items():
        section = getattr(mouldings, field)
        if section is not None:
            entries.append(Entry(place, (section.name, describe_back(section, style)), section))
    return tuple(entries)


def describe_back(section: Section, style: LengthStyle) -> str:
    """``flat back``, or how far it is sprung and the strip it is worked from."""
    if not section.is_sprung:
        return "flat back"
    thickness, width = (format_length(size, section_style(style)) for size in section.stock_size)
    return f"sprung {section.spring:g}°, strip {thickness} by {width}"


def section_style(style: LengthStyle) -> LengthStyle:
    """The style a section's sizes are written in where lengths are written in `style`: never in feet."""
    return without_feet(style, 32)


def build_moulding_sheets(
    entries: Sequence[Entry], paper: str, block: TitleBlock, style: LengthStyle
) -> tuple[Sheet, ...]:
    """`entries` full size on as many pages of `paper` as it takes; `block` gets each page's number.

    A section too large for the paper is drawn at the largest scale that fits, which its caption names.
    Raises Refused for a paper that is not known.
    """
    size = paper_size(paper)
    pages = lay_mouldings(entries, safe_area(*size, Block.BELOW), style)
    return tuple(
        build_sheet(*size, Block.BELOW, replace(block, number=f"{number} of {len(pages)}"), page)
        for number, page in enumerate(pages, start=1)
    )


def lay_mouldings(entries: Sequence[Entry], area: Box, style: LengthStyle) -> list[tuple[Placed, ...]]:
    """`entries` set out in rows within `area` (paper inches) of as many pages as it takes."""
    scales = list_scales(style.units)
    return _flow([_draw_cell(entry, scales, area, style) for entry in entries], area)


def _draw_cell(entry: Entry, scales: Sequence[Scale], area: Box, style: LengthStyle) -> _Cell:
    """The entry at the largest scale at which it fits on a page of its own."""
    cells = (_cell(entry, scale, style) for scale in scales)
    wide, high = area[2] - area[0], area[3] - area[1]
    return next(cell for cell in cells if cell.width <= wide and cell.above + cell.below <= high)


def _cell(entry: Entry, scale: Scale, style: LengthStyle) -> _Cell:
    drawing = draw_section(entry, scale, style)
    return _Cell(drawing, drawing_extent(drawing), scale)


def draw_section(entry: Entry, scale: Scale, style: LengthStyle) -> Drawing:
    """A section hanging from the origin with what it lies against, its dimensions and its caption."""
    section, ratio = entry.section, scale.ratio
    ring, _ = section.outline.facet(SMOOTH * ratio)
    dimensions = place_strings(
        _list_sizes(section),
        (0.0, -section.height, section.projection, 0.0),
        ratio,
        section_style(style),
    )
    marks: tuple[Mark, ...] = (
        *_draw_support(section, AROUND * ratio),
        Region(Fill.CUT_WOOD, (ring,)),
        Hatch(Pen.HATCH, (ring,), HATCH[0], HATCH[1] * ratio),
        Polyline(Pen.CUT, ring, closed=True),
        *dimensions,
        *_draw_caption(entry, scale, strings_reach(dimensions, 0.0)),
    )
    return Drawing(marks, ratio)


def _list_sizes(section: Section) -> tuple[String, ...]:
    return (
        measure(Edge.LEFT, (-section.height, 0.0, ""), (0.0, 0.0, "")),
        measure(Edge.ABOVE, (0.0, 0.0, ""), (section.projection, 0.0, "")),
    )


def _draw_support(section: Section, around: float) -> tuple[Mark, ...]:
    """The wall behind it and what its seat lies under, as a narrow band with its edge."""
    low, right = -section.height - around, section.seat + around
    band = (
        (-around, low), (0.0, low), (0.0, 0.0), (right, 0.0), (right, around), (-around, around),
    )  # fmt: skip
    return (Region(Fill.BAND, (band,)), Polyline(Pen.SITE, (band[1], band[2], band[3])))


def _draw_caption(entry: Entry, scale: Scale, over: float) -> tuple[Text, ...]:
    """Heading and lines clear of what reaches up to y = `over`, over the place's whole width."""
    ratio = scale.ratio
    width = max(LEAST_CELL, BEFORE_WALL + entry.section.projection / ratio)
    notes = [*entry.lines] + ([f"drawn at {scale.name}, too large for this paper"] if ratio > 1 else [])
    rows = [(text, SMALL, False) for note in notes for text in wrap_text(note, SMALL, width)]
    rows = [*((text, NAME, True) for text in wrap_text(entry.heading, NAME, width, True)), *rows]
    texts, y = [], over / ratio + OVER_DIMENSION
    for text, height, bold in reversed(rows):
        texts.append(Text(text, (-BEFORE_WALL * ratio, y * ratio), height * ratio, bold=bold))
        y += height * LEADING
    return tuple(texts)


def _flow(cells: Sequence[_Cell], area: Box) -> list[tuple[Placed, ...]]:
    """Rows from the top of the page down, each row's seats on one level; a new page when one is full."""
    left, bottom, right, top = area
    pages: list[tuple[Placed, ...]] = []
    page: list[Placed] = []
    y = top
    for row in _rows(cells, (right - left, top - bottom)):
        above, below = _reach(row)
        if page and y - above - below < bottom:
            pages.append(tuple(page))
            page, y = [], top
        page += _place_row(row, (left, right), y - above)
        y -= above + below + GAP[1]
    return [*pages, tuple(page)] if page else pages


def _rows(cells: Sequence[_Cell], page: tuple[float, float]) -> list[list[_Cell]]:
    """Neighbours that have room on a page side by side, their seats on one level."""
    rows: list[list[_Cell]] = []
    for cell in cells:
        if rows and _fits([*rows[-1], cell], page):
            rows[-1].append(cell)
        else:
            rows.append([cell])
    return rows


def _fits(row: Sequence[_Cell], page: tuple[float, float]) -> bool:
    wide = sum(cell.width for cell in row) + GAP[0] * (len(row) - 1)
    return wide <= page[0] and sum(_reach(row)) <= page[1]


def _reach(row: Sequence[_Cell]) -> tuple[float, float]:
    """How far a row reaches up from its seats' level, and down."""
    return max(cell.above for cell in row), max(cell.below for cell in row)


def _place_row(row: Sequence[_Cell], span: tuple[float, float], seat: float) -> list[Placed]:
    """The row's cells from the left, spread over the page's width where it is nearly full."""
    left, right = span
    spare = right - left - sum(cell.width for cell in row)
    gap = spare / (len(row) - 1) if len(row) > 1 and spare < LEAST_CELL + GAP[0] * len(row) else GAP[0]
    placed = []
    for cell in row:
        placed.append(Placed(cell.drawing, (left - cell.box[0] / cell.scale.ratio, seat), "section"))
        left += cell.width + gap
    return placed
