"""What is done on which day, with drying times, and the line of tasks that decides when all is done."""

from __future__ import annotations

from model.days.plan import plan_days
from render.day_bars import Days, bar_strips, count_days, legend_strip
from render.day_table import day_strips, describe_days
from render.desk import Desk, Draft, draft_pages
from render.drawing import MM
from render.materials_sheet import rate_strips
from render.tables import Strip, heading_strip, lead, paragraph_strips

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
        *day_strips(plan, desk.width),
        heading_strip("Hours that the plan rests on", above=5 * MM),
        *rate_strips(job, (TIME,), job.about.length_style, desk.width),
    ]
    return draft_pages(desk, DAY_PLAN, strips)
