"""Things of any size set out in rows on as few pages as it takes. Nothing is drawn here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a thing's upper left corner stands: right of and below that of the room for it.

    `index` is its place in the list that was given.
    """

    index: int
    right: float
    below: float


@dataclass(slots=True)
class _Row:
    height: float
    used: float
    things: list[int]


@dataclass(slots=True)
class _Page:
    rows: list[_Row] = field(default_factory=list)
    used: float = 0.0


def pack_rows(
    sizes: Sequence[tuple[float, float]], room: tuple[float, float], gap: float
) -> tuple[tuple[Spot, ...], ...]:
    """The spots on each page of `room` for things of these `sizes`, width and height, `gap` apart.

    Highest first, each in the first row that has room, else in a new row of the first page with room for
    one. What room is left in a row is shared out between its things.
    """
    pages: list[_Page] = []
    for index in sorted(range(len(sizes)), key=lambda i: -sizes[i][1]):
        width, height = sizes[index]
        row = _find_row(pages, sizes[index], room[0], gap)
        if row is not None:
            row.things.append(index)
            row.used += gap + width
            continue
        page = next((p for p in pages if p.used + gap + height <= room[1]), None)
        if page is None:
            page = _Page(used=-gap)
            pages.append(page)
        page.rows.append(_Row(height, width, [index]))
        page.used += gap + height
    return tuple(_place_page(page, sizes, room[0], gap) for page in pages)


def _find_row(pages: Sequence[_Page], size: tuple[float, float], width: float, gap: float) -> _Row | None:
    rows = (row for page in pages for row in page.rows)
    return next((r for r in rows if r.height >= size[1] and r.used + gap + size[0] <= width), None)


def _place_page(
    page: _Page, sizes: Sequence[tuple[float, float]], width: float, gap: float
) -> tuple[Spot, ...]:
    spots = []
    below = 0.0
    for row in page.rows:
        spare = (width - row.used) / (len(row.things) + 1)
        right = spare
        for index in row.things:
            spots.append(Spot(index, right, below))
            right += sizes[index][0] + gap + spare
        below += row.height + gap
    return tuple(spots)
