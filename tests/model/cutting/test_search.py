"""The search below the plan: no part of it is taken for empty that is not."""

from __future__ import annotations

from model.cutting.first_fit import FirstFit
from model.cutting.limits import Limits
from model.cutting.problem import LaneKind, Problem, Sold
from model.cutting.search import Search


def test_a_part_that_asks_for_a_stock_no_board_came_from_yet_is_looked_into():
    problem = Problem((2,), (LaneKind(1, ((0, 5),)),), (Sold(10, None, 10, 1), Sold(99, None, 10, 1)))
    start = FirstFit(problem).best(problem.demand, (None, None))
    assert start is not None
    search = Search(problem, start, lambda: False, lambda boards: None)
    answer = search._evaluate(Limits((0, 1), (None, None)))
    assert answer is not None
    assert answer[1].cost == 99
