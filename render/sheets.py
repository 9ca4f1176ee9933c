"""The page itself: sizes, border, title block, check bar and the room left for drawings. Paper inches.

What stands on a sheet is decided in render.packet.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from model.units import MM_PER_INCH
from render.drawing import (
    Anchor,
    Drawing,
    Fill,
    Lines,
    Mark,
    Pen,
    Placed,
    Polyline,
    Region,
    Segment,
    Sheet,
    Text,
)
from render.lettering import LEADING, one_line, shorten_text, text_width, wrap_text
from render.symbols import third_angle_marks, third_angle_width
from render.tables import SMALL

MM = 1 / MM_PER_INCH
Box = tuple[float, float, float, float]

PAPERS: Mapping[str, tuple[float, float]] = {
    "letter": (11.0, 8.5),
    "tabloid": (17.0, 11.0),
    "a4": (297 * MM, 210 * MM),
    "a3": (420 * MM, 297 * MM),
}
"""Width and height with the long side level: ANSI/ASME Y14.1 A and B, ISO 216 A4 and A3."""

VIEW_TITLES: Mapping[str, str] = {
    "front": "Front elevation",
    "side": "Side elevation",
    "plan": "Plan",
    "plan_section": "Plan section",
    "vertical_section": "Vertical section",
}

BINDING_EDGE, OTHER_EDGES = 20 * MM, 10 * MM
"""Border to the paper's left edge and to its other edges: ISO 5457, from memory."""
BLOCK_WIDTH = 180 * MM
"""Widest title block: ISO 7200, from memory. Narrower where the check bar needs the room."""
BLOCK_ROWS = (8.5 * MM, 7.5 * MM, 6.4 * MM, 6.4 * MM)
"""Heights of the title block's rows, top first."""
STRIP = sum(BLOCK_ROWS)
SIDE_WIDTH = 62 * MM
"""Width of the title block's right-hand fields."""
CLEAR = 3 * MM
"""Kept clear between the border and what stands inside it."""

PLAIN, LARGE = 3 * MM, 5 * MM
TITLE = 3.5 * MM
BAR_INCHES, BAR_MM = 4, 100
BAR_HEIGHT = 2.2 * MM

TO_VERIFY = "All sizes to be verified on site."
WHO_DECIDES = (
    "The adopted local code, the appliance's manual and the authority having jurisdiction decide; "
    "this program approves nothing."
)
BAR_LABEL = "Print at 100 %: this bar measures 4 in. above and 100 mm below."


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """What a sheet says about itself, as it is written; `number` such as ``1 of 6``."""

    job: str
    client: str
    maker: str
    date: str
    title: str
    number: str
    scale: str
    units: str


def safe_area(width: float, height: float) -> Box:
    """Left, bottom, right and top of the room for drawings on a page of that size."""
    return (
        BINDING_EDGE + CLEAR,
        OTHER_EDGES + STRIP + CLEAR,
        width - OTHER_EDGES - CLEAR,
        height - OTHER_EDGES - CLEAR,
    )


def build_sheet(width: float, height: float, block: TitleBlock, placed: tuple[Placed, ...]) -> Sheet:
    """A page with its border, check bar and title block round `placed`."""
    frame = Placed(draw_frame(width, height, block), (0.0, 0.0), "frame")
    return Sheet(block.number, block.title, width, height, (*placed, frame))


def draw_frame(width: float, height: float, block: TitleBlock) -> Drawing:
    """Border, check bar, cautions and title block at ratio 1."""
    left, bottom = BINDING_EDGE, OTHER_EDGES
    right, top = width - OTHER_EDGES, height - OTHER_EDGES
    split = right - min(BLOCK_WIDTH, right - left - (BAR_INCHES + 2 * CLEAR))
    border = Polyline(Pen.BORDER, ((left, bottom), (right, bottom), (right, top), (left, top)), closed=True)
    rules = Lines(
        Pen.EDGE, ((left, bottom + STRIP, right, bottom + STRIP), (split, bottom, split, bottom + STRIP))
    )
    bar = _check_bar(left + CLEAR, bottom + STRIP - 2 * MM)
    cautions = _cautions(left + CLEAR, split - CLEAR, bottom)
    return Drawing(
        (border, rules, *bar, *cautions, *_title_block(block, (split, bottom, right, bottom + STRIP)))
    )


