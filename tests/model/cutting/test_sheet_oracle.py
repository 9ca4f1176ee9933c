"""Both oracles of sheets know small answers, and agree."""

from __future__ import annotations

import pytest

from model.cutting.task import Stock, Task, Wanted
from tests.model.cutting.invented_sheets import draw_odd
from tests.model.cutting.sheet_oracle import least_cost, solve_task

PINWHEEL = (Wanted("lying", 2, 1, 2), Wanted("standing", 1, 2, 2))
FOUR = (Wanted("a", 5, 5, 4),)


@pytest.mark.parametrize("oracle", [least_cost, solve_task])
@pytest.mark.parametrize(
    ("task", "least"),
    [
        (Task(PINWHEEL, (Stock("s", 3, 3, 10),), 0), 20),
        (Task(FOUR, (Stock("s", 11, 11, 10),), 1), 10),
        (Task(FOUR, (Stock("s", 11, 10, 10),), 1), 20),
        (Task(FOUR, (Stock("s", 5, 5, 10, 3),), 1), None),
    ],
)
def test_the_oracles_know_small_answers(oracle, task, least):
    assert oracle(task) == least


def test_the_oracles_agree():
    for seed in range(40):
        task = draw_odd(seed, 3)
        if sum(each.count for each in task.wanted) < 6:
            assert least_cost(task) == solve_task(task), seed
