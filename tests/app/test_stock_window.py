"""The stock list in its window: typed in, refused in its cell, undone, saved, read from tables, used."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QFileDialog, QLineEdit, QMessageBox
from pytestqt.qtbot import QtBot

from app.asking import ELSEWHERE, REPLACE
from app.notice import Notice
from app.rooms import BUYING
from app.settings import Settings
from app.stock_files import KEPT, StockFiles
from app.stock_lists import read_shipped_list, read_stock_named, save_stock_list
from app.stock_model import ON_HAND, SOLD, StockModel
from app.stock_session import StockSession
from app.stock_window import StockWindow
from app.window import Window
from model.board import StockKind
from model.cutting.stock_list import HandRow, SoldRow, StockList
from model.cutting.supplies import ANCHORS, Supply
from model.units import MILLIMETRES
from tests.full_disk import files_no_larger_than

BOARD = SoldRow(StockKind.BOARD, "poplar", "1x6", 0.75, 5.5, 96.0, 1240)
LIST = StockList(
    (BOARD, replace(BOARD, length=120.0, price=None), replace(BOARD, length=144.0, price=2100)),
    (HandRow(StockKind.BOARD, "poplar", "from the old shelf", 0.75, 7.0, 60.0, 2, 1.5),),
    "Yard",
)


@pytest.fixture
def shown(window: Window, qtbot: QtBot, tmp_path: Path) -> StockWindow:
    """The stock list's window with a small list from a file."""
    path = tmp_path / "yard.yard"
    save_stock_list(path, LIST)
    assert window.cutting.stock.use(str(path))
    window.cutting.show_stock()
    found = window.cutting.stock_window
    assert found is not None
    qtbot.waitActive(found)
    return found


def in_use(window: Window) -> StockList:
    return window.cutting.stock.session.stock_list


def column(model: StockModel, name: str) -> int:
    return [field.name for field in model.fields].index(name)


def put(window: StockWindow, row: int, name: str, text: str) -> None:
    model = window.table.stock
    model.setData(model.index(row, column(model, name)), text)


def text_at(window: StockWindow, row: int, name: str) -> str:
    model = window.table.stock
    return str(model.data(model.index(row, column(model, name))))


def test_all_rows_are_shown_and_the_count_of_those_without_a_price(shown: StockWindow):
    assert [text_at(shown, row, "length") for row in range(3)] == ['96"', '120"', '144"']
    assert [text_at(shown, row, "price") for row in range(3)] == ["12.40", "", "21.00"]
    assert "1 of 3 rows have no price" in shown.words.text()
    shown.turn_to(1)
    assert text_at(shown, 0, "count") == "2"
    assert text_at(shown, 0, "clear") == '1 1/2"'


def test_prices_are_typed_down_a_column_with_the_keyboard_alone(
    window: Window, shown: StockWindow, qtbot: QtBot
):
    table = shown.table
    table.focus_cell(0, column(table.stock, "price"))
    for text in ("13", "17.50"):
        qtbot.keyClick(table, Qt.Key.Key_Return)
        editor = table.viewport().findChild(QLineEdit)
        assert editor.accessibleName() == "Price"
        qtbot.keyClicks(editor, text)
        qtbot.keyClick(editor, Qt.Key.Key_Return)
        qtbot.waitUntil(lambda: table.viewport().findChild(QLineEdit) is None)
    assert [row.price for row in in_use(window).sold] == [1300, 1750, 2100]
    assert table.currentIndex().row() == 2


def test_a_refused_entry_stays_in_its_cell_with_a_sentence_until_it_is_put_right(
    window: Window, shown: StockWindow, qtbot: QtBot
):
    put(shown, 0, "price", "a lot")
    assert text_at(shown, 0, "price") == "a lot"
    assert 'price "a lot": write what one costs' in shown.words.text()
    assert in_use(window) == LIST
    put(shown, 1, "price", "16")
    assert text_at(shown, 0, "price") == "a lot"
    put(shown, 0, "price", "14")
    assert in_use(window).sold[0].price == 1400
    assert "a lot" not in shown.words.text()
    put(shown, 0, "length", "")
    shown.table.focus_cell(0, column(shown.table.stock, "length"))
    qtbot.keyClick(shown.table, Qt.Key.Key_Escape)
    assert text_at(shown, 0, "length") == '96"'


