"""The day plan in words: when each task is done, how much later it may begin, and what may be done beside it.

The bars are render.day_bars'; which task is done when is worked out in model.days.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.days.calendar import NEAR, find_day
from model.days.plan import DayPlan
from model.days.slack import list_beside
from render.day_bars import count_days, count_worked
from render.drawing import MM
from render.tables import Cell, Strip, Table, opening_strips, share_columns, table_strips

COLUMNS = ("No.", "Task", "Begins", "Done", "Dry", "May slip", "Waits for", "Can be done beside")
SHARES = (10, 60, 28, 28, 28, 21, 28, 40)
QUARTER = 0.25
TITLE = "When, and how much it may slip"
HOW = (
    "Day and hour of that day's work. A task that slips by no more than its line says makes nothing end "
    "later, if the others are done as planned and everybody keeps to their order. Bold is the line that "
    "decides when all is done; it may slip only as far as something is dry before the next morning. What can "
    "be done beside a task neither waits for it nor it for that: with more hands they overlap."
)


def day_strips(plan: DayPlan, width: float) -> tuple[Strip, ...]:
    """The table, for a page `width` wide."""
    columns = share_columns(width, COLUMNS, SHARES, ends=("No.", "May slip"))
    rows = tuple(
        tuple(Cell(text, bold=slot.leads and n < 2) for n, text in enumerate(row))
        for row, slot in zip(list_day_rows(plan), plan.slots, strict=True)
    )
    return (*opening_strips(TITLE, HOW, width, above=5 * MM), *table_strips(Table(columns, rows)))


def list_day_rows(plan: DayPlan) -> list[tuple[str, ...]]:
    """A row for each task, in the order of COLUMNS."""
    found = zip(plan.tasks, plan.slots, plan.slack, list_beside(plan.tasks), strict=True)
    return [
        (
            str(number),
            task.name,
            say_when(slot.begin, plan.day),
            say_when(slot.work[-1][1], plan.day),
            say_when(slot.ready, plan.day) if slot.dry else "",
            say_slack(slack, plan.day),
            say_numbers(task.after),
            say_numbers(beside),
        )
        for number, (task, slot, slack, beside) in enumerate(found, start=1)
    ]


def say_when(at: float, day: float) -> str:
    """``day 2, 3.5 h`` after work begins; after the end of work it is night."""
    whole, into = find_day(at)
    return f"day {whole + 1}, night" if into > day + NEAR else f"day {whole + 1}, {_quarters(into)} h"


def say_slack(hours: float, day: float) -> str:
    """``no``, ``3.5 h`` or, from a whole day of work on, ``1 d 2 h``; never more than there is."""
    hours = int(hours / QUARTER + NEAR) * QUARTER
    if not hours:
        return "no"
    days = int(hours / day + NEAR)
    rest = hours - days * day
    parts = [f"{days} d"] if days else []
    return " ".join([*parts, f"{rest:g} h"] if rest > NEAR else parts)


def _quarters(hours: float) -> str:
    return f"{round(hours / QUARTER) * QUARTER:g}"


def say_numbers(places: Sequence[int]) -> str:
    """Places counted from 0 as numbers counted from 1: ``1, 4\u20137``."""
    runs: list[list[int]] = []
    for place in sorted(places):
        if runs and place == runs[-1][-1] + 1:
            runs[-1].append(place)
        else:
            runs.append([place])
    return ", ".join(_say_run(run[0] + 1, run[-1] + 1) for run in runs)


def _say_run(first: int, last: int) -> str:
    if first == last:
        return str(first)
    return f"{first}, {last}" if last == first + 1 else f"{first}\N{EN DASH}{last}"


def describe_days(plan: DayPlan) -> str:
    """How long it takes, with whom, and what that is worth."""
    people = "one person" if plan.crew == 1 else f"{plan.crew} people"
    worked = count_worked(plan.slots)
    days = f"{count_days(plan.slots)} day{'s' if count_days(plan.slots) > 1 else ''}"
    return (
        f"{people.capitalize()}, {plan.day:g} hours a day: {plan.hours:.1f} hours of work on {worked} "
        f"day{'s' if worked > 1 else ''}, everything dry after {days}. Bars over one another are done at the "
        "same time. Where a day is free, what comes after it moves on. The hours are a start: set those of "
        "your own jobs."
    )
