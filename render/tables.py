"""Tables and paragraphs as strips of drawing, poured down one page after another. Paper inches, ratio 1.

What a table says is decided in the files that build sheets; where a page ends is decided here.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace

from model.check.finding import Status
from render.drawing import MM, Anchor, Fill, Lines, Mark, Pen, Point, Region, Text
from render.lettering import LEADING, wrap_text
from render.shifting import shift_mark
from render.symbols import box_marks, status_marks

SMALL = 2.5 * MM
"""The least capitals on any sheet, paper inches: 2.5 mm, the ISO 3098 step for notes on A4 to A1."""
PAD = 1.6 * MM
"""Clear beside the writing in a cell."""
FIGURES = 3 * MM
"""Capitals of a table that is read at the bench."""
ROW = 9 * MM
"""Its least row, room to write a note by hand."""
TIGHT = 0.85
"""How much of its least height a row keeps where that spares a page. Shop choice."""
OPENING_GAP = 1.5 * MM
"""Clear between what is said of a table and the table. Shop choice."""
MOST_LINES = 12
"""A row with more lines than this goes on in a further row, so that no row outgrows a page."""
LEAST_ROWS = 2
"""Rows of a table that stay together on its last page, and that stay behind. Shop choice."""
SIGN_SPACE = 1.7
"""Room for a sign before the writing of its cell, for capitals of height 1."""


@dataclass(frozen=True, slots=True)
class Column:
    """`width` in paper inches. `bold` writes its cells in the heavier weight."""

    heading: str
    width: float
    anchor: Anchor = Anchor.START
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Cell:
    """Writing, with the sign of an answer before it or a box to tick by hand."""

    text: str = ""
    status: Status | None = None
    box: bool = False
    bold: bool = False


Row = tuple[Cell, ...] | str


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of cells below headings; `height` of capitals, `least_row` height, both paper inches.

    A row that is only a text is the heading of the rows after it.
    """

    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    height: float = SMALL
    least_row: float = 0.0
    ruled: bool = False


@dataclass(frozen=True, slots=True)
class Strip:
    """A level slice of a page: marks below and right of (0, 0), and its height.

    `repeat` is drawn again above it when it comes first on a page; a strip that `leads` is never the
    last on a page. `tight` is the same with less room to write in, where it has room to spare.
    """

    height: float
    marks: tuple[Mark, ...] = ()
    repeat: Strip | None = None
    leads: bool = False
    tight: Strip | None = None


_Group = list[Strip]
"""Strips that stay together."""


def pour_strips(strips: Sequence[Strip], at: Point, height: float) -> tuple[tuple[Mark, ...], ...]:
    """The marks of each page: strips from the top left corner `at` downwards within `height`.

    A strip taller than a page stands alone on one. No strips give one empty page. A table's last row does
    not stand on the last page by itself: the row before it goes there with it, where there is one to spare.
    """
    pages = _keep_two(_share_out(strips, height), height)
    return tuple(_set_page(page, at) for page in pages)


def _share_out(strips: Sequence[Strip], height: float) -> list[list[_Group]]:
    """The groups of each page, as many as it has room for."""
    pages: list[list[_Group]] = [[]]
    for group in _groups(strips):
        if pages[-1] and _page_height([*pages[-1], group]) > height + 1e-9:
            pages.append([])
        pages[-1].append(group)
    return pages


def _keep_two(pages: list[list[_Group]], height: float) -> list[list[_Group]]:
    """The same pages, a row that is all that the last one has joined by the row before it."""
    if len(pages) < 2 or len(pages[-1]) != 1 or len(pages[-2]) < LEAST_ROWS + 1:
        return pages
    *first, fuller, (alone,) = pages
    both = [fuller[-1], alone]
    are_rows = all(group[-1].repeat is not None for group in both)
    if not are_rows or _page_height(both) > height + 1e-9:
        return pages
    return [*first, fuller[:-1], both]


def _on_page(page: Sequence[_Group]) -> list[Strip]:
    """The strips of a page, headings that stand again at its top included."""
    repeat = page[0][0].repeat if page else None
    return [*([] if repeat is None else [repeat]), *(strip for group in page for strip in group)]


def _page_height(page: Sequence[_Group]) -> float:
    return strips_height(_on_page(page))