def test_what_a_row_cannot_be_is_refused_as_a_whole(window: Window, shown: StockWindow):
    put(shown, 0, "width", "")
    assert "only a moulding's may be empty" in shown.words.text()
    put(shown, 0, "width", '5 1/2"')
    put(shown, 0, "kind", "Mouldings")
    put(shown, 0, "width", "")
    assert in_use(window).sold[0].width == 0
    assert in_use(window).sold[0].kind is StockKind.MOULDING
    shown.turn_to(1)
    put(shown, 0, "clear", "31")
    assert "less than half" in shown.words.text()


def test_showing_a_length_rounded_does_not_round_it(window: Window, shown: StockWindow):
    session = window.cutting.stock.session
    session.open(StockList((replace(BOARD, width=5.123456),)), "odd")
    put(shown, 0, "width", text_at(shown, 0, "width"))
    assert in_use(window).sold[0].width == 5.123456
    assert not session.is_unsaved


def test_kinds_are_chosen_from_a_box(window: Window, shown: StockWindow, qtbot: QtBot):
    table = shown.table
    table.edit(table.stock.index(0, 0))
    box = table.viewport().findChild(QComboBox)
    assert [box.itemText(i) for i in range(box.count())] == ["Boards", "Mouldings", "Framing", "Panels"]
    box.setCurrentText("Framing")
    box.activated.emit(2)
    assert in_use(window).sold[0].kind is StockKind.FRAMING


def test_rows_are_added_like_the_one_in_focus_and_taken_out_and_all_of_it_undoes(
    window: Window, shown: StockWindow, qtbot: QtBot
):
    shown.table.focus_cell(0, 0)
    qtbot.keyClick(shown, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier)
    assert in_use(window).sold[1] == replace(BOARD, price=None)
    assert shown.table.currentIndex().row() == 1
    assert shown.headings.button(0).text() == "Sold (4)"
    qtbot.keyClick(shown, Qt.Key.Key_Delete, Qt.KeyboardModifier.ControlModifier)
    assert in_use(window) == LIST
    shown.table.selectAll()
    shown.remove_rows()
    assert in_use(window).sold == ()
    assert not shown.remove_button.isEnabled()
    shown.add_row()
    assert len(in_use(window).sold) == 1
    for _ in range(4):
        qtbot.keyClick(shown, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert in_use(window) == LIST
    assert not shown.isWindowModified()


def test_delete_empties_a_cell_that_may_be_empty(window: Window, shown: StockWindow, qtbot: QtBot):
    for name in ("price", "width"):
        shown.table.focus_cell(0, column(shown.table.stock, name))
        qtbot.keyClick(shown.table, Qt.Key.Key_Delete)
    assert in_use(window).sold[0] == replace(BOARD, price=None)


def test_what_is_common_to_all_rows_is_entered_and_refused_alike(
    window: Window, shown: StockWindow, qtbot: QtBot
):
    edit = shown.common.edits["keep"]
    edit.setText("18")
    edit.commit()
    assert in_use(window).keep == 18.0
    assert edit.text() == '18"'
    edit.setText("soon")
    edit.commit()
    assert "length worth keeping" in shown.words.text()
    assert in_use(window).keep == 18.0
    edit.setText("20")
    edit.commit()
    assert "length worth keeping" not in shown.words.text()
    shown.undo()
    shown.undo()
    assert in_use(window) == LIST
    assert edit.text() == '12"'


def test_lengths_follow_the_jobs_units(window: Window, shown: StockWindow):
    window.session.set_value("job.units", "millimetres")
    assert text_at(shown, 0, "length") == "2438 mm"
    put(shown, 0, "length", "2440")
    assert in_use(window).sold[0].length == pytest.approx(2440 / 25.4)


def test_saving_writes_the_lists_own_file_and_what_is_being_typed(
    window: Window, shown: StockWindow, qtbot: QtBot, tmp_path: Path
):
    shown.table.focus_cell(0, column(shown.table.stock, "price"))
    qtbot.keyClick(shown.table, Qt.Key.Key_Return)
    qtbot.keyClicks(shown.table.viewport().findChild(QLineEdit), "15")
    qtbot.keyClick(shown, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    assert read_stock_named(str(tmp_path / "yard.yard")).sold[0].price == 1500
    assert not shown.isWindowModified()
    put(shown, 0, "price", "dear")
    shown.save()
    assert "without the entry that was refused" in shown.notice.text


def _answer(monkeypatch, choice: str) -> list[str]:
    asked: list[str] = []
    monkeypatch.setattr("app.asking.ask", lambda _window, title, *_: asked.append(title) or choice)
    return asked


@pytest.mark.parametrize(
    ("choice", "saved", "copied"), [("", False, False), (REPLACE, True, False), (ELSEWHERE, False, True)]
)
def test_a_file_that_was_changed_elsewhere_is_written_over_only_when_asked(
    shown: StockWindow, tmp_path: Path, monkeypatch, choice: str, saved: bool, copied: bool
):
    path = tmp_path / "yard.yard"
    save_stock_list(path, replace(LIST, name="Someone else's, longer"))
    put(shown, 0, "price", "15")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "mine"), ""))
    asked = _answer(monkeypatch, choice)
    assert shown.save() is bool(choice)
    assert asked == ["Changed elsewhere"]
    assert (read_stock_named(str(path)).name != "Someone else's, longer") is saved
    assert (tmp_path / "mine.yard").exists() is copied


def test_a_list_or_table_whose_name_was_typed_without_its_ending_is_replaced_only_when_asked(
    window: Window, shown: StockWindow, tmp_path: Path, monkeypatch
):
    put(shown, 0, "price", "15")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "mine"), ""))
    asked = _answer(monkeypatch, "")
    stock = window.cutting.stock
    for name, save in (("mine.yard", stock.save_as), ("mine.csv", stock.ask_and_write_table)):
        (tmp_path / name).write_bytes(b"somebody's")
        save()
        assert asked.pop() == "Replace a file"
        assert (tmp_path / name).read_bytes() == b"somebody's"
    stock.ask_and_save_copy()
    assert asked == ["Replace a file"]
    assert (tmp_path / "mine.yard").read_bytes() == b"somebody's"


def test_a_shipped_list_is_saved_under_a_name_of_its_own_and_used_from_then_on(
    window: Window, shown: StockWindow, tmp_path: Path, monkeypatch
):
    window.cutting.stock.use("usual")
    put(shown, 0, "price", "9.99")
    assert shown.windowTitle().startswith("New stock list")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "mine"), ""))
    assert shown.save()
    assert read_stock_named(str(tmp_path / "mine.yard")).sold[0].price == 999
    assert window.settings.read("stock_list", "") == str(tmp_path / "mine.yard")


def test_tables_are_written_and_read_as_one_step(
    window: Window, shown: StockWindow, tmp_path: Path, monkeypatch
):
    path = tmp_path / "rows.csv"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(path), ""))
    window.cutting.stock.ask_and_write_table()
    path.write_text(path.read_text().replace("12.40", "13.10"))
    window.cutting.stock.ask_and_read_table()
    assert in_use(window).sold[0].price == 1310
    assert in_use(window).on_hand == LIST.on_hand
    shown.undo()
    assert in_use(window) == LIST
    path.write_text(path.read_text().replace("13.10", "nothing"))
    window.cutting.stock.ask_and_read_table()
    assert "line 2, price" in shown.notice.text
    assert in_use(window) == LIST


@pytest.mark.parametrize(("choice", "stays"), [("Stay", True), ("Leave without saving", False)])
def test_unsaved_changes_are_asked_about_before_another_list(
    window: Window, shown: StockWindow, monkeypatch, choice: str, stays: bool
):
    put(shown, 0, "price", "15")

    def press(box: QMessageBox) -> int:
        next(button for button in box.buttons() if button.text() == choice).click()
        return 0

    monkeypatch.setattr(QMessageBox, "exec", press)
    window.cutting.stock.use("example")
    assert (in_use(window).sold[0].price == 1500) is stays
    assert (window.cutting.list_name == "example") is not stays


