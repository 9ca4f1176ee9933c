"""Sheets of plain labels: how large a label is, how many are on a sheet and where. Paper inches.

What stands on a label is in render.label_sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import product

from model.errors import Refused
from model.units import LengthStyle, format_length, parse_length
from render.drawing import MM

PAGES: Mapping[str, tuple[float, float]] = {"letter": (8.5, 11.0), "a4": (210 * MM, 297 * MM)}
"""Width and height, upright as label sheets are."""
LEAST_LABEL = (25 * MM, 12 * MM)
"""Width and height that hold a mark and a size in capitals of 2.5 mm. Shop choice."""
TOLERANCE = 0.01
EXACT = LengthStyle("inches", 64)


@dataclass(frozen=True, slots=True)
class LabelStock:
    """Labels `width` by `height`, `columns` by `rows` of them, the first one's upper left corner `left` and
    `top` from the page's; `across` and `down` from one label's edge to the next one's same edge.
    """

    paper: str
    columns: int
    rows: int
    width: float
    height: float
    left: float
    top: float
    across: float
    down: float

    @property
    def count(self) -> int:
        """Labels on a sheet."""
        return self.columns * self.rows

    @property
    def page(self) -> tuple[float, float]:
        """Width and height of a sheet."""
        return PAGES[self.paper]

    def corners(self) -> Iterator[tuple[float, float]]:
        """Lower left corner of each label from the page's lower left, row by row from the top."""
        high = self.page[1]
        for row, column in product(range(self.rows), range(self.columns)):
            yield self.left + column * self.across, high - self.top - row * self.down - self.height


def _spread(paper: str, columns: int, rows: int, width: float, height: float, gap: float = 0.0) -> LabelStock:
    """Labels in the middle of a sheet, with a gap between columns."""
    page = PAGES[paper]
    left = (page[0] - columns * width - (columns - 1) * gap) / 2
    return LabelStock(
        paper, columns, rows, width, height, left, (page[1] - rows * height) / 2, width + gap, height
    )


STOCKS: Mapping[str, LabelStock] = {
    "letter-30": _spread("letter", 3, 10, 2.625, 1.0, 0.125),
    "letter-20": _spread("letter", 2, 10, 4.0, 1.0, 3 / 16),
    "letter-10": _spread("letter", 2, 5, 4.0, 2.0, 3 / 16),
    "a4-24": _spread("a4", 3, 8, 70 * MM, 37 * MM),
    "a4-21": _spread("a4", 3, 7, 63.5 * MM, 38.1 * MM, 2.5 * MM),
    "a4-14": _spread("a4", 2, 7, 99.1 * MM, 38.1 * MM, 2.5 * MM),
}
"""Sizes that labels are commonly sold in, named by paper and count: common practice."""
USUAL = "letter-30"


def find_stock(name: str) -> LabelStock:
    """The stock of a name. Raises Refused."""
    if name not in STOCKS:
        raise Refused("labels", name, "write one of " + ", ".join(STOCKS) + ", or give their size and grid")
    return STOCKS[name]


def describe_stock(stock: LabelStock, style: LengthStyle) -> str:
    """``30 to a sheet, 2 5/8" × 1"``."""
    wide, high = (format_length(each, style) for each in (stock.width, stock.height))
    return f"{stock.count} to a sheet, {wide} × {high}"


def parse_stock(
    paper: str, size: str, grid: str, edges: str = "", pitch: str = "", style: LengthStyle = EXACT
) -> LabelStock:
    """Labels of one's own: ``size`` 2 5/8 x 1, ``grid`` 3 x 10 across and down, ``edges`` from the page's
    left and top to the first label, ``pitch`` from one to the next; without them side by side in the middle.

    Raises Refused for what is no size, or does not lie on the page.
    """
    if paper not in PAGES:
        raise Refused("paper", paper, "write one of " + ", ".join(PAGES))
    width, height = _parse_pair("label size", size, style)
    columns, rows = _parse_grid(grid)
    across, down = _parse_pair("label pitch", pitch, style) if pitch else (width, height)
    page = PAGES[paper]
    middle = (page[0] - (columns - 1) * across - width) / 2, (page[1] - (rows - 1) * down - height) / 2
    left, top = _parse_pair("label edges", edges, style) if edges else middle
    stock = LabelStock(paper, columns, rows, width, height, left, top, across, down)
    _check(stock, (size, grid, edges, pitch), style)
    return stock


def _check(stock: LabelStock, texts: tuple[str, str, str, str], style: LengthStyle) -> None:
    size, grid, edges, pitch = texts
    if stock.width < LEAST_LABEL[0] - TOLERANCE or stock.height < LEAST_LABEL[1] - TOLERANCE:
        least = " x ".join(format_length(each, style) for each in LEAST_LABEL)
        raise Refused("label size", size, f"a label that can be read is at least {least}")
    if stock.across < stock.width - TOLERANCE or stock.down < stock.height - TOLERANCE:
        raise Refused("label pitch", pitch, "labels may not overlap: at least the size of a label each way")
    page = stock.page
    right = stock.left + (stock.columns - 1) * stock.across + stock.width
    low = stock.top + (stock.rows - 1) * stock.down + stock.height
    if min(stock.left, stock.top) < -TOLERANCE or right > page[0] + TOLERANCE or low > page[1] + TOLERANCE:
        wide, high = (format_length(each, style) for each in page)
        text = edges or f"{grid} labels of {size}"
        raise Refused("labels", text, f"all of them have to lie on a page of {wide} x {high}")


def _parse_pair(field: str, text: str, style: LengthStyle) -> tuple[float, float]:
    first, by, second = text.lower().replace("×", "x").partition("x")
    if not by or "x" in second:
        raise Refused(field, text, "write two lengths such as 2 5/8 x 1")
    return parse_length(first, field, style), parse_length(second, field, style)


def _parse_grid(text: str) -> tuple[int, int]:
    first, by, second = (part.strip() for part in text.lower().replace("×", "x").partition("x"))
    if not (by and first.isascii() and first.isdigit() and second.isascii() and second.isdigit()):
        raise Refused("label grid", text, "write how many across and down, such as 3 x 10")
    if not (0 < int(first[:6]) <= 20 and 0 < int(second[:6]) <= 60):
        raise Refused("label grid", text, "write 1 to 20 across and 1 to 60 down")
    return int(first), int(second)
