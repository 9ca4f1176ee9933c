"""A plan made neater is no dearer, holds the same, and is sawn with no more cuts."""

from __future__ import annotations

from random import Random

from model.cutting.neaten import Neatener
from model.cutting.packer import Layout, Rules, cost_of, first_fit, pieces_of
from model.cutting.sheet_cuts import Lying, Sawyer
from model.cutting.sheet_problem import make_sheet_problem
from tests.model.cutting.invented_sheets import draw_panels
from tests.model.cutting.panels import list_pieces, make_problem

ANY = (None, None, None)


def test_a_neater_plan_is_no_dearer_and_takes_no_more_cuts():
    fewer = 0
    for seed in range(5):
        task = draw_panels(seed, 16)
        problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
        plan = first_fit(problem, list_pieces(problem), ANY, 2, Rules())[0]
        neatener = Neatener(problem, Sawyer(problem.kerf), Random(1), lambda: False)
        neat = neatener.neaten(plan, ANY)
        assert cost_of(problem, neat) <= cost_of(problem, plan)
        assert sorted(p for each in neat for p in pieces_of(each)) == list_pieces(problem)
        assert neatener.worth(neat) <= neatener.worth(plan)
        fewer += neatener.worth(neat) < neatener.worth(plan)
    assert fewer > 2


def test_two_pieces_that_lie_askew_are_laid_in_a_row():
    problem = make_problem((50, 20), (50, 20))
    askew = [Layout(0, (Lying(0, 0, 0, (50, 20)), Lying(0, 50, 25, (50, 20))))]
    neat = Neatener(problem, Sawyer(0), Random(1), lambda: False).neaten(askew, (1, 0, 0))
    assert Neatener(problem, Sawyer(0), Random(1), lambda: False).worth(neat)[0] == 2


def test_told_to_stop_it_leaves_the_plan_as_it_is():
    task = draw_panels(3, 16)
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    plan = first_fit(problem, list_pieces(problem), ANY, 2, Rules())[0]
    assert Neatener(problem, Sawyer(problem.kerf), Random(1), lambda: True).neaten(plan, ANY) == plan
