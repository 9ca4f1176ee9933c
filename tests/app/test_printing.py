"""What is printed is as large as it says, on pages of its own size; the preview shows the same sheets."""

from __future__ import annotations

from functools import partial
from pathlib import Path

import pdfplumber
import pytest
from PySide6.QtCore import QMarginsF
from PySide6.QtGui import QPageLayout
from PySide6.QtPrintSupport import QPrinter
from pytestqt.qtbot import QtBot

from app import print_window
from app.demo import read_demo
from app.outputs import build_packet_sheets
from app.print_choices import LABELS, MEASURING, OFFER, TEMPLATES, list_print_choices
from app.print_window import NO_PRINTER, PrintWindow
from app.printing import list_cut_off, parse_pages, print_sheets
from app.sheet_painter import make_ready
from app.stock_lists import EXAMPLE, read_shipped_list
from app.window import Window
from model.errors import Refused
from render.label_sheet import Label, build_label_sheets
from render.label_stock import find_stock


@pytest.fixture(scope="module")
def sheets():
    return build_packet_sheets(read_demo("bedroom"), "letter", "2026-01-01")


def _to_file(path: Path) -> QPrinter:
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(path))
    return printer


def test_the_bar_on_a_printed_page_measures_true(dressed, sheets, tmp_path: Path):
    assert print_sheets(_to_file(tmp_path / "p.pdf"), [make_ready(sheet) for sheet in sheets[:3]])
    with pdfplumber.open(tmp_path / "p.pdf") as pdf:
        assert len(pdf.pages) == 3
        for page in pdf.pages:  # dark blocks lie from 0 to 3 in. and from 0 to 90 mm
            assert (float(page.width), float(page.height)) == pytest.approx((792, 612), abs=0.5)
            lines = [*page.lines, *page.rects, *page.curves]
            low = min(line["x0"] for line in lines)
            bars = [r for r in page.rects if r["x1"] < low + 36 and r["width"] < 10]
            heights = {
                round(max(r["bottom"] for r in side) - min(r["top"] for r in side), 1)
                for side in _split(bars)
            }
            assert any(abs(h - 3 * 72) < 0.1 for h in heights), heights
            assert any(abs(h - 90 / 25.4 * 72) < 0.1 for h in heights), heights


def _split(bars):
    """The bars by the column they stand in."""
    columns: dict[int, list] = {}
    for bar in bars:
        columns.setdefault(round(bar["x0"] / 2), []).append(bar)
    return columns.values()


def test_pages_lie_or_stand_as_their_sheets_do(dressed, sheets, tmp_path: Path):
    labels = build_label_sheets([Label("C1", "1", ())], find_stock("a4-21"))
    assert print_sheets(_to_file(tmp_path / "p.pdf"), [make_ready(sheet) for sheet in (*labels, sheets[0])])
    with pdfplumber.open(tmp_path / "p.pdf") as pdf:
        first, second = ((float(p.width), float(p.height)) for p in pdf.pages)
    assert first == pytest.approx((595.3, 841.9), abs=1)
    assert second == pytest.approx((792, 612), abs=1)


