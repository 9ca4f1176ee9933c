"""The bound by patterns without an end: never above the least cost, and close where pieces are many."""

from __future__ import annotations

from model.cutting.packer import Rules, cost_of, first_fit
from model.cutting.pattern_bound import PatternBound
from model.cutting.sheet_bounds import SheetBound
from model.cutting.sheet_problem import make_sheet_problem
from model.cutting.task import Stock, Wanted
from tests.model.cutting.panels import draw_few, list_pieces
from tests.model.cutting.sheet_oracle import least_cost


def _find(problem, should_stop=lambda: False) -> int:
    supply = [sold.supply for sold in problem.sold]
    plan, _ = first_fit(problem, list_pieces(problem), supply, 0, Rules())
    return PatternBound(problem, should_stop).find(plan, cost_of(problem, plan), 0)


def test_no_bound_is_above_the_least_cost():
    tried = 0
    for seed in range(500, 620):
        task = draw_few(seed, 4)
        least = None if task is None else least_cost(task)
        if task is None or not least:
            continue
        problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
        assert _find(problem) <= least, seed
        tried += 1
    assert tried > 20


def test_many_like_pieces_have_a_closer_bound_than_areas_give():
    """Two of 60 by 60 lie side by side on a sheet, and what is left of it holds none: 30 sheets for 60."""
    problem = make_sheet_problem((Wanted("a", 60, 60, 60),), (Stock("s", 125, 110, 7),), 0)
    assert _find(problem) == 210
    mixed = make_sheet_problem(
        (Wanted("a", 40, 60, 30), Wanted("b", 45, 50, 30)), (Stock("s", 125, 110, 7),), 0
    )
    assert _find(mixed) > SheetBound(mixed, lambda: False).find(10**6)


def test_told_to_stop_it_bounds_nothing():
    problem = make_sheet_problem((Wanted("a", 60, 60, 60),), (Stock("s", 125, 110, 7),), 0)
    assert _find(problem, lambda: True) == 0
