"""The window as a whole: what is typed is drawn, what is pointed at is lit, nothing unsaved is lost."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QAction, QCloseEvent, QKeySequence
from PySide6.QtWidgets import QApplication, QFileDialog, QMenu, QMessageBox, QScrollArea
from pytestqt.qtbot import QtBot

from app.demo import read_demo
from app.fields.tape_row import TapeRow
from app.files import read_job_file, save_job_file
from app.lettering import COARSEST_RATIO, FINEST_RATIO
from app.menus import add_command
from app.recovery import list_left_behind
from app.rooms import CUTS, FINDINGS, PROPORTIONS
from app.settings import Settings
from app.theme import Ground
from app.window import Window
from model.check.finding import Status
from model.job import default_job, read_value, with_value
from render.drawing import Dimension, Text
from tests.full_disk import files_no_larger_than

SAVE, LEAVE, STAY = "Save", "Leave without saving", "Stay"


def _enter(qtbot: QtBot, window: Window, path: str, text: str) -> TapeRow:
    row = window.fields.rows[path]
    assert isinstance(row, TapeRow)
    window.fields.focus_path(path)
    row.edit.selectAll()
    qtbot.keyClicks(row.edit, text)
    qtbot.keyClick(row.edit, Qt.Key.Key_Return)
    return row


def _dimension_texts(window: Window, path: str) -> set[str]:
    return {d.text for view in window.canvas.views for d in view.list_dimensions(path)}


def _answer(window: Window, word: str, asked: list[str] | None = None) -> None:
    """Press the button called `word` when the question comes."""

    def press() -> None:
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        if asked is not None:
            asked.append(box.text())
        next(button for button in box.buttons() if button.text() == word).click()

    QTimer.singleShot(50, press)


def _action(window: Window, words: str) -> QAction:
    found = [a for menu in window.menuBar().actions() for a in menu.menu().actions()]
    return next(a for a in found if a.text().replace("&", "") == words)


def test_a_new_job_is_drawn_in_front_and_side_view_with_its_dimensions(window: Window):
    assert [view.name for view in window.canvas.views] == ["front", "side"]
    assert _dimension_texts(window, "opening.width") == {"3'-0\""}
    assert window.windowTitle() == "New job[*] – Mantelwright"
    assert not window.isWindowModified()


def test_the_list_begins_at_its_top_with_the_cursor_in_the_first_measurement(window: Window):
    area = window.fields.findChild(QScrollArea)
    assert area.verticalScrollBar().value() == 0
    assert window.focusWidget() is window.fields.rows["opening.width"].value_widget


def test_an_entry_is_drawn_at_once_and_marks_the_window(qtbot: QtBot, window: Window):
    _enter(qtbot, window, "opening.width", "40 1/2")
    assert _dimension_texts(window, "opening.width") == {"3'-4 1/2\""}
    assert window.isWindowModified()


def test_a_refused_entry_draws_nothing_new(qtbot: QtBot, window: Window):
    before = window.canvas.views
    _enter(qtbot, window, "opening.width", "wide")
    assert window.canvas.views == before
    assert not window.isWindowModified()


def test_undo_and_redo_by_key_go_through_fields_and_sheet(qtbot: QtBot, window: Window):
    row = _enter(qtbot, window, "opening.width", "40")
    _enter(qtbot, window, "shelf.thickness", "2 1/4")
    for _ in range(2):
        qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert row.edit.text() == "3'-0\""
    assert _dimension_texts(window, "opening.width") == {"3'-0\""}
    qtbot.keyClick(window, Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert row.edit.text() == "3'-4\""


def test_undo_in_a_field_being_typed_in_takes_back_the_typing_first(qtbot: QtBot, window: Window):
    row = _enter(qtbot, window, "opening.width", "40")
    qtbot.keyClicks(row.edit, "9")
    qtbot.keyClick(row.edit, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert read_value(window.session.job, "opening.width") == 40
    qtbot.keyClick(row.edit, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert read_value(window.session.job, "opening.width") == 36


def test_the_undo_command_names_its_step(qtbot: QtBot, window: Window):
    _enter(qtbot, window, "opening.width", "40")
    assert _action(window, "Undo opening width").isEnabled()
    assert not _action(window, "Redo").isEnabled()


def test_the_field_in_focus_lights_its_dimension(window: Window):
    window.fields.focus_path("opening.width")
    assert window.canvas.overlay.path == "opening.width"
    window.canvas.setFocus()
    assert window.canvas.overlay.path == ""


def test_clicking_a_dimension_opens_it_on_the_sheet_and_shows_its_field(qtbot: QtBot, window: Window):
    at = window.canvas.point_of("shelf.height")
    assert at is not None
    qtbot.mouseClick(window.canvas, Qt.MouseButton.LeftButton, pos=at)
    assert window.sheet_field.path == "shelf.height"
    assert window.sheet_field.edit.hasFocus()
    assert window.canvas.overlay.path == "shelf.height"


def test_most_fields_of_opening_columns_and_shelf_have_a_dimension_to_light(window: Window):
    shown = {d.stands_for for view in window.canvas.views for d in view.list_dimensions()}
    assert {"opening.width", "opening.height", "column.width", "shelf.height", "shelf.thickness"} <= shown


def test_other_views_come_onto_the_sheet_whole(window: Window):
    for views in (("plan",), ("plan_section",), ("vertical_section",)):
        window.choose_views(views)
        assert tuple(view.name for view in window.canvas.views) == views
        assert window.canvas.is_fitted


def test_the_keep_out_is_drawn_on_request(window: Window):
    before = len(window.canvas.views[0].drawing.marks)
    window.bar.clearance_button.click()
    assert len(window.canvas.views[0].drawing.marks) > before
    window.bar.clearance_button.click()
    assert len(window.canvas.views[0].drawing.marks) == before


def test_marks_are_in_the_menu_where_the_row_has_no_room_for_them(qtbot: QtBot, window: Window):
    window.resize(960, 540)
    qtbot.waitUntil(window.bar.marks_button.isHidden)
    window.drafting.list_rest()
    _action(window, "Marks").trigger()
    assert _board_marks(window)


def _board_marks(window: Window) -> set[str]:
    """Marks of the cut list that stand on the sheet."""
    listed = {cut.mark for cut in window.drafting.cuts}
    written = [m.text for v in window.canvas.views for m in v.drawing.marks if isinstance(m, Text)]
    return listed & set(written)


def test_boards_are_marked_on_request_and_again_after_an_edit(qtbot: QtBot, window: Window):
    window.drafting.list_rest()
    assert not _board_marks(window)
    window.bar.marks_button.click()
    assert {"C1", "F1", "P2"} <= _board_marks(window)
    window.session.set_value("column.width", 10.0)
    assert not _board_marks(window), "an edit is drawn at once, without them"
    qtbot.waitUntil(lambda: bool(_board_marks(window)))
    window.choose_views(("vertical_section",))
    qtbot.waitUntil(lambda: bool(_board_marks(window)))
    window.bar.marks_button.click()
    assert not _board_marks(window)


def test_writing_on_the_sheet_is_large_enough_to_read_at_any_size(qtbot: QtBot, window: Window):
    for size in ((1366, 768), (1920, 1080), (1000, 600)):
        window.resize(*size)
        qtbot.wait(30)
        heights = [m.height for v in window.canvas.views for m in v.drawing.marks if isinstance(m, Dimension)]
        assert 6 <= min(heights) * window.canvas.place.scale <= max(heights) * window.canvas.place.scale <= 11


def test_findings_are_listed_worst_first_with_their_counts(qtbot, window: Window):
    with qtbot.waitSignal(window.drafting.checked):
        window.session.open(read_demo("too-close"), None)
    findings = window.tray.findings.model().findings
    assert findings[0].status is Status.FAIL
    assert [list(Status).index(f.status) for f in findings] == sorted(
        list(Status).index(f.status) for f in findings
    )
    over = sum(f.status is Status.FAIL for f in findings)
    assert f"{over} over" in window.tray.counts.accessibleDescription()


def test_the_counts_stay_when_the_tray_is_folded(window: Window):
    window.tray.fold(True)
    assert window.tray.counts.isVisible()
    assert not window.tray.findings.isVisible()
    assert window.tray.height() < 60
    window.tray.fold(False)
    assert window.tray.findings.isVisible()


def test_a_finding_in_focus_is_marked_on_the_sheet_and_can_lead_to_its_cure(qtbot: QtBot, window: Window):
    window.session.open(read_demo("too-close"), None)
    QApplication.processEvents()
    found = window.tray.findings
    row = next(i for i, f in enumerate(found.model().findings) if f.at is not None and f.path)
    found.setCurrentIndex(found.model().index(row, 0))
    finding = found.current()
    assert finding is not None
    assert window.canvas.overlay.finding == finding
    assert {name for name, _ in window.canvas.overlay.finding_points} == {"front", "side"}
    found.setFocus()
    qtbot.keyClick(found, Qt.Key.Key_Return)
    assert window.canvas.overlay.path == finding.path


def test_a_line_of_the_cut_list_outlines_its_boards(window: Window):
    window.drafting.list_rest()
    window.tray.turn_to(CUTS)
    table = window.tray.cuts
    table.selectRow(0)
    quantity = window.drafting.cuts[0].quantity
    assert len(window.canvas.overlay.outlines) == 2 * quantity
    window.tray.turn_to(FINDINGS)
    assert window.canvas.overlay.outlines == ()


def test_clicking_wood_turns_to_its_line_of_the_cut_list(qtbot: QtBot, window: Window):
    surround = window.drafting.surround
    assert surround is not None
    front = window.canvas.views[0]
    ((x0, y0, x1, y1),) = surround.layout.right.frame.openings[:1]
    at = window.canvas.place.moved(front.dx, 0).to_pixels(((x0 + x1) / 2, (y0 + y1) / 2))
    qtbot.mouseClick(window.canvas, Qt.MouseButton.LeftButton, pos=at.toPoint())
    assert window.tray.page == CUTS
    chosen = next(c for c in window.drafting.cuts if c.mark == window.tray.cuts.current_mark())
    assert "panel" in chosen.name


def test_cut_list_and_proportions_follow_an_edit_by_themselves(qtbot: QtBot, window: Window):
    window.drafting.list_rest()
    before = window.drafting.cuts
    _enter(qtbot, window, "opening.width", "48")
    qtbot.waitUntil(lambda: window.drafting.cuts != before, timeout=3000)
    assert window.tray.cuts.cuts == window.drafting.cuts
    assert window.tray.guides.model().guides == window.drafting.guides


def test_units_can_be_changed_for_everything_and_back(window: Window):
    window.menus.units["millimetres"].trigger()
    assert _dimension_texts(window, "opening.width") == {"914"}
    window.undo()
    assert _dimension_texts(window, "opening.width") == {"3'-0\""}


def test_saving_writes_what_is_being_typed_and_clears_the_mark(qtbot: QtBot, window: Window, tmp_path: Path):
    path = tmp_path / "parlour.mantel"
    window.session.mark_saved(path)
    row = window.fields.rows["opening.width"]
    assert isinstance(row, TapeRow)
    window.fields.focus_path("opening.width")
    qtbot.keyClicks(row.edit, "44")
    qtbot.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    assert read_value(read_job_file(path), "opening.width") == 44
    assert not window.isWindowModified()
    assert window.windowTitle().startswith("parlour")


def test_saving_with_a_refused_entry_says_that_it_is_not_in_the_file(
    qtbot: QtBot, window: Window, tmp_path: Path
):
    window.session.mark_saved(tmp_path / "parlour.mantel")
    _enter(qtbot, window, "opening.width", "wide")
    assert window.files.save()
    assert "refused" in window.notice.text
    assert read_job_file(tmp_path / "parlour.mantel") == default_job()


def test_save_as_adds_our_ending_and_remembers_the_file(
    window: Window, tmp_path: Path, settings: Settings, monkeypatch
):
    chosen = str(tmp_path / "parlour")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", staticmethod(lambda *_: (chosen, "")))
    assert window.files.save()
    assert window.session.path == tmp_path / "parlour.mantel"
    assert settings.list_recent() == (tmp_path / "parlour.mantel",)


def test_a_save_that_fails_keeps_everything_and_says_so(qtbot: QtBot, window: Window, tmp_path: Path):
    window.session.mark_saved(tmp_path / "gone" / "parlour.mantel")
    _enter(qtbot, window, "opening.width", "44")
    assert not window.files.save()
    assert window.isWindowModified()
    assert "still here" in window.notice.text
    assert read_value(window.session.job, "opening.width") == 44


def test_opening_draws_the_job_and_forgets_the_steps(window: Window, tmp_path: Path):
    path = tmp_path / "parlour.mantel"
    save_job_file(path, with_value(default_job(), "opening.width", 50.0))
    assert window.files.open(path)
    assert _dimension_texts(window, "opening.width") == {"4'-2\""}
    assert not window.session.stack.canUndo()


def test_a_file_that_is_no_job_leaves_the_work_as_it_is(qtbot: QtBot, window: Window, tmp_path: Path):
    (tmp_path / "other.mantel").write_text('{"mantelwright": 1, "opening": {"width": 3, "girth": 4}}')
    before = window.session.job
    assert not window.files.open(tmp_path / "other.mantel")
    assert "opening.width" in window.notice.text
    assert "opening.girth" in window.notice.text
    assert window.session.job is before


def test_a_recent_file_that_is_gone_is_told_and_forgotten(window: Window, tmp_path: Path, settings: Settings):
    settings.add_recent(tmp_path / "gone.mantel")
    assert not window.files.open(tmp_path / "gone.mantel")
    assert "no such file" in window.notice.text
    assert settings.list_recent() == ()


@pytest.mark.parametrize(("word", "left"), [(STAY, False), (LEAVE, True)])
def test_unsaved_work_is_asked_about_before_it_is_lost(qtbot: QtBot, window: Window, word: str, left: bool):
    _enter(qtbot, window, "opening.width", "44")
    asked: list[str] = []
    _answer(window, word, asked)
    window.files.new()
    assert "New job" in asked[0]
    assert read_value(window.session.job, "opening.width") == (36 if left else 44)


def test_the_question_can_be_answered_by_saving(qtbot: QtBot, window: Window, tmp_path: Path):
    window.session.mark_saved(tmp_path / "parlour.mantel")
    _enter(qtbot, window, "opening.width", "44")
    _answer(window, SAVE)
    window.files.new()
    assert read_value(read_job_file(tmp_path / "parlour.mantel"), "opening.width") == 44
    assert read_value(window.session.job, "opening.width") == 36


def test_closing_asks_too_and_stays_when_told_to(qtbot: QtBot, window: Window):
    _enter(qtbot, window, "opening.width", "44")
    _answer(window, STAY)
    assert not window.close()
    assert window.isVisible()


def test_nothing_is_asked_when_nothing_is_unsaved(window: Window):
    window.files.open_example("gas")
    window.files.new()
    assert window.close()


def test_an_example_opens_as_a_new_job_without_a_file(window: Window):
    window.files.open_example("bedroom")
    assert window.session.path is None
    assert window.session.job == read_demo("bedroom")


def test_work_left_behind_is_offered_and_taken_up_as_unsaved(
    qtbot: QtBot, window: Window, tmp_path: Path, settings: Settings
):
    _enter(qtbot, window, "opening.width", "44")
    window.recovery.keep()
    kept = next((tmp_path / "unsaved").glob("*.unsaved")).read_bytes()
    (tmp_path / "left").mkdir()
    (tmp_path / "left" / "9-9.unsaved").write_bytes(kept)
    other = Window(settings, tmp_path / "left")
    qtbot.addWidget(other, before_close_func=lambda gone: gone.session.mark_saved(tmp_path / "x.mantel"))
    other.show()
    other.begin()
    other.offer_left_behind()
    assert "Unsaved work" in other.notice.text
    other.notice.buttons[0].click()
    assert read_value(other.session.job, "opening.width") == 44
    assert other.isWindowModified()
    assert not (tmp_path / "left" / "9-9.unsaved").exists()
    assert list_left_behind(tmp_path / "left") == ()


def test_work_left_behind_stays_there_while_this_window_cannot_keep_it(
    qtbot: QtBot, window: Window, tmp_path: Path, settings: Settings, monkeypatch
):
    _enter(qtbot, window, "opening.width", "44")
    window.recovery.keep()
    kept = next((tmp_path / "unsaved").glob("*.unsaved")).read_bytes()
    for name in ("8-8", "9-9"):
        (tmp_path / f"{name}.unsaved").write_bytes(kept)
    found = list_left_behind(tmp_path)
    window.session.mark_saved(tmp_path / "x.mantel")
    window.recovery.keep()
    monkeypatch.setattr("app.recovery.list_left_behind", lambda *_: found)
    window.offer_left_behind()
    with files_no_larger_than(100):
        window.notice.buttons[0].click()
    assert read_value(window.session.job, "opening.width") == 44
    assert window.recovery.kept_in is None
    assert found[0].kept_in.exists()
    assert "Unsaved work" in window.notice.text
    qtbot.wait(QApplication.doubleClickInterval() + 50)
    window.notice.buttons[1].click()
    assert not found[1].kept_in.exists()
    assert "No copy of unsaved work can be kept" in window.notice.text
    found[0].discard()


def test_notes_that_are_being_typed_are_kept_before_they_are_entered(
    qtbot: QtBot, window: Window, tmp_path: Path
):
    row = window.fields.rows["job.notes"]
    window.fields.focus_path("job.notes")
    qtbot.keyClicks(row.area, "Gate is blue")
    assert not window.session.is_unsaved
    assert window.recovery._timer.isActive()
    window.recovery.keep()
    window.recovery._lock.unlock()
    (left,) = list_left_behind(tmp_path / "unsaved")
    assert left.job.about.notes == "Gate is blue"
    left.lock.unlock()
    qtbot.keyClick(row.area, Qt.Key.Key_Escape)
    assert row.area.toPlainText() == ""
    window.recovery.keep()
    assert window.recovery.kept_in is None
    assert window.session.stack.count() == 0


def test_a_closed_window_leaves_no_unsaved_work_behind(qtbot: QtBot, window: Window, tmp_path: Path):
    _enter(qtbot, window, "opening.width", "44")
    window.recovery.keep()
    _answer(window, LEAVE)
    assert window.close()
    assert list((tmp_path / "unsaved").iterdir()) == []


def test_the_ground_turns_dark_and_the_sheet_stays_paper(qtbot: QtBot, window: Window):
    window.choose_ground(Ground.DARK)
    qtbot.wait(20)
    image = window.canvas.grab().toImage()
    assert image.pixelColor(2, 2).lightness() < 60
    assert image.pixelColor(24, image.height() - 24).name() == "#ffffff"
    window.choose_ground(Ground.LIGHT)


def test_every_command_has_words_and_every_key_one_command(window: Window):
    actions = [a for a in window.findChildren(QAction) if a.shortcuts()]
    keys = [key.toString() for action in actions for key in action.shortcuts()]
    assert len(keys) == len(set(keys))
    assert all(action.text() for action in actions)
    for standard in ("New", "Open", "Save", "SaveAs", "Undo", "Redo", "Print", "ZoomIn", "ZoomOut"):
        bound = {k.toString() for k in QKeySequence.keyBindings(QKeySequence.StandardKey[standard])}
        assert bound <= set(keys)
    assert "Ctrl+Q" in keys


def test_no_two_lines_of_a_menu_are_reached_by_the_same_letter(window: Window):
    for menu in (window.menuBar(), *window.menuBar().findChildren(QMenu)):
        letters = [text[text.index("&") + 1].lower() for a in menu.actions() if "&" in (text := a.text())]
        assert len(letters) == len(set(letters)), letters


def test_a_key_that_the_desktop_binds_as_well_is_bound_once(window: Window):
    action = add_command(
        window.menuBar().addMenu("m"), "Again", lambda: None, (QKeySequence.StandardKey.New, "Ctrl+N")
    )
    assert [key.toString() for key in action.shortcuts()].count("Ctrl+N") == 1


def test_one_key_goes_round_list_sheet_and_tray(qtbot: QtBot, window: Window):
    window.fields.focus_path("opening.width")
    places = []
    for _ in range(3):
        qtbot.keyClick(window, Qt.Key.Key_F6)
        places.append(window.focusWidget())
    row = window.fields.rows["opening.width"]
    assert places == [window.canvas, window.tray.findings, row.value_widget]


def test_the_windows_own_state_is_kept_for_the_next_start(
    qtbot: QtBot, window: Window, settings: Settings, tmp_path: Path
):
    window.tray.fold(True)
    window.close()
    other = Window(settings, tmp_path / "other")
    qtbot.addWidget(other)
    assert other.tray.is_folded


def test_a_proportion_in_focus_is_ruled_over_the_front_while_its_list_is_read(window: Window, qtbot: QtBot):
    qtbot.waitUntil(lambda: bool(window.drafting.guides))
    window.tray.turn_to(PROPORTIONS)
    guides = window.tray.guides
    guides.setCurrentIndex(guides.model().index(2, 0))
    assert window.canvas.overlay.guides == window.drafting.guides[2].lines != ()
    window.tray.turn_to(FINDINGS)
    assert window.canvas.overlay.guides == ()
    window.tray.turn_to(PROPORTIONS)
    assert window.canvas.overlay.guides == window.drafting.guides[2].lines
    window.grab()


def test_keys_come_closer_go_further_and_fit_the_sheet(window: Window):
    scale = window.canvas.place.scale
    _action(window, "Closer").trigger()
    assert window.canvas.place.scale > scale
    assert not window.canvas.is_fitted
    _action(window, "Further").trigger()
    _action(window, "Further").trigger()
    assert window.canvas.place.scale < scale
    _action(window, "Fit").trigger()
    assert window.canvas.place.scale == pytest.approx(scale)


def test_a_click_beside_the_wood_lets_go_of_what_was_picked(qtbot: QtBot, window: Window):
    board = next(b for b in window.drafting.surround.boards if b.role == "plinth front")
    (x0, x1), (y0, y1) = ((board.bounds[0][i], board.bounds[1][i]) for i in (0, 1))
    window.canvas.view_clicked.emit("front", ((x0 + x1) / 2, (y0 + y1) / 2))
    assert window.tray.page == CUTS
    assert window.canvas.overlay.outlines
    window.canvas.view_clicked.emit("front", (0.0, -500.0))
    assert not window.canvas.overlay.outlines
    assert window.canvas.hasFocus()


def test_menus_show_the_units_in_use_and_save_no_section_that_is_not_there(window: Window):
    window.session.set_value("job.units", "millimetres")
    edit = next(a.menu() for a in window.menuBar().actions() if a.text() == "&Edit")
    edit.aboutToShow.emit()
    assert window.menus.units["millimetres"].isChecked()
    saves = [
        action
        for menu in window.findChildren(QMenu)
        for action in menu.actions()
        if "own section" in action.text().lower() and "save" in action.text().lower()
    ]
    assert len(saves) == 3
    for menu in window.findChildren(QMenu):
        menu.aboutToShow.emit()
    assert not any(action.isEnabled() for action in saves)


@pytest.mark.parametrize("kept", [float("inf"), float("nan"), -1.0, "x", {"a": [1]}])
def test_settings_that_somebody_spoilt_open_a_usual_window(
    qtbot: QtBot, dressed, settings: Settings, tmp_path: Path, kept: object
):
    for name in ("views", "ratio", "page", "folded", "window", "recent", "paper", "folder", "labels"):
        settings.write(name, kept)
    shown = Window(settings, tmp_path / "unsaved")
    qtbot.addWidget(shown, before_close_func=Window.wind_up)
    with qtbot.waitExposed(shown):
        shown.show()
    shown.begin()
    assert shown.canvas.views
    assert FINEST_RATIO <= shown.drafting.ratio <= COARSEST_RATIO
    assert shown.files.folder.is_dir()
    assert settings.list_recent() == ()


def test_a_window_stays_where_its_job_could_not_be_saved(
    qtbot: QtBot, window: Window, tmp_path: Path, monkeypatch
):
    """A drive that was pulled answers with errors no file usually gives; a fault of our own counts alike."""
    gone = tmp_path / "gone"
    gone.mkdir()
    window.session.mark_saved(gone / "parlour.mantel")
    _enter(qtbot, window, "opening.width", "44")
    stat_of = os.stat

    def refuse(path, *rest, **more):
        if str(path).startswith(str(gone)):
            raise OSError(errno.EIO, os.strerror(errno.EIO))
        return stat_of(path, *rest, **more)

    _answer(window, SAVE)
    with monkeypatch.context() as pulled:
        pulled.setattr(os, "stat", refuse)
        assert not window.close()
    assert window.isVisible()
    assert window.session.is_unsaved
    assert "could not be saved" in window.notice.text


def test_a_fault_while_closing_leaves_the_window_open(window: Window, monkeypatch):
    def fail() -> bool:
        raise RuntimeError("inside")

    event = QCloseEvent()
    with monkeypatch.context() as broken:
        broken.setattr(window.files, "may_leave", fail)
        with pytest.raises(RuntimeError, match="inside"):
            window.closeEvent(event)
    assert not event.isAccepted()
    assert window.isVisible()


def test_kept_work_that_cannot_be_read_is_said_once_nothing_else_is(window: Window, tmp_path: Path):
    kept = window.recovery_folder / "1-1.unsaved"
    kept.parent.mkdir(exist_ok=True)
    kept.write_text('{"path": "", "job": "{\\"mantelwright\\": 99}"}')
    window.notice.put_away()
    window.offer_left_behind()
    assert str(kept) in window.notice.text
    assert "written by a newer program" in window.notice.text
    assert kept.exists()
