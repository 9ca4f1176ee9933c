"""Tasks that wait for each other, and how long they take together at least.

Nobody's hands and no nights are thought of here: see model.days.calendar.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Task:
    """`hours` from begin to end with `hands` people at it; then nothing goes on with it for `waits` hours.

    `after` are the places in the list of tasks that must be done and dry before; all lie before its own.
    """

    name: str
    hours: float
    hands: int = 1
    waits: float = 0.0
    after: tuple[int, ...] = ()
    group: str = ""


@dataclass(frozen=True, slots=True)
class Timing:
    """Hours from the first begin: when a task can begin at the earliest and may at the latest.

    `tail` is how long it takes from its begin to the end of everything, drying included.
    """

    earliest: float
    latest: float
    tail: float

    @property
    def slack(self) -> float:
        """How much later it may begin without anything ending later."""
        return self.latest - self.earliest


def time_tasks(tasks: Sequence[Task]) -> tuple[Timing, ...]:
    """The timing of each task where hands are many and nobody sleeps."""
    earliest: list[float] = []
    for task in tasks:
        ready = [earliest[i] + tasks[i].hours + tasks[i].waits for i in task.after]
        earliest.append(max(ready, default=0.0))
    tails = [task.hours + task.waits for task in tasks]
    for n in reversed(range(len(tasks))):
        for i in tasks[n].after:
            tails[i] = max(tails[i], tasks[i].hours + tasks[i].waits + tails[n])
    whole = max((begin + tail for begin, tail in zip(earliest, tails, strict=True)), default=0.0)
    return tuple(Timing(begin, whole - tail, tail) for begin, tail in zip(earliest, tails, strict=True))


def total_hours(tasks: Sequence[Task]) -> float:
    """From the first begin to when the last is dry, at least."""
    return max((timing.earliest + timing.tail for timing in time_tasks(tasks)), default=0.0)
