"""Limits on groups, and that bounds within them hold for whatever worths and tolls."""

from __future__ import annotations

from random import Random

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from model.cutting.bound import SCALE, show_bound
from model.cutting.enumeration import list_patterns
from model.cutting.items import gather_items
from model.cutting.knapsack import Knapsack, Pattern
from model.cutting.lanes import Filled
from model.cutting.limits import Group, Limits, list_groups
from model.cutting.problem import Problem, make_problem
from tests.model.cutting.invented import ripped_task


def test_limits_of_one_stock_stand_with_the_stock():
    limits = Limits((0, 0), (None, 4)).at_most(Group(frozenset({1})), 2).at_least(Group(frozenset({0})), 1)
    assert limits == Limits((1, 0), (None, 2))


def test_settled_boards_are_taken_off_all_limits_that_count_them():
    both, lanes = Group(frozenset({0, 1})), Group(frozenset({1}), 3)
    limits = Limits((2, 0), (None, 4)).at_most(both, 5).at_least(lanes, 3)
    pattern = Pattern(1, (Filled(3, ()), Filled(3, ()), Filled(0, ())))
    left = limits.after(pattern, 1)
    assert (left.low, left.high) == ((2, 0), (None, 3))
    assert {each.group: (each.low, each.high) for each in left.groups} == {both: (0, 4), lanes: (1, None)}


def test_no_worths_and_tolls_show_more_than_the_best_plan_within_limits_costs():
    checked = 0
    for seed in range(120):
        task = ripped_task(seed)
        items = gather_items(task.wanted, task.kerf)
        problem = make_problem(items, task.stock, task.kerf)
        patterns = list_patterns(problem)
        if patterns is None or max((len(p.lanes) for p in patterns), default=0) > 4 or len(patterns) > 60:
            continue
        rng = Random(seed)
        limits = _draw_limits(rng, problem)
        best = _find_least(problem, patterns, limits)
        if best is None:
            continue
        for _ in range(5):
            worth = np.array([rng.randint(0, 60 * SCALE) for _ in items], dtype=np.int64)
            tolls = {each.group: rng.randint(-20 * SCALE, 20 * SCALE) for each in limits.groups}
            shown, _ = show_bound(problem, Knapsack(problem, problem.demand), limits, worth, tolls)
            assert shown.cost <= best, (task, limits)
            checked += 1
    assert checked > 150


def _draw_limits(rng: Random, problem: Problem) -> Limits:
    limits = Limits((0,) * len(problem.sold), tuple(sold.supply for sold in problem.sold))
    groups = list_groups(problem)
    lanes = [Group(frozenset({rng.randrange(len(problem.sold))}), rng.randrange(len(problem.kinds)))]
    for group in (*rng.sample(groups, min(2, len(groups))), *lanes):
        if rng.random() < 0.5:
            limits = limits.at_least(group, rng.randint(0, 2))
        else:
            limits = limits.at_most(group, rng.randint(0, 4))
    return limits


def _find_least(problem: Problem, patterns: list[Pattern], limits: Limits) -> int | None:
    """By scipy's MILP over all parts of all patterns: a board may be bought and cut only in part."""
    columns = list({part: None for pattern in patterns for part in _list_parts(pattern)})
    columns += [Pattern(s, ()) for s in range(len(problem.sold))]
    made = np.array([[p.counts()[i] for p in columns] for i in range(len(problem.demand))], dtype=float)
    rows = [LinearConstraint(made, lb=problem.demand)]
    for s, (low, high) in enumerate(zip(limits.low, limits.high, strict=True)):
        used = np.array([[p.sold == s for p in columns]], dtype=float)
        rows.append(LinearConstraint(used, lb=low, ub=np.inf if high is None else high))
    for each in limits.groups:
        counted = np.array([[each.group.count(p) for p in columns]], dtype=float)
        rows.append(LinearConstraint(counted, lb=each.low, ub=np.inf if each.high is None else each.high))
    price = np.array([problem.sold[p.sold].price for p in columns], dtype=float)
    answer = milp(price, constraints=rows, integrality=np.ones(len(price)), bounds=Bounds(0, np.inf))
    return None if answer.x is None else round(float(answer.fun))


def _list_parts(pattern: Pattern) -> list[Pattern]:
    """A board with all of its lanes or without any of them."""
    parts = [pattern]
    for at in range(len(pattern.lanes)):
        rest = Pattern(pattern.sold, pattern.lanes[:at] + pattern.lanes[at + 1 :])
        parts += _list_parts(rest)
    return parts
