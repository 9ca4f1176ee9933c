"""Bounds of sheets: shares that fit together never exceed a whole, and no plan costs less than the bound."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations_with_replacement

from model.cutting.sheet_bounds import SheetBound, list_shares
from model.cutting.sheet_problem import make_sheet_problem
from model.cutting.task import Stock
from tests.model.cutting.panels import THREE, draw_few, make_problem
from tests.model.cutting.sheet_oracle import least_cost

ROOM = 12


def test_sides_that_fit_one_after_the_other_never_have_shares_of_more_than_a_whole():
    for count in range(1, 5):
        for sides in combinations_with_replacement(range(1, ROOM + 1), count):
            if sum(sides) <= ROOM:
                shares = [list_shares(side, ROOM) for side in sides]
                assert all(sum(each) <= 1 for each in zip(*shares, strict=True)), sides


def test_more_than_half_is_a_whole_by_some_share_and_little_is_nothing():
    assert Fraction(1) in list_shares(7, ROOM)
    assert Fraction(0) in list_shares(2, ROOM)


def test_pieces_of_more_than_half_a_sheet_need_one_each_though_their_area_does_not():
    problem = make_problem(*[(51, 31)] * 4, stock=(Stock("s", 100, 60, 7),))
    assert SheetBound(problem, lambda: False).find(1000) == 28


def test_no_bound_is_above_the_least_cost():
    tried = 0
    for seed in range(200, 300):
        task = draw_few(seed, 4)
        least = None if task is None else least_cost(task)
        if task is None or least is None:
            continue
        problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
        assert SheetBound(problem, lambda: False).find(least + 50) <= least, seed
        tried += 1
    assert tried > 20


def test_a_bound_is_a_sum_of_prices_but_no_more_than_what_is_known_to_do():
    problem = make_problem((100, 60), (50, 60))
    bounds = SheetBound(problem, lambda: False)
    assert bounds.lift(101, 1000) == 120
    assert bounds.lift(101, 110) == 110
    assert bounds.find(1000) == sum(each.price for each in THREE[:2])
