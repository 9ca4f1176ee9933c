"""Keeps unsaved work in a folder while the program runs, and finds what ended programs left there.

Each running program keeps one file of a kind and a lock beside it; a file whose lock is free was left behind.
What is in such a file is its users' business.
"""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from PySide6.QtCore import QLockFile, QObject, Signal

from app.files import LARGEST_JOB, FileState, FileTrouble, describe_cause, save_bytes
from app.lock_file import open_lock, take_lock
from app.pause import build_pause
from model.errors import JobRefused, StockRefused

if TYPE_CHECKING:
    from app.session import Session
    from app.stock_session import StockSession

PAUSE = 2000
"""Milliseconds after a change until it is kept."""
LARGEST = 2 * LARGEST_JOB
"""Bytes; a job's text grows a little where it is kept, so anything beyond this is no work of ours."""
STATE = "state"
"""How the file was that the work came from, when it was read or written last."""


@dataclass(frozen=True, slots=True)
class Left:
    """Something that an ended program had not saved: where it is kept and since when.

    `state` is how the file it came from was when the program read or wrote it last.
    """

    kept_in: Path
    state: FileState | None
    kept_at: datetime
    lock: QLockFile

    def discard(self) -> None:
        """Throw it away."""
        with suppress(OSError):
            self.kept_in.unlink()
        self.lock.unlock()


Work = TypeVar("Work", bound=Left)
Read = Callable[[dict[str, Any], Left], Work]
"""What a file holds, and what is known of it, to what was left behind."""


def tell_nobody(_words: str) -> None:
    """Nobody is told."""


def list_left(folder: Path, suffix: str, read: Read[Work], tell: Callable[[str], object]) -> tuple[Work, ...]:
    """What was left behind, the latest first; what another running program keeps is not among it.

    What cannot be read is left where it is, and `tell` is told where and why.
    """
    found = []
    for path in sorted(folder.glob(f"*{suffix}")):
        lock = open_lock(path.with_suffix(".lock"))
        if not take_lock(lock):
            continue
        work = _read(path, lock, read)
        if isinstance(work, str):
            lock.unlock()
            tell(f"Unsaved work that was kept in {path} cannot be read: {work}. It is left there as it is.")
        else:
            found.append(work)
    return tuple(sorted(found, key=lambda work: work.kept_at, reverse=True))


def _read(path: Path, lock: QLockFile, read: Read[Work]) -> Work | str:
    """What a file holds; why, as the end of a sentence, where it cannot be read."""
    try:
        about = path.stat()
        if about.st_size > LARGEST:
            return "it is too large"
        kept = json.loads(path.read_text(encoding="utf-8"))
        state = _read_state(kept.get(STATE))
        return read(kept, Left(path, state, datetime.fromtimestamp(about.st_mtime), lock))
    except (JobRefused, StockRefused) as refusal:
        return refusal.faults[0]
    except OSError as error:
        return describe_cause(error)
    except (ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return "it is damaged"


def _read_state(kept: object) -> FileState | None:
    """None where none was kept; then the file counts as changed since."""
    match kept:
        case [int(written), int(size)]:
            return written, size
    return None


class Keeper(QObject):
    """Keeps unsaved work of `session`, and throws it away once it is saved or given up.

    `refused` says why nothing can be kept: once, until something could be kept again.
    """

    refused = Signal(str)

    def __init__(self, session: Session | StockSession, folder: Path, suffix: str, pause: int) -> None:
        super().__init__()
        self._edited = session
        self._folder = folder
        self._path = folder / f"{os.getpid()}-{id(self):x}{suffix}"
        self._lock: QLockFile | None = None
        self._is_refused = False
        self._timer = build_pause(self, pause, self.keep)
        session.changed.connect(self.keep_soon)
        session.state_changed.connect(self.keep_soon)

    def write(self) -> dict[str, object]:
        """What is to be kept, as plain data."""
        raise NotImplementedError

    @property
    def is_unsaved(self) -> bool:
        """Whether there is anything to be kept."""
        return self._edited.is_unsaved

    @property
    def kept_in(self) -> Path | None:
        """The file that unsaved work is kept in; None where none is."""
        return self._path if os.path.isfile(self._path) else None

    def keep_soon(self) -> None:
        """Keep after a pause, however much happens meanwhile."""
        if not self._timer.isActive():
            self._timer.start()

    def keep(self) -> None:
        """Keep unsaved work now; with nothing unsaved, keep nothing. A disk that refuses is not pressed."""
        self._timer.stop()
        if not self.is_unsaved:
            self.forget()
            return
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
            self._take_lock()
            save_bytes(self._path, json.dumps(self.write()).encode())
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
            lock = open_lock(self._path.with_suffix(".lock"))
            if take_lock(lock):
                self._lock = lock
