"""Cutting problems solved in print, and again by a solver that is not the planner's.

Sources: V. Chvatal, *Linear Programming*, Freeman 1983, ch. 13 (rolls 100 in. wide, 453 of them); the article
"Cutting stock problem" of a general encyclopedia (a paper machine's rolls 5600 mm wide, 13 widths, 73 rolls,
waste 0.401 percent). Prices of 1 make the cost the number of rolls.
"""

from __future__ import annotations

import pytest

from model.cutting.boards import plan_boards
from model.cutting.task import Stock, Task, Wanted
from tests.model.cutting.certificate import certify
from tests.model.cutting.checker import list_faults
from tests.model.cutting.oracle import find_optimum

CHVATAL = (100, {45: 97, 36: 610, 31: 395, 14: 211}, 453)
PAPER = (
    5600,
    {
        1380: 22,
        1520: 25,
        1560: 12,
        1710: 14,
        1820: 18,
        1880: 18,
        1930: 20,
        2000: 10,
        2050: 12,
        2100: 14,
        2140: 16,
        2150: 18,
        2200: 20,
    },
    73,
)


def _task(width: int, widths: dict[int, int]) -> Task:
    wanted = tuple(Wanted(f"{each} wide", each, 1, count) for each, count in widths.items())
    return Task(wanted, (Stock("roll", width, 1, 1),), 0)


@pytest.mark.parametrize(("width", "widths", "rolls"), [CHVATAL, PAPER], ids=["Chvatal", "paper"])
def test_rolls_are_as_few_as_printed_and_proven_so(width, widths, rolls):
    task = _task(width, widths)
    plan = plan_boards(task)
    assert list_faults(task, plan) == []
    assert (plan.proof.cost, plan.proof.bound) == (rolls, rolls)
    assert certify(task, plan) == rolls


@pytest.mark.parametrize(("width", "widths", "rolls"), [CHVATAL, PAPER], ids=["Chvatal", "paper"])
def test_what_is_printed_is_what_another_solver_finds(width, widths, rolls):
    best = find_optimum(_task(width, widths))
    assert best is not None
    assert best.cost == rolls


def test_the_paper_machine_wastes_as_much_as_printed():
    width, widths, rolls = PAPER
    used = sum(each * count for each, count in widths.items())
    assert round(100 * (1 - used / (width * rolls)), 3) == 0.401
