"""Unsaved changes of the stock list outlive the program as those of a job do."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from pathlib import Path

import pytest
from PySide6.QtCore import QLockFile
from pytestqt.qtbot import QtBot

from app.asking import REPLACE
from app.recovery import list_left_behind
from app.settings import Settings
from app.stock_lists import read_shipped_list, read_stock_named, save_stock_list
from app.stock_recovery import LeftList, list_left_lists
from app.telling_kept import tell_kept_list
from app.window import Window
from model.cutting.stock_list import StockList

EXAMPLE = read_shipped_list("example")


def _priced(stock_list: StockList, *prices: int) -> StockList:
    rows = tuple(replace(row, price=price) for row, price in zip(stock_list.sold, prices, strict=False))
    return replace(stock_list, sold=rows + stock_list.sold[len(prices) :])


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A list of one's own."""
    path = tmp_path / "yard.yard"
    save_stock_list(path, EXAMPLE)
    return path


@pytest.fixture
def kept(window: Window, path: Path) -> Path:
    """What is kept of two new prices in it."""
    stock = window.cutting.stock
    assert stock.use(str(path))
    stock.session.change("prices", _priced(EXAMPLE, 111, 222))
    window.keep_unsaved()
    found = window.stock_recovery.kept_in
    assert found is not None
    return found


def _reopen(qtbot: QtBot, kept: Path, tmp_path: Path, settings: Settings) -> Window:
    """Another window, which finds `kept` as a killed program leaves it."""
    left = tmp_path / "left"
    left.mkdir()
    (left / "9-9.unsaved-list").write_bytes(kept.read_bytes())

    def settle(gone: Window) -> None:
        gone.cutting.stock.session.mark_saved("")
        gone.wind_up()

    other = Window(settings, left)
    qtbot.addWidget(other, before_close_func=settle)
    other.show()
    other.begin()
    qtbot.waitUntil(lambda: "stock list" in other.notice.text)
    return other


def test_prices_of_a_program_that_died_are_offered_and_taken_up_as_unsaved(
    qtbot: QtBot, kept: Path, path: Path, tmp_path: Path, settings: Settings
):
    other = _reopen(qtbot, kept, tmp_path, settings)
    assert "“yard”" in other.notice.text
    assert other.notice.text.endswith("Changed or new: 2\N{NO-BREAK SPACE}rows.")
    other.notice.buttons[0].click()
    stock = other.cutting.stock
    assert stock.session.stock_list == _priced(EXAMPLE, 111, 222)
    assert stock.session.is_unsaved
    assert other.cutting.stock_window.isWindowModified()
    assert not (tmp_path / "left" / "9-9.unsaved-list").exists()
    assert stock.save()
    assert read_stock_named(str(path)) == _priced(EXAMPLE, 111, 222)
    assert not stock.session.is_unsaved


def test_a_list_changed_since_is_not_written_over_unasked(
    qtbot: QtBot, kept: Path, path: Path, tmp_path: Path, settings: Settings, monkeypatch
):
    save_stock_list(path, replace(EXAMPLE, name="Somebody else's, longer"))
    other = _reopen(qtbot, kept, tmp_path, settings)
    other.notice.buttons[0].click()
    asked: list[str] = []
    monkeypatch.setattr("app.asking.ask", lambda _window, title, *_: asked.append(title) or REPLACE)
    assert other.cutting.stock.save()
    assert asked == ["Changed elsewhere"]


def test_what_is_thrown_away_is_gone_and_the_list_in_use_stays(
    qtbot: QtBot, kept: Path, tmp_path: Path, settings: Settings
):
    other = _reopen(qtbot, kept, tmp_path, settings)
    other.notice.buttons[1].click()
    assert other.cutting.stock.find_list() == EXAMPLE
    assert list_left_lists(tmp_path / "left") == ()


def test_saving_throws_away_what_was_kept(window: Window, kept: Path):
    assert list_left_behind(kept.parent) == ()
    assert window.cutting.stock.save()
    window.keep_unsaved()
    assert not list(kept.parent.iterdir())


@pytest.mark.parametrize("text", ["[]", '{"name": "x"}', '{"name": "x", "list": "{}"}', "{"])
def test_what_is_no_list_is_neither_offered_nor_removed(qapp, tmp_path: Path, text: str):
    (tmp_path / "1-1.unsaved-list").write_text(text)
    assert list_left_lists(tmp_path) == ()
    assert (tmp_path / "1-1.unsaved-list").exists()


def test_an_offer_says_what_the_list_has_of_it(path: Path, tmp_path: Path):
    lock = QLockFile(str(tmp_path / "1.lock"))

    def told(stock_list: StockList, name: str) -> str:
        about = tmp_path / "1.unsaved-list", None, datetime(2026, 3, 4, 15, 6), lock
        return tell_kept_list(LeftList(*about, stock_list, name))

    assert told(_priced(EXAMPLE, 111), str(path)).endswith("Changed or new: 1\N{NO-BREAK SPACE}row.")
    assert told(EXAMPLE, str(path)).endswith("The list itself holds the same.")
    assert "taken out" in told(replace(EXAMPLE, sold=EXAMPLE.sold[1:]), str(path))
    assert "“usual”" in told(EXAMPLE, "")
    path.unlink()
    assert told(EXAMPLE, str(path)).endswith("The list they were made to cannot be read now.")
