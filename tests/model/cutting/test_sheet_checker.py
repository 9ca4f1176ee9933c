"""The checker of sheets turns away what is wrong."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.cutting.sheets import plan_sheets
from model.cutting.task import Placed, Stock, Task, Wanted
from tests.model.cutting.sheet_checker import check_sheet_plan, is_guillotine

PINWHEEL = (
    Placed("a", 0, 0, 2, 1),
    Placed("b", 2, 0, 1, 2),
    Placed("c", 1, 2, 2, 1),
    Placed("d", 0, 1, 1, 2),
)
TASK = Task((Wanted("a", 30, 20, 3), Wanted("b", 15, 10)), (Stock("s", 70, 44, 9, 5),), 2, 5)


def test_a_pinwheel_is_found_out():
    assert not is_guillotine(PINWHEEL, 0)
    assert is_guillotine(PINWHEEL[:3], 0)


def test_a_gap_narrower_than_the_saw_is_found_out():
    pair = (Placed("a", 0, 0, 5, 5), Placed("b", 6, 0, 5, 5))
    assert is_guillotine(pair, 1)
    assert not is_guillotine(pair, 2)


@pytest.mark.parametrize(
    ("part", "wrong"),
    [
        ("pieces", lambda sheet: sheet.pieces[:-1]),
        ("pieces", lambda sheet: (*sheet.pieces[:-1], replace(sheet.pieces[-1], x=sheet.pieces[-1].x + 1))),
        ("pieces", lambda sheet: (replace(sheet.pieces[0], length=20, width=30), *sheet.pieces[1:])),
        ("cuts", lambda sheet: sheet.cuts[:-1]),
        ("cuts", lambda sheet: sheet.cuts[::-1]),
        ("cuts", lambda sheet: (replace(sheet.cuts[0], at=sheet.cuts[0].at - 1), *sheet.cuts[1:])),
        ("left", lambda sheet: (*sheet.left, Placed("", 0, 0, 5, 5))),
    ],
)
def test_a_plan_made_wrong_is_found_out(part, wrong):
    plan = plan_sheets(TASK)
    assert not check_sheet_plan(TASK, plan)
    sheet = plan.sheets[0]
    broken = replace(plan, sheets=(replace(sheet, **{part: wrong(sheet)}), *plan.sheets[1:]))
    assert check_sheet_plan(TASK, broken)


def test_a_wrong_cost_or_too_many_sheets_are_found_out():
    plan = plan_sheets(TASK)
    assert check_sheet_plan(TASK, replace(plan, proof=replace(plan.proof, cost=8)))
    scarce = replace(TASK, stock=(replace(TASK.stock[0], supply=0),))
    assert check_sheet_plan(scarce, plan)
