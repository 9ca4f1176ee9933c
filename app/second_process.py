"""A process that does some of the work meanwhile, one thing after the other, where there is a core for it.

What is done there is its users' business; what fails there is done again here and fails as it would have.
"""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from typing import TYPE_CHECKING, Any, Generic, TypeVar, cast

from app.own_process import OwnProcess, count_cores
from app.sweeping import unswept

if TYPE_CHECKING:
    from multiprocessing.connection import Connection

Made = TypeVar("Made")
LISTEN = 0.05
"""Seconds between two times that whoever waits is told that it goes on."""


@contextmanager
def open_second(is_wanted: bool = True) -> Iterator[SecondProcess | None]:
    """A second process, ended afterwards whatever it is doing; None where there is one core only."""
    if not is_wanted or count_cores() < 2:
        yield None
        return
    second = SecondProcess()
    try:
        yield second
    finally:
        second.end()


class SecondProcess:
    """Started by the first thing that is asked of it."""

    def __init__(self) -> None:
        self._process = OwnProcess(serve)
        self._answers: dict[int, tuple[bool, Any]] = {}
        self._asked = 0
        self._is_gone = False

    def ask(self, act: Callable[..., Made], *given: Any) -> Asked[Made]:
        """Have `act` of what is `given` done there, both of which must be such as can be pickled."""
        self._asked += 1
        if not self._is_gone:
            try:
                self._process.send((self._asked, act, given))
            except OSError:  # there is no room for another process
                self._is_gone = True
        return Asked(self, self._asked, lambda: act(*given))

    def hear(self, number: int, seconds: float) -> tuple[bool, Any] | None:
        """Whether what was asked as `number` was done there, and what came of it; None while that is not
        known, for which it waits so long. Handed on once.
        """
        if number not in self._answers and not self._is_gone:
            try:
                self._process.wait(seconds)
                for told, is_done, made in cast(Iterator[Any], self._process.hear()):
                    self._answers[told] = is_done, made
            except (EOFError, OSError):
                self._is_gone = True
        return self._answers.pop(number, (False, None) if self._is_gone else None)

    def end(self) -> None:
        """Let it go, whatever it is doing."""
        self._is_gone = True
        self._process.end()


class Asked(Generic[Made]):
    """Something that was asked of a second process."""

    def __init__(self, second: SecondProcess, number: int, do_here: Callable[[], Made]) -> None:
        self._second, self._number, self._do_here = second, number, do_here
        self._made: list[Made] = []

    def wait(self, tell: Callable[[], None]) -> Made:
        """What comes of it; `tell` is called now and then until it is there.

        Where it fails there or the process is gone, it is done here.
        """
        if not self._made:
            while (answer := self._second.hear(self._number, LISTEN)) is None:
                tell()
            is_done, made = answer
            self._made.append(cast(Made, made) if is_done else self._do_here())
        return self._made[0]


def serve(pipe: Connection) -> None:
    """Do what is asked until the other end is closed. Ctrl-C is for whoever asks."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # where it was heard from the start
    with unswept(), suppress(EOFError, OSError):
        while True:
            number, act, given = pipe.recv()
            pipe.send((number, *_try(act, given)))


def _try(act: Callable[..., object], given: tuple[object, ...]) -> tuple[bool, object]:
    try:
        return True, act(*given)
    except Exception:
        return False, None
