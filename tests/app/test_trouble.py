"""A fault of the program's own keeps the work, is told once and never takes the window away."""

from __future__ import annotations

import sys

import pytest

from app.trouble import MESSAGE, catch_faults


@pytest.fixture
def told(monkeypatch) -> list[str]:
    monkeypatch.setattr(sys, "excepthook", sys.__excepthook__)
    happened: list[str] = []
    catch_faults(happened.append, lambda: happened.append("kept"))
    return happened


def _fault(error: BaseException) -> None:
    sys.excepthook(type(error), error, None)


def test_the_work_is_kept_before_anything_is_said(told: list[str], capsys):
    _fault(ValueError("inside"))
    assert told == ["kept", MESSAGE]
    assert "ValueError: inside" in capsys.readouterr().err


def test_it_is_said_once_and_noted_every_time(told: list[str], capsys):
    for _ in range(3):
        _fault(ValueError("inside"))
    assert told.count(MESSAGE) == 1
    assert capsys.readouterr().err.count("ValueError") == 3


def test_a_stop_from_the_keyboard_is_no_fault(told: list[str]):
    _fault(KeyboardInterrupt())
    assert told == []


def test_the_message_says_what_happened_what_is_safe_and_what_to_do():
    for words in ("failed", "still here", "Save it"):
        assert words in MESSAGE
    assert "Error" not in MESSAGE
