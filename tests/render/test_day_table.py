"""The day plan in words."""

from __future__ import annotations

import pytest

from app.demo import list_demos, read_demo
from model.days.plan import plan_days
from model.surround import plan_surround
from model.takeoff.takeoff import take_off
from render.day_table import COLUMNS, list_day_rows, say_numbers, say_slack, say_when


@pytest.mark.parametrize(
    ("hours", "text"),
    [
        (0, "no"),
        (0.2, "no"),
        (0.25, "0.25 h"),
        (3.6, "3.5 h"),
        (8, "1 d"),
        (18.1, "2 d 2 h"),
        (7.99, "7.75 h"),
    ],
)
def test_a_slip_is_said_in_days_and_quarters_and_never_more_than_there_is(hours, text):
    assert say_slack(hours, 8.0) == text


@pytest.mark.parametrize(
    ("at", "text"),
    [(0, "day 1, 0 h"), (7.75, "day 1, 7.75 h"), (8, "day 1, 8 h"), (12, "day 1, night"), (49, "day 3, 1 h")],
)
def test_an_hour_of_the_clock_is_a_day_and_an_hour_of_its_work_or_night(at, text):
    assert say_when(at, 8.0) == text


@pytest.mark.parametrize(
    ("places", "text"),
    [
        ((), ""),
        ((0,), "1"),
        ((0, 1), "1, 2"),
        ((6, 3, 4, 5), "4\u20137"),
        ((0, 2, 3, 4, 8), "1, 3\u20135, 9"),
    ],
)
def test_neighbouring_numbers_are_written_as_a_run(places, text):
    assert say_numbers(places) == text


@pytest.mark.parametrize("name", list_demos())
def test_every_task_has_a_row_and_the_last_to_dry_cannot_slip(name):
    surround = plan_surround(read_demo(name))
    plan = plan_days(surround, take_off(surround))
    rows = [dict(zip(COLUMNS, row, strict=True)) for row in list_day_rows(plan)]
    assert [row["Task"] for row in rows] == [task.name for task in plan.tasks]
    last = max(range(len(rows)), key=lambda n: plan.slots[n].ready)
    assert rows[last]["May slip"] == "no"