def _set_page(page: Sequence[_Group], at: Point) -> tuple[Mark, ...]:
    marks: list[Mark] = []
    used = 0.0
    for strip in _on_page(page):
        marks.extend(shift_mark(mark, (at[0], at[1] - used)) for mark in strip.marks)
        used += strip.height
    return tuple(marks)


def pour_pages(strips: Sequence[Strip], at: Point, height: float) -> tuple[tuple[Mark, ...], ...]:
    """The marks of each page as `pour_strips` sets them; with tight rows where that spares a page."""
    pages = pour_strips(strips, at, height)
    if len(pages) == 1 or all(strip.tight is None for strip in strips):
        return pages
    fewer = pour_strips([_tighten(strip) for strip in strips], at, height)
    return fewer if len(fewer) < len(pages) else pages


def _tighten(strip: Strip) -> Strip:
    return replace(strip.tight, repeat=strip.repeat, leads=strip.leads) if strip.tight else strip


def strips_height(strips: Iterable[Strip]) -> float:
    """Height of all strips one below the other."""
    return sum(strip.height for strip in strips)


def _groups(strips: Sequence[Strip]) -> Iterable[_Group]:
    """Strips that stay together: each run of leading ones with the strip they lead."""
    group: _Group = []
    for strip in strips:
        group.append(strip)
        if not strip.leads:
            yield group
            group = []
    if group:
        yield group


def heading_strip(text: str, height: float = 3.5 * MM, above: float = 0.0) -> Strip:
    """A heading, `above` clear over it; it leads what follows."""
    drop = above + 1.75 * height
    mark = Text(text, (0.0, -drop + 0.5 * height), height, bold=True)
    return Strip(drop, (mark,), leads=True)


def paragraph_strips(
    text: str, width: float, height: float = SMALL, indent: float = 0.0, first: str = ""
) -> tuple[Strip, ...]:
    """One strip for each line of `text`; `first` stands in the indent before its first line."""
    lines = wrap_text(text, height, width - indent)
    step = LEADING * height
    strips = [Strip(step, (Text(line, (indent, -step + 0.5 * height), height),)) for line in lines]
    if first:
        sign = Text(first, (0.0, -step + 0.5 * height), height)
        strips[0] = replace(strips[0], marks=(sign, *strips[0].marks))
    return tuple(strips)


def opening_strips(heading: str, words: str, width: float, above: float = 0.0) -> tuple[Strip, ...]:
    """What stands over a table: a heading, `above` clear over it, and words on it. All of it leads."""
    lines = lead(paragraph_strips(words, width))
    return (heading_strip(heading, above=above), *lines, Strip(OPENING_GAP, leads=True))


def lead(strips: Iterable[Strip]) -> tuple[Strip, ...]:
    """The strips, kept on one page with what follows them."""
    return tuple(replace(strip, leads=True) for strip in strips)


def table_strips(table: Table) -> tuple[Strip, ...]:
    """The headings' strip, then each row's; the headings in force stand again at the top of each page."""
    heading = _heading(table)
    strips = [replace(heading, leads=True)]
    above = heading
    for row in table.rows:
        if isinstance(row, str):
            group = _group_heading(table, row)
            strips.append(replace(group, repeat=heading, leads=True))
            above = _stack(heading, _group_heading(table, f"{row} (continued)"))
        else:
            strips += [replace(part, repeat=above) for part in _row_parts(table, row)]
    return tuple(strips)


def _width(table: Table) -> float:
    return sum(column.width for column in table.columns)


def _heading(table: Table) -> Strip:
    cells = tuple(Cell(column.heading, bold=True) for column in table.columns)
    small = replace(table, height=SMALL, least_row=0.0)
    lines = [_wrapped(small, column, cell) for column, cell in zip(table.columns, cells, strict=True)]
    strip = _row(small, cells, lines)
    rule = Lines(Pen.EDGE, ((0.0, 0.0, _width(table), 0.0),))
    return Strip(strip.height, (_band(table, strip.height), rule, *strip.marks))


def _group_heading(table: Table, text: str) -> Strip:
    height = LEADING * table.height + PAD
    writing = Text(text, (PAD, -(height + table.height) / 2), table.height, bold=True)
    rules = Lines(Pen.RULE, tuple((0.0, y, _width(table), y) for y in (0.0, -height)))
    return Strip(height, (_band(table, height), writing, rules))


