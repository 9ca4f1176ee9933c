"""Full-size templates on pages: small ones together, large ones parted over pages that are joined.

Neighbouring pages share a strip with registration marks; every page has a check bar in both directions.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil
from string import ascii_uppercase

from model.sentences import capitalise
from model.surround import Surround
from model.takeoff.templates import Template, turn
from model.units import LengthStyle, format_length
from render.check_bar import check_bar_marks, level_bar_marks
from render.clipping import clip_drawing
from render.drawing import (
    MM,
    Anchor,
    Drawing,
    Fill,
    Lines,
    Mark,
    Pen,
    Placed,
    Point,
    Region,
    Segment,
    Sheet,
    Text,
)
from render.extent import Box, box_ring, box_sides, drawing_extent, list_words, text_corners
from render.lettering import LEADING, text_width, wrap_text
from render.number_places import box_round
from render.row_packing import Spot, pack_rows
from render.sheets import paper_size
from render.template_drawing import HEIGHT, draw_template, list_all

LEFT_EDGE, OTHER_EDGE = 20 * MM, 11 * MM
"""From the paper's edges to what is drawn, the check bar at the left and pages' names outside it."""
STRIP = 25 * MM
"""Height of the strip below with bar, words and key. Shop choice."""
OVERLAP = 0.75
"""How much neighbouring pages both show, in. Shop choice."""
ROUND = 0.2
"""Air round a template, in. Shop choice."""
GAP = 0.4
"""Between templates on one page, in. Shop choice."""
REGISTER = 0.14
"""Half the size of a registration cross, in. Shop choice."""
CROSSES_ASIDE = tuple(way * step / 50 for step in range(7) for way in (1, -1))
"""So far along a join, as parts of it, other places for a cross are tried where words are in its way."""
BAR_ROOM = 118 * MM
KEY = 22 * MM
"""Room for the check bar and for the key to the pages, along the strip."""
WAY = "Print at 100 %, measure both bars first. Heavy lines: saw here. Thin lines: the board's own edges."
JOIN = "Lay pages over each other at the crosses and cut along the broken lines."


@dataclass(frozen=True, slots=True)
class Tile:
    """One page of a template: its name, ``B1`` the first of the second row, and what it shows."""

    name: str
    box: Box
    column: int
    row: int


def build_template_sheets(surround: Surround, paper: str) -> tuple[Sheet, ...]:
    """Every template of a job, full size, on pages of `paper`; none where there is nothing to mark out.

    Raises Refused for another paper.
    """
    width, height = paper_size(paper)
    room = (LEFT_EDGE, OTHER_EDGE + STRIP, width - OTHER_EDGE, height - OTHER_EDGE)
    style = surround.job.about.length_style
    page = room[2] - room[0], room[3] - room[1]
    templates = [lay_flat(template, page) for template in list_all(surround)]
    drawings = [draw_template(template, style) for template in templates]
    drafts = [*_pack_small(templates, drawings, room, style), *_tile_large(templates, drawings, room, style)]
    return tuple(
        Sheet(f"{number} of {len(drafts)}", title, width, height, placed)
        for number, (title, placed) in enumerate(drafts, start=1)
    )


def lay_flat(template: Template, page: tuple[float, float]) -> Template:
    """The template, turned where it then needs fewer pages."""
    turned = turn(template)
    needs_fewer = len(part_tiles(turned.size, page)) < len(part_tiles(template.size, page))
    return turned if needs_fewer else template


_Draft = tuple[str, tuple[Placed, ...]]


def _pack_small(
    templates: Sequence[Template], drawings: Sequence[Drawing], room: Box, style: LengthStyle
) -> Iterator[_Draft]:
    """Pages of those that fit on one with their captions."""
    small = [
        (template, _with_caption(template, drawing, style))
        for template, drawing in zip(templates, drawings, strict=True)
        if not _is_large(template, room)
    ]
    boxes = [drawing_extent(drawing) for _, drawing in small]
    sizes = [(x1 - x0, y1 - y0) for x0, y0, x1, y1 in boxes]
    for page in pack_rows(sizes, (room[2] - room[0], room[3] - room[1]), GAP):
        placed = tuple(_place_small(spot, small[spot.index][1], boxes[spot.index], room) for spot in page)
        names = ", ".join(dict.fromkeys(small[spot.index][0].mark for spot in page))
        yield f"Templates: {names}", (*placed, _frame(room, "Full-size templates", WAY))


def _place_small(spot: Spot, drawing: Drawing, box: Box, room: Box) -> Placed:
    at = room[0] + spot.right - box[0], room[3] - spot.below - box[3]
    return Placed(drawing, at, "template")


def _is_large(template: Template, room: Box) -> bool:
    """Whether it has no room on one page with four lines of caption."""
    return (
        template.size[0] > room[2] - room[0] - 2 * ROUND
        or template.size[1] > room[3] - room[1] - 2 * ROUND - 6 * LEADING * HEIGHT
    )


def _with_caption(template: Template, drawing: Drawing, style: LengthStyle) -> Drawing:
    """The drawing with what it is written below it."""
    width = max(template.size[0], 1.6)
    lines = [(text, True) for text in wrap_text(_name(template), HEIGHT, width, True)]
    lines += [(text, False) for text in wrap_text(_say_pieces(template, style), HEIGHT, width)]
    y = -ROUND - HEIGHT
    texts = []
    for text, bold in lines:
        texts.append(Text(text, (0.0, y), HEIGHT, bold=bold))
        y -= LEADING * HEIGHT
    return drawing.plus(*texts)


def _name(template: Template) -> str:
    return capitalise(template.what)


def _say_pieces(template: Template, style: LengthStyle) -> str:
    """``C5, 2 pieces; inner side up; middle 12" from the left end``."""
    pieces = "1 piece" if template.pieces == 1 else f"{template.pieces} pieces"
    off = [f"middle {format_length(far, style)} from the {edge}" for far, edge in template.off]
    return "; ".join((f"{template.mark}, {pieces}", template.face, *off))


