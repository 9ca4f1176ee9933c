"""Benches that are processes of their own: windows, and starts from nothing; what these measure is theirs."""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path
from resource import RUSAGE_CHILDREN, getrusage
from statistics import median
from time import monotonic
from typing import NamedTuple

from app.demo import read_demo
from model.job import write_job
from tests.bench.displays import Surroundings


def run_bench(surroundings: Surroundings, module: str, *arguments: str) -> str:
    """What it prints."""
    command = [sys.executable, "-m", module, *arguments]
    return subprocess.run(
        command, env=surroundings, stdout=subprocess.PIPE, text=True, check=True, timeout=300
    ).stdout


class Started(NamedTuple):
    """Median seconds from a process's start: by the clock, worked by the window's own process, and by all."""

    clock: float
    own: float
    all: float


def time_starts(surroundings: Surroundings, count: int) -> dict[str, Started]:
    """To an ``empty`` window, to the program's ``sheet`` and to its ``whole`` window, see start, in turns."""
    times: dict[str, list[Started]] = {"empty": [], "sheet": [], "whole": []}
    with tempfile.TemporaryDirectory() as folder:
        job = Path(folder) / "demo.mantel"
        job.write_text(write_job(read_demo()), "utf-8")
        apart = surroundings | {"XDG_CONFIG_HOME": folder, "XDG_DATA_HOME": folder, "HOME": folder}
        for turn in range(count + 1):
            for kind, taken in times.items():
                before = time_children()
                said = run_bench(apart, "tests.bench.start", kind, str(monotonic()), str(job)).split()
                if turn:
                    taken.append(Started(*map(float, said), time_children() - before))
    return {k: Started(*map(median, zip(*taken, strict=True))) for k, taken in times.items()}


def time_children() -> float:
    """Seconds of the processor that processes started here have used, those that have ended."""
    used = getrusage(RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime
