"""The title block: what a sheet says about itself, below its drawings or beside them. Paper inches.

Fields after ISO 7200:2004 (title, date of issue, sheet number, number of sheets, creator, owner), with
scale, units and projection added. Where the block lies on the page is decided in render.sheets.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from render.drawing import MM, Anchor, Lines, Mark, Pen, Text
from render.extent import Box
from render.lettering import LEADING, one_line, shorten_text, text_width, wrap_text
from render.symbols import third_angle_marks, third_angle_width
from render.tables import SMALL

PLAIN, TITLE, LARGE = 3 * MM, 3.5 * MM, 5 * MM
STEP = 0.5 * MM
"""Steps in which writing is made smaller until it fits."""
PAD = 2 * MM
SIGN_HEIGHT = 3.6 * MM

LOW_ROWS = (8.5 * MM, 7.5 * MM, 6.4 * MM, 6.4 * MM)
"""Row heights of the block below, top first."""
LOW_HEIGHT = sum(LOW_ROWS)
LOW_SIDE = 62 * MM
"""Width of the right-hand fields of the block below."""
LOW_REVISION = 23 * MM
"""How much of that the revision takes beside the date."""
NOT_REVISED = "\N{EN DASH}"
TALL_ROWS = (17 * MM, 15.5 * MM, 12.5 * MM, 12.5 * MM, 6.4 * MM, 6.4 * MM, 6.4 * MM, 8 * MM, 9.5 * MM)
"""Row heights of the block beside, top first."""

TO_VERIFY = "All sizes to be verified on site."
WHO_DECIDES = (
    "The adopted local code, the appliance's manual and the authority having jurisdiction decide; "
    "this program approves nothing."
)
CAUTIONS = f"{TO_VERIFY} {WHO_DECIDES}"


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """What a sheet says about itself, as it is written; `number` such as ``1 of 6``.

    `notes` are short paragraphs that stand over a block beside the drawings. A sheet that was never revised
    says so with NOT_REVISED.
    """

    job: str
    client: str
    maker: str
    date: str
    title: str
    number: str
    scale: str
    units: str
    notes: tuple[str, ...] = ()
    revision: str = ""


def low_block(block: TitleBlock, box: Box, split: float) -> tuple[Mark, ...]:
    """The block along the foot of a page: cautions left of `split`, fields right of it."""
    left, bottom, right, top = box
    side = right - LOW_SIDE
    rows = _edges(top, LOW_ROWS)
    sign = third_angle_width(SIGN_HEIGHT) + 2 * PAD
    fields = (
        *_field("Job", block.job, (split, rows[1], side, rows[0]), LARGE, bold=True),
        *_field("Sheet", block.number, (side, rows[1], right, rows[0]), LARGE, bold=True),
        *_field("Title", block.title, (split, rows[2], side, rows[1]), TITLE, bold=True),
        *_field("Scale", block.scale, (side, rows[2], right, rows[1]), TITLE, bold=True),
        *_field("Made for", block.client, (split, rows[3], side, rows[2])),
        *_field("Date", block.date, (side, rows[3], right - LOW_REVISION, rows[2])),
        *_field("Rev.", block.revision or NOT_REVISED, (right - LOW_REVISION, rows[3], right, rows[2])),
        *_field("Made by", block.maker, (split, rows[4], side, rows[3])),
        *_field("Units", block.units, (side, rows[4], right - sign, rows[3])),
    )
    level = [(split, y, right, y) for y in rows[1:-1]]
    upright = [(split, bottom, split, top), (side, bottom, side, top)]
    upright.append((right - LOW_REVISION, rows[3], right - LOW_REVISION, rows[2]))
    return (
        Lines(Pen.RULE, (*level, *upright)),
        *fields,
        *_sign(right - PAD, rows[4], LOW_ROWS[3]),
        *_paragraph(CAUTIONS, left + PAD, split - PAD, top - PAD)[0],
    )


def tall_block(block: TitleBlock, box: Box) -> tuple[Mark, ...]:
    """The block down the side of a page: cautions and notes at its top, fields at its foot."""
    left, bottom, right, top = box
    rows = _edges(bottom + sum(TALL_ROWS), TALL_ROWS)
    boxes = [(left, low, right, high) for high, low in pairwise(rows)]
    sign = third_angle_width(SIGN_HEIGHT) + 2 * PAD
    fields = (
        *_stacked("Job", block.job, boxes[0], 4 * MM, bold=True),
        *_stacked("Title", block.title, boxes[1], TITLE, bold=True),
        *_stacked("Made for", block.client, boxes[2], PLAIN),
        *_stacked("Made by", block.maker, boxes[3], PLAIN),
        *_field("Date", block.date, boxes[4]),
        *_field("Units", block.units, boxes[5]),
        *_field("Rev.", block.revision or NOT_REVISED, (left, boxes[6][1], right - sign, boxes[6][3])),
        *_sign(right - PAD, boxes[6][1], TALL_ROWS[6]),
        *_field("Scale", block.scale, boxes[7], TITLE, bold=True),
        *_field("Sheet", block.number, boxes[8], LARGE, bold=True),
    )
    rules = Lines(Pen.RULE, tuple((left, y, right, y) for y in rows[:-1]))
    return (rules, *fields, *_notes((CAUTIONS, *block.notes), (left, rows[0], right, top)))


def split_notes(notes: tuple[str, ...], pointer: str, box: Box) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The notes `tall_block` has room for in `box`, and the others; the first then end with `pointer`."""
    left, bottom, right, top = box
    room = (left, bottom + sum(TALL_ROWS), right, top)
    if _fits(notes, room):
        return notes, ()
    kept = next((n for n in range(len(notes) - 1, 0, -1) if _fits((*notes[:n], pointer), room)), 0)
    return (*notes[:kept], pointer), notes[kept:]


