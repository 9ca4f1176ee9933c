"""How long tasks take together: by hand, and by an independent shortest-path routine."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.sparse.csgraph import bellman_ford

from model.days.network import Task, time_tasks, total_hours

HAND = (
    Task("frame", 2, waits=1),
    Task("panel", 1, waits=1, after=(0,)),
    Task("nailers", 3),
    Task("returns", 1, waits=24, after=(1,)),
    Task("up", 2, after=(2, 3)),
    Task("paint", 1, waits=8, after=(4,)),
)
"""Worked by hand: 2+1, 1+1, 1+24, 2, 1+8 = 41 hours; the nailers may begin 30 - 3 = 27 hours late."""


def test_the_longest_line_is_as_worked_by_hand() -> None:
    timings = time_tasks(HAND)
    assert total_hours(HAND) == 41
    assert [timing.earliest for timing in timings] == [0, 3, 0, 5, 30, 32]
    assert [timing.slack for timing in timings] == [0, 0, 27, 0, 0, 0]


@st.composite
def networks(draw: st.DrawFn) -> tuple[Task, ...]:
    tasks: list[Task] = []
    for n in range(draw(st.integers(1, 9))):
        after = draw(st.sets(st.integers(0, n - 1))) if n else set()
        hours, waits = draw(st.integers(0, 40)) / 4, draw(st.integers(0, 96)) / 4
        hands = draw(st.integers(1, 3))
        tasks.append(Task(f"t{n}", hours, hands, waits, tuple(sorted(after))))
    return tuple(tasks)


@given(networks())
def test_the_longest_line_is_the_shortest_path_over_negative_hours(tasks: tuple[Task, ...]) -> None:
    """By Bellman and Ford: a node before all, one for each task's begin, one after all."""
    count = len(tasks)
    weights = np.zeros((count + 2, count + 2))
    tiny = 1e-6  # a zero is no arc
    for n, task in enumerate(tasks):
        weights[count, n] = -tiny
        weights[n, count + 1] = -(task.hours + task.waits) - tiny
        for i in task.after:
            weights[i, n] = -(tasks[i].hours + tasks[i].waits) - tiny
    longest = -bellman_ford(weights, indices=count)
    timings = time_tasks(tasks)
    assert longest[-1] == pytest.approx(total_hours(tasks), abs=1e-4)
    assert [t.earliest for t in timings] == pytest.approx(longest[:count].tolist(), abs=1e-4)
    assert all(timing.slack >= -1e-9 for timing in timings)
    assert min(timing.slack for timing in timings) == pytest.approx(0)
