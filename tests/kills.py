"""A program that saves is killed at any moment: every file is then the old or the new one, whole.

``python -m tests.kills FOLDER`` is the program: it writes a job and a set of outputs, one state after the
other, until it is killed. `kill_once` starts it, kills it and looks at what is left.
"""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator, Mapping
from hashlib import sha256
from itertools import cycle
from pathlib import Path
from random import Random
from time import sleep

from app.files import PART_SUFFIX, save_bytes, save_job_file
from app.outputs import Output, write_outputs
from model.job import Job, default_job, with_value, write_job

JOB = "parlour.mantel"
LONGEST = 0.12
"""Seconds until the kill at most: a state takes about a tenth of it to write."""
NOTES = ("", "n" * 4_000)
"""What makes the two states of unlike length, so that a part of one is never the whole of the other."""


def list_jobs() -> tuple[Job, ...]:
    """The two jobs that are saved in turn."""
    return tuple(with_value(default_job(), "job.notes", notes) for notes in NOTES)


def list_outputs(state: int) -> tuple[Output, ...]:
    """The set of files that is written in one state, of a few bytes to a few megabytes."""
    sizes = {"cut list.csv": 300, "packet.pdf": 400_000, "views.dxf": 3_000_000, "mouldings/bed.dxf": 20_000}
    return tuple(Output(name, bytes([48 + state]) * (size + state)) for name, size in sizes.items())


def main(folder: Path) -> None:
    """Save for ever."""
    states = cycle(enumerate(list_jobs()))
    print("ready", flush=True)
    for state, job in states:
        save_job_file(folder / JOB, job)
        write_outputs(folder / "packet", list_outputs(state))
        save_bytes(folder / "again.bin", bytes([state]) * (100_000 + state))


def list_whole() -> Mapping[str, frozenset[str]]:
    """The digests of both states of every file, by its name in the folder."""
    found: dict[str, set[str]] = {JOB: {digest(write_job(job).encode()) for job in list_jobs()}}
    for state in range(len(NOTES)):
        found.setdefault("again.bin", set()).add(digest(bytes([state]) * (100_000 + state)))
        for output in list_outputs(state):
            found.setdefault(f"packet/{output.name}", set()).add(digest(output.data))
    return {name: frozenset(digests) for name, digests in found.items()}


def digest(data: bytes) -> str:
    """What tells files apart."""
    return sha256(data).hexdigest()


def kill_once(folder: Path, chance: Random) -> None:
    """Start the program, wait a moment, kill it."""
    command = [sys.executable, "-m", "tests.kills", str(folder)]
    with subprocess.Popen(
        command, cwd=Path(__file__).parents[1], stdout=subprocess.PIPE, text=True
    ) as saving:
        assert saving.stdout is not None
        assert saving.stdout.readline() == "ready\n"
        sleep(chance.uniform(0, LONGEST))
        saving.kill()


def list_broken(folder: Path, whole: Mapping[str, frozenset[str]], was: frozenset[str]) -> Iterator[str]:
    """What is wrong with the files: neither state, gone though it was there, or none that is written."""
    here = {path.relative_to(folder).as_posix(): path for path in folder.rglob("*") if path.is_file()}
    for name, path in here.items():
        if name in whole:
            if digest(path.read_bytes()) not in whole[name]:
                yield f"{name}: neither the old nor the new file"
        elif path.suffix != PART_SUFFIX:
            yield f"{name}: nothing is called so"
    yield from (f"{name}: gone" for name in was - set(here))


def list_there(folder: Path, whole: Mapping[str, frozenset[str]]) -> frozenset[str]:
    """Which of the files are there."""
    return frozenset(name for name in whole if (folder / name).is_file())


if __name__ == "__main__":
    main(Path(sys.argv[1]))
