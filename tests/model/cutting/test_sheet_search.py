"""The search for sheets: a plan before anything else, a bound beside it, and an end when told."""

from __future__ import annotations

from itertools import pairwise

from model.cutting.sheet_cuts import Sawyer
from model.cutting.sheet_problem import make_sheet_problem
from model.cutting.sheet_search import SheetSearch
from model.cutting.sheets import plan_sheets
from model.cutting.task import Effort, SheetPlan, Steps
from tests.model.cutting.invented_sheets import draw_panels
from tests.model.cutting.sheet_checker import check_sheet_plan


def test_the_first_plan_is_told_before_there_is_a_bound():
    task = draw_panels(1, 20)
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    told: list[tuple[int, int]] = []
    search = SheetSearch(
        problem, Sawyer(problem.kerf), lambda: False, lambda s: told.append((s.cost, s.bound))
    )
    search.start()
    search.run()
    assert told[0][1] == 0
    assert all(one[0] >= two[0] and one[1] <= two[1] for one, two in pairwise(told))
    assert search.cost == search.bound == told[-1][0]


def test_twenty_panels_are_mostly_proven_and_many_at_once_become_cheaper():
    assert sum(plan_sheets(draw_panels(seed, 20)).proof.is_proven for seed in (1, 2, 3, 6)) == 4
    told: list[SheetPlan] = []
    task, steps = draw_panels(5, 50), Steps(250)
    plan = plan_sheets(task, Effort(steps.are_over, told.append))
    assert not check_sheet_plan(task, plan)
    assert plan.proof.cost < told[0].proof.cost
    assert plan.proof.bound < plan.proof.cost


def test_however_soon_it_is_stopped_the_plan_is_sound():
    task = draw_panels(7, 16)
    for most in (0, 1, 2, 5, 20, 50):
        plan = plan_sheets(task, Effort(Steps(most).are_over))
        assert not check_sheet_plan(task, plan)
