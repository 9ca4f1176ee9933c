"""The cut list on the screen is the cut list on paper, and its lines stand for boards."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from app.cut_table import HEADINGS, CutTable
from app.demo import read_demo
from app.guide_list import GuideList
from app.theme import BAR, colours
from model.check.proportion import list_guides
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from model.units import FEET_INCHES_16, MILLIMETRES, format_length
from render.cut_sheet import pieces_text

PLAN = plan_surround(read_demo("brick"))
CUTS = list_cuts(PLAN)


@pytest.fixture
def table(qtbot, dressed) -> CutTable:
    shown = CutTable()
    qtbot.addWidget(shown)
    shown.show_cuts(CUTS, FEET_INCHES_16)
    return shown


def _text(table: CutTable, row: int, heading: str) -> str:
    return str(table.model().index(row, HEADINGS.index(heading)).data())


def test_every_cut_has_a_line_with_marks_and_sizes_as_on_paper(table: CutTable):
    assert table.model().rowCount() == len(CUTS)
    for row, cut in enumerate(CUTS):
        assert _text(table, row, "Mark") == pieces_text(cut)
        assert _text(table, row, "Length") == format_length(cut.length, FEET_INCHES_16)
        assert "'" not in _text(table, row, "Width")


def test_figures_stand_to_the_right(table: CutTable):
    side = table.model().index(0, HEADINGS.index("Length")).data(Qt.ItemDataRole.TextAlignmentRole)
    assert side & Qt.AlignmentFlag.AlignRight


def test_the_line_in_focus_stands_for_its_boards(table: CutTable, qtbot):
    with qtbot.waitSignal(table.chosen) as chosen:
        table.selectRow(3)
    assert chosen.args == [frozenset(CUTS[3].pieces)]


def test_a_board_is_found_by_its_own_mark_and_by_its_kinds(table: CutTable):
    several = next(cut for cut in CUTS if len(cut.pieces) > 1)
    for mark in (several.mark, several.pieces[-1]):
        table.focus_mark(mark)
        assert table.current_mark() == several.mark
    table.focus_mark("no such mark")
    assert table.current_pieces() == frozenset()


def test_the_kind_in_focus_stays_in_focus_when_the_list_changes(table: CutTable):
    table.selectRow(5)
    mark = table.current_mark()
    table.show_cuts(tuple(cut for cut in CUTS if cut.mark != CUTS[0].mark), MILLIMETRES)
    assert table.current_mark() == mark
    assert _text(table, 0, "Length").endswith("mm")


def test_guides_show_the_designs_own_value_beside_the_advised(qtbot, dressed):
    shown = GuideList()
    qtbot.addWidget(shown)
    guides = list_guides(PLAN)
    shown.show_guides(guides, FEET_INCHES_16)
    shown.resize(900, 300)
    shown.show()
    assert not shown.grab().isNull()
    for row, guide in enumerate(guides):
        columns = range(shown.model().columnCount())
        texts = [str(shown.model().index(row, column).data()) for column in columns]
        assert texts[0] == guide.name
        assert texts[1]
        assert texts[2]
        assert guide.source in texts[4]


def test_the_first_line_is_marked_when_the_keyboard_comes_to_a_table(qtbot, dressed):
    room, before, table, guides = QWidget(), QLineEdit(), CutTable(), GuideList()
    qtbot.addWidget(room)
    column = QVBoxLayout(room)
    for each in (before, table, guides):
        column.addWidget(each)
    room.resize(900, 600)
    room.show()
    before.setFocus()
    table.show_cuts(CUTS, FEET_INCHES_16)
    guides.show_guides(list_guides(PLAN), FEET_INCHES_16)
    for shown in (table, guides):
        shown.setFocus(Qt.FocusReason.ShortcutFocusReason)
        qtbot.waitUntil(shown.hasFocus)
        assert shown.currentIndex().row() == 0
        line = shown.visualRect(shown.currentIndex())
        inside = QPoint(line.left() + BAR + 2, line.top() + 2)
        assert shown.viewport().grab().toImage().pixelColor(inside) == QColor(colours().lit_ground)