def test_a_new_price_is_planned_with_once_typing_rests(window: Window, qtbot: QtBot):
    window.files.open_example("bedroom")
    with qtbot.waitSignal(window.cutting.planned, timeout=60_000):
        window.cutting.use_list("example")
        window.tray.turn_to(BUYING)
    cost = window.cutting.plan.cost
    window.tray.buying.stock_button.click()
    session = window.cutting.stock.session
    doubled = tuple(replace(row, price=2 * row.price) for row in session.stock_list.sold if row.price)
    with qtbot.waitSignal(window.cutting.planned, timeout=60_000):
        session.change("dearer", replace(session.stock_list, sold=doubled))
        assert "Out of date" in window.tray.buying.words.text()
    assert window.cutting.plan.cost == 2 * cost


def test_any_text_in_any_cell_is_taken_or_refused_with_a_sentence():
    session = StockSession()
    session.open(LIST, "any")
    for which in (SOLD, ON_HAND):
        model = StockModel(session, which)
        for column_at in range(model.columnCount()):
            for text in (
                "",
                " ",
                "-1",
                "1e9",
                "0",
                "½",
                "=1+1",
                "x" * 500,
                "9" * 400,
                "\x00",
                "yes",
                "Panels",
            ):
                index = model.index(0, column_at)
                model.setData(index, text)
                wrong = model.wrong_at(0, column_at)
                assert wrong is None or (
                    wrong.text == text and wrong.sentence.startswith(("Sold row 1", "On hand row 1"))
                )
                while session.stack.canUndo():
                    session.stack.undo()
                model.give_up(index)
    assert session.stock_list == LIST


def test_a_style_in_metres_shows_what_is_sold_in_millimetres():
    session = StockSession()
    session.open(LIST, "any")
    model = StockModel(session, SOLD)
    model.show_style(MILLIMETRES)
    assert model.data(model.index(0, column(model, "width"))) == "140 mm"


def test_supplies_are_priced_by_the_pack_in_their_own_unit(window: Window, shown: StockWindow):
    shown.turn_to(2)
    names = [row.name for row in shown.table.stock.rows]
    primer, anchors = names.index("Primer"), names.index(ANCHORS)
    assert text_at(shown, primer, "pack") == "0.25 gal"
    assert text_at(shown, anchors, "pack") == "10 anchors"
    assert "15 of 15 rows have no price" in shown.words.text()
    put(shown, primer, "price", "18,75")
    put(shown, primer, "pack", "1 gal")
    put(shown, primer, "whole", "no")
    put(shown, anchors, "pack", "25 anchors")
    put(shown, anchors, "price", "12")
    supplies = {each.name: each for each in in_use(window).supplies}
    assert supplies["Primer"] == Supply("Primer", 1.0, 1875, False)
    assert supplies[ANCHORS] == Supply(ANCHORS, 25.0, 1200)
    shown.undo()
    assert {each.name: each for each in in_use(window).supplies}[ANCHORS].price is None
    assert shown.save()
    assert read_stock_named(window.cutting.list_name).supplies == in_use(window).supplies


@pytest.mark.parametrize("text", ["", "0", "-3", "a can", "1 lb", "2000000"])
def test_what_no_pack_holds_is_refused_in_its_cell(window: Window, shown: StockWindow, text: str):
    shown.turn_to(2)
    put(shown, 0, "pack", text)
    assert "in a pack" in shown.words.text()
    assert in_use(window) == LIST


def test_supplies_are_neither_added_nor_taken_out_nor_called_otherwise(window: Window, shown: StockWindow):
    shown.turn_to(2)
    assert not shown.add_button.isEnabled()
    assert not shown.remove_button.isEnabled()
    shown.add_row()
    shown.remove_rows()
    index = shown.table.stock.index(0, column(shown.table.stock, "name"))
    assert not shown.table.stock.flags(index) & Qt.ItemFlag.ItemIsEditable
    shown.table.stock.empty(index)
    assert in_use(window) == LIST
    shown.turn_to(0)
    assert shown.add_button.isEnabled()