def _check_bar(left: float, top: float) -> tuple[Mark, ...]:
    """Two bars on one line: 4 in. above it in inches, 100 mm below it in tens."""
    label = Text(BAR_LABEL, (left, top - SMALL), SMALL)
    line = top - SMALL - 1.6 * MM - BAR_HEIGHT
    inches, mm = float(BAR_INCHES), BAR_MM * MM
    strokes: list[Segment] = [(left, line, left + inches, line)]
    strokes += [(left + i, line, left + i, line + BAR_HEIGHT) for i in range(BAR_INCHES + 1)]
    below = line - 0.6 * MM
    strokes += [(left, below, left + mm, below)]
    strokes += [
        (left + i * 10 * MM, below, left + i * 10 * MM, below - BAR_HEIGHT) for i in range(BAR_MM // 10 + 1)
    ]
    dark = [_bar_part(left + i, line, left + i + 1, line + BAR_HEIGHT) for i in range(0, BAR_INCHES, 2)]
    dark += [
        _bar_part(left + i * 10 * MM, below - BAR_HEIGHT, left + (i + 1) * 10 * MM, below)
        for i in range(0, BAR_MM // 10, 2)
    ]
    return (label, *dark, Lines(Pen.ARRIS, tuple(strokes)))


def _bar_part(x0: float, y0: float, x1: float, y1: float) -> Region:
    return Region(Fill.OPENING, (((x0, y0), (x1, y0), (x1, y1), (x0, y1)),))


def _cautions(left: float, right: float, bottom: float) -> tuple[Mark, ...]:
    lines = wrap_text(f"{TO_VERIFY} {WHO_DECIDES}", SMALL, right - left)
    step = LEADING * 0.95 * SMALL
    lowest = bottom + 2 * MM
    return tuple(
        Text(line, (left, lowest + step * (len(lines) - 1 - number)), SMALL)
        for number, line in enumerate(lines)
    )


def _title_block(block: TitleBlock, box: Box) -> tuple[Mark, ...]:
    left, bottom, right, top = box
    side = right - SIDE_WIDTH
    edges = [top]
    for row in BLOCK_ROWS:
        edges.append(edges[-1] - row)
    level = tuple((left, y, right, y) for y in edges[1:-1])
    rules = Lines(Pen.RULE, (*level, (side, bottom, side, top)))
    sign = third_angle_width(BLOCK_ROWS[3] * 0.55) + 4 * MM
    fields = (
        _field("Job", block.job, (left, edges[1], side, edges[0]), LARGE, bold=True),
        _field("Sheet", block.number, (side, edges[1], right, edges[0]), LARGE, bold=True),
        _field("Title", block.title, (left, edges[2], side, edges[1]), TITLE, bold=True),
        _field("Scale", block.scale, (side, edges[2], right, edges[1]), TITLE, bold=True),
        _field("Made for", block.client, (left, edges[3], side, edges[2])),
        _field("Date", block.date, (side, edges[3], right, edges[2])),
        _field("Made by", block.maker, (left, edges[4], side, edges[3])),
        _field("Units", block.units, (side, edges[4], right - sign, edges[3])),
    )
    height = BLOCK_ROWS[3] * 0.55
    corner = (right - sign + 1.5 * MM, edges[4] + (BLOCK_ROWS[3] - height) / 2)
    return (rules, *(mark for field in fields for mark in field), *third_angle_marks(corner, height))


LABEL_WIDTH = max(text_width(label, SMALL) for label in ("Made for", "Made by", "Sheet", "Scale")) + 2.5 * MM
SHORT_LABEL = max(text_width(label, SMALL) for label in ("Sheet", "Scale", "Date", "Units")) + 2.5 * MM


def _field(label: str, value: str, box: Box, height: float = PLAIN, bold: bool = False) -> tuple[Mark, ...]:
    """A label and its value on one baseline, the value as large as it fits, then shortened."""
    left, bottom, right, top = box
    start = left + 2 * MM + (SHORT_LABEL if label in ("Sheet", "Scale", "Date", "Units") else LABEL_WIDTH)
    room = right - start - 1.5 * MM
    value = one_line(value)
    while height > PLAIN + 1e-9 and text_width(value, height, bold) > room:
        height = max(PLAIN, height - 0.5 * MM)
    if text_width(value, height, bold) > room:
        height = SMALL
    shown = shorten_text(value, height, room, bold)
    base = (bottom + top - height) / 2
    name = Text(label, (left + 2 * MM, base), SMALL, pen=Pen.RULE)
    return (name, Text(shown, (start, base), height, Anchor.START, bold=bold)) if shown else (name,)
