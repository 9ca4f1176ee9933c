"""A process beside the window and the pipe to it. What is asked and answered is its users' business."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from queue import SimpleQueue
from threading import Thread
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from multiprocessing.connection import Connection
    from multiprocessing.process import BaseProcess


def count_cores() -> int:
    """Cores that this program may use."""
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:  # not on every system
        return os.cpu_count() or 1


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
        """Have it sent as soon as the process takes it. Raises OSError where none can be started."""
        self._start().send(message)

    def hear(self) -> Iterator[object]:
        """Every answer that is there. Raises EOFError or OSError where the process is gone."""
        while self._pipe is not None and self._pipe.poll():
            yield self._pipe.recv()

    def wait(self, seconds: float) -> None:
        """Until there is an answer, or so long. Raises OSError where the process is gone."""
        if self._pipe is not None:
            self._pipe.poll(seconds)

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
            process = context.Process(target=self._serve, args=(other,), daemon=True)
            try:
                with _deaf_to_ctrl_c():
                    process.start()
            finally:
                other.close()
            self._process, self._post = process, _Post(self._pipe)
        return self._post


@contextmanager
def _deaf_to_ctrl_c() -> Iterator[None]:
    """What is started meanwhile hears nothing of a terminal's Ctrl-C, from its first moment on.

    It would tell of it in its own words; it ends when it is told to.
    """
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    from multiprocessing import resource_tracker

    resource_tracker.ensure_running()  # which hears again once it has started its own process
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


class _Post:
    """Sends messages in their order beside the window: a long list is not read while a plan is looked for."""

    def __init__(self, pipe: Connection) -> None:
        self._pipe = pipe
        self._messages: SimpleQueue[object] = SimpleQueue()
        self._thread = Thread(target=self._run, daemon=True)
        self._thread.start()

    def send(self, message: object) -> None:
        """Have it sent as soon as the other end takes it."""
        self._messages.put(message)

    def end(self) -> None:
        """Send nothing more; what is being sent is given up, for the other end is gone."""
        self._messages.put(None)
        self._thread.join()

    def _run(self) -> None:
        with suppress(OSError, ValueError):  # the listener finds out that the other end is gone
            while (message := self._messages.get()) is not None:
                self._pipe.send(message)
