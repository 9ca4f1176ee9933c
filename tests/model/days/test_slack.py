"""Room in a day plan: a task put off by its slack delays nothing at the end, put off by more it does."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.days.calendar import CLOCK, Slot, lay_out_days
from model.days.network import Task
from model.days.slack import count_worked_hours, list_beside, list_slack
from tests.model.days.test_network import HAND, networks

CREWS, DAYS = st.integers(1, 3), st.sampled_from((4.0, 8.0, 10.0))


def test_the_plan_worked_by_hand_leaves_the_room_worked_by_hand() -> None:
    """Two people, eight hours a day: frame 0-2; panel 3-4; returns 5-6, dry at 30; up 30-32; painted on
    the third morning. The nailers, three hours, must be done at 30, the second day's seventh
    hour, and so may begin at 27, eleven working hours after the first morning. The rest is one line."""
    slots = lay_out_days(HAND, 2, 8.0)
    assert [slot.begin for slot in slots] == [0, 3, 0, 5, 30, 48]
    assert list_slack(HAND, slots, 8.0) == pytest.approx([0, 0, 11, 0, 0, 0])


@given(networks(), CREWS, DAYS, st.data())
def test_a_task_may_be_put_off_by_its_slack_and_by_no_more(
    tasks: tuple[Task, ...], crew: int, day: float, data: st.DataObject
) -> None:
    slots = lay_out_days(tasks, crew, day)
    end = max(slot.ready for slot in slots)
    n = data.draw(st.integers(0, len(tasks) - 1))
    slack = list_slack(tasks, slots, day)[n]
    assert _run_again(tasks, slots, day, n, slack) <= end + 1e-6
    assert _run_again(tasks, slots, day, n, slack + 0.25) > end + 1e-6


def _run_again(tasks: tuple[Task, ...], slots: tuple[Slot, ...], day: float, late: int, by: float) -> float:
    """When all is dry if one task begins so many working hours later and everything else when it can.

    Hours of work are counted from the first morning and turned into hours of the clock; no code is shared.
    """
    done: dict[int, float] = {}
    ready: dict[int, float] = {}
    while len(done) < len(tasks):
        for n, task in enumerate(tasks):
            before = {*task.after, *slots[n].follows}
            if n in done or not before <= set(done):
                continue
            at = max([*(ready[i] for i in task.after), *(done[i] for i in slots[n].follows), 0.0])
            begin = _to_worked(at, day)
            if n == late:
                begin = max(begin, _to_worked(slots[n].begin, day) + by)
            worked = sum(b - a for a, b in slots[n].work)
            done[n] = max(_to_clock(begin + worked, day), at)
            ready[n] = done[n] + task.waits
    return max(ready.values())


def _to_worked(at: float, day: float) -> float:
    whole = int(at / CLOCK + 1e-9)
    return whole * day + min(at - whole * CLOCK, day)


def _to_clock(worked: float, day: float) -> float:
    """The evening rather than the next morning."""
    whole = int(worked / day - 1e-9)
    return whole * CLOCK + worked - whole * day


def test_worked_hours_stand_still_at_night() -> None:
    assert [count_worked_hours(at, 8.0) for at in (0, 3, 8, 20, 24, 26)] == [0, 3, 8, 8, 8, 10]


@given(networks())
def test_what_may_be_done_beside_each_other_waits_neither_way(tasks: tuple[Task, ...]) -> None:
    beside = list_beside(tasks)
    for n, own in enumerate(beside):
        for other in range(len(tasks)):
            waits = _waits_for(tasks, n, other) or _waits_for(tasks, other, n)
            assert (other in own) == (other != n and not waits)


def _waits_for(tasks: tuple[Task, ...], n: int, other: int) -> bool:
    return other in tasks[n].after or any(_waits_for(tasks, i, other) for i in tasks[n].after)


def test_no_tasks_leave_no_room() -> None:
    assert list_slack((), (), 8.0) == ()
    assert list_beside(()) == ()
