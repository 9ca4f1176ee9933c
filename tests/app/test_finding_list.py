"""Findings are told in words, whole, and the one in focus stays in focus while the design changes."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from app.counts import Counts
from app.finding_list import FindingLine, FindingList
from app.status_shape import paint_shape
from model.check.finding import Finding, Status
from model.reference.sourced import Standing
from model.units import INCHES_16, MILLIMETRES

OVER = Finding(
    "mantel clearance",
    "IRC",
    Standing.PUBLISHED,
    "IRC 2018 R1001.11",
    Status.FAIL,
    "shelf",
    9.0,
    12.0,
    "in",
    'The shelf stands out 8" at 9" above the opening; 12" is needed.',
    cure='Raise the shelf by 3".',
    path="shelf.height",
)
UNKNOWN = replace(OVER, check="hearth", part="hearth", status=Status.UNKNOWN, measured=None, cure="")
WITHIN = replace(OVER, part="left column", status=Status.PASS, measured=13.0, cure="")


@pytest.fixture
def found(qtbot, dressed) -> FindingList:
    shown = FindingList()
    qtbot.addWidget(shown)
    shown.resize(1000, 300)
    shown.show()
    shown.show_findings((OVER, UNKNOWN, WITHIN), INCHES_16)
    return shown


def test_a_line_read_aloud_holds_everything(found: FindingList):
    text = str(found.model().index(0, 0).data(Qt.ItemDataRole.AccessibleTextRole))
    for words in ("over", "shelf", '9"', '12"', OVER.message, OVER.cure):
        assert words in text


def test_what_cannot_be_compared_shows_no_figures(found: FindingList):
    assert "measured" not in str(found.model().index(1, 0).data())


def test_lengths_follow_the_jobs_unit(found: FindingList):
    found.show_findings((OVER,), MILLIMETRES)
    assert "229 mm" in str(found.model().index(0, 0).data())


def test_a_narrow_list_breaks_lines_and_cuts_nothing_off(found: FindingList):
    wide = found.visualRect(found.model().index(0, 0)).height()
    found.resize(560, 300)
    found.doItemsLayout()
    assert found.visualRect(found.model().index(0, 0)).height() > wide
    assert found.visualRect(found.model().index(0, 0)).width() <= 560


def test_the_finding_in_focus_stays_in_focus_when_others_come_and_go(found: FindingList, qtbot):
    found.setCurrentIndex(found.model().index(2, 0))
    with qtbot.waitSignal(found.chosen) as chosen:
        found.show_findings((WITHIN, OVER), INCHES_16)
    assert found.current() == WITHIN
    assert chosen.args == [WITHIN]


def test_the_mark_on_the_sheet_follows_a_finding_that_changes(found: FindingList, qtbot):
    found.setCurrentIndex(found.model().index(0, 0))
    nearer = replace(OVER, measured=8.0)
    with qtbot.waitSignal(found.chosen) as chosen:
        found.show_findings((nearer, UNKNOWN, WITHIN), INCHES_16)
    assert chosen.args == [nearer]
    assert '8"' in str(found.model().index(0, 0).data())


def test_a_finding_that_is_gone_lets_go(found: FindingList, qtbot):
    found.setCurrentIndex(found.model().index(0, 0))
    with qtbot.waitSignal(found.chosen) as chosen:
        found.show_findings((WITHIN,), INCHES_16)
    assert chosen.args == [None]


def test_enter_asks_for_the_measurement_that_cures_it(found: FindingList, qtbot):
    found.setCurrentIndex(found.model().index(0, 0))
    with qtbot.waitSignal(found.asked) as asked:
        qtbot.keyClick(found, Qt.Key.Key_Return)
    assert asked.args == ["shelf.height"]


def test_counts_name_each_status_that_occurs_worst_first(qtbot, dressed):
    counts = Counts()
    qtbot.addWidget(counts)
    counts.show_findings((WITHIN, OVER, WITHIN, UNKNOWN))
    assert counts.accessibleDescription() == "1 over, 1 not known, 2 within"
    wide = counts.sizeHint().width()
    counts.show_findings((WITHIN,))
    assert counts.sizeHint().width() < wide


def test_every_status_has_a_shape_of_its_own_without_colour(dressed):
    seen = set()
    for status in Status:
        image = QImage(24, 24, QImage.Format.Format_Grayscale8)
        image.fill(255)
        with QPainter(image) as painter:
            paint_shape(painter, status, QRectF(4, 4, 16, 16), QColor("black"))
        seen.add(tuple(image.pixelColor(x, y).lightness() > 128 for x in range(24) for y in range(24)))
    assert len(seen) == len(Status)


def test_a_narrow_list_tells_the_whole_message_below_the_part(found: FindingList):
    wide = found.visualRect(found.model().index(0, 0)).height()
    before = found.grab().toImage()
    found.resize(330, 300)
    found.doItemsLayout()
    narrow = found.visualRect(found.model().index(0, 0)).height()
    assert narrow > wide
    picture = found.grab().toImage()
    assert picture.width() < before.width()
    inked = [
        x
        for x in range(picture.width())
        for y in range(0, narrow, 2)
        if picture.pixelColor(x, y).value() < 90
    ]
    assert min(inked) > 4
    assert max(inked) < found.viewport().width()


def test_heights_are_worked_out_once_for_what_is_shown_at_a_width(
    found: FindingList, monkeypatch: pytest.MonkeyPatch
):
    asked: list[int] = []
    height_of = FindingLine.height_of

    def count(line: FindingLine, row: int, whole: int) -> int:
        asked.append(row)
        return height_of(line, row, whole)

    monkeypatch.setattr(FindingLine, "height_of", count)
    found.show_findings((OVER, WITHIN), INCHES_16)
    found.doItemsLayout()
    heights = [found.visualRect(found.model().index(row, 0)).height() for row in range(2)]
    assert asked == [0, 1]
    found.show_findings((replace(OVER, message=9 * f"{OVER.message} "), WITHIN), INCHES_16)
    found.doItemsLayout()
    assert asked == [0, 1, 0, 1]
    assert found.visualRect(found.model().index(0, 0)).height() > heights[0]


def test_the_first_line_is_marked_when_the_keyboard_comes_to_the_list(qtbot, dressed):
    room, found, before = QWidget(), FindingList(), QLineEdit()
    qtbot.addWidget(room)
    column = QVBoxLayout(room)
    column.addWidget(before)
    column.addWidget(found)
    room.show()
    before.setFocus()
    found.show_findings((OVER, UNKNOWN), INCHES_16)
    found.setFocus(Qt.FocusReason.ShortcutFocusReason)
    qtbot.waitUntil(found.hasFocus)
    assert found.current() == OVER
    assert found.selectionModel().isSelected(found.currentIndex())
