"""Stock that other stock makes needless: what is left out costs no plan anything."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from model.cutting.needless import drop_needless
from model.cutting.task import Stock, Task
from tests.model.cutting.invented import batched_task, mitred_task, ripped_task, small_task
from tests.model.cutting.oracle import find_optimum


def _keys(*stock: Stock, is_sheet: bool = False) -> str:
    return "".join(each.key for each in drop_needless(stock, is_sheet))


def test_of_equal_boards_the_first_and_cheapest_stays():
    assert _keys(Stock("a", 96, 8, 20), Stock("b", 96, 8, 10), Stock("c", 96, 8, 10)) == "b"


def test_a_longer_board_that_costs_no_more_makes_a_shorter_one_needless():
    assert _keys(Stock("a", 96, 8, 10), Stock("b", 120, 8, 10)) == "b"
    assert _keys(Stock("a", 96, 8, 9), Stock("b", 120, 8, 10)) == "ab"


def test_a_larger_sheet_that_costs_no_more_may_take_a_cut_more():
    assert _keys(Stock("a", 96, 48, 10), Stock("b", 120, 48, 10), is_sheet=True) == "ab"
    assert _keys(Stock("a", 96, 48, 10), Stock("b", 96, 48, 11), is_sheet=True) == "a"


def test_what_is_limited_lies_there_or_is_trimmed_otherwise_makes_nothing_needless():
    few, there, trimmed = Stock("a", 96, 8, 5, 2), Stock("b", 96, 8, 0, 1), Stock("c", 96, 8, 5, None, 4)
    assert _keys(few, there, trimmed, Stock("d", 96, 8, 10)) == "abcd"


def _more_stock(task: Task, seed: int) -> Task:
    """The same with more of the like: dearer, shorter, limited."""
    rng = Random(seed)
    more = []
    for i, each in enumerate(task.stock * 3):
        less = rng.choice((0, 0, 1, 3))
        price = max(each.price + rng.choice((-1, 0, 0, 1, 2)), 1) if each.price else 0
        supply = rng.choice((None, None, 1)) if each.supply is None else 1
        more.append(replace(each, key=f"m{i}", length=max(each.length - less, 1), price=price, supply=supply))
    return replace(task, stock=(*task.stock, *more))


@pytest.mark.parametrize("made", [small_task, ripped_task, mitred_task, batched_task])
@pytest.mark.parametrize("seed", range(12))
def test_the_cheapest_plan_costs_the_same_without_what_is_needless(made, seed):
    task = _more_stock(made(seed), seed)
    less = replace(task, stock=drop_needless(task.stock, False))
    whole, short = find_optimum(task), find_optimum(less)
    assert (whole is None) == (short is None)
    assert whole is None or (short.cost, short.boards) == (whole.cost, whole.boards)


def test_needless_stock_is_found():
    dropped = 0
    for seed in range(12):
        task = _more_stock(small_task(seed), seed)
        dropped += len(task.stock) - len(drop_needless(task.stock, False))
    assert dropped > 50
