"""Nothing that is asked of the window holds it up: between two turns of its loop never 100 ms of own work.

Counted in processor time of the window's thread, so that a busy machine tells the same. What is loaded when
it is first used is used once before.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialog
from pytestqt.qtbot import QtBot

from app.rooms import TITLES
from app.view_bar import CHOICES
from app.window import Window

MOST = 0.1
LARGEST = "gas"
"""The shipped job with the most boards."""


class Heart:
    """Beats at every turn of the loop and remembers the longest stretch of work between two beats."""

    def __init__(self) -> None:
        self.longest, self._last = 0.0, time.thread_time()
        self._timer = QTimer()
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._beat)
        self._timer.start()

    def _beat(self) -> None:
        now = time.thread_time()
        self.longest, self._last = max(self.longest, now - self._last), now

    def stop(self) -> None:
        self._beat()
        self._timer.stop()


@contextmanager
def _watched(qtbot: QtBot, work: float = 0.25) -> Iterator[Heart]:
    qtbot.wait(10)
    heart = Heart()
    yield heart
    qtbot.wait(round(work * 1000))
    heart.stop()


def _hold(qtbot: QtBot, act: Callable[[], object], seconds: float = 0.25) -> float:
    with _watched(qtbot, seconds) as heart:
        act()
    return heart.longest


def test_a_large_job_is_opened_without_a_stop(qtbot: QtBot, window: Window):
    window.files.open_example("brick")
    qtbot.wait(200)
    assert _hold(qtbot, lambda: window.files.open_example(LARGEST)) < MOST


def test_no_list_of_the_tray_stops_the_window(qtbot: QtBot, window: Window):
    window.files.open_example(LARGEST)
    for page in range(len(TITLES)):
        window.tray.turn_to(page)
        qtbot.wait(150)
    held = {
        title: _hold(qtbot, lambda page=page: window.tray.turn_to(page)) for page, title in enumerate(TITLES)
    }
    assert {title: round(t, 3) for title, t in held.items() if t >= MOST} == {}


def test_no_view_and_no_mark_stops_the_window(qtbot: QtBot, window: Window):
    window.files.open_example(LARGEST)
    qtbot.wait(200)
    acts = {words: lambda views=views: window.choose_views(views) for words, views in CHOICES}
    acts |= {"keep-out": window.bar.clearance_button.toggle, "marks": window.bar.marks_button.toggle}
    held = {words: _hold(qtbot, act) for words, act in acts.items()}
    assert {words: round(t, 3) for words, t in held.items() if t >= MOST} == {}


def test_no_page_that_explains_stops_the_window(qtbot: QtBot, window: Window):
    window.files.open_example("too-close")
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    rows = window.tray.findings.model()
    for row in (0, 0, rows.rowCount() - 1):
        window.tray.findings.setCurrentIndex(rows.index(row, 0))
        held = _hold(qtbot, window.explain, 0.1)
        for shown in QApplication.topLevelWidgets():
            if type(shown).__name__ == "ExplainedWindow":
                shown.close()
    assert held < MOST


def test_no_measurement_stops_the_window(qtbot: QtBot, window: Window):
    window.files.open_example(LARGEST)
    qtbot.wait(200)
    assert _hold(qtbot, window.measure) < MOST
    assert _hold(qtbot, window.measuring.skip) < MOST


def test_no_picture_of_a_field_stops_the_window(qtbot: QtBot, window: Window):
    window.files.open_example(LARGEST)
    qtbot.wait(200)
    for path in ("opening.width", "column.width", "frieze.height", "shelf.kind", "nailer.width"):
        assert _hold(qtbot, lambda path=path: window.fields.focus_path(path), 0.1) < MOST, path


def test_the_pages_to_be_printed_are_set_out_beside_the_window(qtbot: QtBot, window: Window):
    window.files.open_example("brick")
    qtbot.wait(200)
    hearts: list[Heart] = []

    def close() -> None:
        hearts[0].stop()
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, QDialog)
        dialog.reject()

    def begin() -> None:
        hearts.append(Heart())
        QTimer.singleShot(2500, close)

    QTimer.singleShot(300, begin)
    window.show_print()
    assert hearts[0].longest < MOST
