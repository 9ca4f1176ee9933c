"""Sheets taken a few at a time: never dearer, always all pieces, and cheaper where anything can be spared."""

from __future__ import annotations

from random import Random

from model.cutting.packer import Layout, Rules, cost_of, first_fit, pieces_of
from model.cutting.regroup import Regrouper, take_part
from model.cutting.sheet_cuts import Lying
from model.cutting.sheet_problem import make_sheet_problem
from model.cutting.task import Stock
from tests.model.cutting.invented_sheets import draw_panels
from tests.model.cutting.panels import list_pieces, make_problem

ANY = (None, None, None)


def test_a_larger_job_becomes_cheaper_and_keeps_every_piece():
    task = draw_panels(5, 50)
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    plan = first_fit(problem, list_pieces(problem), ANY, 2, Rules("short", "longer"))[0]
    told: list[list[Layout]] = []
    found = Regrouper(problem, Random(3), lambda: False).improve(plan, ANY, 0, 10, told.append)
    assert cost_of(problem, found) < cost_of(problem, plan)
    costs = [cost_of(problem, each) for each in told]
    assert costs == sorted(set(costs), reverse=True)
    assert sorted(piece for layout in found for piece in pieces_of(layout)) == list_pieces(problem)


def test_two_half_empty_sheets_become_one():
    problem = make_problem((100, 30), (100, 30), stock=(Stock("s", 100, 60, 9),))
    plan = [Layout(0, (Lying(0, 0, 0, (100, 30)),))] * 2
    found = Regrouper(problem, Random(1), lambda: False).improve(plan, (None,), 0, 1, lambda each: None)
    assert [pieces_of(layout) for layout in found] == [[0, 0]]


def test_sheets_of_which_there_are_few_stay_few():
    stock = (Stock("free", 100, 30, 0, 1), Stock("s", 100, 60, 9))
    problem = make_problem((100, 30), (100, 30), (100, 30), stock=stock)
    piece = Lying(0, 0, 0, (100, 30))
    found = Regrouper(problem, Random(1), lambda: False).improve(
        [Layout(1, (piece,))] * 3, (1, None), 0, 5, lambda each: None
    )
    assert cost_of(problem, found) == 9
    assert sorted(layout.sold for layout in found) == [0, 1]


def test_nothing_is_taken_apart_once_the_bound_is_reached_or_when_told_to_stop():
    problem = make_problem((100, 30), (100, 30), stock=(Stock("s", 100, 60, 9),))
    plan = [Layout(0, (Lying(0, 0, 0, (100, 30)),))] * 2
    for bound, stop in ((18, False), (0, True)):
        regrouper = Regrouper(problem, Random(1), lambda stop=stop: stop)
        assert regrouper.improve(plan, (None,), bound, 9, lambda each: None) == plan


def test_a_part_of_a_problem_has_only_its_pieces_and_what_is_left_of_the_supply():
    problem = make_problem((100, 40), (100, 30), (100, 30))
    items, part = take_part(problem, [1, 1], (2, None, 0))
    assert items == [1]
    assert part.demand == (2,)
    assert [sold.supply for sold in part.sold] == [2, None, 0]
