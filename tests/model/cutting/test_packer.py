"""Pieces laid one after the other: inside, apart, sawable, and on no dearer a sheet than they need."""

from __future__ import annotations

from itertools import product
from random import Random

import pytest

from model.cutting.packer import (
    PLACES,
    SPLITS,
    Layout,
    Rules,
    Shuffler,
    cost_of,
    downsize,
    extent,
    first_fit,
    lay,
    pieces_of,
)
from model.cutting.sheet_cuts import Lying, Sawyer
from model.cutting.sheet_problem import fits, make_sheet_problem
from tests.model.cutting.invented_sheets import draw_panels
from tests.model.cutting.panels import THREE, list_pieces, make_problem

ANY = (None, None, None)


@pytest.mark.parametrize(("place", "split"), list(product(PLACES, SPLITS)))
def test_whatever_the_rules_all_is_laid_once_inside_and_can_be_sawn_apart(place, split):
    task = draw_panels(4, 25)
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    plan, over = first_fit(problem, list_pieces(problem), ANY, 2, Rules(place, split))
    assert not over
    assert sorted(piece for layout in plan for piece in pieces_of(layout)) == list_pieces(problem)
    for layout in plan:
        assert fits(extent(layout.pieces), problem.rooms[layout.sold])
        Sawyer(problem.kerf).saw(layout.pieces, problem.rooms[layout.sold])


def test_what_finds_no_place_is_left_over_in_its_order():
    problem = make_problem((60, 40), (60, 30), (50, 10))
    laid, over = lay(problem.items, [0, 1, 2], [(60, 50)], Rules())
    assert [[piece.item for piece in each] for each in laid] == [[0, 2]]
    assert over == [1]


def test_a_piece_turns_where_only_that_fits():
    problem = make_problem((50, 20), may_turn=True)
    laid, over = lay(problem.items, [0], [(20, 50)], Rules())
    assert laid == [[Lying(0, 0, 0, (20, 50))]]
    assert not over


def test_a_sheet_is_made_as_small_as_its_pieces_allow_while_there_are_any():
    problem = make_problem((50, 60))
    plan = [Layout(0, (Lying(0, 0, 0, (50, 60)),))]
    assert [each.sold for each in downsize(problem, plan, ANY)] == [1]
    assert [each.sold for each in downsize(problem, plan, (None, 0, None))] == [0]


def test_first_fit_leaves_over_what_sheets_are_too_few_for():
    problem = make_problem((100, 60), (100, 60), (100, 20))
    plan, over = first_fit(problem, list_pieces(problem), (1, 0, 1), 0, Rules())
    assert cost_of(problem, plan) == THREE[0].price + THREE[2].price
    assert over == [0]


def test_an_order_has_every_piece_and_is_the_same_from_the_same_seed():
    task = draw_panels(2, 20)
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    pieces = list_pieces(problem)
    one, two = Shuffler(problem, Random(5)), Shuffler(problem, Random(5))
    orders = [one.shuffle(pieces) for _ in range(10)]
    assert orders == [two.shuffle(pieces) for _ in range(10)]
    assert all(sorted(order) == pieces for order in orders)
    assert len({tuple(order) for order in orders}) > 2
