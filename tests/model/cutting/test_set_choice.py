"""Choices among sets: a bound that adds up, the cheapest choice, and nothing proven that is not."""

from __future__ import annotations

import numpy as np

from model.cutting.bound import SCALE
from model.cutting.set_choice import Columns, SetChoice, list_columns
from model.cutting.sheet_problem import make_sheet_problem
from model.cutting.sheet_sets import SetFinder
from model.cutting.task import Stock
from tests.model.cutting.invented_sheets import draw_panels
from tests.model.cutting.panels import make_problem


def _choose_from(problem) -> SetChoice:
    finder = SetFinder(problem, lambda: False, 10_000_000)
    finder.run()
    return SetChoice(problem, list_columns(problem, finder.levels), lambda: False)


def _panels(seed: int, count: int = 12):
    task = draw_panels(seed, count)
    return make_sheet_problem(task.wanted, task.stock, task.kerf)


def test_worths_show_the_bound_to_anyone_who_adds_up():
    for seed in range(6):
        problem = _panels(seed)
        choice = _choose_from(problem)
        choice.price_out(10**6)
        value = choice.columns.counts @ choice.worth
        prices = np.array([sold.price for sold in problem.sold])[choice.columns.sold]
        over = max(1.0, float((value / (prices * SCALE)).max()))
        assert choice.bound <= np.ceil(float(choice.worth @ np.array(problem.demand)) / over / SCALE) + 1
        assert choice.bound > 0


def test_sheets_lying_there_are_worth_no_more_than_there_are():
    """Five pieces, two sheets at no price: three sheets must be bought."""
    stock = (Stock("free", 10, 10, 0, 2), Stock("sold", 10, 10, 7))
    choice = _choose_from(make_problem(*[(10, 10)] * 5, stock=stock))
    choice.price_out(100)
    assert choice.bound == 21
    assert sorted(sold for _, sold in choice.choose(21, 100, 10)) == [0, 0, 1, 1, 1]


def test_the_choice_covers_all_and_costs_what_its_bound_says():
    for seed in range(6):
        problem = _panels(seed)
        choice = _choose_from(problem)
        choice.price_out(10**6)
        chosen = choice.choose(0, 10**6, 1000)
        cost = sum(problem.sold[sold].price for _, sold in chosen)
        assert {piece for pieces, _ in chosen for piece in pieces} == set(range(len(problem.items)))
        assert choice.bound == cost
        again = _choose_from(problem)
        again.price_out(cost)
        assert again.choose(0, cost, 1000) is None
        assert again.bound == cost


def test_a_stock_that_a_cheaper_one_stands_in_for_is_not_chosen_from():
    stock = (Stock("dear", 10, 10, 9), Stock("cheap", 10, 20, 8), Stock("lying", 10, 10, 0, 1))
    choice = _choose_from(make_problem((10, 10), (10, 10), stock=stock))
    assert sorted(set(choice.columns.sold.tolist())) == [1, 2]


def test_of_sheets_one_too_few_those_that_leave_the_least_are_chosen():
    problem = make_problem((100, 40), (100, 30), (100, 20), (100, 30), stock=(Stock("s", 100, 60, 9),))
    choice = _choose_from(problem)
    chosen = choice.leave_least([1], 100 * 60 + 1, 100)
    assert chosen is not None
    left = sum(item.area * len(item.keys) for item in problem.items)
    left -= sum(problem.items[piece].area for pieces, _ in chosen for piece in pieces)
    assert left == 100 * 60
    assert choice.leave_least([1], 100 * 60, 100) is None


def test_no_sets_are_no_choice():
    problem = make_problem((10, 10))
    choice = SetChoice(problem, Columns(np.zeros((0, 1), np.int64), np.zeros(0, np.int64)), lambda: False)
    choice.price_out(50)
    assert choice.choose(0, 50, 10) is None
