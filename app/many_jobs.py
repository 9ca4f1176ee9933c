"""Packets of many jobs: each in its own folder, over the processor's cores; one that fails fails alone."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from multiprocessing import get_context, parent_process
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING

from app import commands
from app.bought_boards import find_file
from app.commands import BROKEN, DISK, DONE, REFUSED
from app.demo import names_demo
from app.files import FileTrouble
from app.outputs import OFFER
from app.own_process import count_cores
from app.terminal import Terminal
from model.errors import MantelwrightError
from model.job import UNTITLED
from model.options import named_alone

if TYPE_CHECKING:
    from model.cutting.stock_list import StockList

ENDED = "the program ended while it worked on this job; there may be too little memory"


@dataclass(frozen=True, slots=True)
class ManyWish:
    """Jobs by name, with what is asked of each."""

    jobs: tuple[str, ...]
    settings: tuple[str, ...]
    option: str
    out: Path
    sheets: commands.SheetWish
    stock_list: StockList
    parts: tuple[str, ...]
    note: bool


@dataclass(frozen=True, slots=True)
class Told:
    """How one job went: the exit code it would have had alone, what it warned of and why it failed."""

    code: int
    warnings: tuple[str, ...]
    fault: str = ""


class _Notes(Terminal):
    """Keeps what is warned of; the rest is for nobody."""

    def __init__(self) -> None:
        super().__init__()
        self.warnings: list[str] = []

    def say(self, text: str) -> None:
        """Results are files here."""

    def warn(self, text: str) -> None:
        """Kept for whoever started all of it."""
        self.warnings.append(text)

    def show_progress(self, done: float, words: str) -> None:
        """Progress is counted in jobs."""


def run_many(wish: ManyWish, terminal: Terminal) -> int:
    """Write every job's files; a line on each that fails. Returns the worst of their exit codes."""
    from render.sheets import paper_size

    paper_size(wish.sheets.paper)
    folders = name_folders(wish.jobs)
    worst, failed, count = DONE, 0, len(wish.jobs)
    for done, (number, told) in enumerate(_work_through(wish, folders), start=1):
        name = wish.jobs[number]
        for warning in told.warnings:
            terminal.warn(_name_job(name, warning))
        if told.code == DONE:
            terminal.say(str(wish.out / folders[number]))
        else:
            terminal.warn(_name_job(name, told.fault))
            worst, failed = max(worst, told.code), failed + 1
        terminal.show_progress(done / count, f"{done} of {count} jobs")
    if failed:
        terminal.warn(f"{failed} of {count} jobs failed; the others are written")
    return worst


def _name_job(name: str, text: str) -> str:
    """One line that says which job it is about."""
    line = "; ".join(part.strip() for part in text.splitlines() if part.strip())
    return line if line.startswith(name) else f"{name}: {line}"


def name_folders(jobs: Sequence[str]) -> tuple[str, ...]:
    """A folder's name for each job, after its file; alike ones are numbered, however they are cased.

    Points at either end go, for of points alone a name would be another folder than one of its own.
    """
    names: list[str] = []
    taken: set[str] = set()
    for job in jobs:
        stem = job if names_demo(job) else Path(job).stem.strip(". ") or UNTITLED
        name, number = stem, 1
        while name.casefold() in taken:
            number += 1
            name = f"{stem} ({number})"
        taken.add(name.casefold())
        names.append(name)
    return tuple(names)


def _work_through(wish: ManyWish, folders: Sequence[str]) -> Iterator[tuple[int, Told]]:
    """Each job's number and how it went, as they are done; a process that dies takes its own job alone."""
    left = list(range(len(wish.jobs)))
    at_once = min(count_cores(), len(left))
    while left:
        before = len(left)
        for number, told in _work_in_pool(wish, folders, left, at_once):
            left.remove(number)
            yield number, told
        if left and at_once == 1 and before == len(left):
            yield left.pop(0), Told(BROKEN, (), ENDED)
        at_once = 1  # one by one it is known which of them a process dies of


def _work_in_pool(
    wish: ManyWish, folders: Sequence[str], left: Sequence[int], at_once: int
) -> Iterator[tuple[int, Told]]:
    """As far as the processes live."""
    pool = ProcessPoolExecutor(at_once, mp_context=get_context("spawn"), initializer=_heed_the_first)
    try:
        asked = [(number, (wish, wish.jobs[number], folders[number])) for number in left]
        futures: dict[Future[Told], int] = {pool.submit(write_one, *what): number for number, what in asked}
        for future in as_completed(futures):
            try:
                yield futures[future], future.result()
            except BrokenProcessPool:
                return
    finally:
        pool.shutdown(wait=True, cancel_futures=True)


def _heed_the_first() -> None:
    """Ctrl-C reaches every process of a terminal; the one that started the others ends them."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    Thread(target=_end_with_the_first, daemon=True).start()


def _end_with_the_first() -> None:
    """One that is killed can end no other, and these would wait for ever. Files are whole at any moment."""
    first = parent_process()
    if first is not None:
        first.join()
        os._exit(1)


def write_one(wish: ManyWish, name: str, folder: str) -> Told:
    """Write one job's files; whatever goes wrong is told, never raised."""
    notes = _Notes()
    return _told(notes, lambda: _write(wish, name, wish.out / folder, notes))


def _write(wish: ManyWish, name: str, out: Path, notes: Terminal) -> None:
    job = named_alone(commands.read_job_named(name, wish.settings, notes, wish.option))
    if OFFER in wish.parts:
        job = commands.carry_photo_of(name, job, notes)
    noted = find_file("--note", (name,), wish.settings) if wish.note else None
    commands.run_packet(job, out, wish.sheets, notes, wish.stock_list, wish.parts, noted)


def _told(notes: _Notes, act: Callable[[], None]) -> Told:
    code, fault = DONE, ""
    try:
        act()
    except FileTrouble as trouble:
        code, fault = DISK, str(trouble)
    except MantelwrightError as refusal:
        code, fault = REFUSED, str(refusal)
    except Exception as error:
        code, fault = BROKEN, f"the program itself failed ({type(error).__name__}: {error})"
    return Told(code, tuple(notes.warnings), fault)
