"""What is done on which day, with drying times, and the line of tasks that decides when all is done."""

from __future__ import annotations

from model.days.plan import DayPlan, plan_days
from render.day_bars import Days, bar_strips, count_days, count_worked, legend_strip
from render.desk import Desk, Draft, draft_pages
from render.materials_sheet import rate_strips
from render.tables import MM, Strip, heading_strip, lead, paragraph_strips

DAY_PLAN = "Day plan"
TIME = "Time"
"""The group of the table of parameters that the plan rests on."""


def draft_day_plan(desk: Desk) -> list[Draft]:
    """The bars, then the hours they rest on; no sheet where nothing was taken off."""
    if desk.takeoff is None:
        return []
    job = desk.surround.job
    plan = plan_days(desk.surround, desk.takeoff)
    days = Days(desk.width, count_days(plan.slots), job.shop.times.day)
    strips = [
        heading_strip(DAY_PLAN),
        *lead(paragraph_strips(describe_days(plan), desk.width)),
        legend_strip(),
        Strip(1.5 * MM, leads=True),
        *bar_strips(plan.tasks, plan.slots, days),
        heading_strip("Hours that the plan rests on", above=5 * MM),
        *rate_strips(job, (TIME,), job.about.length_style, desk.width),
    ]
    return draft_pages(desk, DAY_PLAN, strips)


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
