"""One sheet of a cutting plan to scale: pieces with their marks, and through-cuts numbered in order."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from model.cutting.pieces import Source
from model.cutting.plan import GroupPlan, Sawn
from model.cutting.stock_list import describe_row
from model.cutting.task import Placed, SawnSheet, Stock, ThroughCut, to_inches
from render.board_bar import Bars, fill_of, name_pieces, say_cut, title_strip
from render.drawing import MM, Anchor, Fill, Hatch, Lines, Mark, Pen, Point, Polyline, Region, Segment, Text
from render.lettering import text_width
from render.symbols import circle_points
from render.tables import SMALL, Strip, lead, paragraph_strips

HATCH_SPACING = 2.4 * MM
AIR = 0.8 * MM
NUMBER = 5.4 * MM
"""Across the ground that a cut's number stands on."""
NUMBER_SIDES = 24
Corners = tuple[Point, Point, Point, Point]


def sheet_strips(sawn: Sawn, group: GroupPlan, bars: Bars) -> tuple[Strip, ...]:
    """The sheet as it lies, its length level, then its cuts in the order they are made."""
    sheet = sawn.cut
    assert isinstance(sheet, SawnSheet)
    stock = next(each for each in group.task.stock if each.key == sheet.stock)
    lines = paragraph_strips(_say_cuts(sheet, stock, bars), bars.width)
    title = title_strip(f"Sheet {sawn.number}{say_cut(sawn, bars)}", describe_row(sawn.row, bars.style), bars)
    return (*lead((title, _draw(sawn, sheet, stock, group, bars), *lines)), Strip(3 * MM))


def _draw(sawn: Sawn, sheet: SawnSheet, stock: Stock, group: GroupPlan, bars: Bars) -> Strip:
    wide, long = to_inches(stock.width) * bars.scale, to_inches(stock.length) * bars.scale
    low = -wide
    origin = (to_inches(stock.trim_ends) * bars.scale, low + to_inches(stock.trim_edges) * bars.scale)
    whole = ((0.0, low), (long, low), (long, 0.0), (0.0, 0.0))
    free = (_ring(part, origin, bars) for part in _list_free(sheet))
    marks: list[Mark] = [Hatch(Pen.HATCH, (whole, *free), 45.0, HATCH_SPACING)]
    for piece, source in zip(sheet.pieces, sawn.sources, strict=True):
        marks += _draw_piece(piece, source, sawn.number, origin, bars)
    for left in sheet.left:
        marks += _draw_left(left, origin, bars)
    marks += _number_cuts(sheet, group.task.kerf, origin, bars)
    marks.append(Polyline(Pen.OUTLINE, whole, closed=True))
    return Strip(wide + 2 * MM, tuple(marks))


def _list_free(sheet: SawnSheet) -> Iterator[Placed]:
    yield from sheet.pieces
    yield from sheet.left


def _ring(part: Placed, origin: Point, bars: Bars) -> Corners:
    x0, y0 = origin[0] + to_inches(part.x) * bars.scale, origin[1] + to_inches(part.y) * bars.scale
    x1, y1 = x0 + to_inches(part.length) * bars.scale, y0 + to_inches(part.width) * bars.scale
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1)


def _draw_piece(piece: Placed, source: Source, number: int, origin: Point, bars: Bars) -> Iterator[Mark]:
    ring = _ring(piece, origin, bars)
    name = name_pieces((source.mark,), number)
    yield Region(fill_of(source), (ring,), name)
    yield Polyline(Pen.EDGE, ring, closed=True, stands_for=name)
    size = f"{bars.text(piece.width)} × {bars.text(piece.length)}"
    yield from _write(ring, (f"{source.mark}  {size}", source.mark), name)


