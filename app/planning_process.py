"""Plans what is bought and how it is cut, in a process of its own, so that the window's edits stay smooth.

It answers on a pipe until nobody asks any more. Asked anew, it lets go of what it was planning.
"""

from __future__ import annotations

import time
from contextlib import suppress
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from model.job import Job

if TYPE_CHECKING:
    from multiprocessing.connection import Connection

    from model.cutting.order import Group
    from model.cutting.plan import CuttingPlan
    from model.cutting.stock_list import StockList

SECONDS = 20.0
"""How long a plan is looked for; what is known by then is the answer, with its bound."""
FIRST = 0.6
"""How long each material is planned before everything is shown for the first time."""


@dataclass(frozen=True, slots=True)
class Question:
    """What is to be planned: a job by its name, out of a stock list. `number` comes back with the answer."""

    number: int
    name: str
    job: Job
    stock_list: StockList


@dataclass(frozen=True, slots=True)
class Stop:
    """Enough: answer with the best plan so far."""


@dataclass(frozen=True, slots=True)
class Told:
    """How far it is: a part of 1, and what is being planned."""

    number: int
    done: float
    words: str


@dataclass(frozen=True, slots=True)
class Planned:
    """The plan, or in `trouble` why there is none. If it `may_improve`, another answer follows."""

    number: int
    plan: CuttingPlan | None
    trouble: str = ""
    may_improve: bool = False


def serve(pipe: Connection) -> None:
    """Answer questions until the other end is closed."""
    with suppress(EOFError, OSError, KeyboardInterrupt):
        asked = _next_question(pipe)
        while True:
            asked = _answer(pipe, asked) or _next_question(pipe)


def _next_question(pipe: Connection) -> Question:
    while True:
        message = pipe.recv()
        if isinstance(message, Question):
            return message


def _answer(pipe: Connection, asked: Question) -> Question | None:
    """Plan and answer; a newer question that came meanwhile is handed back instead."""
    watch = _Watch(pipe, asked.number)
    try:
        plan = _plan(asked, watch)
    except (EOFError, OSError):
        raise
    except Exception as error:
        pipe.send(Planned(asked.number, None, f"{type(error).__name__}: {error}"))
        return watch.newer
    if watch.newer is None:
        pipe.send(Planned(asked.number, _pack(plan)))
    return watch.newer


def _plan(asked: Question, watch: _Watch) -> CuttingPlan:
    """A plan made soon is shown; then what is not proven of it is planned anew with more time."""
    from model.cutting.order import build_order
    from model.cutting.plan import plan_order
    from model.cutting.task import Effort
    from model.surround import plan_surround

    watch.tell(0.0, "taking off the pieces")
    order = build_order([(asked.name, plan_surround(asked.job))], asked.stock_list)

    def begin(i: int, group: Group) -> None:
        words = group.material.section.lower() or group.material.wood.replace("_", " ")
        watch.tell((i + 0.5) / max(len(order.groups), 1), words)
        watch.allow(FIRST)

    first = plan_order(order, Effort(watch.should_stop), begin)
    if first.is_proven or watch.is_over:
        return first
    watch.show(first)
    parts = sum(not group.proof.is_proven for group in first.groups)
    again = plan_order(order, Effort(watch.should_stop), lambda *_: watch.allow(watch.left / parts))
    return min(first, again, key=_rank)


def _pack(plan: CuttingPlan) -> CuttingPlan:
    """The plan without the rows it does not use: a long stock list would be unpacked while edits wait."""
    order = plan.order
    bare = replace(order.stock_list, sold=(), on_hand=())
    groups = tuple(
        replace(each, group=replace(each.group, task=each.task, unpriced=())) for each in plan.groups
    )
    return replace(plan, order=replace(order, groups=(), stock={}, stock_list=bare), groups=groups)


def _rank(plan: CuttingPlan) -> tuple[int, ...]:
    """Plans of one order from the cheapest on: by money, then by wood where no price is known."""
    unpriced = sum(group.proof.cost for group in plan.groups if not group.is_priced)
    return plan.cost, unpriced, -sum(group.proof.bound for group in plan.groups)


class _Watch:
    """Listens while a plan is looked for: to be told to stop, asked anew, or out of time."""

    def __init__(self, pipe: Connection, number: int) -> None:
        self._pipe, self._number = pipe, number
        self._stopped = False
        self._end = time.monotonic() + SECONDS
        self._due = self._end
        self.newer: Question | None = None

    def tell(self, done: float, words: str) -> None:
        """Say how far it is."""
        self._pipe.send(Told(self._number, done, words))

    def show(self, plan: CuttingPlan) -> None:
        """Answer with a plan while a better one is looked for."""
        self._pipe.send(Planned(self._number, _pack(plan), may_improve=True))

    def allow(self, seconds: float) -> None:
        """From now on so long, and no longer than in all."""
        self._due = min(time.monotonic() + seconds, self._end)

    @property
    def left(self) -> float:
        """Seconds left in all."""
        return max(self._end - time.monotonic(), 0.0)

    @property
    def is_over(self) -> bool:
        """Whether the best plan so far is to do, whatever was allowed."""
        while self._pipe.poll():
            message = self._pipe.recv()
            if isinstance(message, Question):
                self.newer = message
            self._stopped = True
        return self._stopped or not self.left

    def should_stop(self) -> bool:
        """Whether the best plan so far of what is being planned is to do."""
        return self.is_over or time.monotonic() > self._due
