"""A process beside the window and the pipe to it. What is asked and answered is its users' business."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from queue import SimpleQueue
from threading import Thread
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from multiprocessing.connection import Connection
    from multiprocessing.process import BaseProcess


class OwnProcess:
    """Runs `serve` with its end of the pipe, from the first message until `end`; the next starts another."""

    def __init__(self, serve: Callable[[Connection], None]) -> None:
        self._serve = serve
        self._process: BaseProcess | None = None
        self._pipe: Connection | None = None
        self._post: _Post | None = None

    @property
    def is_alive(self) -> bool:
        """Whether it was started and runs."""
        return self._process is not None and self._process.is_alive()

    def send(self, message: object) -> None:
        """Have it sent as soon as the process takes it."""
        self._start().send(message)

    def hear(self) -> Iterator[object]:
        """Every answer that is there. Raises EOFError or OSError where the process is gone."""
        while self._pipe is not None and self._pipe.poll():
            yield self._pipe.recv()

    def end(self) -> None:
        """Let it go."""
        if self._process is not None:
            self._process.terminate()
            self._process.join()
            self._process.close()
            self._process = None
        if self._post is not None:
            self._post.end()
            self._post = None
        if self._pipe is not None:
            self._pipe.close()
            self._pipe = None

    def _start(self) -> _Post:
        if self._post is None:
            from multiprocessing import get_context

            context = get_context("spawn")
            self._pipe, other = context.Pipe()
            self._process = context.Process(target=self._serve, args=(other,), daemon=True)
            self._process.start()
            other.close()
            self._post = _Post(self._pipe)
        return self._post


class _Post:
    """Sends messages in their order beside the window: a long list is not read while a plan is looked for."""

    def __init__(self, pipe: Connection) -> None:
        self._pipe = pipe
        self._messages: SimpleQueue[object] = SimpleQueue()
        Thread(target=self._run, daemon=True).start()

    def send(self, message: object) -> None:
        """Have it sent as soon as the other end takes it."""
        self._messages.put(message)

    def end(self) -> None:
        """Send nothing more."""
        self._messages.put(None)

    def _run(self) -> None:
        with suppress(OSError, ValueError):  # the listener finds out that the other end is gone
            while (message := self._messages.get()) is not None:
                self._pipe.send(message)
