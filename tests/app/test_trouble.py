"""A fault of the program's own keeps the work, is told once a place and never takes the window away."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from app.trouble import HAPPENED, NEXT, NOT_KEPT, UNCHANGED, catch_faults, say_fault


@pytest.fixture
def told(monkeypatch) -> list[str]:
    monkeypatch.setattr(sys, "excepthook", sys.__excepthook__)
    happened: list[str] = []
    catch_faults(lambda error: happened.append(str(error)), lambda: happened.append("kept"))
    return happened


def _raise_here(words: str) -> None:
    raise ValueError(words)


def _raise_there(words: str) -> None:
    raise ValueError(words)


def _fault(raising, words: str = "inside") -> None:
    try:
        raising(words)
    except BaseException as error:
        sys.excepthook(type(error), error, error.__traceback__)


def test_the_work_is_kept_before_anything_is_said(told: list[str], capsys):
    _fault(_raise_here)
    assert told == ["kept", "inside"]
    assert "ValueError: inside" in capsys.readouterr().err


def test_it_is_said_once_for_each_place_and_noted_every_time(told: list[str], capsys):
    for _ in range(3):
        _fault(_raise_here)
        _fault(_raise_there, "elsewhere")
    assert told == ["kept", "inside", "kept", "elsewhere"]
    assert capsys.readouterr().err.count("\nValueError") == 6


def test_a_program_without_a_terminal_tells_it_all_the_same(told: list[str], monkeypatch):
    monkeypatch.setattr(sys, "stderr", None)
    _fault(_raise_here)
    assert told == ["kept", "inside"]


def test_a_stop_from_the_keyboard_is_no_fault(told: list[str]):
    def stop(_words: str) -> None:
        raise KeyboardInterrupt

    _fault(stop)
    assert told == []


def test_the_message_says_what_happened_what_is_safe_and_what_to_do():
    kept = Path("unsaved", "1-1.unsaved")
    assert (
        say_fault(True, kept)
        == f"{HAPPENED} Your work is still here, and a copy of it is kept in {kept}. {NEXT}"
    )
    assert NOT_KEPT in say_fault(True, None)
    assert say_fault(False, kept) == f"{HAPPENED} {UNCHANGED}"


def test_a_fault_is_told_though_the_work_cannot_be_kept(monkeypatch, capsys):
    monkeypatch.setattr(sys, "excepthook", sys.__excepthook__)
    told: list[str] = []

    def keep() -> None:
        raise RuntimeError("links lead in a circle")

    catch_faults(lambda error: told.append(str(error)), keep)
    _fault(_raise_here)
    assert told == ["inside"]
    assert "links lead in a circle" in capsys.readouterr().err
    monkeypatch.setattr(sys, "stderr", None)
    _fault(_raise_there)
    assert told == ["inside", "inside"]
