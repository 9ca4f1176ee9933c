"""Packet and drawing file are written from the window, from the job as it was when it was asked."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from app.buying_table import HEADINGS
from app.outputs import BUYING, LIST, LISTS, OFFER, PACKET, PARTS, PLAN, TEMPLATES, name_output
from app.packet_dialog import PacketDialog
from app.settings import Settings
from app.window import Window
from app.writing import DXF_FILTERS, LEAVE
from model.cutting.buying import list_buying
from model.cutting.printed import count_printed
from model.cutting.purchase import Printed
from model.job import default_job, with_texts
from model.photo.stored import WallPhoto


def test_the_packet_is_written_and_said_where(qtbot: QtBot, window: Window, tmp_path: Path):
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path / "out", "letter")
        assert window.progress.isVisible()
    names = sorted(path.name for path in (tmp_path / "out").iterdir())
    assert names == sorted(name_output(default_job(), part) for part in PARTS)
    assert str(tmp_path / "out") in window.notice.text
    assert not window.progress.isVisible()


def test_editing_goes_on_meanwhile_and_does_not_get_into_the_files(
    qtbot: QtBot, window: Window, tmp_path: Path
):
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path / "before", "letter", (LIST,))
        window.session.set_text("opening.width", "60")
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path / "after", "letter", (LIST,))
    name = name_output(default_job(), LIST)
    assert (tmp_path / "before" / name).read_text() != (tmp_path / "after" / name).read_text()
    window.undo()
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path / "undone", "letter", (LIST,))
    assert (tmp_path / "before" / name).read_text() == (tmp_path / "undone" / name).read_text()


def test_the_plan_that_is_shown_is_the_plan_that_is_written(qtbot: QtBot, window: Window, tmp_path: Path):
    with qtbot.waitSignal(window.cutting.planned, timeout=30_000):
        window.cutting.ask()
    shown = window.cutting.plan
    assert window.cutting.current is shown
    window.cutting._show(replace(shown, groups=shown.groups[:1]))  # as no other planning would have it
    for folder in ("shown", "outdated"):
        with qtbot.waitSignal(window.work.done, timeout=60_000):
            window.writing.write_packet(tmp_path / folder, "letter", (PLAN,))
        window.session.set_text("job.client", "Somebody")
        window.cutting.mark_outdated()
    assert window.cutting.current is None
    name = name_output(default_job(), PLAN)
    assert len((tmp_path / "shown" / name).read_text()) < len((tmp_path / "outdated" / name).read_text())


def test_stopping_writes_nothing(qtbot: QtBot, window: Window, tmp_path: Path):
    with qtbot.waitSignal(window.work.stopped, timeout=60_000):
        window.writing.write_packet(tmp_path / "out", "letter")
        window.progress.stop_button.click()
    assert not (tmp_path / "out").exists()
    assert "Nothing was written" in window.notice.text


@pytest.mark.parametrize(("choice", "leaves"), [("", False), (LEAVE, True)])
def test_leaving_while_files_are_written_is_asked_about(
    qtbot: QtBot, window: Window, tmp_path: Path, monkeypatch, choice: str, leaves: bool
):
    asked: list[str] = []
    monkeypatch.setattr("app.writing.ask", lambda _window, title, *_: asked.append(title) or choice)
    window.writing.write_packet(tmp_path / "out", "letter", (LIST,))
    assert window.close() is leaves
    assert asked == ["Still writing"]
    if not leaves:
        qtbot.waitUntil(lambda: not window.work.is_busy, timeout=60_000)
    assert (tmp_path / "out").exists() is not leaves
    assert window.writing.may_leave()
    assert len(asked) == 1


def test_what_is_done_before_the_question_is_answered_needs_no_answer(
    qtbot: QtBot, window: Window, tmp_path: Path, monkeypatch
):
    def answer_late(*_: object) -> str:
        qtbot.waitUntil(lambda: not window.work.is_busy, timeout=60_000)
        return ""

    monkeypatch.setattr("app.writing.ask", answer_late)
    window.writing.write_packet(tmp_path / "out", "letter", (LIST,))
    assert window.close()
    assert list((tmp_path / "out").iterdir())


def test_a_folder_that_refuses_is_told_and_nothing_is_lost(qtbot: QtBot, window: Window, tmp_path: Path):
    (tmp_path / "file").write_text("")
    with qtbot.waitSignal(window.work.failed, timeout=60_000):
        window.writing.write_packet(tmp_path / "file", "letter", (LIST,))
    assert "untouched" in window.notice.text


def test_an_offer_whose_photo_is_not_there_is_written_and_says_so(
    qtbot: QtBot, window: Window, tmp_path: Path
):
    corners = ((100.0, 100.0), (300.0, 100.0), (300.0, 250.0), (100.0, 250.0))
    photo = WallPhoto(400, 300, corners, 28.0, False, "gone.jpg")
    window.session.change("photo", replace(window.session.job, photo=photo))
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path / "out", "letter", (OFFER,))
    assert (tmp_path / "out" / name_output(default_job(), OFFER)).exists()
    assert "The offer has no photo" in window.notice.text
    assert str(tmp_path / "out") in window.notice.text


def test_a_second_writing_waits_for_the_first(qtbot: QtBot, window: Window, tmp_path: Path):
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path, "letter", (LIST,))
        window.write_packet()
        assert "still being written" in window.notice.text


def test_the_drawing_file_goes_where_it_is_sent(qtbot: QtBot, window: Window, tmp_path: Path):
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_drawing(tmp_path / "mine.dxf")
    assert "AC10" in (tmp_path / "mine.dxf").read_text()[:400]


def test_closing_the_window_stops_what_is_written(window: Window, tmp_path: Path, monkeypatch):
    monkeypatch.setattr("app.writing.ask", lambda *_: LEAVE)
    window.writing.write_packet(tmp_path / "out", "letter")
    assert window.close()
    assert not window.work.is_busy
    assert not (tmp_path / "out").exists()


@pytest.fixture
def dialog(qtbot: QtBot, window: Window, tmp_path: Path) -> PacketDialog:
    asked = PacketDialog(window, default_job(), tmp_path, "a3")
    qtbot.addWidget(asked)
    return asked


def test_the_question_offers_paper_folder_and_all_parts(dialog: PacketDialog, tmp_path: Path):
    assert (dialog.paper, dialog.folder) == ("a3", tmp_path)
    assert dialog.parts == PARTS


def test_the_version_of_drawing_files_is_asked_for(qtbot: QtBot, window: Window, tmp_path: Path):
    usual = PacketDialog(window, default_job(), tmp_path, "a3")
    older = PacketDialog(window, default_job(), tmp_path, "a3", "R12")
    for dialog in (usual, older):
        qtbot.addWidget(dialog)
    assert (usual.dxf_version, older.dxf_version) == ("R2010", "R12")
    usual.version_box.setCurrentIndex(1)
    assert usual.dxf_version == "R12"


@pytest.mark.parametrize(("words", "version"), [("R2010", "AC1024"), ("R12", "AC1009")])
def test_the_drawing_file_is_of_the_version_chosen_with_its_name(
    qtbot: QtBot, window: Window, tmp_path: Path, monkeypatch, words: str, version: str
):
    chosen = next(line for line in DXF_FILTERS if words in line)
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "mine 1.5"), chosen))
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.ask_drawing(tmp_path)
    assert version in (tmp_path / "mine 1.5.dxf").read_text()[:400]


def test_what_would_be_replaced_is_said_before(dialog: PacketDialog, tmp_path: Path):
    assert dialog.remark.startswith("Writes")
    (tmp_path / name_output(default_job(), LIST)).write_text("old")
    dialog.part_boxes[PACKET].click()
    assert dialog.remark == f"Replaces what is there: {name_output(default_job(), LIST)}"


def test_nothing_can_be_written_from_nothing_or_to_nowhere(dialog: PacketDialog):
    dialog.folder_edit.clear()
    assert not dialog.write_button.isEnabled()
    dialog.folder_edit.setText("/tmp")
    assert dialog.write_button.isEnabled()
    for box in dialog.part_boxes.values():
        box.setChecked(False)
    assert not dialog.write_button.isEnabled()


def test_paper_and_folder_are_remembered(
    qtbot: QtBot, window: Window, tmp_path: Path, settings: Settings, monkeypatch
):
    monkeypatch.setattr(PacketDialog, "exec", lambda _self: 1)
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.ask_packet(tmp_path / "first")
    assert settings.read("packet folder", "") == str(tmp_path / "first")
    assert settings.read("paper", "") == "letter"


def _printed(window: Window) -> dict[str, int]:
    return {each.item: each.count for each in window.session.job.purchase.printed}


def _plan_to_the_end(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.cutting.planned, timeout=30_000):
        window.cutting.ask()
    qtbot.waitUntil(lambda: not window.cutting.planning.is_busy, timeout=60_000)


def test_what_the_written_list_asks_for_is_noted_and_makes_no_new_plan(
    qtbot: QtBot, window: Window, tmp_path: Path
):
    _plan_to_the_end(qtbot, window)
    plan = window.cutting.plan
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path, "letter", (BUYING,))
    assert _printed(window) == count_printed(list_buying(plan))
    assert window.cutting.current is plan
    assert "Nothing changed since this list was last printed" in window.tray.buying.words.text()
    window.undo()
    assert not window.session.job.purchase.printed


def test_a_cut_list_alone_prints_no_buying_list(qtbot: QtBot, window: Window, tmp_path: Path):
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path, "letter", (LIST, PLAN))
    assert not window.session.job.purchase.printed


def test_a_list_that_could_not_be_written_is_not_noted(qtbot: QtBot, window: Window, tmp_path: Path):
    (tmp_path / "file").write_text("")
    with qtbot.waitSignal(window.work.failed, timeout=60_000):
        window.writing.write_packet(tmp_path / "file", "letter", (BUYING,))
    assert not window.session.job.purchase.printed


def test_another_job_that_was_opened_meanwhile_gets_no_note(qtbot: QtBot, window: Window, tmp_path: Path):
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path, "letter", (BUYING,))
        window.files.open_example("bedroom")
    assert not window.session.job.purchase.printed
    assert not window.session.is_unsaved


def test_what_changed_since_the_list_was_printed_stands_on_each_row(
    qtbot: QtBot, window: Window, tmp_path: Path
):
    _plan_to_the_end(qtbot, window)
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path, "letter", (BUYING,))
    job = window.session.job
    (first, *others) = job.purchase.printed
    printed = (replace(first, count=first.count + 1), Printed("1x2 old oak, 8'-0\"", 3), *others[1:])
    window.session.change("print", replace(job, purchase=replace(job.purchase, printed=printed)))
    model = window.tray.buying.table.model()
    column = HEADINGS.index("Since printed")
    said = [model.index(row, column).data() for row in range(model.rowCount())]
    assert said[0] == "1 fewer"
    assert said.count("new") == len(others[:1])
    assert said[-1] == "gone, 3 before"
    assert "1x2 old oak" in model.index(model.rowCount() - 1, 1).data()


def test_a_folder_that_cannot_be_written_into_is_told_before_anything_is_made(
    dialog: PacketDialog, tmp_path: Path, monkeypatch
):
    (tmp_path / "file").write_text("")
    dialog.folder_edit.setText(str(tmp_path / "file" / "deeper"))
    assert dialog.remark == f"{tmp_path / 'file'} is a file, not a folder."
    assert not dialog.write_button.isEnabled()
    dialog.folder_edit.setText(str(tmp_path / "new" / "one"))
    assert dialog.remark.startswith("Makes the folder. Writes ")
    assert dialog.write_button.isEnabled()
    monkeypatch.setattr(os, "access", lambda *_: False)
    dialog.folder_edit.setText(str(tmp_path / "other"))
    assert dialog.remark == f"Nothing may be written in {tmp_path}."
    assert not dialog.write_button.isEnabled()


def test_many_files_are_told_by_the_first_and_how_many_more(qtbot: QtBot, window: Window, tmp_path: Path):
    lists = tuple(LISTS[:6])
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path, "letter", lists)
    assert name_output(window.session.job, lists[0]) in window.notice.text
    assert window.notice.text.endswith("and 4 more")


def test_the_keyboard_goes_back_to_where_it_was_when_writing_is_stopped(
    qtbot: QtBot, window: Window, tmp_path: Path
):
    window.show()
    window.fields.focus_path("opening.height")
    before = window.focusWidget()
    with qtbot.waitSignal(window.work.stopped, timeout=60_000):
        window.writing.write_packet(tmp_path / "out", "letter")
        window.progress.stop_button.setFocus()
        window.progress.stop_button.click()
    assert window.focusWidget() is before


def test_what_the_job_has_nothing_of_is_told_and_no_file_is_written(
    qtbot: QtBot, window: Window, tmp_path: Path
):
    texts = [
        ("bed_mould.on", "no"),
        ("column.kind", "plain"),
        ("frieze.kind", "plain"),
        ("facing.proud", "0"),
    ]
    window.session.open(with_texts(default_job(), [*texts, ("cord.on", "no")]), None)
    with qtbot.waitSignal(window.work.done, timeout=60_000):
        window.writing.write_packet(tmp_path / "out", "letter", (TEMPLATES,))
    assert "Nothing was written" in window.notice.text
    assert not list(tmp_path.glob("out/*"))