def _write(ring: Corners, choices: tuple[str, ...], stands_for: str) -> Iterator[Mark]:
    """The first of the words that fits, level or else upright."""
    (x0, y0), _, (x1, y1), _ = ring
    middle, wide, tall = ((x0 + x1) / 2, (y0 + y1) / 2), x1 - x0 - 2 * AIR, y1 - y0 - 2 * AIR
    for words in choices:
        length = text_width(words, SMALL)
        if length <= wide and tall >= 1.2 * SMALL:
            yield Text(words, (middle[0], middle[1] - SMALL / 2), SMALL, Anchor.MIDDLE, stands_for=stands_for)
            return
        if length <= tall and wide >= 1.2 * SMALL:
            at = (middle[0] + SMALL / 2, middle[1])
            yield Text(words, at, SMALL, Anchor.MIDDLE, 90.0, stands_for=stands_for)
            return


def _draw_left(left: Placed, origin: Point, bars: Bars) -> Iterator[Mark]:
    ring = _ring(left, origin, bars)
    yield Polyline(Pen.GUIDE, ring, closed=True)
    size = f"{bars.text(left.width)} × {bars.text(left.length)}"
    yield from _write(ring, (f"keep {size}", "keep"), "")


def _number_cuts(sheet: SawnSheet, kerf: int, origin: Point, bars: Bars) -> Iterator[Mark]:
    """Each cut as a line in the middle of its kerf, its number on a small ground where it begins."""
    taken: list[Point] = []
    for number, cut in enumerate(sheet.cuts, start=1):
        line = _cut_line(cut, kerf, origin, bars)
        yield Lines(Pen.OUTLINE, (line,))
        at = _free_place(line, taken)
        taken.append(at)
        yield from _number(str(number), at)


def _cut_line(cut: ThroughCut, kerf: int, origin: Point, bars: Bars) -> Segment:
    at = (to_inches(cut.at) + to_inches(kerf) / 2) * bars.scale
    first, last = (cut.y0, cut.y1) if cut.axis == "x" else (cut.x0, cut.x1)
    a, b = (to_inches(end) * bars.scale for end in (first, last))
    if cut.axis == "x":
        return origin[0] + at, origin[1] + a, origin[0] + at, origin[1] + b
    return origin[0] + a, origin[1] + at, origin[0] + b, origin[1] + at


def _free_place(line: Segment, taken: list[Point]) -> Point:
    """The first place along a cut that is clear of all other numbers; its middle where none is."""
    x0, y0, x1, y1 = line
    length = hypot(x1 - x0, y1 - y0)
    steps = max(int(length / NUMBER), 1)
    for step in range(steps):
        part = (step + 0.5) / steps
        at = (x0 + (x1 - x0) * part, y0 + (y1 - y0) * part)
        if all(hypot(at[0] - x, at[1] - y) > NUMBER for x, y in taken):
            return at
    return (x0 + x1) / 2, (y0 + y1) / 2


def _number(text: str, at: Point) -> Iterator[Mark]:
    half = NUMBER / 2 - 0.3 * MM
    ring = circle_points(at, half, NUMBER_SIDES)
    yield Region(Fill.PAPER, (ring,))
    yield Polyline(Pen.EDGE, ring, closed=True)
    yield Text(text, (at[0], at[1] - SMALL / 2), SMALL, Anchor.MIDDLE)


def _say_cuts(sheet: SawnSheet, stock: Stock, bars: Bars) -> str:
    trim = f"Trim all edges by {bars.tied(stock.trim_edges)} first. " if stock.trim_edges else ""
    cuts = "; ".join(f"{n}: {_say_cut(cut, bars)}" for n, cut in enumerate(sheet.cuts, start=1))
    return f"{trim}Cuts in order, each through the whole part it is in: {cuts}." if cuts else trim


def _say_cut(cut: ThroughCut, bars: Bars) -> str:
    """Which way it goes, and what it leaves on the side it is measured from, as drawn."""
    if cut.axis == "x":
        return f"across, {bars.tied(cut.at - cut.x0)} from its left end"
    return f"along, {bars.tied(cut.at - cut.y0)} from its lower edge"
