"""Steps set out on a sheet: a cell for each, with its number, its picture and the words beside or below it.

What is said is render.step_words', what is drawn render.step_picture's. Paper inches.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from model.surround import Surround
from model.takeoff.takeoff import Takeoff
from render.drawing import MM, Anchor, Drawing, Lines, Mark, Pen, Placed, Text
from render.extent import Box
from render.lettering import LEADING, shorten_text, text_width, wrap_text
from render.step_picture import draw_step, outline_step
from render.step_scenes import Shown
from render.step_words import list_words, say_time
from render.tables import SMALL
from render.view_layout import find_middle, fits_room

LEAST_CELL = (105 * MM, 76 * MM)
"""Width and height that a step takes at least. Shop choice."""
MOST_CELLS = 6
TITLE = 3.5 * MM
HEADER = 8 * MM
GUTTER = 5 * MM
AIR = 2 * MM
BESIDE = 0.4
"""Part of a cell's width for words beside the picture. Shop choice."""
INDENT = 3.2 * MM
FOR_MARKS = 7 * MM
"""Left clear round a picture for marks that stand beside it."""
TRIES = 4
SMALLER = 1.12
"""How much smaller a picture is drawn each time its marks do not fit."""


@dataclass(frozen=True, slots=True)
class _Words:
    lines: tuple[Text, ...]
    height: float


def count_cells(room: Box) -> tuple[int, int]:
    """Columns and rows of cells in `room`, six at most."""
    wide, tall = room[2] - room[0], room[3] - room[1]
    columns, rows = max(1, int(wide / LEAST_CELL[0])), max(1, int(tall / LEAST_CELL[1]))
    while columns * rows > MOST_CELLS:
        columns, rows = (columns - 1, rows) if columns > rows else (columns, rows - 1)
    return columns, rows


def lay_steps(
    shown: Sequence[Shown], surround: Surround, takeoff: Takeoff, room: Box
) -> tuple[tuple[Placed, ...], ...]:
    """The marks of each page; steps go in rows from the top left."""
    columns, rows = count_cells(room)
    per_page = columns * rows
    pages = []
    for page in range(ceil(len(shown) / per_page)):
        placed: list[Placed] = []
        for n, one in enumerate(shown[page * per_page : (page + 1) * per_page]):
            cell = _cell(room, columns, rows, n)
            placed += _lay_step(page * per_page + n + 1, one, surround, takeoff, cell)
        pages.append(tuple(placed))
    return tuple(pages)


def _cell(room: Box, columns: int, rows: int, n: int) -> Box:
    wide = (room[2] - room[0] - (columns - 1) * GUTTER) / columns
    tall = (room[3] - room[1] - (rows - 1) * GUTTER) / rows
    left = room[0] + n % columns * (wide + GUTTER)
    top = room[3] - n // columns * (tall + GUTTER)
    return left, top - tall, left + wide, top


def _lay_step(number: int, shown: Shown, surround: Surround, takeoff: Takeoff, cell: Box) -> list[Placed]:
    left, bottom, right, top = cell
    marks = _header(number, shown, cell)
    words = list_words(shown.step, surround, takeoff, shown.seen)
    below, bookmark = top - HEADER, f"Step {number}: {shown.step.title}"
    if shown.staged is None:
        alone = Drawing((*marks, *_write(words, right - left, (left, below)).lines))
        return [Placed(alone, (0.0, 0.0), "table", bookmark)]
    narrow = BESIDE * (right - left)
    beside = _write(words, narrow, (right - narrow, below))
    across = _write(words, right - left, (left, 0.0))
    rooms: list[tuple[Box, _Words]] = []
    if beside.height <= below - bottom:
        rooms.append(((left, bottom, right - narrow - AIR, below), beside))
    foot = bottom + across.height + AIR
    rooms.append(((left, foot, right, below), _write(words, right - left, (left, bottom + across.height))))
    room, text = min(rooms, key=lambda pair: _ratio(shown, pair[0]))
    picture = _draw(shown, room)
    return [
        Placed(Drawing((*marks, *text.lines)), (0.0, 0.0), "table", bookmark),
        Placed(picture, find_middle(picture, room), f"step_{number}"),
    ]


def _header(number: int, shown: Shown, cell: Box) -> list[Mark]:
    left, _, right, top = cell
    base = top - TITLE - 0.3 * TITLE
    time = say_time(shown.step)
    title, room = f"{number}  {shown.step.title}", right - left - SMALL
    least = text_width(title, SMALL, bold=True)
    time = shorten_text(time, SMALL, max(room - least, 0.0)) if time else ""
    taken = text_width(time, SMALL) if time else 0.0
    height = TITLE if text_width(title, TITLE, bold=True) <= room - taken else SMALL
    if least > room - taken:
        title = shorten_text(title, SMALL, room - taken, bold=True)
    return [
        Text(title, (left, base), height, bold=True),
        *([Text(time, (right, base), SMALL, Anchor.END)] if time else []),
        Lines(Pen.EDGE, ((left, base - 0.6 * TITLE, right, base - 0.6 * TITLE),)),
    ]


def _write(words: Sequence[tuple[str, str]], width: float, at: tuple[float, float]) -> _Words:
    """Paragraphs from the top left corner `at` downwards; each begins with its word in bold."""
    step, y = LEADING * SMALL, at[1]
    lines: list[Text] = []
    for word, text in words:
        lead = text_width(f"{word} ", SMALL, True) if word != "–" else INDENT
        hang = INDENT
        first, *rest = _wrap(text, width, lead, hang)
        y -= step
        lines.append(Text(word, (at[0], y + 0.35 * step), SMALL, bold=word != "–"))
        lines.append(Text(first, (at[0] + lead, y + 0.35 * step), SMALL))
        for line in rest:
            y -= step
            lines.append(Text(line, (at[0] + hang, y + 0.35 * step), SMALL))
    return _Words(tuple(lines), at[1] - y)


def _wrap(text: str, width: float, lead: float, hang: float) -> list[str]:
    """Lines of which the first is shorter by the word before it."""
    first = wrap_text(text, SMALL, width - lead)[0]
    rest = (
        text[len(first) :].strip() if text.startswith(first) else " ".join(text.split()[len(first.split()) :])
    )
    return [first, *(wrap_text(rest, SMALL, width - hang) if rest else ())]


def _ratio(shown: Shown, room: Box) -> float:
    assert shown.staged is not None
    present = {*shown.picked, *shown.there, *shown.staged.site}
    low_h, low_v, high_h, high_v = shown.staged.scene.extent(present)
    wide, tall = room[2] - room[0] - 2 * FOR_MARKS, room[3] - room[1] - 2 * FOR_MARKS
    if wide <= 0 or tall <= 0:
        return float("inf")
    return max((high_h - low_h) / wide, (high_v - low_v) / tall)


def _draw(shown: Shown, room: Box) -> Drawing:
    """As large as it and its marks fit into the room."""
    assert shown.staged is not None
    ratio, bare = _ratio(shown, room), outline_step(shown.staged, shown.picked, shown.there)
    for _ in range(TRIES):
        drawing = draw_step(shown.staged, bare, ratio, shown.named)
        if fits_room(drawing, room):
            return drawing
        ratio *= SMALLER
    return draw_step(shown.staged, bare, ratio)
