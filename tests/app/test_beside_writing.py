"""Labels and the measuring sheet are asked for and written, from the window and the command line."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from app.asking import REPLACE
from app.cli import REFUSED, main
from app.label_dialog import OWN, LabelDialog
from app.window import Window
from model.units import FEET_INCHES_16


@pytest.fixture
def dialog(qtbot: QtBot) -> LabelDialog:
    dialog = LabelDialog(None, 53, FEET_INCHES_16)
    qtbot.addWidget(dialog)
    return dialog


def test_the_dialog_says_how_many_sheets_it_takes(dialog: LabelDialog):
    assert dialog.remark.startswith("53 labels on 2 sheets")
    dialog.start_box.setValue(9)
    assert dialog.remark.startswith("53 labels on 3 sheets")
    assert dialog.picture.start == 9


def test_a_size_of_ones_own_is_read_and_what_is_wrong_with_it_said(dialog: LabelDialog):
    assert not dialog.own_edits["size"].isEnabled()
    dialog.size_box.setCurrentIndex(dialog.size_box.findData(OWN))
    assert dialog.own_edits["size"].isEnabled()
    dialog.own_edits["grid"].setText("3 x 40")
    assert "page" in dialog.remark
    assert not dialog.write_button.isEnabled()
    dialog.own_edits["grid"].setText("2 x 4")
    assert dialog.write_button.isEnabled()
    assert dialog.read_stock().count == 8


def test_labels_and_measuring_sheet_are_written_from_the_menu(
    window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    monkeypatch.setattr(LabelDialog, "exec", lambda self: 1)
    for ask, name in ((window.beside.ask_labels, "l.pdf"), (window.beside.ask_measuring, "m.pdf")):
        monkeypatch.setattr(window.beside, "_ask", lambda *_, name=name: tmp_path / name)
        ask()
        assert (tmp_path / name).read_bytes().startswith(b"%PDF")
        assert name in window.notice.text


def test_a_folder_that_is_not_there_is_told(window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr(window.beside, "_ask", lambda *_: tmp_path / "no" / "m.pdf")
    window.beside.ask_measuring()
    assert "no" in window.notice.text
    assert not (tmp_path / "no").exists()


def test_a_name_with_a_point_in_it_is_kept_and_what_has_it_is_asked_about(
    window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    there = tmp_path / "Site 1.5.pdf"
    there.write_bytes(b"somebody's")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "Site 1.5"), ""))
    for choice, is_replaced in (("", False), (REPLACE, True)):
        monkeypatch.setattr("app.asking.ask", lambda *_, choice=choice: choice)
        window.beside.ask_measuring()
        assert there.read_bytes().startswith(b"%PDF") is is_replaced
    assert list(tmp_path.glob("*.pdf")) == [there]


def test_commands_write_both(tmp_path: Path):
    labels, sheet = tmp_path / "l.pdf", tmp_path / "m.pdf"
    assert main(["labels", "brick", "--out", str(labels), "--size", "3x2", "--grid", "2x4", "--outline"]) == 0
    assert main(["measuring", "--out", str(sheet), "--paper", "a4"]) == 0
    assert labels.read_bytes().startswith(b"%PDF")
    assert sheet.read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    "arguments",
    [
        ["labels", "brick", "--out", "x.txt"],
        ["labels", "brick", "--out", "x.pdf", "--labels", "large"],
        ["labels", "brick", "--out", "x.pdf", "--labels", "a4-21", "--size", "2x1"],
        ["labels", "brick", "--out", "x.pdf", "--start", "31"],
        ["measuring", "--out", "x.pdf", "--paper", "a9"],
    ],
)
def test_what_cannot_be_is_refused_and_nothing_written(arguments, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(arguments) == REFUSED
    assert capsys.readouterr().err
    assert not list(tmp_path.iterdir())


def test_templates_are_written_on_the_paper_asked_for(tmp_path: Path):
    out = tmp_path / "templates.pdf"
    assert main(["templates", "demo", "--out", str(out), "--paper", "a4"]) == 0
    assert out.read_bytes().startswith(b"%PDF")


def test_a_job_without_anything_to_mark_out_gets_no_templates(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    out = tmp_path / "templates.pdf"
    texts = ["bed_mould.on=no", "column.kind=plain", "frieze.kind=plain", "facing.proud=0", "cord.on=no"]
    settings = [word for text in texts for word in ("--set", text)]
    assert main(["templates", "bedroom", "--out", str(out), *settings]) == REFUSED
    assert "template" in capsys.readouterr().err
    assert not out.exists()
