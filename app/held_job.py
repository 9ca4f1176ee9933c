"""Tells whether another window has the same job open.

A lock beside the kept work stands for each open file.
"""

from __future__ import annotations

import os
from contextlib import suppress
from hashlib import sha256
from pathlib import Path

from PySide6.QtCore import QLockFile

from app.lock_file import open_lock, take_lock

_SUFFIX = ".open"
_SHORT = 24
"""Characters of a path's digest that tell it from every other."""


class HeldJob:
    """Holds the file of the job that a window has open, for as long as it has it open.

    A program that was killed holds nothing. Where no lock can be made, nothing is held and nothing told.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._path: Path | None = None
        self._lock: QLockFile | None = None

    def hold(self, path: Path | None) -> bool:
        """Hold `path` and let go of what was held before; whether another window holds it already."""
        resolved = Path(os.path.realpath(path)) if path is not None else None
        if resolved == self._path and self._lock is not None:
            return False
        self.let_go()
        self._path = resolved
        return resolved is not None and not self._take(resolved)

    def let_go(self) -> None:
        """Hold nothing."""
        self._path = None
        if self._lock is not None:
            self._lock.unlock()
            self._lock = None

    def _take(self, path: Path) -> bool:
        with suppress(OSError):
            self._folder.mkdir(parents=True, exist_ok=True)
        name = sha256(os.path.normcase(path).encode(errors="surrogateescape")).hexdigest()[:_SHORT]
        lock = open_lock(self._folder / f"{name}{_SUFFIX}")
        if take_lock(lock):
            self._lock = lock
            return True
        return lock.error() != QLockFile.LockError.LockFailedError