def _tile_large(
    templates: Sequence[Template], drawings: Sequence[Drawing], room: Box, style: LengthStyle
) -> Iterator[_Draft]:
    for template, drawing in zip(templates, drawings, strict=True):
        if _is_large(template, room):
            tiles = part_tiles(template.size, (room[2] - room[0], room[3] - room[1]))
            for tile in tiles:
                title, parts = f"{_name(template)}, {template.mark}", f"{_say_pieces(template, style)}. {WAY}"
                placed = _place_tile(drawing, tile, tiles, room)
                if len(tiles) > 1:
                    title = f"{title}: page {tile.name} of {len(tiles)}"
                    parts = f"{parts} {JOIN}"
                    placed += (Placed(_draw_key(tiles, tile), _key_at(room), "key"),)
                yield title, (*placed, _frame(room, title, parts, BAR_ROOM + KEY))


def part_tiles(size: tuple[float, float], page: tuple[float, float]) -> tuple[Tile, ...]:
    """The pages that a template of this size is parted over, from the upper left, row by row."""
    steps = page[0] - OVERLAP, page[1] - OVERLAP
    columns, rows = (max(1, ceil((size[k] + 2 * ROUND - OVERLAP) / steps[k] - 1e-9)) for k in (0, 1))
    tiles = []
    for row in range(rows):
        top = size[1] + ROUND - row * steps[1]
        for column in range(columns):
            left = -ROUND + column * steps[0]
            box = (left, top - page[1], left + page[0], top)
            tiles.append(Tile(f"{ascii_uppercase[row % 26]}{column + 1}", box, column, row))
    return tuple(tiles)


def _place_tile(drawing: Drawing, tile: Tile, tiles: Sequence[Tile], room: Box) -> tuple[Placed, ...]:
    """What a page shows of the template, with its joins."""
    clipped = clip_drawing(drawing, tile.box)
    inner = _within_joins(tile, tiles)
    texts = [m for m in drawing.marks if isinstance(m, Text) and _is_within(m, inner)]
    at = room[0] - tile.box[0], room[1] - tile.box[1]
    words = list_words(mark for mark in drawing.marks if isinstance(mark, Text))
    joins = [mark for other in tiles for mark in _draw_join(tile, other, words)]
    return (
        Placed(clipped.plus(*texts), at, "template"),
        Placed(Drawing(tuple(joins)), at, "joins"),
    )


def _within_joins(tile: Tile, tiles: Sequence[Tile]) -> Box:
    """What is left of a page between the lines it is joined at."""
    left, bottom, right, top = tile.box
    half = OVERLAP / 2
    return (
        left + (half if tile.column else 0.0),
        bottom + (half if any(other.row > tile.row for other in tiles) else 0.0),
        right - (half if any(other.column > tile.column for other in tiles) else 0.0),
        top - (half if tile.row else 0.0),
    )


def _is_within(text: Text, box: Box) -> bool:
    return all(box[0] <= x <= box[2] and box[1] <= y <= box[3] for x, y in text_corners(text))


