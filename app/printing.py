"""Sheets to a printer, each on a page of its own size, at 100 %. Qt's printing loads on use."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QMarginsF, QSizeF
from PySide6.QtGui import QPageLayout, QPageSize, QPainter

from app.sheet_painter import ReadySheet, paint_sheet
from model.errors import Refused

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

EVERY = "all"
NEAR = 0.02
"""Inches by which a mark may pass into a printer's margin unsaid: less than half a border's line is lost."""


def list_printers() -> list[str]:
    """The printers set up here, the usual one first."""
    from PySide6.QtPrintSupport import QPrinterInfo

    usual = QPrinterInfo.defaultPrinterName()
    return sorted(QPrinterInfo.availablePrinterNames(), key=lambda name: (name != usual, name))


def find_printer(name: str) -> QPrinter:
    """A printer by its name, at its finest, one file or paper for all pages."""
    from PySide6.QtPrintSupport import QPrinter

    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setPrinterName(name)
    return printer


def print_sheets(
    printer: QPrinter, sheets: Sequence[ReadySheet], told: Callable[[int], bool] = lambda done: True
) -> bool:
    """Print `sheets` at 100 %, asking after each whether to go on; False where the printer refused.

    The printer's own margins are not kept: what stands in them is lost, and nothing is made smaller.
    """
    if not sheets:
        return True
    _set_page(printer, sheets[0])
    painter = QPainter()
    if not painter.begin(printer):
        return False
    try:
        for number, ready in enumerate(sheets):
            if number:
                _set_page(printer, ready)
                if not printer.newPage():
                    return False
            paint_sheet(painter, ready, printer.resolution())
            if not told(number + 1):
                printer.abort()
                return True
    finally:
        painter.end()
    return True


def list_cut_off(printer: QPrinter, sheets: Sequence[ReadySheet]) -> list[str]:
    """The numbers of sheets of which something stands where this printer cannot print."""
    lost = []
    for ready in sheets:
        _set_page(printer, ready)
        layout = printer.pageLayout()
        margins = QPageLayout(
            layout.pageSize(), layout.orientation(), layout.minimumMargins(), layout.units()
        ).margins(QPageLayout.Unit.Inch)
        box, sheet = ready.box, ready.sheet
        clear = (box.left(), box.top(), sheet.width - box.right(), sheet.height - box.bottom())
        needed = (margins.left(), margins.top(), margins.right(), margins.bottom())
        if any(c < n - NEAR for c, n in zip(clear, needed, strict=True)):
            lost.append(sheet.number)
    return lost


def _set_page(printer: QPrinter, ready: ReadySheet) -> None:
    short, long = sorted((ready.sheet.width, ready.sheet.height))
    size = QPageSize(QSizeF(short, long), QPageSize.Unit.Inch, "", QPageSize.SizeMatchPolicy.FuzzyMatch)
    lies = ready.sheet.width > ready.sheet.height
    way = QPageLayout.Orientation.Landscape if lies else QPageLayout.Orientation.Portrait
    printer.setFullPage(True)
    printer.setPageLayout(QPageLayout(size, way, QMarginsF()))
    printer.setFullPage(True)


def parse_pages(text: str, count: int) -> tuple[int, ...]:
    """Pages from 1 on out of ``all``, ``3`` or ``1-4, 7``, each once, in order. Raises Refused."""
    wanted = text.strip().lower()
    if wanted in ("", EVERY):
        return tuple(range(1, count + 1))
    pages: set[int] = set()
    for part in wanted.split(","):
        first, dash, last = (piece.strip() for piece in part.partition("-"))
        ends = (first, last if dash else first)
        if not all(end.isascii() and end.isdigit() and len(end) < 6 for end in ends):
            raise Refused("pages", text, f"write all, or pages such as 1-3, 5 of {count}")
        low, high = int(ends[0]), int(ends[1])
        if not 1 <= low <= high <= count:
            raise Refused("pages", text, f"there are pages 1 to {count}")
        pages.update(range(low, high + 1))
    return tuple(sorted(pages))
