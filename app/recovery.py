"""Unsaved work kept beside the settings, so that a crash or a power cut costs seconds and not the evening.

Each running program keeps one file and a lock beside it; a file whose lock is free was left behind.
"""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QLockFile, QObject, Signal

from app.files import LARGEST_JOB, FileState, FileTrouble, describe_cause, save_bytes
from app.pause import build_pause
from app.session import Session
from model.errors import JobRefused
from model.job import Job, read_job, write_job

PAUSE = 2000
"""Milliseconds after a change until it is kept."""
LARGEST = 2 * LARGEST_JOB
"""Bytes; a job's text grows a little where it is kept, so anything beyond this is no work of ours."""
_SUFFIX = ".unsaved"


@dataclass(frozen=True, slots=True)
class LeftBehind:
    """Work that an ended program had not saved: the job, the file it came from and when it was kept.

    `state` is how that file was when the program read or wrote it last.
    """

    kept_in: Path
    job: Job
    path: Path | None
    state: FileState | None
    kept_at: datetime
    lock: QLockFile

    def discard(self) -> None:
        """Throw it away."""
        with suppress(OSError):
            self.kept_in.unlink()
        self.lock.unlock()


def list_left_behind(folder: Path) -> tuple[LeftBehind, ...]:
    """Work left behind, the latest first; what another running program keeps is not among it."""
    found = []
    for path in sorted(folder.glob(f"*{_SUFFIX}")):
        lock = QLockFile(str(path.with_suffix(".lock")))
        lock.setStaleLockTime(0)
        if not lock.tryLock(0):
            continue
        work = _read(path, lock)
        if work is None:
            lock.unlock()
        else:
            found.append(work)
    return tuple(sorted(found, key=lambda work: work.kept_at, reverse=True))


def _read(path: Path, lock: QLockFile) -> LeftBehind | None:
    """None for a file that cannot be read; it is left where it is."""
    try:
        if path.stat().st_size > LARGEST:
            return None
        kept = json.loads(path.read_text(encoding="utf-8"))
        job = read_job(str(kept["job"]))
        source = Path(str(kept["path"])) if kept["path"] else None
        kept_at = datetime.fromtimestamp(path.stat().st_mtime)
        return LeftBehind(path, job, source, _read_state(kept.get("state")), kept_at, lock)
    except (OSError, ValueError, LookupError, TypeError, RecursionError, JobRefused):
        return None


def _read_state(kept: object) -> FileState | None:
    """None where none was kept; then the file counts as changed since."""
    match kept:
        case [int(written), int(size)]:
            return written, size
    return None


class Recovery(QObject):
    """Keeps the session's unsaved work, and throws it away once it is saved or given up.

    `find_state` gives how the job's file was last. `refused` says why nothing can be kept: once, until
    something could be kept again.
    """

    refused = Signal(str)

    def __init__(
        self,
        session: Session,
        folder: Path,
        pause: int = PAUSE,
        find_state: Callable[[], FileState | None] = lambda: None,
    ) -> None:
        super().__init__()
        self._session = session
        self._folder = folder
        self._find_state = find_state
        self._is_refused = False
        self._path = folder / f"{os.getpid()}-{id(self):x}{_SUFFIX}"
        self._lock: QLockFile | None = None
        self._timer = build_pause(self, pause, self.keep)
        session.changed.connect(self._wait)
        session.state_changed.connect(self._wait)

    @property
    def kept_in(self) -> Path | None:
        """The file that unsaved work is kept in; None where none is."""
        return self._path if self._path.is_file() else None

    def _wait(self) -> None:
        if not self._timer.isActive():
            self._timer.start()

    def keep(self) -> None:
        """Keep unsaved work now; with nothing unsaved, keep nothing. A disk that refuses is not pressed."""
        self._timer.stop()
        if not self._session.is_unsaved:
            self.forget()
            return
        source = str(self._session.path.resolve()) if self._session.path else ""
        kept = {"path": source, "state": self._find_state(), "job": write_job(self._session.job)}
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
            self._take_lock()
            save_bytes(self._path, json.dumps(kept).encode())
        except OSError as error:
            self._tell_refused(error.cause if isinstance(error, FileTrouble) else describe_cause(error))
        else:
            self._is_refused = False

    def _tell_refused(self, cause: str) -> None:
        if not self._is_refused:
            self._is_refused = True
            self.refused.emit(cause)

    def forget(self) -> None:
        """Throw away what was kept."""
        self._timer.stop()
        with suppress(OSError):
            self._path.unlink(missing_ok=True)
        if self._lock is not None:
            self._lock.unlock()
            self._lock = None

    def _take_lock(self) -> None:
        if self._lock is None:
            lock = QLockFile(str(self._path.with_suffix(".lock")))
            lock.setStaleLockTime(0)
            if lock.tryLock(0):
                self._lock = lock
