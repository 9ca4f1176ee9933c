"""Long work beside the window: one thing at a time, on values that nobody changes, told of and stopped."""

from __future__ import annotations

import threading
from collections.abc import Callable
from contextlib import suppress
from typing import Any

from PySide6.QtCore import QObject, QThread, Signal

from app.working import load_heavy_parts
from export.progress import Cancelled, Step


class _Thread(QThread):
    """Runs one function; every outcome comes back as a signal, in the window's own thread."""

    told = Signal(float, str)
    finished_with = Signal(object)
    failed_with = Signal(object)

    def __init__(self, work: Callable[[Step], Any], stop: threading.Event) -> None:
        super().__init__()
        self._work = work
        self._stop = stop

    def run(self) -> None:
        """Do the work; whatever it raises is handed on, none of it is lost."""
        try:
            result = self._work(self._tell)
        except BaseException as error:
            self.failed_with.emit(error)
        else:
            self.finished_with.emit(result)

    def _tell(self, done: float, words: str) -> None:
        if self._stop.is_set():
            raise Cancelled
        self.told.emit(done, words)


class Work(QObject):
    """Starts work and says how far it is; `done` hands on the result, `failed` the exception."""

    told = Signal(float, str)
    done = Signal(object)
    failed = Signal(object)
    stopped = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._thread: _Thread | None = None
        self._stop = threading.Event()

    @property
    def is_busy(self) -> bool:
        """Whether something is being worked on."""
        return self._thread is not None

    def start(self, work: Callable[[Step], Any]) -> None:
        """Do `work` beside the window; it must look at nothing that an edit changes."""
        if self._thread is not None:
            raise RuntimeError("one thing at a time")
        self._stop = threading.Event()
        self._thread = _Thread(work, self._stop)
        self._thread.told.connect(self.told)
        self._thread.finished_with.connect(self._finish)
        self._thread.failed_with.connect(self._fail)
        self._thread.start()

    def stop(self) -> None:
        """Ask for an end at the next step."""
        self._stop.set()

    def wait(self) -> None:
        """End what is being done before the window goes."""
        self.stop()
        if self._thread is not None:
            self._thread.wait()
            self._thread = None

    def _close(self) -> None:
        if self._thread is not None:
            self._thread.wait()
            self._thread = None

    def _finish(self, result: object) -> None:
        self._close()
        self.done.emit(result)

    def _fail(self, error: object) -> None:
        self._close()
        if isinstance(error, Cancelled):
            self.stopped.emit()
        else:
            self.failed.emit(error)


class Loading(QThread):
    """Loads the program's heavy parts beside the window that is already seen."""

    def run(self) -> None:
        """Import them; a part that is missing is told when it is first used."""
        with suppress(ImportError):
            load_heavy_parts()
