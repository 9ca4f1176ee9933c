"""What waits for what in a surround's day plan."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from app.demo import list_demos, read_demo
from model.days.network import Task
from model.days.plan import DayPlan, plan_days
from model.job import Job, default_job, with_texts
from tests.planned import plan_of, take
from tests.strategies import jobs

A_MOMENT = 1e-9
"""Hours that nobody can measure."""


def planned(job: Job) -> DayPlan:
    return plan_days(plan_of(job), take(job))


def before(tasks: tuple[Task, ...], n: int) -> set[int]:
    """Everything that must be done before a task."""
    found: set[int] = set()
    edge = set(tasks[n].after)
    while edge:
        found |= edge
        edge = {i for j in edge for i in tasks[j].after} - found
    return found


@pytest.mark.parametrize("name", list_demos())
def test_painting_waits_for_everything_and_gluing_for_primer(name: str) -> None:
    tasks = planned(read_demo(name)).tasks
    names = [task.name for task in tasks]
    assert before(tasks, len(tasks) - 1) == set(range(len(tasks) - 1))
    prime = names.index("Prime every piece")
    for n, task in enumerate(tasks):
        if ": frame" in task.name or ": panel" in task.name:
            assert prime in before(tasks, n)


def test_sub_assemblies_do_not_wait_for_each_other_and_nailers_not_for_them() -> None:
    tasks = planned(default_job()).tasks
    names = [task.name for task in tasks]
    assert names.index("Both columns: frame") not in before(tasks, names.index("Frieze: frame"))
    assert not any(":" in names[i] for i in before(tasks, names.index("Fix the nailers")))


def test_what_is_glued_is_fitted_when_its_glue_has_its_full_strength() -> None:
    slow = with_texts(default_job(), [("times.cure", "100")])
    plan = planned(slow)
    names = [task.name for task in plan.tasks]
    trial = plan.slots[names.index("Try it dry")]
    last = max(n for n, name in enumerate(names) if name.startswith("Both columns"))
    assert trial.begin >= plan.slots[last].work[-1][1] + 100


def test_more_people_are_done_no_later() -> None:
    one, two = (planned(with_texts(default_job(), [("times.crew", crew)])) for crew in ("1", "2"))
    assert max(s.ready for s in two.slots) <= max(s.ready for s in one.slots)
    assert two.hours == pytest.approx(one.hours)


@settings(max_examples=6)
@given(jobs())
def test_every_design_has_a_plan_whose_hours_are_those_of_its_steps(job: Job) -> None:
    days = planned(job)
    assert len(days.tasks) == len(days.slots)
    for task, slot in zip(days.tasks, days.slots, strict=True):
        hands = min(task.hands, days.crew)
        assert sum(b - a for a, b in slot.work) * hands == pytest.approx(
            task.hours * task.hands, abs=A_MOMENT
        )
