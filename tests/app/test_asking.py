"""Questions before a file goes: what is answered is done, leaving them does nothing, none piles up."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from app.asking import ELSEWHERE, REPLACE, ask_over_changes, ask_where, with_ending
from app.label_dialog import LabelDialog
from app.leaving import may_leave
from app.packet_dialog import PacketDialog
from app.print_window import PrintWindow
from app.window import Window

KINDS = {"Lists (*.yard)": (".yard",), "Pictures (*.jpg)": (".jpg", ".jpeg")}


@pytest.fixture
def shown(qtbot: QtBot, dressed) -> QWidget:
    shown = QWidget()
    qtbot.addWidget(shown)
    shown.show()
    return shown


def _press(qtbot: QtBot, word: str) -> None:
    """Once the question stands there; without a word, Escape."""

    def press() -> None:
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        if word:
            next(button for button in box.buttons() if button.text() == word).click()
        else:
            qtbot.keyClick(box, Qt.Key.Key_Escape)

    QTimer.singleShot(0, press)


@pytest.mark.parametrize(
    ("word", "choice"), [(REPLACE, REPLACE), (ELSEWHERE, ELSEWHERE), ("Stay", ""), ("", "")]
)
def test_what_is_answered_is_told_and_leaving_the_question_changes_nothing(
    qtbot: QtBot, shown: QWidget, word: str, choice: str
):
    _press(qtbot, word)
    assert ask_over_changes(shown, Path("yard.yard"), "stock list") == choice
    qtbot.waitUntil(lambda: not shown.findChildren(QMessageBox))


@pytest.mark.parametrize(
    ("word", "may", "saves"),
    [("Save", True, 1), ("Leave without saving", True, 0), ("Stay", False, 0), ("", False, 0)],
)
def test_unsaved_work_goes_only_when_that_is_said(
    qtbot: QtBot, shown: QWidget, word: str, may: bool, saves: int
):
    saved: list[bool] = []
    _press(qtbot, word)
    assert may_leave(shown, "Unsaved work", "There is some.", lambda: not saved.append(True)) is may
    assert len(saved) == saves
    qtbot.waitUntil(lambda: not shown.findChildren(QMessageBox))


def test_a_save_that_fails_lets_nothing_go(qtbot: QtBot, shown: QWidget):
    _press(qtbot, "Save")
    assert not may_leave(shown, "Unsaved work", "There is some.", lambda: False)


@pytest.mark.parametrize(
    ("name", "kind", "became"),
    [
        ("mine", "Pictures (*.jpg)", "mine.jpg"),
        ("mine", "", "mine.yard"),
        ("mine.JPEG", "Lists (*.yard)", "mine.JPEG"),
        ("mine 1.5", "Lists (*.yard)", "mine 1.5.yard"),
    ],
)
def test_a_name_gets_the_ending_of_its_kind_where_it_has_none(name: str, kind: str, became: str):
    assert with_ending(Path(name), kind, KINDS) == Path(became)


@pytest.mark.parametrize(("word", "is_there"), [(REPLACE, True), ("Stay", False)])
def test_a_file_by_the_name_that_the_typed_one_became_is_asked_about(
    qtbot: QtBot, shown: QWidget, tmp_path: Path, monkeypatch, word: str, is_there: bool
):
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "mine"), ""))
    path = tmp_path / "mine.yard"
    assert ask_where(shown, "Save", tmp_path, KINDS) == (path, "")
    path.write_bytes(b"")
    _press(qtbot, word)
    assert (ask_where(shown, "Save", tmp_path, KINDS) == (path, "")) is is_there
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    assert ask_where(shown, "Save", tmp_path, KINDS) == (path, "")  # the dialog itself has asked
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: ("", ""))
    assert ask_where(shown, "Save", tmp_path, KINDS) is None


def test_dialogs_that_were_left_are_gone_with_all_they_held(
    qtbot: QtBot, window: Window, tmp_path: Path, monkeypatch
):
    dialogs, seen = (PrintWindow, PacketDialog, LabelDialog), []
    for dialog in dialogs:
        monkeypatch.setattr(dialog, "exec", lambda self: seen.append(type(self)) or self.reject())
    window.show_print()
    window.writing.ask_packet(tmp_path)
    window.beside.ask_labels()
    assert tuple(seen) == dialogs
    qtbot.waitUntil(lambda: not any(window.findChildren(dialog) for dialog in dialogs))
