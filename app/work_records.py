"""The assembly steps and the day plan, as the command line prints them. No files, no arguments."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from textwrap import fill
from typing import Any

from app.records import LINE, PLACES, table_lines
from model.days.plan import DayPlan
from model.days.slack import list_beside
from model.steps.step import Step
from model.surround import Surround
from model.takeoff.takeoff import Takeoff
from render.day_table import COLUMNS, describe_days, list_day_rows
from render.step_words import list_words, say_time

INDENT = "   "


def list_step_records(steps: Sequence[Step], surround: Surround, takeoff: Takeoff) -> list[dict[str, Any]]:
    """Each step for a script: boards by their marks, hours of all hands, what is driven by its count."""
    return [
        {
            "step": number,
            "where": str(step.where),
            "title": step.title,
            "parts": list(step.parts),
            "puts_on": [surround.marks[board] for board in step.boards],
            "brings": [surround.marks[board] for board in step.brought],
            "there": [surround.marks[board] for board in step.there],
            "driven": [
                {"means": str(fixing.means), "length": round(fixing.length, PLACES), "count": fixing.count}
                for fixing in (takeoff.fixings[n] for n in step.driven)
                if fixing.count
            ],
            "anchors": [anchor + 1 for anchor in step.anchors],
            "hours": round(step.hours, PLACES),
            "people": step.hands,
            "clamped_hours": step.dries,
            "notes": list(step.notes),
        }
        for number, step in enumerate(steps, start=1)
    ]


def step_lines(steps: Sequence[Step], surround: Surround, takeoff: Takeoff) -> Iterable[str]:
    """The same in words."""
    for number, step in enumerate(steps, start=1):
        time = say_time(step)
        yield f"{number}. {step.title}" + (f" ({time})" if time else "")
        for word, text in list_words(step, surround, takeoff):
            yield fill(f"{word} {text}", LINE, initial_indent=INDENT, subsequent_indent=INDENT + "  ")


def list_day_records(plan: DayPlan) -> list[dict[str, Any]]:
    """Each task for a script; hours of the clock since the first morning, tasks by their numbers from 1."""
    found = zip(plan.tasks, plan.slots, plan.slack, list_beside(plan.tasks), strict=True)
    return [
        {
            "task": number,
            "group": task.group,
            "title": task.name,
            "hours": round(task.hours, PLACES),
            "people": min(task.hands, plan.crew),
            "work": [[round(end, PLACES) for end in span] for span in slot.work],
            "dry": [round(end, PLACES) for end in slot.dry] if slot.dry else None,
            "decides": slot.leads,
            "may_slip": round(slack, PLACES),
            "after": [place + 1 for place in task.after],
            "beside": [place + 1 for place in beside],
        }
        for number, (task, slot, slack, beside) in enumerate(found, start=1)
    ]


def day_lines(plan: DayPlan) -> Iterable[str]:
    """The same in words."""
    yield fill(describe_days(plan), LINE)
    yield ""
    yield from table_lines(COLUMNS, list_day_rows(plan))
