"""A dimension is typed over where it stands, read and refused as in the measuring list, without a dialog."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from app.files import read_job_file
from app.theme import Ground
from app.window import Window
from model.job import read_value

RETURN, ESCAPE = Qt.Key.Key_Return, Qt.Key.Key_Escape


def _open(qtbot: QtBot, window: Window, path: str = "shelf.height") -> QPoint:
    at = window.canvas.point_of(path)
    assert at is not None
    qtbot.mouseClick(window.canvas, Qt.MouseButton.LeftButton, pos=at)
    assert window.sheet_field.path == path
    return at


def _type(window: Window, text: str, key: Qt.Key = RETURN) -> None:
    window.sheet_field.edit.selectAll()
    QTest.keyClicks(window.sheet_field.edit, text)
    QTest.keyClick(window.sheet_field.edit, key)


def test_it_lies_over_the_dimension_with_its_value_ready_to_be_typed_over(qtbot: QtBot, window: Window):
    at = _open(qtbot, window)
    field = window.sheet_field
    assert field.isVisible()
    assert field.geometry().contains(at)
    assert field.edit.hasFocus()
    assert field.edit.selectedText() == field.edit.text() == "4'-6\""


def test_what_is_typed_is_one_step_and_the_sheet_has_the_keyboard_again(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    _type(window, "56 1/2")
    assert read_value(window.session.job, "shelf.height") == 56.5
    assert window.session.stack.count() == 1
    assert not window.sheet_field.isVisible()
    assert window.canvas.hasFocus()
    assert window.shaping.hold is None
    window.undo()
    assert read_value(window.session.job, "shelf.height") == 54


@pytest.mark.parametrize("text", ["12", "wide"])
def test_a_refused_entry_keeps_what_was_typed_and_says_what_the_list_would(
    qtbot: QtBot, window: Window, text: str
):
    _open(qtbot, window)
    _type(window, text)
    field = window.sheet_field
    assert field.edit.text() == text
    row = window.fields.rows["shelf.height"]
    row.entered.emit("shelf.height", text)
    assert field.message == row.message != ""
    assert field.message in field.edit.accessibleDescription()
    assert window.session.stack.count() == 0
    _type(window, "56")
    assert field.message == ""
    assert read_value(window.session.job, "shelf.height") == 56


def test_a_refused_entry_stays_when_the_keyboard_goes_elsewhere(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    _type(window, "12")
    window.canvas.setFocus(Qt.FocusReason.TabFocusReason)
    assert window.sheet_field.isVisible()
    assert window.sheet_field.edit.text() == "12"


def test_escape_takes_back_what_was_typed_and_then_lets_the_dimension_be(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    QTest.keyClicks(window.sheet_field.edit, "77")
    QTest.keyClick(window.sheet_field.edit, ESCAPE)
    assert window.sheet_field.edit.text() == "4'-6\""
    QTest.keyClick(window.sheet_field.edit, ESCAPE)
    assert not window.sheet_field.isVisible()
    assert window.session.stack.count() == 0
    assert window.canvas.hasFocus()


def test_leaving_enters_what_was_typed(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    QTest.keyClicks(window.sheet_field.edit, "57")
    window.fields.focus_path("opening.width")
    assert read_value(window.session.job, "shelf.height") == 57
    assert not window.sheet_field.isVisible()


def test_arrows_step_as_in_the_list(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    QTest.keyClick(window.sheet_field.edit, Qt.Key.Key_Up)
    assert read_value(window.session.job, "shelf.height") == 54.125
    assert window.sheet_field.edit.text() == "4'-6 1/8\""


def test_the_row_of_the_list_is_lit_meanwhile(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    assert window.canvas.overlay.path == "shelf.height"
    QTest.keyClick(window.sheet_field.edit, ESCAPE)
    assert window.canvas.overlay.path == ""


def test_it_follows_its_dimension_over_the_sheet(qtbot: QtBot, window: Window):
    _open(qtbot, window, "opening.width")
    before = window.sheet_field.geometry().center()
    window.canvas.pan_by(60.0, 20.0)
    moved = window.sheet_field.geometry().center() - before
    assert abs(moved.x() - 60) <= 1
    assert abs(moved.y() - 20) <= 1


def test_it_never_leaves_the_canvas(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    _type(window, "12")
    window.canvas.pan_by(-900.0, 0.0)
    assert window.canvas.rect().contains(window.sheet_field.geometry())


def test_one_dimension_after_the_other(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    QTest.keyClicks(window.sheet_field.edit, "55")
    _open(qtbot, window, "opening.width")
    assert read_value(window.session.job, "shelf.height") == 55
    assert window.sheet_field.edit.text() == "3'-0\""


def test_undo_by_key_is_the_windows_unless_something_is_typed(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    _type(window, "56")
    _open(qtbot, window)
    qtbot.keyClick(window.sheet_field.edit, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert read_value(window.session.job, "shelf.height") == 54


def test_saving_enters_what_is_being_typed(qtbot: QtBot, window: Window, tmp_path):
    window.session.mark_saved(tmp_path / "job.mantel")
    _open(qtbot, window)
    QTest.keyClicks(window.sheet_field.edit, "58")
    assert window.files.save()
    assert read_value(window.session.job, "shelf.height") == 58
    assert not window.session.is_unsaved


def test_another_job_closes_it(qtbot: QtBot, window: Window):
    from app.demo import read_demo

    _open(qtbot, window)
    window.session.open(read_demo("bedroom"), None)
    assert not window.sheet_field.isVisible()


def test_it_has_a_name_for_those_who_listen(qtbot: QtBot, window: Window):
    _open(qtbot, window)
    assert window.sheet_field.edit.accessibleName() == "shelf height"


def test_it_is_paper_on_a_dark_ground_too(qtbot: QtBot, window: Window):
    window.choose_ground(Ground.DARK)
    try:
        _open(qtbot, window)
        image = window.sheet_field.grab().toImage()
        assert image.pixelColor(6, 6).lightness() > 220
    finally:
        window.choose_ground(Ground.LIGHT)


def test_an_edge_without_a_dimension_is_typed_at_the_edge(window: Window):
    window.sheet_field.open("frieze.rail", QPointF(300.0, 200.0))
    assert window.sheet_field.geometry().contains(QPoint(300, 200))


def test_an_entry_that_a_save_leaves_out_is_told(qtbot: QtBot, window: Window, tmp_path: Path):
    window.session.mark_saved(tmp_path / "hall.mantel")
    _open(qtbot, window)
    _type(window, "wide")
    assert window.files.save()
    assert "without the entry that was refused" in window.notice.text
    assert window.sheet_field.commit()
    _open(qtbot, window)
    window.sheet_field.edit.selectAll()
    QTest.keyClicks(window.sheet_field.edit, "57")
    assert window.files.save()
    assert window.notice.text == ""
    assert read_value(read_job_file(tmp_path / "hall.mantel"), "shelf.height") == 57
