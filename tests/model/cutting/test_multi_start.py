"""Many orders tried: never dearer, never below a bound, the same each time, and all better plans told."""

from __future__ import annotations

from random import Random

from model.cutting.multi_start import MultiStart
from model.cutting.packer import Layout, Rules, cost_of, first_fit, pieces_of
from model.cutting.sheet_problem import make_sheet_problem
from tests.model.cutting.invented_sheets import draw_panels
from tests.model.cutting.panels import list_pieces

ANY = (None, None, None)


def _start(seed: int, count: int = 20):
    task = draw_panels(seed, count)
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    return problem, first_fit(problem, list_pieces(problem), ANY, 2, Rules())[0]


def test_tries_make_plans_cheaper_and_tell_each():
    cheaper = 0
    for seed in range(6):
        problem, plan = _start(seed)
        told: list[list[Layout]] = []
        search = MultiStart(problem, Random(1), lambda: False)
        found = search.improve(plan, list_pieces(problem), ANY, 0, 200, told.append)
        costs = [cost_of(problem, each) for each in told]
        assert costs == sorted(set(costs), reverse=True)
        assert cost_of(problem, found) == (costs[-1] if costs else cost_of(problem, plan))
        assert sorted(p for layout in found for p in pieces_of(layout)) == list_pieces(problem)
        cheaper += bool(told)
    assert cheaper > 2


def test_nothing_is_tried_where_a_bound_leaves_nothing_to_find():
    problem, plan = _start(0)
    cost = cost_of(problem, plan)
    search = MultiStart(problem, Random(1), lambda: False)
    assert search.improve(plan, list_pieces(problem), ANY, cost, 50) == plan
    assert search.first_fit(plan, ANY, cost, 50, lambda each: None) == plan


def test_told_to_stop_it_keeps_what_it_has():
    problem, plan = _start(1)
    search = MultiStart(problem, Random(1), lambda: True)
    assert search.improve(plan, list_pieces(problem), ANY, 0, 1000) == plan
    assert search.first_fit(plan, ANY, 0, 1000, lambda each: None) == plan


def test_larger_jobs_gain_from_other_orders():
    problem, plan = _start(5, 60)
    found = MultiStart(problem, Random(1), lambda: False).first_fit(plan, ANY, 0, 40, lambda each: None)
    assert cost_of(problem, found) < cost_of(problem, plan)


def test_a_mix_that_is_too_small_holds_nothing():
    problem, _ = _start(2)
    assert MultiStart(problem, Random(1), lambda: False).try_mix(list_pieces(problem), (1, 0, 0)) is None
