"""Cutting plans in the window: drawn, picked by pointer and key, outdated by an edit, planned anew."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRectF, Qt
from pytestqt.qtbot import QtBot

from app.plan_view import PlanSheet
from app.rooms import BUYING, CUTS, PLANS
from app.window import Window
from model.cutting.frozen import rename_keys

PATIENCE = 60_000
"""Milliseconds; a process is started for the first plan."""


def _find_box(sheet: PlanSheet, mark: str) -> QRectF:
    """Where the first piece of a mark is drawn."""
    return next(piece.outline.boundingRect() for piece in sheet.pieces if mark in piece.marks)


@pytest.fixture
def planned(window: Window, qtbot: QtBot) -> Window:
    """A window with the plan of a shipped job in view."""
    window.files.open_example("bedroom")
    with qtbot.waitSignal(window.cutting.planned, timeout=PATIENCE):
        window.cutting.use_list("example")
        window.tray.turn_to(PLANS)
    return window


def test_every_piece_of_the_job_is_on_the_plan_and_can_be_picked(planned: Window, qtbot: QtBot):
    sheet, plan = planned.tray.plans.sheet, planned.cutting.plan
    assert plan is not None
    drawn = {mark for piece in sheet.pieces for mark in piece.marks}
    assert drawn == {source.mark for sawn in plan.sawn for source in sawn.sources}
    qtbot.mouseClick(sheet, Qt.MouseButton.LeftButton, pos=_find_box(sheet, "C1a").center().toPoint())
    assert sheet.mark == "C1a"
    assert planned.tray.cuts.current_mark() == "C1"
    assert planned.canvas.overlay.outlines == planned.drafting.outline_boards(frozenset({"C1a"}))
    qtbot.mouseClick(sheet, Qt.MouseButton.LeftButton, pos=QPoint(2, 2))
    assert sheet.mark == ""
    assert not planned.canvas.overlay.outlines


def test_arrow_keys_go_from_piece_to_piece(planned: Window, qtbot: QtBot):
    sheet = planned.tray.plans.sheet
    qtbot.keyClick(sheet, Qt.Key.Key_Right)
    qtbot.keyClick(sheet, Qt.Key.Key_Right)
    assert (sheet.marks, sheet.number) == (sheet.pieces[1].marks, sheet.pieces[1].number)
    qtbot.keyClick(sheet, Qt.Key.Key_Left)
    qtbot.keyClick(sheet, Qt.Key.Key_Left)
    assert sheet.marks == sheet.pieces[-1].marks
    qtbot.keyClick(sheet, Qt.Key.Key_Escape)
    assert sheet.marks == ()


def test_an_edit_makes_the_plan_out_of_date_until_the_next_one_is_there(planned: Window, qtbot: QtBot):
    sheet, before = planned.tray.plans.sheet, planned.cutting.plan
    with qtbot.waitSignal(planned.cutting.planned, timeout=PATIENCE):
        planned.session.set_text("opening.width", "44")
        assert sheet.is_outdated
        assert "Out of date" in planned.tray.plans.words.text()
    assert not sheet.is_outdated
    assert planned.cutting.plan is not before


def test_the_buying_list_says_what_it_comes_to_and_how_good_the_plan_is(planned: Window):
    planned.tray.turn_to(BUYING)
    words = planned.tray.buying.words.text()
    assert words.startswith("All prices here are invented")
    assert "Total of what has a price: $" in words
    assert "Proven: no plan" in words or "of the best there can be: no plan costs less" in words
    planned.tray.buying.table.selectRow(0)
    assert planned.tray.buying.marks()
    assert planned.canvas.overlay.outlines


def test_a_list_that_cannot_be_read_is_named_and_the_old_one_stays(planned: Window, tmp_path: Path):
    bad = tmp_path / "broken.yard"
    bad.write_text('{"yard": 1, "sold": [{"kind": "board"')
    before = planned.cutting.list_name
    planned.cutting.use_list(str(bad))
    assert "broken.yard" in planned.notice.text
    assert planned.cutting.list_name == before


def test_a_copy_of_the_list_can_be_planned_from(planned: Window, qtbot: QtBot, tmp_path: Path):
    copy = tmp_path / "mine.yard"
    cost = planned.cutting.plan.cost
    planned.cutting.stock.save_copy(copy)
    with qtbot.waitSignal(planned.cutting.planned, timeout=PATIENCE):
        planned.cutting.use_list(str(copy))
    assert planned.cutting.plan.cost == cost
    assert planned.settings.read("stock_list", "") == str(copy)


def test_an_elevations_board_is_shown_on_the_plan_while_that_is_read(planned: Window):
    mark = next(m for m in planned.drafting.surround.marks if m.startswith("C1"))
    boards = planned.drafting.surround.boards
    (low, high) = boards[planned.drafting.surround.marks.index(mark)].bounds
    planned._pick_board("front", ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2))
    assert planned.tray.page == PLANS
    assert planned.tray.plans.sheet.mark == mark
    planned.tray.turn_to(CUTS)


def _wait_for_plan(planned: Window, qtbot: QtBot, act) -> None:
    with qtbot.waitSignal(planned.cutting.planned, timeout=PATIENCE):
        act()


def test_a_plan_that_is_bought_stays_through_edits_and_only_more_is_planned(planned: Window, qtbot: QtBot):
    view, cutting = planned.tray.plans, planned.cutting
    count, cost = len(cutting.plan.sawn), cutting.plan.cost
    _wait_for_plan(planned, qtbot, view.bought_button.click)
    assert len(planned.session.job.purchase.boards) == count
    assert cutting.plan.cost == 0
    assert not cutting.plan.sawn
    assert f"{count} boards and sheets are bought, 0 of them cut" in view.words.text()
    drawn = {mark for piece in view.sheet.pieces for mark in piece.marks}
    assert "C1a" in drawn
    _wait_for_plan(planned, qtbot, lambda: planned.session.set_text("shelf.overhang_end", "9"))
    assert 0 < cutting.plan.cost < cost
    kept = set(cutting.plan.order.kept)
    assert 0 < len(kept) < count
    marks = [mark for piece in view.sheet.pieces for mark in piece.marks]
    assert len(marks) == len(set(marks)), "a board that is cut anew is not drawn as bought too"
    numbers = [sawn.number for sawn in cutting.plan.sawn]
    assert not kept & set(numbers)
    _wait_for_plan(planned, qtbot, planned.session.undo)
    _wait_for_plan(planned, qtbot, planned.session.undo)
    assert not planned.session.job.purchase.boards
    assert cutting.plan.cost == cost


def _piece_of(planned: Window, mark: str, number: int):
    pieces = planned.tray.plans.sheet.pieces
    return next(piece for piece in pieces if mark in piece.marks and piece.number == number)


def test_a_board_that_is_cut_stays_when_the_rest_is_not_bought_after_all(planned: Window, qtbot: QtBot):
    view, bought = planned.tray.plans, planned.cutting.bought
    _wait_for_plan(planned, qtbot, view.bought_button.click)
    assert not view.cut_button.isEnabled()
    assert "pick a piece" in bought.cut.text()
    view.sheet.focus_mark("C1a")
    _wait_for_plan(planned, qtbot, view.cut_button.click)
    assert sum(board.is_cut for board in planned.session.job.purchase.boards) == 1
    assert view.cut_button.text() == "Not cut"
    _wait_for_plan(planned, qtbot, view.release_button.click)
    (board,) = planned.session.job.purchase.boards
    assert board.is_cut
    assert "C1a" in {piece.mark for piece in board.pieces}
    assert "all of it is cut" in bought.release.text()


def test_of_a_piece_on_several_bought_boards_the_picked_one_is_cut(planned: Window, qtbot: QtBot):
    view, bought = planned.tray.plans, planned.cutting.bought
    _wait_for_plan(planned, qtbot, view.bought_button.click)
    job = planned.session.job
    first = job.purchase.boards[0]
    pieces = tuple(replace(piece, key=f"900.{i}") for i, piece in enumerate(first.pieces))
    again = replace(first, number=900, pieces=pieces, is_cut=True)
    cut = rename_keys(first.cut, [piece.key for piece in pieces])
    again = replace(again, board=cut) if first.board else replace(again, sheet=cut)
    purchase = replace(job.purchase, boards=(*job.purchase.boards, again))
    _wait_for_plan(planned, qtbot, lambda: planned.session.change("more", replace(job, purchase=purchase)))
    mark = pieces[0].mark
    view.sheet.focus_mark(mark)
    assert f"{mark} is on boards {first.number}, 900: pick it on the plan" in bought.cut.text()
    centre = _piece_of(planned, mark, 900).outline.boundingRect().center().toPoint()
    qtbot.mouseClick(view.sheet, Qt.MouseButton.LeftButton, pos=centre)
    assert view.cut_button.text() == "Not cut"
    _wait_for_plan(planned, qtbot, view.cut_button.click)
    assert not any(board.is_cut for board in planned.session.job.purchase.boards)


def test_the_commands_say_why_they_cannot_be_given(window: Window, qtbot: QtBot):
    bought, view = window.cutting.bought, window.tray.plans
    assert "no plan is shown yet" in bought.keep.text()
    assert "nothing is bought" in bought.release.text()
    assert "nothing is bought" in bought.cut.text()
    assert "nothing is being planned" in window.cutting.enough.text()
    assert "no plan is shown yet" in view.bought_button.accessibleDescription()
    assert view.bought_button.text() == "Bought"


def test_what_is_bought_and_cut_can_be_noted_by_keyboard_alone(planned: Window, qtbot: QtBot):
    planned.show()
    planned.activateWindow()
    view = planned.tray.plans
    modifiers = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
    _wait_for_plan(planned, qtbot, lambda: qtbot.keyClick(planned, Qt.Key.Key_B, modifiers))
    assert planned.session.job.purchase.boards
    qtbot.keyClick(view.sheet, Qt.Key.Key_Right)
    _wait_for_plan(planned, qtbot, lambda: qtbot.keyClick(planned, Qt.Key.Key_X, modifiers))
    assert len(planned.session.job.purchase.cut) == 1
    _wait_for_plan(planned, qtbot, lambda: qtbot.keyClick(planned, Qt.Key.Key_N, modifiers))
    assert len(planned.session.job.purchase.boards) == 1


def test_a_press_on_bought_does_not_leave_the_keyboard_on_not_bought(planned: Window, qtbot: QtBot):
    planned.show()
    planned.activateWindow()
    view = planned.tray.plans
    view.bought_button.setFocus()
    _wait_for_plan(planned, qtbot, lambda: qtbot.keyClick(view.bought_button, Qt.Key.Key_Space))
    assert planned.session.job.purchase.boards
    assert view.sheet.hasFocus()


def test_an_outdated_plan_cannot_be_bought(planned: Window):
    planned.session.set_text("opening.width", "44")
    assert not planned.tray.plans.bought_button.isEnabled()
    assert "out of date" in planned.cutting.bought.keep.text()
    planned.cutting.bought.keep_plan()
    assert not planned.session.job.purchase.boards