def _band(table: Table, height: float) -> Region:
    width = _width(table)
    return Region(Fill.BAND, (((0.0, 0.0), (width, 0.0), (width, -height), (0.0, -height)),))


def _stack(upper: Strip, lower: Strip) -> Strip:
    moved = tuple(shift_mark(mark, (0.0, -upper.height)) for mark in lower.marks)
    return Strip(upper.height + lower.height, upper.marks + moved)


def _row_parts(table: Table, row: tuple[Cell, ...]) -> list[Strip]:
    """A row, or the several rows that a very long one becomes."""
    lines = [_wrapped(table, column, cell) for column, cell in zip(table.columns, row, strict=True)]
    parts = []
    for start in range(0, max(map(len, lines)), MOST_LINES):
        part = [cell_lines[start : start + MOST_LINES] for cell_lines in lines]
        parts.append(_row(table, row if start == 0 else tuple(Cell(bold=c.bold) for c in row), part))
    return parts


def _wrapped(table: Table, column: Column, cell: Cell) -> tuple[str, ...]:
    room = column.width - 2 * PAD - (SIGN_SPACE * table.height if cell.status else 0.0)
    return wrap_text(cell.text, table.height, room, column.bold or cell.bold)


def _row(table: Table, row: tuple[Cell, ...], lines: Sequence[Sequence[str]]) -> Strip:
    full = LEADING * table.height * max(map(len, lines)) + PAD
    high, low = (max(full, share * table.least_row) for share in (1.0, TIGHT))
    strip = _set_row(table, row, lines, (full, high))
    return replace(strip, tight=_set_row(table, row, lines, (full, low))) if low < high else strip


def _set_row(
    table: Table, row: tuple[Cell, ...], lines: Sequence[Sequence[str]], heights: tuple[float, float]
) -> Strip:
    """A row of its whole height, the second of `heights`; the first is that of its writing."""
    full, height = heights
    marks: list[Mark] = []
    left = 0.0
    for column, cell, cell_lines in zip(table.columns, row, lines, strict=True):
        marks.extend(_cell_marks(table, column, cell, cell_lines, left, (height, (height - full) / 2)))
        left += column.width
    return Strip(height, (*marks, Lines(Pen.RULE, _rules(table, _width(table), height))))


def _rules(table: Table, width: float, height: float) -> tuple[tuple[float, float, float, float], ...]:
    level = (0.0, -height, width, -height)
    if not table.ruled:
        return (level,)
    edges = [0.0]
    for column in table.columns:
        edges.append(edges[-1] + column.width)
    return (level, *((x, 0.0, x, -height) for x in edges))


def _cell_marks(
    table: Table, column: Column, cell: Cell, lines: Sequence[str], left: float, room: tuple[float, float]
) -> list[Mark]:
    """Marks of one cell from `left`; `room` is the row's height and what is clear above its writing."""
    marks: list[Mark] = []
    step, size = LEADING * table.height, table.height
    height, clear = room
    first = -clear - PAD / 2 - (step + size) / 2
    x = left + PAD
    if cell.box:
        side = 1.4 * size
        marks.extend(box_marks((left + (column.width - side) / 2, -(height + side) / 2), side))
    if cell.status:
        marks.extend(status_marks(cell.status, (x + 0.6 * size, first + size / 2), 1.15 * size))
        x += SIGN_SPACE * size
    at = {Anchor.START: x, Anchor.MIDDLE: left + column.width / 2, Anchor.END: left + column.width - PAD}
    bold = column.bold or cell.bold
    for number, line in enumerate(lines):
        if line:
            marks.append(
                Text(line, (at[column.anchor], first - number * step), size, column.anchor, bold=bold)
            )
    return marks


def share_widths(total: float, shares: Sequence[float]) -> tuple[float, ...]:
    """`total` parted in proportion to `shares`."""
    whole = sum(shares)
    return tuple(total * share / whole for share in shares)


def share_columns(
    total: float,
    headings: Sequence[str],
    shares: Sequence[float],
    ends: Collection[str] = (),
    bold: Collection[str] = (),
) -> tuple[Column, ...]:
    """Columns that part `total` in proportion to `shares`; those headed as in `ends` are set to the right."""
    return tuple(
        Column(name, width, Anchor.END if name in ends else Anchor.START, bold=name in bold)
        for name, width in zip(headings, share_widths(total, shares), strict=True)
    )