def _draw_join(tile: Tile, other: Tile, words: Sequence[Box]) -> list[Mark]:
    """Where a neighbour is joined: a broken line in the middle of what both show, crosses on it, its name.

    Both have the crosses in the same places, off the template's `words`.
    """
    beside = tile.row == other.row and abs(tile.column - other.column) == 1
    below = tile.column == other.column and abs(tile.row - other.row) == 1
    if not (beside or below):
        return []
    first, last = sorted((tile, other), key=lambda t: (t.row, t.column))
    if beside:
        x = (last.box[0] + first.box[2]) / 2
        low, high = tile.box[1], tile.box[3]
        line = (x, low, x, high)
        out = 1.0 if other.column > tile.column else -1.0
        edge = tile.box[2] if out > 0 else tile.box[0]
        name = Text(other.name, (edge + out * 0.12, high - 0.3), HEIGHT, Anchor.MIDDLE, bold=True)
    else:
        y = (last.box[3] + first.box[1]) / 2
        low, high = tile.box[0], tile.box[2]
        line = (low, y, high, y)
        out = 1.0 if other.row < tile.row else -1.0
        edge = tile.box[3] if out > 0 else tile.box[1]
        lift = 0.05 if out > 0 else -0.05 - HEIGHT
        name = Text(other.name, (low + 0.4, edge + lift), HEIGHT, Anchor.MIDDLE, bold=True)
    strokes = tuple(
        stroke
        for x, y in list_crosses(line, words)
        for stroke in ((x - REGISTER, y, x + REGISTER, y), (x, y - REGISTER, x, y + REGISTER))
    )
    return [Lines(Pen.GUIDE, (line,)), Lines(Pen.EDGE, strokes), name]


def list_crosses(line: Segment, words: Sequence[Box]) -> Iterator[Point]:
    """Three places along a join, each moved on as far as it takes to be clear of words."""
    x0, y0, x1, y1 = line
    for part in (0.2, 0.5, 0.8):
        places = [
            (x0 + (x1 - x0) * (part + aside), y0 + (y1 - y0) * (part + aside)) for aside in CROSSES_ASIDE
        ]
        yield next((place for place in places if not _covers(place, words)), places[0])


def _covers(cross: Point, words: Sequence[Box]) -> bool:
    left, low, right, high = box_round(cross, 2 * REGISTER, 2 * REGISTER)
    return any(x0 < right and left < x1 and y0 < high and low < y1 for x0, y0, x1, y1 in words)


def _key_at(room: Box) -> tuple[float, float]:
    return room[2] - KEY, OTHER_EDGE


def _draw_key(tiles: Sequence[Tile], here: Tile) -> Drawing:
    """All pages as small boxes with their names, this one tinted."""
    left, bottom = min(t.box[0] for t in tiles), min(t.box[1] for t in tiles)
    right, top = max(t.box[2] for t in tiles), max(t.box[3] for t in tiles)
    scale = min(KEY / (right - left), (STRIP - 3 * MM) / (top - bottom))

    def small(box: Box) -> Box:
        return tuple((v - o) * scale for v, o in zip(box, (left, bottom, left, bottom), strict=True))  # type: ignore[return-value]

    marks: list[Mark] = [Region(Fill.FACING, (box_ring(small(here.box)),))]
    for tile in tiles:
        box = small(tile.box)
        marks.append(Lines(Pen.RULE, box_sides(box)))
        if text_width(tile.name, HEIGHT) < (box[2] - box[0]) * 0.8 and (box[3] - box[1]) * 0.7 > HEIGHT:
            middle = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2 - HEIGHT / 2
            marks.append(Text(tile.name, middle, HEIGHT, Anchor.MIDDLE, bold=tile is here))
    return Drawing(tuple(marks))


def _frame(room: Box, title: str, words: str, taken: float = BAR_ROOM) -> Placed:
    """Both check bars, and what stands in the strip below: a title and how it is used."""
    left, bottom, right, _ = room
    start, top = left + BAR_ROOM, OTHER_EDGE + STRIP - 5 * MM
    width = right - left - taken - 3 * MM
    lines = [(text, True) for text in wrap_text(title, HEIGHT, width, True)]
    lines += [(text, False) for text in wrap_text(words, HEIGHT, width)]
    marks: list[Mark] = [*check_bar_marks(left - 2 * MM, bottom), *level_bar_marks(left, OTHER_EDGE)]
    y = top - HEIGHT
    for text, bold in lines:
        marks.append(Text(text, (start, y), HEIGHT, bold=bold))
        y -= 1.5 * HEIGHT
    return Placed(Drawing(tuple(marks)), (0.0, 0.0), "frame")
