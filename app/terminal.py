"""How a command talks to whoever started it. What it says is not decided here."""

from __future__ import annotations

import signal
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager

from model.errors import disarm

KEPT = "\t\n"
"""What may stand in a result and moves the cursor no further than the text does."""


class Terminal:
    """Results go to standard output, the rest to standard error; progress is only for someone who watches.

    Either may be closed: what would go there is said to nobody. Characters that steer a terminal are written
    out, wherever they come from.
    """

    def __init__(self) -> None:
        self._shown = 0
        self._is_stopped = False

    @contextmanager
    def heeding_ctrl_c(self) -> Iterator[None]:
        """While this runs, Ctrl-C is remembered as well as raised."""

        def stop(*_: object) -> None:
            self._is_stopped = True
            raise KeyboardInterrupt

        try:
            before = signal.signal(signal.SIGINT, stop)
        except ValueError:  # not the main thread, which alone hears of it
            yield
            return
        try:
            yield
        finally:
            signal.signal(signal.SIGINT, before)

    def say(self, text: str) -> None:
        """One result."""
        self._clear()
        print(disarm(text, KEPT))

    def say_all(self, lines: Iterable[str]) -> None:
        """Results, each on its own line."""
        for line in lines:
            self.say(line)

    def warn(self, text: str) -> None:
        """Something to know that is no result; the program's name in front."""
        self._clear()
        if sys.stderr is None:  # closed by whoever started it; print would take the results' place
            return
        for line in text.splitlines():
            print(f"mantelwright: {disarm(line, KEPT)}", file=sys.stderr)

    def show_progress(self, done: float, words: str) -> None:
        """How far it is, from 0 to 1; silent unless standard error is a terminal.

        Raises KeyboardInterrupt where Ctrl-C was pressed before: a library may have swallowed it then.
        """
        if self._is_stopped:
            raise KeyboardInterrupt
        if sys.stderr is None or not sys.stderr.isatty():
            return
        line = f"{done:4.0%}  {disarm(words)}"
        sys.stderr.write("\r" + line.ljust(self._shown))
        sys.stderr.flush()
        self._shown = len(line)

    def _clear(self) -> None:
        if self._shown:
            sys.stderr.write("\r" + " " * self._shown + "\r")
            sys.stderr.flush()
            self._shown = 0

    def finish(self) -> None:
        """Take the progress away and let go of everything said. Raises OSError where nobody can take it."""
        self._clear()
        if sys.stdout is not None:
            sys.stdout.flush()


def harden_streams() -> None:
    """Let names in any script be printed, whatever the terminal can show."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="backslashreplace")


def silence_output() -> None:
    """Send what is still to be flushed at exit nowhere: whoever read it has gone."""
    import os

    try:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
    except (OSError, ValueError, AttributeError):  # or there is none
        sys.stdout = open(os.devnull, "w")  # noqa: SIM115 - stays open until exit