def test_a_printer_with_wide_margins_is_warned_of(dressed, sheets, tmp_path: Path):
    class Narrow(QPrinter):
        def pageLayout(self) -> QPageLayout:
            layout = super().pageLayout()
            layout.setMinimumMargins(QMarginsF(72, 72, 72, 72))
            return layout

    ready = [make_ready(sheet) for sheet in sheets[:2]]
    printer = Narrow(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    assert list_cut_off(printer, ready) == [sheet.number for sheet in sheets[:2]]
    assert list_cut_off(_to_file(tmp_path / "p.pdf"), ready) == []


@pytest.mark.parametrize(
    ("text", "pages"),
    [
        ("all", (1, 2, 3, 4, 5)),
        ("", (1, 2, 3, 4, 5)),
        ("2", (2,)),
        ("4-5, 1, 4", (1, 4, 5)),
        (" 1 - 2 ", (1, 2)),
    ],
)
def test_pages_are_read(text: str, pages):
    assert parse_pages(text, 5) == pages


@pytest.mark.parametrize("text", ["0", "6", "3-2", "one", "1,,2", "-1", "1-2-3", "9" * 30])
def test_pages_that_there_are_not_are_refused(text: str):
    with pytest.raises(Refused, match="pages"):
        parse_pages(text, 5)


def test_the_preview_shows_every_sheet_and_prints_those_that_are_wished(
    qtbot: QtBot, dressed, sheets, tmp_path: Path
):
    printer = _to_file(tmp_path / "p.pdf")
    shown = PrintWindow(None, {"All": lambda paper, step: sheets}, "letter", printer)
    qtbot.addWidget(shown)
    shown.show()
    qtbot.waitUntil(lambda: shown.list.count() == len(sheets))
    qtbot.waitUntil(lambda: not shown.list.item(len(sheets) - 1).icon().isNull(), timeout=30_000)
    shown.list.setCurrentRow(2)
    assert shown.large.ready.sheet is sheets[2]
    assert not shown.large.grab().isNull()
    shown.pages_edit.setText("99")
    assert not shown.print_button.isEnabled()
    shown.pages_edit.setText("1, 3")
    assert "2 sheets" in shown.words.text()
    shown.print()
    with pdfplumber.open(tmp_path / "p.pdf") as pdf:
        assert len(pdf.pages) == 2


def test_nothing_else_can_be_chosen_while_pages_go_to_the_printer(
    qtbot: QtBot, dressed, sheets, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    shown = PrintWindow(None, {"All": lambda paper, step: sheets}, "letter", _to_file(tmp_path / "p.pdf"))
    qtbot.addWidget(shown)
    shown.show()
    qtbot.waitUntil(lambda: shown.list.count() == len(sheets))
    choices = (shown.what_box, shown.paper_box, shown.pages_edit, shown.copies_box, shown.printer_box)
    seen: list[list[bool]] = []

    def refuse(_printer, _chosen, told) -> bool:
        told(1)
        seen.append([box.isEnabled() for box in choices])
        return False

    monkeypatch.setattr("app.print_window.print_sheets", refuse)
    shown.print()
    assert seen == [[False] * len(choices)]
    assert all(box.isEnabled() for box in choices)


def test_a_printer_that_takes_nothing_is_told_and_the_sheets_stay(
    qtbot: QtBot, dressed, sheets, tmp_path: Path
):
    printer = _to_file(tmp_path / "no folder" / "p.pdf")
    assert not print_sheets(printer, [make_ready(sheets[0])])
    shown = PrintWindow(None, {"One": lambda paper, step: sheets[:1]}, "letter", printer)
    qtbot.addWidget(shown)
    shown.show()
    qtbot.waitUntil(lambda: bool(shown.sheets))
    shown.print()
    assert "did not take the sheets" in shown.words.text()
    assert shown.isVisible()
    assert shown.print_button.isEnabled()
    shown.reject()


def test_printing_that_is_stopped_prints_no_further_sheet(dressed, sheets, tmp_path: Path):
    told: list[int] = []
    assert print_sheets(_to_file(tmp_path / "p.pdf"), [], told.append)
    assert print_sheets(_to_file(tmp_path / "p.pdf"), [make_ready(s) for s in sheets[:3]], told.append)
    assert told == [1]


def test_without_a_printer_it_says_so(qtbot: QtBot, dressed, sheets, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr(print_window, "list_printers", list)
    shown = PrintWindow(None, {"One": lambda paper, step: sheets[:1]}, "letter")
    qtbot.addWidget(shown)
    shown.show()
    qtbot.waitUntil(lambda: bool(shown.sheets))
    assert shown.words.text() == NO_PRINTER
    assert not shown.print_button.isEnabled()
    shown.reject()


def test_sheets_that_fail_are_told(qtbot: QtBot, dressed):
    def fail(paper, step):
        raise ValueError("no room")

    shown = PrintWindow(None, {"All": fail}, "letter")
    qtbot.addWidget(shown)
    qtbot.waitUntil(lambda: "no room" in shown.words.text())
    shown.reject()


def test_another_document_or_paper_is_set_out_when_it_is_chosen(
    qtbot: QtBot, dressed, sheets, tmp_path: Path
):
    asked = []

    def build(name, count, paper, step):
        asked.append((name, paper))
        for n in range(count):
            step(n / 9, name)
        return sheets[:count]

    choices = {name: partial(build, name, count) for name, count in (("Long", 3), ("Short", 1), ("None", 0))}
    shown = PrintWindow(None, choices, "a4", _to_file(tmp_path / "p.pdf"))
    qtbot.addWidget(shown)
    shown.what_box.setCurrentText("Short")
    qtbot.waitUntil(lambda: shown.list.count() == 1)
    shown.paper_box.setCurrentIndex(0)
    qtbot.waitUntil(lambda: asked[-1] == ("Short", "letter") and shown.list.count() == 1)
    shown.what_box.setCurrentText("None")
    qtbot.waitUntil(lambda: shown.words.text() == print_window.NOTHING)
    assert not shown.print_button.isEnabled()
    assert asked[0] == ("Long", "a4")
    shown.reject()


@pytest.mark.parametrize("what", [OFFER, TEMPLATES, LABELS, MEASURING])
def test_everything_offered_for_print_has_sheets(what):
    choices = list_print_choices(read_demo("brick"), "2001-02-03", read_shipped_list(EXAMPLE), "")
    assert len(choices[what]("letter", lambda done, words: None)) >= 1


def test_the_menu_opens_it(window: Window, monkeypatch: pytest.MonkeyPatch):
    seen = []
    monkeypatch.setattr(PrintWindow, "exec", lambda self: seen.append(self))
    window.show_print()
    (shown,) = seen
    shown.reject()
