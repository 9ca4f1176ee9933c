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
LEAST_PICTURE = 36 * MM
"""The longer side of a picture is no shorter than this where a larger cell can help it. Shop choice."""
NO_ROOM = 1e4
"""The ratio of a picture that has no room at all."""
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
    """The marks of each page; steps go in rows from the top left.

    A step whose words leave its picture too little room in one cell has the whole row, or the whole page.
    """
    pages = _Pages(room)
    for number, one in enumerate(shown, start=1):
        task = _Told(number, one, list_words(one.step, surround, takeoff, one.seen))
        pages.lay(task)
    return tuple(tuple(page) for page in pages.pages)


@dataclass(frozen=True, slots=True)
class _Told:
    """A step with its number and its words."""

    number: int
    shown: Shown
    words: Sequence[tuple[str, str]]


class _Pages:
    """Pages filled step by step; `_at` is the next free cell of the last one."""

    def __init__(self, room: Box) -> None:
        self.pages: list[list[Placed]] = []
        self._room = room
        self._columns, self._rows = count_cells(room)
        self._at = self._columns * self._rows

    def lay(self, told: _Told) -> None:
        """The step in the first size of cell that holds it, in the next place that is free for that."""
        page = self._columns * self._rows
        for wide, tall in dict.fromkeys(((1, 1), (self._columns, 1), (self._columns, self._rows))):
            at = ceil(self._at / (wide * tall)) * wide * tall
            laid = _lay_step(told, self._cell(at % page, wide, tall))
            if laid.fits:
                break
        if at >= page:
            self.pages.append([])
        self.pages[-1] += laid.placed
        self._at = at % page + wide * tall

    def _cell(self, at: int, wide: int, tall: int) -> Box:
        left, low, right, high = self._room
        across = (right - left - (self._columns - 1) * GUTTER) / self._columns
        up = (high - low - (self._rows - 1) * GUTTER) / self._rows
        left += at % self._columns * (across + GUTTER)
        top = high - at // self._columns * (up + GUTTER)
        foot = top - tall * up - (tall - 1) * GUTTER
        return left, foot, left + wide * across + (wide - 1) * GUTTER, top


@dataclass(frozen=True, slots=True)
class _Laid:
    """A step in its cell, and whether words, picture and marks have the room they want there."""

    placed: tuple[Placed, ...]
    fits: bool


def _lay_step(told: _Told, cell: Box) -> _Laid:
    left, bottom, right, top = cell
    marks = _header(told.number, told.shown, cell)
    below, bookmark = top - HEADER, f"Step {told.number}: {told.shown.step.title}"
    if told.shown.staged is None:
        words = _write(told.words, right - left, (left, below))
        alone = Drawing((*marks, *words.lines))
        return _Laid((Placed(alone, (0.0, 0.0), "table", bookmark),), words.height <= below - bottom)
    room, text = _choose_room(told, (left, bottom, right, below))
    picture, is_marked = _draw(told.shown, room)
    is_large = _paper_size(told.shown, picture.ratio) >= LEAST_PICTURE
    placed = (
        Placed(Drawing((*marks, *text.lines)), (0.0, 0.0), "table", bookmark),
        Placed(picture, find_middle(picture, room), f"step_{told.number}"),
    )
    return _Laid(placed, is_marked and is_large and text.height <= below - bottom)


def _choose_room(told: _Told, cell: Box) -> tuple[Box, _Words]:
    """Words beside the picture or below it, whichever leaves more for the picture."""
    left, bottom, right, below = cell
    narrow = BESIDE * (right - left)
    beside = _write(told.words, narrow, (right - narrow, below))
    across = _write(told.words, right - left, (left, 0.0))
    rooms: list[tuple[Box, _Words]] = []
    if beside.height <= below - bottom:
        rooms.append(((left, bottom, right - narrow - AIR, below), beside))
    foot = bottom + across.height + AIR
    under = _write(told.words, right - left, (left, bottom + across.height))
    rooms.append(((left, foot, right, below), under))
    return min(rooms, key=lambda pair: _ratio(told.shown, pair[0]))


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
    across, up = _extent(shown)
    wide, tall = room[2] - room[0] - 2 * FOR_MARKS, room[3] - room[1] - 2 * FOR_MARKS
    if wide <= 0 or tall <= 0:
        return NO_ROOM
    return max(across / wide, up / tall)


def _extent(shown: Shown) -> tuple[float, float]:
    """How far the picture reaches across and up, in inches of the room."""
    assert shown.staged is not None
    present = {*shown.picked, *shown.there, *shown.staged.site}
    low_h, low_v, high_h, high_v = shown.staged.scene.extent(present)
    return high_h - low_h, high_v - low_v


def _paper_size(shown: Shown, ratio: float) -> float:
    """The longer side of the picture on paper."""
    return max(_extent(shown)) / ratio


def _draw(shown: Shown, room: Box) -> tuple[Drawing, bool]:
    """As large as it and its marks fit into the room, and whether the marks do."""
    assert shown.staged is not None
    ratio, bare = _ratio(shown, room), outline_step(shown.staged, shown.picked, shown.there)
    for _ in range(TRIES):
        drawing = draw_step(shown.staged, bare, ratio, shown.named)
        if fits_room(drawing, room):
            return drawing, True
        ratio *= SMALLER
    return draw_step(shown.staged, bare, ratio), not shown.named
