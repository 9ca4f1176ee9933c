"""One sheet of a cutting plan to scale: pieces with their marks, and through-cuts numbered in order."""

from __future__ import annotations

from collections.abc import Iterator

from model.cutting.plan import GroupPlan, Sawn
from model.cutting.stock_list import describe_row
from model.cutting.task import Placed, SawnSheet, Stock, ThroughCut, to_inches
from render.board_bar import Bars, fill_of, name_pieces, say_cut, title_strip
from render.drawing import MM, Hatch, Lines, Mark, Pen, Point, Polyline, Region, Segment
from render.sheet_words import Corners, Label, draw_number, join_numbers, list_overhang, place_words
from render.shifting import shift_mark
from render.tables import Strip, lead, paragraph_strips

HATCH_SPACING = 2.4 * MM


def sheet_strips(sawn: Sawn, group: GroupPlan, bars: Bars) -> tuple[Strip, ...]:
    """The sheet as it lies, its length level, then its cuts in the order they are made."""
    sheet = sawn.cut
    assert isinstance(sheet, SawnSheet)
    stock = next(each for each in group.task.stock if each.key == sheet.stock)
    picture, unmarked = _draw(sawn, sheet, stock, group, bars)
    words = [_say_cuts(sheet, stock, bars), _say_unmarked(unmarked)]
    lines = [strip for text in words if text for strip in paragraph_strips(text, bars.width)]
    title = title_strip(f"Sheet {sawn.number}{say_cut(sawn, bars)}", describe_row(sawn.row, bars.style), bars)
    return (*lead((title, picture, *lines)), Strip(3 * MM))


def _draw(
    sawn: Sawn, sheet: SawnSheet, stock: Stock, group: GroupPlan, bars: Bars
) -> tuple[Strip, list[Label]]:
    """The sheet, and the parts of it that have no room for their marks."""
    wide, long = to_inches(stock.width) * bars.scale, to_inches(stock.length) * bars.scale
    low = -wide
    origin = (to_inches(stock.trim_ends) * bars.scale, low + to_inches(stock.trim_edges) * bars.scale)
    whole = ((0.0, low), (long, low), (long, 0.0), (0.0, 0.0))
    free = (_ring(part, origin, bars) for part in _list_free(sheet))
    marks: list[Mark] = [Hatch(Pen.HATCH, (whole, *free), 45.0, HATCH_SPACING)]
    labels = []
    for piece, source in zip(sheet.pieces, sawn.sources, strict=True):
        name, ring = name_pieces((source.mark,), sawn.number), _ring(piece, origin, bars)
        marks += [Region(fill_of(source), (ring,), name)]
        marks += [Polyline(Pen.EDGE, ring, closed=True, stands_for=name)]
        labels.append(Label(ring, (f"{source.mark}  {_size(piece, bars)}", source.mark), name))
    for left in sheet.left:
        ring = _ring(left, origin, bars)
        marks += [Polyline(Pen.GUIDE, ring, closed=True)]
        labels.append(Label(ring, (f"keep {_size(left, bars)}", "keep")))
    lines = [_cut_line(cut, group.task.kerf, origin, bars) for cut in sheet.cuts]
    marks += [Lines(Pen.OUTLINE, (line,)) for line in lines]
    words, numbers = place_words(labels, lines)
    marks += [Polyline(Pen.OUTLINE, whole, closed=True), *(text for text in words if text)]
    marks += [Lines(Pen.EDGE, (join,)) for join in join_numbers(lines, numbers)]
    for number, at in enumerate(numbers, start=1):
        marks += draw_number(str(number), at)
    bare = [label for label, text in zip(labels, words, strict=True) if label.stands_for and not text]
    over, under = list_overhang(numbers, low)
    shifted = tuple(shift_mark(mark, (0.0, -over)) for mark in marks) if over else tuple(marks)
    return Strip(over + wide + under + 2 * MM, shifted), bare


def _size(part: Placed, bars: Bars) -> str:
    return f"{bars.text(part.width)} × {bars.text(part.length)}"


def _list_free(sheet: SawnSheet) -> Iterator[Placed]:
    yield from sheet.pieces
    yield from sheet.left


def _ring(part: Placed, origin: Point, bars: Bars) -> Corners:
    x0, y0 = origin[0] + to_inches(part.x) * bars.scale, origin[1] + to_inches(part.y) * bars.scale
    x1, y1 = x0 + to_inches(part.length) * bars.scale, y0 + to_inches(part.width) * bars.scale
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1)


def _cut_line(cut: ThroughCut, kerf: int, origin: Point, bars: Bars) -> Segment:
    at = (to_inches(cut.at) + to_inches(kerf) / 2) * bars.scale
    first, last = (cut.y0, cut.y1) if cut.axis == "x" else (cut.x0, cut.x1)
    a, b = (to_inches(end) * bars.scale for end in (first, last))
    if cut.axis == "x":
        return origin[0] + at, origin[1] + a, origin[0] + at, origin[1] + b
    return origin[0] + a, origin[1] + at, origin[0] + b, origin[1] + at


def _say_cuts(sheet: SawnSheet, stock: Stock, bars: Bars) -> str:
    trim = f"Trim all edges by {bars.tied(stock.trim_edges)} first. " if stock.trim_edges else ""
    cuts = "; ".join(f"{n}: {_say_cut(cut, bars)}" for n, cut in enumerate(sheet.cuts, start=1))
    return f"{trim}Cuts in order, each through the whole part it is in: {cuts}." if cuts else trim


def _say_unmarked(labels: list[Label]) -> str:
    """The pieces without their marks as one comes upon them, from the left and from below."""
    names = [label.choices[0] for label in sorted(labels, key=lambda label: label.ring[0])]
    return f"Without room for their marks, from the left and upwards: {'; '.join(names)}." if names else ""


def _say_cut(cut: ThroughCut, bars: Bars) -> str:
    """Which way it goes, and what it leaves on the side it is measured from, as drawn."""
    if cut.axis == "x":
        return f"across, {bars.tied(cut.at - cut.x0)} from its left end"
    return f"along, {bars.tied(cut.at - cut.y0)} from its lower edge"
