"""Works out what options take, one after the other, in a process of its own: plans hold up a window's edits.

Nobody waits for it: what it answers is what is written into an offer for which no plan is shown.
"""

from __future__ import annotations

import os
from contextlib import suppress
from dataclasses import dataclass
from typing import TYPE_CHECKING

from app.making import plan_to_write
from model.job import Job

if TYPE_CHECKING:
    from multiprocessing.connection import Connection

    from model.check.finding import Status
    from model.cutting.stock_list import StockList
    from model.estimate import Estimate
    from model.surround import Surround

CALM = 10
"""How much this gives way to the window."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """A job to be worked out, out of `stock_list` or, where that is None, the one that came before."""

    number: int
    job: Job
    stock_list: StockList | None


@dataclass(frozen=True, slots=True)
class Counted:
    """How many findings an option has of each status, worst first, and what it takes."""

    counts: tuple[tuple[Status, int], ...]
    estimate: Estimate


@dataclass(frozen=True, slots=True)
class Answered:
    """What came of a question: nothing where it failed, and then why."""

    number: int
    counted: Counted | None
    trouble: str = ""


def serve(pipe: Connection) -> None:
    """Answer until the other end is closed."""
    with suppress(AttributeError, OSError):  # not every system can
        os.nice(CALM)
    stock_list: StockList | None = None
    with suppress(EOFError, OSError, KeyboardInterrupt):
        while True:
            wanted: Wanted = pipe.recv()
            stock_list = wanted.stock_list or stock_list
            pipe.send(_answer(wanted, stock_list))


def _answer(wanted: Wanted, stock_list: StockList | None) -> Answered:
    try:
        assert stock_list is not None
        return Answered(wanted.number, count_up(wanted.job, stock_list))
    except Exception as error:
        return Answered(wanted.number, None, f"{type(error).__name__}: {error}")


def count_up(job: Job, stock_list: StockList) -> Counted:
    """Findings of a job, and what it takes."""
    from model.check.all import check_surround
    from model.check.finding import count_statuses
    from model.surround import plan_surround

    surround = plan_surround(job)
    return Counted(count_statuses(check_surround(surround)), estimate_surround(surround, stock_list))


def estimate_surround(surround: Surround, stock_list: StockList) -> Estimate:
    """What a surround takes, by as good a plan as is looked for when an offer is written."""
    from model.estimate import make_estimate
    from model.takeoff.takeoff import take_off

    return make_estimate(surround, take_off(surround), plan_to_write("", surround, stock_list))
