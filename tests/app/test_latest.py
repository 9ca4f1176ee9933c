"""Of what is asked beside the window only the latest counts, whatever becomes of the questions before."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from app.latest import Latest
from export.progress import Step


class _Echo(Latest):
    """Answers a word with itself; some words it never answers, or fails at."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, str]] = []

    def ask(self, words: str) -> None:
        self._ask(words)

    def answer(self, asked: str, step: Step) -> str:
        if asked == "wrong":
            raise ValueError(asked)
        while asked == "endless":
            step(0.0, asked)
        return asked

    def hand_on(self, asked: str, answer: str) -> None:
        self.found.append((asked, answer))


def test_a_newer_question_ends_the_older(qtbot: QtBot):
    echo = _Echo()
    for words in ("endless", "first", "second"):
        echo.ask(words)
    qtbot.waitUntil(lambda: bool(echo.found))
    assert echo.found == [("second", "second")]


def test_what_is_let_go_is_not_handed_on_and_another_can_be_asked(qtbot: QtBot):
    echo = _Echo()
    echo.ask("first")
    echo.let_go()
    qtbot.wait(50)
    assert not echo.found
    echo.ask("second")
    qtbot.waitUntil(lambda: bool(echo.found))
    assert echo.found == [("second", "second")]


def test_a_question_that_fails_does_not_take_the_newer_one_with_it(qtbot: QtBot):
    echo = _Echo()
    with qtbot.captureExceptions() as caught:
        echo.ask("wrong")
        echo.ask("second")
        qtbot.waitUntil(lambda: bool(echo.found))
    assert [str(error) for _, error, _ in caught] == ["wrong"]
    assert echo.found == [("second", "second")]


def test_waiting_ends_what_is_being_answered(qapp):
    echo = _Echo()
    echo.ask("endless")
    echo.wait()
    assert not echo.found
