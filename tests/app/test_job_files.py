"""No job is written over that nobody asked about: endings, names with points, files changed elsewhere."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QStandardPaths
from PySide6.QtWidgets import QFileDialog

from app.asking import REPLACE, with_ending
from app.files import open_job_file, read_job_file, save_job_file
from app.job_files import KINDS, MOST_FAULTS
from app.recovery import LeftBehind, list_left_behind
from app.window import Window
from model.job import Job, default_job, read_value, with_value


def _other_job() -> Job:
    return with_value(default_job(), "opening.width", 50.0)


def _choose(monkeypatch, path: Path) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", staticmethod(lambda *_: (str(path), "")))


def _answer(monkeypatch, choice: str) -> list[str]:
    asked: list[str] = []
    monkeypatch.setattr("app.asking.ask", lambda _window, title, *_: asked.append(title) or choice)
    return asked


@pytest.mark.parametrize(
    ("typed", "saved"),
    [("smith", "smith.mantel"), ("Smith rev 1.5", "Smith rev 1.5.mantel"), ("Smith.MANTEL", "Smith.MANTEL")],
)
def test_our_ending_is_added_where_it_is_missing(typed: str, saved: str):
    assert with_ending(Path(typed), "", KINDS) == Path(saved)


@pytest.mark.parametrize(("choice", "width"), [("", 50.0), ("Replace it", 36.0)])
def test_a_job_whose_name_was_typed_without_its_ending_is_replaced_only_when_asked(
    window: Window, tmp_path: Path, monkeypatch, choice: str, width: float
):
    there = tmp_path / "smith.mantel"
    save_job_file(there, _other_job())
    _choose(monkeypatch, tmp_path / "smith")
    asked = _answer(monkeypatch, choice)
    assert window.files.save_as() is bool(choice)
    assert asked == ["Replace a file"]
    assert read_value(read_job_file(there), "opening.width") == width


@pytest.mark.parametrize(("choice", "width"), [("", 50.0), ("Replace it", 44.0), ("Save as…", 50.0)])
def test_a_file_changed_elsewhere_is_written_over_only_when_asked(
    window: Window, tmp_path: Path, monkeypatch, choice: str, width: float
):
    mine = tmp_path / "mine.mantel"
    save_job_file(mine, default_job())
    assert window.files.open(mine)
    window.session.set_text("opening.width", "44")
    save_job_file(mine, _other_job())
    _choose(monkeypatch, tmp_path / "mine too")
    asked = _answer(monkeypatch, choice)
    assert window.files.save() is bool(choice)
    assert asked == ["Changed elsewhere"]
    assert read_value(read_job_file(mine), "opening.width") == width
    assert (tmp_path / "mine too.mantel").exists() is (choice == "Save as…")


def test_a_file_only_this_window_wrote_is_saved_without_a_question(
    window: Window, tmp_path: Path, monkeypatch
):
    mine = tmp_path / "mine.mantel"
    save_job_file(mine, default_job())
    assert window.files.open(mine)
    asked = _answer(monkeypatch, "")
    for width in ("44", "45"):
        window.session.set_text("opening.width", width)
        assert window.files.save()
    assert asked == []


def test_a_job_that_lacks_values_opens_and_the_notice_says_which(window: Window, tmp_path: Path):
    (tmp_path / "bare.mantel").write_text('{"mantelwright": 1}')
    assert window.files.open(tmp_path / "bare.mantel")
    assert window.session.job == default_job()
    assert "values of a job are not in it and have their defaults" in window.notice.text
    save_job_file(tmp_path / "whole.mantel", default_job())
    assert window.files.open(tmp_path / "whole.mantel")
    assert window.notice.text == ""


def test_dialogs_start_in_a_folder_that_is_there(window: Window, tmp_path: Path, monkeypatch):
    documents = tmp_path / "Documents"
    monkeypatch.setattr(QStandardPaths, "writableLocation", staticmethod(lambda _where: str(documents)))
    assert window.files.folder == Path.home()
    documents.mkdir()
    assert window.files.folder == documents
    window.settings.write("folder", str(tmp_path))
    assert window.files.folder == tmp_path


def _leave_behind(window: Window, tmp_path: Path) -> LeftBehind:
    """What is open in `window`, as it is found after the program was killed."""
    window.recovery.keep()
    left = tmp_path / "left"
    left.mkdir()
    (left / "9-9.unsaved").write_bytes(window.recovery.kept_in.read_bytes())
    (found,) = list_left_behind(left)
    return found


@pytest.mark.parametrize("is_changed", [False, True])
def test_work_taken_up_after_a_crash_asks_before_a_save_only_where_its_file_was_changed_since(
    window: Window, tmp_path: Path, monkeypatch, is_changed: bool
):
    mine = tmp_path / "mine.mantel"
    save_job_file(mine, default_job())
    assert window.files.open(mine)
    window.session.set_text("opening.width", "44")
    work = _leave_behind(window, tmp_path)
    window.session.mark_saved(mine)
    window.files.open_example("bedroom")
    if is_changed:
        save_job_file(mine, _other_job())
    asked = _answer(monkeypatch, REPLACE)
    assert window.files.take_up(work)
    assert window.files.save()
    assert asked == ["Changed elsewhere"] * is_changed
    assert read_value(read_job_file(mine), "opening.width") == 44
    work.discard()


def test_a_file_written_while_it_is_read_counts_as_changed_elsewhere(
    window: Window, tmp_path: Path, monkeypatch
):
    mine = tmp_path / "mine.mantel"
    save_job_file(mine, default_job())

    def read_and_change(path: Path):
        found = open_job_file(path)
        save_job_file(path, _other_job())
        return found

    monkeypatch.setattr("app.job_files.open_job_file", read_and_change)
    assert window.files.open(mine)
    asked = _answer(monkeypatch, "")
    window.session.set_text("opening.width", "44")
    assert not window.files.save()
    assert asked == ["Changed elsewhere"]


def test_a_save_that_fails_leaves_the_work_and_offers_another_place(
    window: Window, tmp_path: Path, monkeypatch
):
    (tmp_path / "stick").mkdir()
    mine = tmp_path / "stick" / "mine.mantel"
    save_job_file(mine, default_job())
    assert window.files.open(mine)
    window.session.set_text("opening.width", "44")
    mine.unlink()
    mine.parent.rmdir()
    assert not window.files.save()
    assert window.session.is_unsaved
    assert "no such file or folder" in window.notice.text
    assert "Your work is still here" in window.notice.text
    _choose(monkeypatch, tmp_path / "elsewhere")
    window.notice.buttons[0].click()
    assert read_value(read_job_file(tmp_path / "elsewhere.mantel"), "opening.width") == 44
    assert not window.session.is_unsaved
    assert window.session.path == tmp_path / "elsewhere.mantel"


def test_a_job_is_opened_from_the_dialog_and_leaving_it_opens_nothing(
    window: Window, tmp_path: Path, monkeypatch
):
    save_job_file(tmp_path / "mine.mantel", _other_job())
    names = iter([("", ""), (str(tmp_path / "mine.mantel"), "")])
    monkeypatch.setattr(QFileDialog, "getOpenFileName", staticmethod(lambda *_: next(names)))
    window.files.ask_and_open()
    assert window.session.path is None
    window.files.ask_and_open()
    assert window.session.job == _other_job()
    assert window.settings.list_recent() == ((tmp_path / "mine.mantel").resolve(),)


def test_a_file_with_many_faults_names_the_first_and_counts_the_rest(window: Window, tmp_path: Path):
    path = tmp_path / "odd.mantel"
    path.write_text(
        '{"mantelwright": 1, "opening": {"width": "x", "height": "x"}, "room": "x", "facing": 3, '
        '"shelf": {"depth": [], "height": {}, "thickness": "no"}}'
    )
    before, text = window.session.job, path.read_text()
    assert not window.files.open(path)
    assert window.session.job is before
    assert path.read_text() == text
    lines = window.notice.text.splitlines()
    assert lines[0].endswith("was not opened, and nothing in it was changed.")
    assert len(lines) == MOST_FAULTS + 2
    assert lines[-1].endswith(" more")


def test_a_file_that_is_gone_is_written_anew_and_that_is_told(window: Window, tmp_path: Path):
    mine = tmp_path / "mine.mantel"
    save_job_file(mine, default_job())
    assert window.files.open(mine)
    window.session.set_text("opening.width", "44")
    mine.unlink()
    assert window.files.save()
    assert "no longer where it was opened" in window.notice.text
    assert read_value(read_job_file(mine), "opening.width") == 44
    window.session.set_text("opening.width", "45")
    assert window.files.save()
    assert window.notice.text == ""
