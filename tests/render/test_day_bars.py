"""Bars of the day plan: each where its hours are, told apart by tone and hatch, inside the page."""

from __future__ import annotations

import pytest

from model.days.calendar import CLOCK, lay_out_days
from model.days.network import Task
from render.day_bars import NOT_LESS, Days, bar_strips, count_days, count_worked
from render.drawing import Fill, Hatch, Region, Text
from render.lettering import text_width

TASKS = (
    Task("Frame", 2, waits=1, group="On the bench"),
    Task("Panel", 1, waits=24, after=(0,), group="On the bench"),
    Task("Nailers", 3, group="On site"),
    Task("A task with a name that is far too long for the room there is on any sheet", 9, 2, 0, (1, 2), "Up"),
)
SLOTS = lay_out_days(TASKS, 2, 8.0)
DAYS = Days(9.0, count_days(SLOTS), 8.0)


def test_hours_lie_in_order_and_nights_are_narrow() -> None:
    places = [DAYS.place(hour) for hour in (0, 1, 8, 12, 24, 25, 32)]
    assert places == sorted(places)
    assert DAYS.place(0) == pytest.approx(DAYS.left)
    assert DAYS.place(CLOCK * DAYS.days) == pytest.approx(DAYS.width)
    assert DAYS.place(24) - DAYS.place(8) < DAYS.place(8) - DAYS.place(0)


def test_a_bar_is_as_long_as_its_hours() -> None:
    strips = bar_strips(TASKS, SLOTS, DAYS)
    bars = [m for strip in strips for m in strip.marks if isinstance(m, Region) and m.fill is not Fill.BAND]
    works = [(a, b) for slot in SLOTS for a, b in slot.work]
    dark_or_white = []
    for region in bars:
        xs = [x for x, _ in region.rings[0]]
        dark_or_white.append((min(xs), max(xs)))
    for a, b in works:
        wanted = DAYS.place(a), max(DAYS.place(b), DAYS.place(a) + NOT_LESS)
        assert any(bar == pytest.approx(wanted) for bar in dark_or_white)


def test_drying_is_hatched_and_the_leading_line_dark_and_bold() -> None:
    strips = bar_strips(TASKS, SLOTS, DAYS)
    marks = [mark for strip in strips for mark in strip.marks]
    assert sum(isinstance(mark, Hatch) for mark in marks) == sum(slot.dry is not None for slot in SLOTS)
    bold = {mark.text for mark in marks if isinstance(mark, Text) and mark.bold}
    for task, slot in zip(TASKS[:3], SLOTS, strict=False):
        assert (task.name in bold) == slot.leads
    dark = sum(isinstance(mark, Region) and mark.fill is Fill.OPENING for mark in marks)
    assert dark == sum(len(slot.work) for slot in SLOTS if slot.leads)


def test_names_keep_to_their_column() -> None:
    for strip in bar_strips(TASKS, SLOTS, DAYS):
        row = [mark for mark in strip.marks if isinstance(mark, Text) and not mark.text.startswith("Day")]
        for text in row:
            if text.at[0] < DAYS.left / 2:
                assert text.at[0] + text_width(text.text, text.height, text.bold) < DAYS.left


def test_days_are_counted_to_the_last_that_dries_and_worked_ones_by_work() -> None:
    assert count_days(SLOTS) >= count_worked(SLOTS) >= 2
    assert count_days(()) == 1