def _fits(notes: tuple[str, ...], room: Box) -> bool:
    """Whether the notes stand in `room` with the cautions over them."""
    left, bottom, right, top = room
    low = top = top - PAD
    for text in (CAUTIONS, *notes):
        low = _paragraph(text, left + PAD, right - PAD, top)[1]
        top = low - 0.6 * LEADING * SMALL
    return low >= bottom


def _edges(top: float, rows: tuple[float, ...]) -> list[float]:
    edges = [top]
    for row in rows:
        edges.append(edges[-1] - row)
    return edges


def _sign(right: float, bottom: float, row: float) -> tuple[Mark, ...]:
    corner = (right - third_angle_width(SIGN_HEIGHT), bottom + (row - SIGN_HEIGHT) / 2)
    return third_angle_marks(corner, SIGN_HEIGHT)


def _notes(paragraphs: tuple[str, ...], box: Box) -> tuple[Mark, ...]:
    """Paragraphs from the top of `box` down; what has no room in it is left out as a whole."""
    left, bottom, right, top = box
    marks: tuple[Mark, ...] = ()
    top -= PAD
    for text in paragraphs:
        lines, low = _paragraph(text, left + PAD, right - PAD, top)
        if low < bottom:
            break
        marks += lines
        top = low - 0.6 * LEADING * SMALL
    return marks


def _paragraph(text: str, left: float, right: float, top: float) -> tuple[tuple[Mark, ...], float]:
    """The lines of a note from `top` down, and how low they reach."""
    step = LEADING * 0.95 * SMALL
    first = top - 1.1 * SMALL
    lines = wrap_text(text, SMALL, right - left)
    marks = tuple(Text(line, (left, first - step * n), SMALL) for n, line in enumerate(lines))
    return marks, first - step * (len(lines) - 1) - 0.35 * SMALL


_LABELS = ("Job", "Title", "Made for", "Made by")
LABEL_WIDTH = max(text_width(label, SMALL) for label in _LABELS) + 2.5 * MM
SHORT_LABEL = (
    max(text_width(label, SMALL) for label in ("Sheet", "Scale", "Date", "Units", "Rev.")) + 2.5 * MM
)


def _field(label: str, value: str, box: Box, height: float = PLAIN, bold: bool = False) -> tuple[Mark, ...]:
    """A label and its value on one baseline, the value as large as it fits, then shortened."""
    left, bottom, right, top = box
    start = left + PAD + (LABEL_WIDTH if label in _LABELS else SHORT_LABEL)
    room = right - start - PAD * 0.75
    value = one_line(value)
    while height > SMALL and text_width(value, height, bold) > room:
        height = max(SMALL, height - STEP)
    base = (bottom + top - height) / 2
    name = Text(label, (left + PAD, base), SMALL, pen=Pen.RULE)
    shown = shorten_text(value, height, room, bold)
    return (name, Text(shown, (start, base), height, Anchor.START, bold=bold)) if shown else (name,)


def _stacked(label: str, value: str, box: Box, height: float, bold: bool = False) -> tuple[Mark, ...]:
    """A label over its value, the value on as many lines and as large as it fits, then shortened."""
    left, bottom, right, top = box
    base = top - 1.4 * MM - SMALL
    name = Text(label, (left + PAD, base), SMALL, pen=Pen.RULE)
    room, deep = right - left - 2 * PAD, base - 1.7 * MM - bottom - 1 * MM
    value = one_line(value)
    lines = wrap_text(value, height, room, bold)
    while height > SMALL and _depth(lines, height) > deep:
        height = max(SMALL, height - STEP)
        lines = wrap_text(value, height, room, bold)
    if _depth(lines, height) > deep:
        kept = int((deep / height - 1) / LEADING)
        lines = (*lines[:kept], shorten_text(" ".join(lines[kept:]), height, room, bold))
    first = base - 1.7 * MM - height
    shown = [
        Text(line, (left + PAD, first - LEADING * height * n), height, bold=bold)
        for n, line in enumerate(lines)
    ]
    return (name, *(text for text in shown if text.text))


def _depth(lines: tuple[str, ...], height: float) -> float:
    return height * (1 + LEADING * (len(lines) - 1))
