"""A job's unsaved work kept beside the settings, so that a crash or a power cut costs seconds and no evening.

How it is kept is app.keeping's business; app.stock_recovery does the same for the stock list.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from app.files import FileState
from app.keeping import PAUSE, STATE, Keeper, Left, list_left, tell_nobody
from app.session import Session
from model.errors import Refused
from model.job import Job, read_job, with_value, write_job
from model.parameters import find_parameter

_SUFFIX = ".unsaved"


@dataclass(frozen=True, slots=True)
class LeftBehind(Left):
    """Work that an ended program had not saved: the job and the file it came from."""

    job: Job
    path: Path | None


def list_left_behind(folder: Path, tell: Callable[[str], object] = tell_nobody) -> tuple[LeftBehind, ...]:
    """Jobs left behind, the latest first; what another running program keeps is not among it.

    `tell` is told of each that cannot be read, where it lies and why.
    """
    return list_left(folder, _SUFFIX, _read, tell)


def _read(kept: dict[str, Any], left: Left) -> LeftBehind:
    job = read_job(str(kept["job"]))
    source = Path(str(kept["path"])) if kept["path"] else None
    return LeftBehind(left.kept_in, left.state, left.kept_at, left.lock, job, source)


class Recovery(Keeper):
    """Keeps the session's unsaved work; `find_state` gives how the job's file was last.

    `list_typed` gives paths and long texts that are being typed and not entered yet: they are kept as well.
    """

    def __init__(
        self,
        session: Session,
        folder: Path,
        pause: int = PAUSE,
        find_state: Callable[[], FileState | None] = lambda: None,
        list_typed: Callable[[], Sequence[tuple[str, str]]] = tuple,
    ) -> None:
        super().__init__(session, folder, _SUFFIX, pause)
        self._session, self._find_state, self._list_typed = session, find_state, list_typed

    @property
    def is_unsaved(self) -> bool:
        """Whether there is work, or a text being typed, that a crash would lose."""
        return self._session.is_unsaved or self._find_job() != self._session.job

    def _find_job(self) -> Job:
        """The job with what is being typed in it; without what is refused."""
        job = self._session.job
        for path, text in self._list_typed():
            with suppress(Refused):
                job = with_value(job, path, find_parameter(path).parse(text, job.about.length_style))
        return job

    def write(self) -> dict[str, object]:
        """The job's text and where it came from."""
        source = os.path.realpath(self._session.path) if self._session.path else ""
        return {"path": source, STATE: self._find_state(), "job": write_job(self._find_job())}
