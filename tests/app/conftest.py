"""Windows for the tests of app/: offscreen, with settings and recovery in a folder of their own."""

from __future__ import annotations

import os
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from pytestqt.qtbot import QtBot

from app.settings import Settings
from app.theme import Ground, dress, load_typeface
from app.window import Window


@pytest.fixture(scope="session", autouse=True)
def application(qapp):
    """There before any picture makes one of its own, which would be no good for windows."""
    return qapp


@pytest.fixture(scope="session")
def dressed(qapp):
    """The application in the program's own type and colours."""
    load_typeface()
    dress(qapp, Ground.LIGHT)
    return qapp


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    return Settings(tmp_path / "settings.ini")


@pytest.fixture
def window(qtbot: QtBot, dressed, settings: Settings, tmp_path: Path) -> Window:
    """A window that has been seen, drawn and made active."""
    shown = Window(settings, tmp_path / "unsaved")
    qtbot.addWidget(shown, before_close_func=_settle)
    with qtbot.waitExposed(shown):
        shown.show()
    shown.activateWindow()
    qtbot.waitActive(shown)
    shown.begin()
    return shown


def _settle(window: Window) -> None:
    """Leave no work and no question behind."""
    window.wind_up()
    window.shaping.put_back()
    window.session.mark_saved(Path("closed.mantel"))
    window.cutting.stock.session.mark_saved("")
