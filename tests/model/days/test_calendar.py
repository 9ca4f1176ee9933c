"""Working days: nothing begins too early, nobody is in two places, nights are for drying."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.days.calendar import CLOCK, Slot, lay_out_days
from model.days.network import Task, total_hours
from tests.model.days.test_network import HAND, networks

CREWS, DAYS = st.integers(1, 3), st.sampled_from((4.0, 8.0, 10.0))


def test_a_plan_for_one_person_is_as_worked_by_hand() -> None:
    """Eight hours a day: frame 0-2, the nailers begin while it is in clamps and run on, 2-5; panel 5-6;
    returns 7-8, dry at 32, the next day's evening; so it goes up on the third morning, 48-50, and is
    painted 50-51, dry at 59."""
    slots = lay_out_days(HAND, 1, 8.0)
    assert [slot.work for slot in slots] == [
        ((0, 2),), ((5, 6),), ((2, 5),), ((7, 8),), ((48, 50),), ((50, 51),)
    ]  # fmt: skip
    assert slots[-1].ready == 59
    assert [slot.leads for slot in slots] == [True, True, True, True, True, True]


def test_a_second_person_sets_nailers_meanwhile() -> None:
    slots = lay_out_days(HAND, 2, 8.0)
    assert slots[2].work == ((0, 3),)
    assert not slots[2].leads


@given(networks(), CREWS, DAYS)
def test_nothing_begins_before_what_it_waits_for_is_dry(
    tasks: tuple[Task, ...], crew: int, day: float
) -> None:
    slots = lay_out_days(tasks, crew, day)
    for task, slot in zip(tasks, slots, strict=True):
        assert all(slot.begin >= slots[i].ready - 1e-9 for i in task.after)


@given(networks(), CREWS, DAYS)
def test_all_work_is_done_in_working_hours_by_the_hands_there_are(
    tasks: tuple[Task, ...], crew: int, day: float
) -> None:
    slots = lay_out_days(tasks, crew, day)
    for task, slot in zip(tasks, slots, strict=True):
        hands = min(task.hands, crew)
        assert sum(b - a for a, b in slot.work) == pytest.approx(task.hours * task.hands / hands)
        for begin, end in slot.work:
            if end > begin:
                assert begin % CLOCK < day + 1e-6
                assert end - begin // CLOCK * CLOCK <= day + 1e-6
    for at in sorted({span[0] for slot in slots for span in slot.work}):
        busy = sum(
            min(task.hands, crew)
            for task, slot in zip(tasks, slots, strict=True)
            if any(begin <= at < end - 1e-9 for begin, end in slot.work)
        )
        assert busy <= crew


@given(networks())
def test_with_many_hands_that_never_sleep_it_takes_as_long_as_the_longest_line(
    tasks: tuple[Task, ...],
) -> None:
    slots = lay_out_days(tasks, 30, CLOCK)
    assert max(slot.ready for slot in slots) == pytest.approx(total_hours(tasks))


@given(networks(), CREWS, DAYS)
def test_the_leading_line_runs_without_a_break_from_the_first_begin_to_the_end(
    tasks: tuple[Task, ...], crew: int, day: float
) -> None:
    slots = lay_out_days(tasks, crew, day)
    line = sorted((slot for slot in slots if slot.leads), key=lambda slot: (slot.begin, slot.ready))
    assert line[0].begin == 0
    assert max(slot.ready for slot in slots) == pytest.approx(line[-1].ready)
    for before, after in pairwise(line):
        _check_joined(before, after, day)


def _check_joined(before: Slot, after: Slot, day: float) -> None:
    """It begins when the one before is done or dry, or on the first morning after that."""
    joined = [before.work[-1][1], before.ready]
    mornings = [(at // CLOCK + 1) * CLOCK for at in joined if at % CLOCK >= day - 1e-6]
    assert any(abs(after.begin - at) < 1e-6 for at in (*joined, *mornings))


def test_no_tasks_take_no_days() -> None:
    assert lay_out_days((), 2, 8.0) == ()
