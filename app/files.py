"""Job files and other results on disk: read whole, written whole or not at all. No window, no Qt.

What is in a job file is model.job's business.
"""

from __future__ import annotations

import errno
import os
import tempfile
from collections.abc import Sequence
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
    """Write `job` to `path`, whole or not at all. Raises FileTrouble; a file there is then as it was.

    A job of more than LARGEST_JOB bytes is refused: it could not be opened again.
    """
    data = write_job(job).encode()
    if len(data) > LARGEST_JOB:
        cause = (
            f"its text has grown to {len(data):,} bytes, and a file of more than {LARGEST_JOB:,} could not "
            "be opened again; take out options, or shorten its texts"
        )
        raise FileTrouble(path, "saved", cause, _say_safe(path))
    save_bytes(path, data)


def save_bytes(path: Path, data: bytes) -> None:
    """Write `data` to `path` by way of a file beside it, so that a failure leaves the old one as it was.

    A link keeps pointing where it did and an existing file keeps its permissions. Raises FileTrouble.
    """
    save_together(((path, data),))


def save_together(files: Sequence[tuple[Path, bytes]]) -> None:
    """Write several files as `save_bytes` does one: all of them stand beside their places before the first is
    put there, so that a full disk leaves all as they were. Raises FileTrouble for the first that fails; if it
    fails while they are put in place, the trouble says which are new by then.
    """
    written: list[tuple[Path, Path, Path]] = []
    try:
        for path, data in files:
            written.append(_save_beside(path, data))
        for done, (path, beside, target) in enumerate(written):
            _put(path, beside, target, [each for each, _, _ in written[:done]])
    finally:
        for _, beside, _ in written:
            with suppress(OSError):
                beside.unlink(missing_ok=True)
    for folder in dict.fromkeys(target.parent for _, _, target in written):
        _sync_folder(folder)


def _save_beside(path: Path, data: bytes) -> tuple[Path, Path, Path]:
    """`path`, the hidden file that holds `data`, and the place that it is to take. Raises FileTrouble."""
    try:
        target = Path(os.path.realpath(path))
        _refuse_protected(target)
        return path, _write_beside(target, data), target
    except OSError as error:
        raise FileTrouble(path, "saved", describe_cause(error), _say_safe(path)) from error


def _put(path: Path, beside: Path, target: Path, new: Sequence[Path]) -> None:
    """Put a file in its place, after those that are `new` already. Raises FileTrouble."""
    try:
        os.replace(beside, target)
    except OSError as error:
        safe = _say_safe(path)
        if new:
            names = ", ".join(each.name for each in new)
            safe = f"{safe} Already new: {names}. All others are still as they were; write them all again."
        raise FileTrouble(path, "saved", describe_cause(error), safe) from error


def _say_safe(path: Path) -> str:
    """What is safe where `path` could not be written; a disk that says nothing of it counts as without it."""
    return "What was there before is untouched." if os.path.exists(path) else "Nothing was written."


def _refuse_protected(target: Path) -> None:
    if target.is_dir():
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
    if target.exists() and not os.access(target, os.W_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))


def _write_beside(target: Path, data: bytes) -> Path:
    """The hidden file beside `target` that holds `data`."""
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
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise
    return beside


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
