"""Bounds: what worths show by hand, and which costs boards can add up to."""

from __future__ import annotations

from itertools import product
from random import Random

import numpy as np

from model.cutting.bound import SCALE, PriceSums, show_bound
from model.cutting.knapsack import Knapsack
from model.cutting.limits import Limits
from model.cutting.problem import LaneKind, Problem, Sold


def _problem(prices: list[int], supply: list[int | None]) -> Problem:
    sold = tuple(Sold(price, most, 10, 1) for price, most in zip(prices, supply, strict=True))
    return Problem((4,), (LaneKind(1, ((0, 4),)),), sold)


def test_a_bound_is_the_worth_of_the_pieces():
    """Two of 4 go into 10, worth 5 each to a board of 10: four are worth two boards."""
    problem = _problem([10], [None])
    shown, best = show_bound(problem, Knapsack(problem, (4,)), Limits((0,), (None,)), np.array([5 * SCALE]))
    assert (shown.cost, best.tolist()) == (20, [10 * SCALE])


def test_too_great_worths_are_scaled_down_where_boards_are_without_end():
    problem = _problem([10], [None])
    shown, _ = show_bound(problem, Knapsack(problem, (4,)), Limits((0,), (None,)), np.array([20 * SCALE]))
    assert shown.cost == 20


def test_boards_of_a_limited_stock_may_be_worth_more_than_they_cost():
    """One board at 1 brings 10, the rest cost 10: 4 * 5 - 9 = 11."""
    problem = _problem([10, 1], [None, 1])
    limits = Limits((0, 0), (None, 1))
    shown, _ = show_bound(problem, Knapsack(problem, (4,)), limits, np.array([5 * SCALE]))
    assert shown.cost == 11


def test_boards_that_must_be_bought_count_though_they_are_worth_less():
    problem = _problem([10, 30], [None, None])
    limits = Limits((0, 1), (None, None))
    shown, _ = show_bound(problem, Knapsack(problem, (4,)), limits, np.array([5 * SCALE]))
    assert shown.cost == 20 + 30 - 10


def test_a_bound_is_lifted_to_the_next_cost_that_prices_can_make():
    """Boards at 7 and 11, one of 7 at least and of that as many as one likes, no more than two of 11."""
    sums = PriceSums(_problem([7, 11], [None, None]), 100)
    limits = Limits((1, 0), (None, 2))
    assert [sums.lift(cost, limits) for cost in (0, 8, 15, 19, 22, 30)] == [7, 14, 18, 21, 25, 32]


def test_lifting_agrees_with_listing_every_number_of_boards():
    """A stock with a least number and no most once lifted bounds over plans that exist."""
    rng = Random(1)
    for _ in range(300):
        prices = [rng.randint(0, 40) for _ in range(rng.randint(1, 3))]
        low = [rng.randint(0, 3) for _ in prices]
        high = [rng.choice((None, each + rng.randint(0, 3))) for each in low]
        most = rng.randint(1, 200)
        cost = rng.randint(0, most)
        numbers = product(
            *(
                range(least, (least + most // max(price, 1) if top is None else top) + 1)
                for price, least, top in zip(prices, low, high, strict=True)
            )
        )
        every = [sum(p * n for p, n in zip(prices, each, strict=True)) for each in numbers]
        expected = min((each for each in every if cost <= each <= most), default=None)
        lifted = PriceSums(_problem(prices, high), most).lift(cost, Limits(tuple(low), tuple(high)))
        assert lifted == expected if expected is not None else lifted > most, (prices, low, high, most, cost)