def test_packs_are_metric_where_the_job_is(shown: StockWindow):
    shown.turn_to(2)
    shown.show_style(MILLIMETRES)
    assert text_at(shown, 0, "pack") == "473.176 mL"


def test_money_is_written_by_an_example_that_is_typed(window: Window, shown: StockWindow, qtbot: QtBot):
    edit = shown.common.edits["currency"]
    edit.setFocus()
    edit.setText("1.234,50 €")
    edit.commit()
    assert in_use(window).currency == "1.234,50 €"
    edit.setText("1,2,3")
    edit.commit()
    assert "how 1234.50 is written" in shown.words.text()
    assert in_use(window).currency == "1.234,50 €"


def test_a_list_that_is_gone_is_told_and_the_usual_sizes_serve(
    window: Window, tmp_path: Path, settings: Settings, qtbot: QtBot
):
    settings.write(KEPT, str(tmp_path / "gone.yard"))
    notice = Notice()
    qtbot.addWidget(notice)
    stock = StockFiles(window, settings, notice)
    assert stock.find_list() == read_shipped_list()
    assert "gone.yard" in notice.text
    assert "The usual sizes are used instead." in notice.text
    assert settings.read(KEPT, "") == str(tmp_path / "gone.yard")  # it may be on a disk that comes back
    assert stock.use("usual")
    assert not stock.use(str(tmp_path / "gone.yard"))
    assert "gone.yard" in notice.text
    assert stock.list_name == "usual"


def test_a_disk_that_refuses_the_list_is_told_and_its_changes_stay(
    window: Window, shown: StockWindow, tmp_path: Path
):
    put(shown, 0, "price", "15")
    with files_no_larger_than(50):
        assert not shown.save()
    assert "untouched" in shown.notice.text
    assert shown.isWindowModified()
    assert read_stock_named(str(tmp_path / "yard.yard")) == LIST
    assert not window.cutting.stock.save_copy(tmp_path / "no folder" / "copy.csv")
    assert "no such file or folder" in shown.notice.text
    assert shown.save()


def test_a_list_is_chosen_from_the_dialog(window: Window, shown: StockWindow, tmp_path: Path, monkeypatch):
    save_stock_list(tmp_path / "other.yard", replace(LIST, on_hand=()))
    names = iter([("", ""), (str(tmp_path / "other.yard"), "")])
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: next(names))
    window.cutting.stock.ask_and_use()
    assert in_use(window) == LIST
    window.cutting.stock.ask_and_use()
    assert in_use(window).on_hand == ()


def test_what_another_window_saves_while_a_list_is_read_is_not_written_over_unasked(
    window: Window, tmp_path: Path, monkeypatch
):
    path, asked = tmp_path / "yard.yard", []
    save_stock_list(path, LIST)
    other = replace(LIST, name="The other window's")

    def read_meanwhile(name: str, base: StockList | None = None) -> StockList:
        found = read_stock_named(name, base)
        save_stock_list(path, other)
        return found

    monkeypatch.setattr("app.stock_lists.read_stock_named", read_meanwhile)
    stock = window.cutting.stock
    assert stock.use(str(path))
    stock.session.change("rows", replace(LIST, on_hand=()))
    monkeypatch.setattr("app.stock_files.ask_over_changes", lambda *_: asked.append(1) or "")
    assert not stock.save()
    assert asked == [1]
    assert read_stock_named(str(path)) == other
    stock.session.mark_saved(str(path))


def test_a_list_whose_file_is_gone_is_written_anew_and_that_is_told(window: Window, tmp_path: Path):
    path, stock = tmp_path / "yard.yard", window.cutting.stock
    save_stock_list(path, LIST)
    assert stock.use(str(path))
    path.unlink()
    stock.session.change("rows", replace(LIST, on_hand=()))
    assert stock.save()
    assert read_stock_named(str(path)) == replace(LIST, on_hand=())
    assert window.notice.text.startswith("“yard.yard” was no longer where it was opened; it is written there")
