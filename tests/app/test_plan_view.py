"""Cutting plans in the window: drawn, picked by pointer and key, outdated by an edit, planned anew."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from pytestqt.qtbot import QtBot

from app.tray import BUYING, CUTS, PLANS
from app.window import Window

PATIENCE = 60_000
"""Milliseconds; a process is started for the first plan."""


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
    drawn = {mark for mark, _ in sheet._pieces}
    assert drawn == {
        source.mark for sawn in plan.sawn for source in sawn.sources if sawn.number in _first(plan)
    }
    qtbot.mouseClick(sheet, Qt.MouseButton.LeftButton, pos=sheet.box_of("C1a").center().toPoint())
    assert sheet.mark == "C1a"
    assert planned.tray.cuts.current_mark() == "C1"
    assert planned.canvas.overlay.outlines
    qtbot.mouseClick(sheet, Qt.MouseButton.LeftButton, pos=QPoint(2, 2))
    assert sheet.mark == ""
    assert not planned.canvas.overlay.outlines


def _first(plan):
    """Numbers of the boards that are drawn: of like ones the first."""
    seen, numbers = set(), set()
    for sawn in plan.sawn:
        if sawn.cut not in seen:
            seen.add(sawn.cut)
            numbers.add(sawn.number)
    return numbers


def test_arrow_keys_go_from_piece_to_piece(planned: Window, qtbot: QtBot):
    sheet = planned.tray.plans.sheet
    marks = list(dict.fromkeys(mark for mark, _ in sheet._pieces))
    for mark in (*marks[:3], marks[1]):
        qtbot.keyClick(sheet, Qt.Key.Key_Left if mark == sheet.mark else Qt.Key.Key_Right)
        if mark == marks[1] and sheet.mark == marks[0]:
            break
    qtbot.keyClick(sheet, Qt.Key.Key_Escape)
    assert sheet.mark == ""


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
    assert words.startswith("Total of what has a price: $")
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
    drawn = {mark for mark, _ in view.sheet._pieces}
    assert "C1a" in drawn
    _wait_for_plan(planned, qtbot, lambda: planned.session.set_text("shelf.overhang_end", "9"))
    assert 0 < cutting.plan.cost < cost
    kept = set(cutting.plan.order.kept)
    assert 0 < len(kept) < count
    marks = [m for m, _ in view.sheet._pieces]
    assert len(marks) == len(set(marks)), "a board that is cut anew is not drawn as bought too"
    numbers = [sawn.number for sawn in cutting.plan.sawn]
    assert not kept & set(numbers)
    _wait_for_plan(planned, qtbot, planned.session.undo)
    _wait_for_plan(planned, qtbot, planned.session.undo)
    assert not planned.session.job.purchase.boards
    assert cutting.plan.cost == cost


def test_a_board_that_is_cut_stays_when_the_rest_is_not_bought_after_all(planned: Window, qtbot: QtBot):
    view = planned.tray.plans
    _wait_for_plan(planned, qtbot, view.bought_button.click)
    view.cut_button.click()
    assert "Pick a piece" in planned.notice.text
    view.sheet._choose("C1a")
    _wait_for_plan(planned, qtbot, view.cut_button.click)
    assert sum(board.is_cut for board in planned.session.job.purchase.boards) == 1
    _wait_for_plan(planned, qtbot, view.release_button.click)
    (board,) = planned.session.job.purchase.boards
    assert board.is_cut
    assert "C1a" in {piece.mark for piece in board.pieces}


def test_an_outdated_plan_cannot_be_bought(planned: Window):
    planned.session.set_text("opening.width", "44")
    assert planned.tray.plans.bought_button.isHidden()
    planned.cutting.keep_plan()
    assert not planned.session.job.purchase.boards
