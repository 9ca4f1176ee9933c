"""The linear programme over sets: its cost, and the worths that add up to it."""

from __future__ import annotations

import numpy as np

from model.cutting.bound import SCALE
from model.cutting.set_programme import add_set, make_set_programme, read_worths
from model.cutting.task import Stock
from tests.model.cutting.panels import make_problem


def test_without_sets_every_piece_costs_more_than_any_plan():
    model = make_set_programme(make_problem(*[(10, 10)] * 3, stock=(Stock("sold", 10, 10, 7),)), 21)
    assert model.solved()
    assert model.getInfo().objective_function_value == 3 * 22


def test_worths_and_what_limits_save_add_up_to_the_cost():
    """Five pieces, one to a sheet; two sheets cost nothing, so that each of them saves a bought one."""
    stock = (Stock("free", 10, 10, 0, 2), Stock("sold", 10, 10, 7))
    problem = make_problem(*[(10, 10)] * 5, stock=stock)
    model = make_set_programme(problem, 100)
    for k, sold in enumerate(problem.sold):
        add_set(model, np.array([1]), k, sold.price)
    assert model.solved()
    assert model.getInfo().objective_function_value == 21
    worth, paid = read_worths(model, 1)
    assert worth.tolist() == [7 * SCALE]
    assert sorted(paid.tolist()) == [-7, 0]
