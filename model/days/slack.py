"""What room a day plan leaves: how much later each task may begin, and which may be done beside each other.

How tasks are laid into the days stands in model.days.calendar.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from model.days.calendar import CLOCK, NEAR, Slot
from model.days.network import Task


def list_slack(tasks: Sequence[Task], slots: Sequence[Slot], day: float) -> tuple[float, ...]:
    """Working hours by which each task may begin later with nothing else ending later than the last does.

    Everybody keeps to the order that the plan gives them; `day` is hours worked a day.
    """
    latest = _list_latest(tasks, slots, day)
    return tuple(
        max(0.0, count_worked_hours(late, day) - count_worked_hours(slot.begin, day))
        for late, slot in zip(latest, slots, strict=True)
    )


def count_worked_hours(at: float, day: float) -> float:
    """Working hours from the first morning to an hour of the clock."""
    days = floor(at / CLOCK + NEAR)
    return days * day + min(max(at - days * CLOCK, 0.0), day)


def list_beside(tasks: Sequence[Task]) -> tuple[tuple[int, ...], ...]:
    """For each task the places of those that neither wait for it nor it for them, at any remove."""
    before: list[set[int]] = []
    for task in tasks:
        before.append({i for own in task.after for i in (own, *before[own])})
    return tuple(
        tuple(
            other
            for other in range(len(tasks))
            if other != n and other not in before[n] and n not in before[other]
        )
        for n in range(len(tasks))
    )


def _list_latest(tasks: Sequence[Task], slots: Sequence[Slot], day: float) -> list[float]:
    """The hour of the clock when each task must begin."""
    whole = max((slot.ready for slot in slots), default=0.0)
    end = [whole - task.waits for task in tasks]
    latest = [0.0] * len(tasks)
    for n in _order_last_first(tasks, slots):
        hours = sum(b - a for a, b in slots[n].work)
        latest[n] = _go_back(end[n], hours, day)
        for i in tasks[n].after:
            end[i] = min(end[i], latest[n] - tasks[i].waits)
        for i in slots[n].follows:
            end[i] = min(end[i], latest[n])
    return latest


def _order_last_first(tasks: Sequence[Task], slots: Sequence[Slot]) -> list[int]:
    """Each task after all that come after it."""
    to_come = [0] * len(tasks)
    for n, task in enumerate(tasks):
        for i in {*task.after, *slots[n].follows}:
            to_come[i] += 1
    order = [n for n, count in enumerate(to_come) if not count]
    for n in order:
        for i in {*tasks[n].after, *slots[n].follows}:
            to_come[i] -= 1
            if not to_come[i]:
                order.append(i)
    return order


def _go_back(end: float, hours: float, day: float) -> float:
    """The latest begin of so many hours of work that are done by `end`, an hour of the clock."""
    at, left = end, hours
    while True:
        morning = floor(at / CLOCK + NEAR) * CLOCK
        at = min(at, morning + day)
        if left <= at - morning + NEAR:
            return at - left
        left -= at - morning
        at = morning - CLOCK + day
