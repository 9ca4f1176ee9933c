"""Lock files beside kept work: taken by the program that runs, free once it has ended, however it ended."""

from __future__ import annotations

from pathlib import Path
from time import time

from PySide6.QtCore import QLockFile

SETTLED = 60
"""Seconds after which a lock file that says nothing is no longer one that is being written."""
_LONGEST = 4096
"""Bytes that are looked at; a lock names a process and a machine."""


def open_lock(path: Path) -> QLockFile:
    """The lock at `path`, not taken yet; it counts as held for as long as whoever took it runs."""
    lock = QLockFile(str(path))
    lock.setStaleLockTime(0)
    return lock


def take_lock(lock: QLockFile) -> bool:
    """Take it if it is free. A power cut may empty the file of a lock: once old, it is taken away."""
    if lock.tryLock(0):
        return True
    return _says_nothing(Path(lock.fileName())) and lock.removeStaleLockFile() and lock.tryLock(0)


def _says_nothing(path: Path) -> bool:
    try:
        with path.open("rb") as file:
            said = file.read(_LONGEST).strip(b"\0 \r\n")
        return not said and time() - path.stat().st_mtime > SETTLED
    except OSError:
        return False
