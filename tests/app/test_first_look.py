"""The sheet is seen before the window is whole, and nothing on it moves when the rest comes."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect
from pytestqt.qtbot import QtBot

from app.demo import read_demo
from app.files import save_job_file
from app.first_look import show_sheet
from app.settings import Settings
from app.window import LOW, Window
from app.working import FirstSight, Wish, see_first
from model.job import Job
from model.options import add_option


class Second:
    """In place of the second process: what it would answer, at once."""

    def __init__(self, job: Job | None) -> None:
        self._job = job
        self._wish: Wish | None = None
        self.answers_from, self._write = os.pipe()
        os.write(self._write, b"an answer")

    def ask_to_see(self, _name: str, wish: Wish) -> None:
        self._wish = wish

    def take_sight(self) -> FirstSight | None:
        return see_first(self._job, self._wish) if self._job and self._wish else None

    def close(self) -> None:
        os.close(self.answers_from)
        os.close(self._write)


@pytest.fixture
def bare(qtbot: QtBot, dressed, settings: Settings, tmp_path: Path) -> Window:
    window = Window(settings, tmp_path / "unsaved", bare=True)
    qtbot.addWidget(window, before_close_func=_settle)
    return window


def _settle(window: Window) -> None:
    window.finish()
    window.wind_up()


def _look(window: Window, job: Job | None) -> None:
    second = Second(job)
    show_sheet(window, second, "a name")  # type: ignore[arg-type]
    second.close()


def _place(window: Window) -> QRect:
    return QRect(window.canvas.mapTo(window, QPoint(0, 0)), window.canvas.size())


def _drawings(window: Window) -> list[object]:
    return [view.drawing for view in window.canvas.views]


@pytest.mark.parametrize(
    "kept",
    [{}, {"folded": True}, {"list_folded": True}, {"page": 4}, {"views": ["plan"]}],
    ids=lambda kept: " ".join(kept) or "nothing",
)
def test_the_sheet_and_what_is_drawn_on_it_stay_where_they_were_first_seen(
    dressed, settings: Settings, tmp_path: Path, qtbot: QtBot, kept: dict[str, object]
) -> None:
    for name, value in kept.items():
        settings.write(name, value)
    window = Window(settings, tmp_path / "unsaved", bare=True)
    qtbot.addWidget(window, before_close_func=_settle)
    job = read_demo("brick")
    _look(window, job)
    seen, drawings, place = _place(window), _drawings(window), window.canvas.place
    assert drawings
    window.finish()
    window.session.open(job, None)
    window.begin()
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    if "page" not in kept:  # a list that is no use in a slit takes some of the height
        assert (_place(window), window.canvas.place) == (seen, place)
        assert _drawings(window) == drawings


def test_a_job_with_options_has_their_row_from_the_first(bare: Window, qtbot: QtBot) -> None:
    job = add_option(read_demo("brick"))
    _look(bare, job)
    seen, place = _place(bare), bare.canvas.place
    bare.finish()
    bare.session.open(job, None)
    bare.begin()
    qtbot.waitUntil(lambda: bool(bare.drafting.findings))
    assert bare.options.bar.isVisible()
    assert (_place(bare), bare.canvas.place) == (seen, place)


def test_a_low_window_waits_for_no_picture_of_a_sheet_that_its_tray_covers(bare: Window) -> None:
    bare.resize(683, LOW - 90)
    _look(bare, read_demo("brick"))
    assert bare.canvas.isHidden()
    assert not bare.canvas.views


def test_what_cannot_be_read_leaves_the_sheet_empty_and_is_told_by_the_whole_window(
    bare: Window, tmp_path: Path
) -> None:
    broken = tmp_path / "broken.mantel"
    broken.write_text("{")
    _look(bare, None)
    assert not bare.canvas.views
    bare.finish()
    bare.files.open(broken)
    bare.begin()
    assert bare.canvas.views
    assert bare.notice.isVisible()


def test_a_second_process_that_is_gone_is_done_without(bare: Window) -> None:
    class Gone(Second):
        def ask_to_see(self, _name: str, _wish: Wish) -> None:
            os.close(self._write)
            self._write = os.open(os.devnull, os.O_WRONLY)

    gone = Gone(None)
    show_sheet(bare, gone, "a name")  # type: ignore[arg-type]
    gone.close()
    assert bare.isVisible()
    assert not bare.canvas.views


def test_a_bare_window_does_not_close_before_it_is_whole(bare: Window) -> None:
    bare.show()
    assert not bare.close()
    bare.finish()
    assert bare.close()


def test_a_whole_window_is_built_once(bare: Window) -> None:
    bare.finish()
    fields = bare.fields
    bare.finish()
    assert bare.fields is fields
    assert not bare.is_bare


def test_the_tab_key_goes_through_the_list_before_the_sheet(window: Window) -> None:
    parts = [window.fields, window.bar, window.options.bar, window.notice, window.canvas, window.tray]
    met, at = [], window.fields.nextInFocusChain()
    while at is not window.fields:
        met += [part for part in parts if part is at or part.isAncestorOf(at)]
        at = at.nextInFocusChain()
    assert list(dict.fromkeys(met)) == parts


def test_the_second_process_reads_a_file_by_its_name(tmp_path: Path) -> None:
    from app.ahead import _read_named

    job = read_demo("gas")
    save_job_file(tmp_path / "gas.mantel", job)
    assert _read_named(str(tmp_path / "gas.mantel")) == job
    assert _read_named("gas") == job
    (tmp_path / "broken.mantel").write_text("{")
    for name in ("broken.mantel", "nowhere.mantel", "."):
        assert _read_named(str(tmp_path / name)) is None
