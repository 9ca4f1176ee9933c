"""Mixes of sheets: all that could hold the pieces between two costs, and no others."""

from __future__ import annotations

from itertools import product

from model.cutting.mixes import list_mixes
from model.cutting.task import Stock
from tests.model.cutting.panels import list_pieces, make_problem

ANY = (None, None, None)


def test_mixes_are_all_that_are_large_enough_cheapest_first():
    problem = make_problem((100, 30), (50, 60), (50, 10))
    found = list_mixes(problem, list_pieces(problem), ANY, 0, 200, 100)
    wanted = sum(item.area for item in problem.items)
    expected = [
        mix
        for mix in product(range(4), repeat=3)
        if sum(a * b * n for (a, b), n in zip(problem.rooms, mix, strict=True)) >= wanted
        and sum(sold.price * n for sold, n in zip(problem.sold, mix, strict=True)) < 200
        and mix[0] >= 1  # nothing else holds the piece of 100 by 30
        and sum(mix) <= 3
    ]
    assert sorted(found) == sorted(expected)
    costs = [sum(sold.price * n for sold, n in zip(problem.sold, mix, strict=True)) for mix in found]
    assert costs == sorted(costs)


def test_mixes_keep_to_the_supply_and_to_both_costs():
    problem = make_problem((50, 60), (50, 60))
    pieces = list_pieces(problem)
    assert list_mixes(problem, pieces, (None, 1, 0), 0, 161, 9) == [(1, 0, 0), (1, 1, 0)]
    assert list_mixes(problem, pieces, (None, 1, 0), 101, 161, 9) == [(1, 1, 0)]
    assert list_mixes(problem, pieces, (None, 1, 0), 0, 161, 1) == [(1, 0, 0)]


def test_sheets_without_a_price_do_not_make_mixes_without_end():
    problem = make_problem((10, 10), (10, 10), stock=(Stock("free", 10, 10, 0), Stock("sold", 20, 10, 5)))
    assert list_mixes(problem, list_pieces(problem), (None, None), 0, 6, 99) == [(2, 0), (0, 1), (1, 1)]
