"""A few pieces settled exactly: the least cost there is, laid so that it can be sawn."""

from __future__ import annotations

from model.cutting.exact_sheets import ExactSheets
from model.cutting.packer import cost_of, extent, pieces_of
from model.cutting.sheet_cuts import Sawyer
from model.cutting.sheet_problem import fits, make_sheet_problem
from model.cutting.task import Stock
from tests.model.cutting.invented_sheets import draw_panels
from tests.model.cutting.panels import draw_few, list_pieces, make_problem
from tests.model.cutting.sheet_oracle import least_cost

WORK = 10_000_000


def test_what_is_found_is_the_least_there_is_and_its_bound_says_so():
    tried = 0
    for seed in range(400, 480):
        task = draw_few(seed, 5)
        least = None if task is None else least_cost(task)
        if task is None or not least:
            continue
        problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
        exact = ExactSheets(problem, lambda: False, WORK)
        assert exact.find_bound(10 * least)
        assert exact.bound <= least
        plan = exact.solve(0, 10 * least, 1000)
        assert plan is not None
        assert exact.bound == least, seed
        assert cost_of(problem, plan) == least, seed
        tried += 1
    assert tried > 15


def test_pieces_are_laid_once_each_inside_their_sheet_and_can_be_sawn_apart():
    task = draw_panels(7, 12)
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    exact = ExactSheets(problem, lambda: False, WORK)
    exact.find_bound(10**6)
    plan = exact.solve(0, 10**6, 1000)
    assert plan is not None
    assert sorted(piece for layout in plan for piece in pieces_of(layout)) == list_pieces(problem)
    for layout in plan:
        assert fits(extent(layout.pieces), problem.rooms[layout.sold])
        Sawyer(problem.kerf).saw(layout.pieces, problem.rooms[layout.sold])


def test_too_much_work_proves_nothing_and_finds_nothing():
    task = draw_panels(5, 30)
    exact = ExactSheets(make_sheet_problem(task.wanted, task.stock, task.kerf), lambda: False, 1_000)
    assert not exact.find_bound(10**6)
    assert exact.bound == 0
    assert exact.solve(0, 10**6, 10) is None


def test_a_sheet_is_emptied_by_what_others_still_hold():
    """Strips of 40, 30 and 20 on sheets of 60: 40 and 20 fill one, and only 30 is on the other."""
    problem = make_problem((100, 40), (100, 30), (100, 20), stock=(Stock("s", 100, 60, 9),))
    exact = ExactSheets(problem, lambda: False, WORK)
    exact.find_bound(100)
    plan = exact.empty([1], 0, 100 * 40, 100)
    assert plan is not None
    assert sorted(pieces_of(layout) for layout in plan) == [[0, 2], [1]]
    assert exact.empty([1], 0, 100 * 30, 100) is None
