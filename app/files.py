"""Job files and other results on disk: read whole, written whole or not at all. No window, no Qt.

What is in a job file is model.job's business.
"""

from __future__ import annotations

import errno
import os
import tempfile
from contextlib import suppress
from glob import escape
from pathlib import Path
from time import time

from model.errors import MantelwrightError
from model.job import Job, list_stored, read_job_and_missing, write_job
from model.parameters import Parameter

JOB_SUFFIX = ".mantel"
PART_SUFFIX = ".part"
"""How the hidden file ends that is written before it takes the place of the one that is meant."""
PARTS_KEPT = 3600
"""Seconds after which such a file is no other program's work but left behind by one that was killed."""
LARGEST_JOB = 8_000_000
"""Bytes; a job file is a few thousand, so anything beyond this is some other file."""

MOST_NAMED = 4
"""Values that are named where a file lacks many."""

FileState = tuple[int, int]
"""When a file was written, in nanoseconds, and how many bytes it has."""

UNCHANGED = "Nothing was changed."
"""What is safe where a file could not be read."""

_CAUSES = {
    errno.ENOENT: "there is no such file or folder",
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk space allotted to you is used up",
    errno.EACCES: "it may not be opened or written by you",
    errno.EPERM: "it may not be opened or written by you",
    errno.EROFS: "the disk is write-protected",
    errno.EISDIR: "that is a folder",
    errno.ENOTDIR: "a part of the path is not a folder",
    errno.ENAMETOOLONG: "the name is too long",
    errno.EFBIG: "the disk cannot hold a file of this size",
}


class FileTrouble(MantelwrightError, OSError):
    """A file or disk failed. `path` and `cause` say which and why; `safe` what has not been lost."""

    def __init__(self, path: Path, doing: str, cause: str, safe: str) -> None:
        self.path = path
        self.cause = cause
        self.safe = safe
        super().__init__(f"{path} could not be {doing}: {cause}. {safe}")

    def __str__(self) -> str:
        return str(self.args[0])


def describe_cause(error: OSError) -> str:
    """Why the disk refused, in plain words, as the end of a sentence."""
    return _CAUSES.get(error.errno or 0) or error.strerror or "the disk gave no reason"


def tell_folder(folder: Path) -> str:
    """Why nothing can be written into `folder`, made if need be, in a sentence; "" where nothing is seen."""
    try:
        there = next(place for place in (folder.absolute(), *folder.absolute().parents) if place.exists())
        if not there.is_dir():
            return f"{there} is a file, not a folder."
    except OSError as error:
        return f"{folder} cannot be used: {describe_cause(error)}."
    return "" if os.access(there, os.W_OK | os.X_OK) else f"Nothing may be written in {there}."


def read_job_file(path: Path) -> Job:
    """The job in the file at `path`. Raises FileTrouble for the disk, JobRefused for what is in it."""
    return open_job_file(path)[0]


def open_job_file(path: Path) -> tuple[Job, str]:
    """As `read_job_file`, with a sentence on the values that the file lacks, "" where it lacks none."""
    job, missing = read_job_and_missing(read_bytes(path, LARGEST_JOB, "it is too large to be a job file"))
    return job, _tell_missing(path, missing)


def read_bytes(path: Path, most: int, too_large: str) -> bytes:
    """All of a file of no more than `most` bytes. Raises FileTrouble for the disk and, with the words
    `too_large`, for one of more; no more than that is ever read.
    """
    try:
        with path.open("rb") as file:
            data = file.read(most + 1)
    except OSError as error:
        raise FileTrouble(path, "opened", describe_cause(error), UNCHANGED) from error
    if len(data) > most:
        raise FileTrouble(path, "opened", too_large, UNCHANGED)
    return data


def _tell_missing(path: Path, missing: tuple[Parameter, ...]) -> str:
    """How many values the file does not hold, and the first of them."""
    if not missing:
        return ""
    names = ", ".join(row.name for row in missing[:MOST_NAMED])
    more = ", …" if len(missing) > MOST_NAMED else ""
    count, whole = len(missing), len(list_stored())
    took = "is not in it and has its default" if count == 1 else "are not in it and have their defaults"
    return f"{path}: {count} of the {whole} values of a job {took}: {names}{more}."


def file_state(path: Path) -> FileState | None:
    """What tells whether a file was written since; None when there is none."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size


def save_job_file(path: Path, job: Job) -> None:
    """Write `job` to `path`, whole or not at all. Raises FileTrouble; a file there is then as it was."""
    save_bytes(path, write_job(job).encode())


def save_bytes(path: Path, data: bytes) -> None:
    """Write `data` to `path` by way of a file beside it, so that a failure leaves the old one as it was.

    A link keeps pointing where it did and an existing file keeps its permissions. Raises FileTrouble.
    """
    try:
        target = Path(os.path.realpath(path))
        _refuse_protected(target)
        _replace(target, data)
    except OSError as error:
        safe = "What was there before is untouched." if path.exists() else "Nothing was written."
        raise FileTrouble(path, "saved", describe_cause(error), safe) from error


def _refuse_protected(target: Path) -> None:
    if target.is_dir():
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
    if target.exists() and not os.access(target, os.W_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))


def _replace(target: Path, data: bytes) -> None:
    prefix = f".{target.name[:40]}."
    _clear_left(target.parent, prefix)
    handle, name = tempfile.mkstemp(prefix=prefix, suffix=PART_SUFFIX, dir=target.parent)
    beside = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if beside.stat().st_size != len(data):  # some network disks cut a write short without a word
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        with suppress(OSError):  # not every network disk knows permissions; then only the owner may read it
            beside.chmod(_mode_for(target))
        os.replace(beside, target)
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise
    _sync_folder(target.parent)


def _clear_left(folder: Path, prefix: str) -> None:
    """Throw away parts that a killed program left beside the same file."""
    with suppress(OSError):
        for left in folder.glob(f"{escape(prefix)}*{PART_SUFFIX}"):
            if time() - left.stat().st_mtime > PARTS_KEPT:
                left.unlink()


def _mode_for(target: Path) -> int:
    if target.exists():
        return target.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def _sync_folder(folder: Path) -> None:
    with suppress(OSError):  # not every system lets a folder be opened; the file itself is safe by now
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
