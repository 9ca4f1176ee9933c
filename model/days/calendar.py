"""Tasks laid into the days of a crew: each begins when what it waits for is dry and hands are free.

Work stops at the end of each day and goes on the next morning; what dries goes on drying at night.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import floor

from model.days.network import Task, time_tasks

CLOCK = 24.0
"""Hours from one morning to the next."""
NEAR = 1e-9
Span = tuple[float, float]
_Hand = tuple[float, int | None]
"""When somebody is free, and after which task; None who has not begun."""


def find_day(at: float) -> tuple[int, float]:
    """The day that a moment lies on, counted from 0, and how many hours after that day's work began it is."""
    day = floor(at / CLOCK + NEAR)
    return day, at - day * CLOCK


@dataclass(frozen=True, slots=True)
class Slot:
    """When one task is done, in hours of the clock since the first morning; a day's work begins at 0.

    `work` are its spans, one for each day it is worked on, `dry` the span it is left alone after, None where
    it need not be. `leads` says whether it is on the line of tasks that decides when everything is done.
    `follows` are the places of the tasks whose hands do it when they are done with those.
    """

    work: tuple[Span, ...]
    dry: Span | None
    leads: bool
    follows: tuple[int, ...] = ()

    @property
    def begin(self) -> float:
        """When its work begins."""
        return self.work[0][0]

    @property
    def ready(self) -> float:
        """When it is done and dry."""
        return self.dry[1] if self.dry else self.work[-1][1]


@dataclass(slots=True)
class _Laid:
    """A task in the calendar, and the task it had to wait for last; None at the first begin."""

    slot: Slot
    driver: int | None


def lay_out_days(tasks: Sequence[Task], crew: int, day: float) -> tuple[Slot, ...]:
    """A slot for each task; of those that could go on, the one with the longest way to the end goes first.

    A task that needs more people than the `crew` has is done by all there are, in as many more hours.
    """
    tails = [timing.tail for timing in time_tasks(tasks)]
    free: list[_Hand] = [(0.0, None)] * crew
    laid: dict[int, _Laid] = {}
    while len(laid) < len(tasks):
        can = [n for n, task in enumerate(tasks) if n not in laid and all(i in laid for i in task.after)]
        n = min(can, key=lambda n: (_begin(tasks[n], laid, free, day)[0], -tails[n], n))
        begin, driver, hands = _begin(tasks[n], laid, free, day)
        hours = tasks[n].hours * tasks[n].hands / hands
        work = _work(begin, hours, day)
        end = work[-1][1]
        dry = (end, end + tasks[n].waits) if tasks[n].waits else None
        taken = _choose_hands(free, begin, hands, tasks[n].after)
        follows = tuple(sorted({last for _, last in taken if last is not None}))
        laid[n] = _Laid(Slot(work, dry, False, follows), driver)
        for hand in taken:
            free.remove(hand)
        free += [(end, n)] * hands
    return _mark_leading(laid, len(tasks))


def _begin(
    task: Task, laid: dict[int, _Laid], free: Sequence[_Hand], day: float
) -> tuple[float, int | None, int]:
    """When it can begin, what it waits for last, and how many people do it."""
    hands = min(task.hands, len(free))
    last = sorted(free, key=lambda pair: pair[0])[hands - 1]
    waits = [(laid[i].slot.ready, i) for i in task.after]
    at, driver = max([*waits, (last[0], last[1] if last[1] is not None else -1)], key=lambda p: p[0])
    return _next_work(at, day), None if driver == -1 else driver, hands


def _choose_hands(free: Sequence[_Hand], begin: float, hands: int, after: Sequence[int]) -> list[_Hand]:
    """Whoever did what comes before goes on with it; else those who have been free longest."""
    can = [hand for hand in free if hand[0] <= begin + NEAR]
    return sorted(can, key=lambda hand: (hand[1] not in after, hand[0]))[:hands]


def _next_work(at: float, day: float) -> float:
    """`at` itself in a day's working hours, else the next morning."""
    morning = floor(at / CLOCK + NEAR) * CLOCK
    return at if at - morning < day - NEAR else morning + CLOCK


def _work(begin: float, hours: float, day: float) -> tuple[Span, ...]:
    """The spans that so many hours of work take from `begin` on; one of no length where it takes none."""
    spans: list[Span] = []
    at, left = begin, hours
    while left > NEAR:
        at = _next_work(at, day)
        evening = floor(at / CLOCK + NEAR) * CLOCK + day
        end = min(at + left, evening)
        spans.append((at, end))
        left -= end - at
        at = end
    return tuple(spans) or ((begin, begin),)


def _mark_leading(laid: dict[int, _Laid], count: int) -> tuple[Slot, ...]:
    """The slots with those marked that lead from the first begin to the last end."""
    leading: set[int] = set()
    at: int | None = max(range(count), key=lambda n: laid[n].slot.ready) if count else None
    while at is not None:
        leading.add(at)
        at = laid[at].driver
    slots = [laid[n].slot for n in range(count)]
    return tuple(replace(slot, leads=n in leading) for n, slot in enumerate(slots))
