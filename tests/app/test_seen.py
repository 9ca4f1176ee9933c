"""The pages for the homeowner open from the menu, follow the job, say what they are, go with the window."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.window import Window
from model.options import add_option
from tests.app.test_accessible import _list_actions, _list_mute, _list_unreached

CANVASES = ("PhotoCanvas", "LikenessCanvas")
"""Drawn by the program itself; their names and descriptions say how keys move what is on them."""


def command(window: Window, words: str) -> QAction:
    return next(a for a in _list_actions(window.menuBar()) if words in a.text().replace("&", ""))


def check_spoken(qtbot: QtBot, page: QWidget) -> None:
    assert [mute for mute in _list_mute(page) if not mute.startswith(CANVASES)] == []
    assert _list_unreached(qtbot, page) == []


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    path = tmp_path / "wall.jpg"
    Image.new("RGB", (1200, 900), (180, 180, 170)).save(path)
    return path


def test_the_picture_opens_by_its_command_follows_the_job_and_closes_with_the_window(
    qtbot: QtBot, window: Window
):
    command(window, "Picture for the homeowner").trigger()
    page = window.seen.show_page
    assert page is not None
    qtbot.waitActive(page)
    check_spoken(qtbot, page)
    window.session.set_text("shelf.height", "55")
    shelf = next(control for control in page.controls if control.size_.path == "shelf.height")
    assert "55" in shelf.value.text() or "4'" in shelf.value.text()
    window.seen.wait()
    assert window.seen.show_page is None


def test_turning_through_options_is_one_step_as_it_is_in_the_window(qtbot: QtBot, window: Window):
    window.session.change("another", add_option(window.session.job))
    steps, place = window.session.stack.count(), window.session.job.options.place
    page = window.seen.show_picture()
    qtbot.mouseClick(page.after, Qt.MouseButton.LeftButton)
    assert window.session.job.options.place != place
    qtbot.mouseClick(page.after, Qt.MouseButton.LeftButton)
    assert window.session.job.options.place == place
    qtbot.mouseClick(page.after, Qt.MouseButton.LeftButton)
    assert window.session.stack.count() == steps + 1
    window.seen.wait()


def test_the_photo_page_opens_by_its_command_and_every_control_is_reached(
    qtbot: QtBot, window: Window, photo: Path
):
    command(window, "On your own wall").trigger()
    wall = window.seen.wall
    assert wall is not None
    assert wall.page is not None
    qtbot.waitActive(wall.page)
    check_spoken(qtbot, wall.page)
    assert wall.take(photo)
    check_spoken(qtbot, wall.page)
    wall.page.close()
    assert wall.page is None


def test_the_likeness_page_opens_by_its_command_and_every_control_is_reached(
    qtbot: QtBot, window: Window, photo: Path
):
    command(window, "From a picture you like").trigger()
    likening = window.seen.likening
    assert likening is not None
    assert likening.page is not None
    qtbot.waitActive(likening.page)
    check_spoken(qtbot, likening.page)
    assert likening.take(photo)
    check_spoken(qtbot, likening.page)
    likening.page.close()
    assert likening.page is None
