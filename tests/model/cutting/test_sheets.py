"""Plans of sheets: sound by an independent checker, never dearer than they must be, honest about the rest."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.cutting.sheets import plan_sheets
from model.cutting.task import Effort, SheetPlan, Stock, Task, Wanted
from model.errors import Refused
from tests.model.cutting.invented_sheets import draw_odd, draw_panels
from tests.model.cutting.sheet_checker import check_sheet_plan
from tests.model.cutting.sheet_oracle import least_cost, solve_task

ODD = 120
TINY = 120
SMALL = 100


def _panel(key: str, length: int, width: int, count: int = 1, may_turn: bool = False) -> Wanted:
    return Wanted(key, length, width, count, may_turn=may_turn)


def test_plans_of_odd_tasks_are_sound():
    for seed in range(ODD):
        task = draw_odd(seed, 6)
        assert not check_sheet_plan(task, plan_sheets(task)), seed


def test_tiny_tasks_cost_the_least_there_is():
    tried = 0
    for seed in range(TINY):
        task = draw_odd(seed, 3)
        plan = plan_sheets(task)
        if sum(each.count for each in task.wanted) > 5 or plan.refused:
            continue
        least = least_cost(task)
        assert least is not None
        assert plan.proof.bound <= least == plan.proof.cost, seed
        tried += 1
    assert tried > TINY / 3


def test_what_is_proven_is_what_a_general_solver_finds_among_all_sets():
    tried = proven = 0
    for seed in range(1000, 1000 + SMALL):
        task = draw_odd(seed, 6)
        if not 4 < sum(each.count for each in task.wanted) < 7:
            continue
        plan = plan_sheets(task)
        if plan.refused:
            continue
        assert not check_sheet_plan(task, plan), seed
        least = solve_task(task)
        assert least is not None
        assert plan.proof.bound <= least <= plan.proof.cost, seed
        tried += 1
        proven += plan.proof.is_proven
    assert tried > 10
    assert proven == tried


def test_what_is_refused_for_want_of_sheets_cannot_be_had():
    tried = 0
    for seed in range(TINY):
        task = draw_odd(seed, 3)
        if sum(each.count for each in task.wanted) > 5:
            continue
        refused = plan_sheets(task).refused
        few = {each.key for each in refused if each.why.startswith("too few")}
        large = {each.key for each in refused} - few
        if few:
            rest = tuple(each for each in task.wanted if each.key not in large)
            assert least_cost(replace(task, wanted=rest)) is None, seed
            tried += 1
    assert tried > 1


def test_panels_are_planned_the_same_each_time():
    assert plan_sheets(draw_panels(3, 12)) == plan_sheets(draw_panels(3, 12))


def test_last_pieces_need_no_cut_after_them():
    """Three 31-7/8 in. pieces and two cuts of 1/8 in. are 95-7/8 in."""
    pieces = (_panel("a", 255 * 8, 640, 3),)
    exact = plan_sheets(Task(pieces, (Stock("s", 767 * 8, 640, 100),), 8))
    assert [len(sheet.cuts) for sheet in exact.sheets] == [2]
    skimmed = plan_sheets(Task(pieces, (Stock("s", 767 * 8 + 4, 640, 100),), 8))
    assert [len(sheet.cuts) for sheet in skimmed.sheets] == [3]
    assert not skimmed.sheets[0].left
    short = plan_sheets(Task(pieces, (Stock("s", 767 * 8 - 1, 640, 100),), 8))
    assert len(short.sheets) == 2


def test_a_pinwheel_is_not_cut_from_one_sheet():
    """Four 2 x 1 pieces around a hole fill a 3 x 3 sheet, but no cut goes right through them."""
    lying, standing = _panel("lying", 2, 1, 2), _panel("standing", 1, 2, 2)
    plan = plan_sheets(Task((lying, standing), (Stock("s", 3, 3, 10),), 0))
    assert (plan.proof.cost, plan.proof.bound) == (20, 20)


def test_trim_comes_off_before_anything_is_cut():
    plan = plan_sheets(Task((_panel("a", 90, 50),), (Stock("s", 100, 60, 5, trim_ends=5, trim_edges=5),), 3))
    assert plan.sheets[0].cuts == ()
    plan = plan_sheets(Task((_panel("a", 91, 50),), (Stock("s", 100, 60, 5, trim_ends=5, trim_edges=5),), 3))
    assert [(each.key, each.wants_length, each.wants_width) for each in plan.refused] == [("a", 101, 60)]


def test_a_piece_lies_across_only_where_its_grain_is_free():
    stock = (Stock("s", 40, 100, 7),)
    assert plan_sheets(Task((_panel("a", 80, 30),), stock, 0)).refused[0].why.startswith("longer")
    turned = plan_sheets(Task((_panel("a", 80, 30, may_turn=True),), stock, 0))
    assert (turned.sheets[0].pieces[0].length, turned.sheets[0].pieces[0].width) == (30, 80)


def test_offcuts_at_no_price_come_first():
    stock = (Stock("sold", 100, 100, 50), Stock("lying", 40, 40, 0, 2))
    plan = plan_sheets(Task((_panel("a", 40, 40, 5),), stock, 0))
    assert [sheet.stock for sheet in plan.sheets].count("sold") == 1
    assert (plan.proof.cost, plan.proof.bound) == (50, 50)


def test_fewer_cuts_are_preferred_at_the_same_cost():
    """All three fit the sheet that must be bought, but two have exactly the size of what lies there."""
    stock = (Stock("sold", 100, 100, 50), Stock("lying", 40, 40, 0, 2))
    plan = plan_sheets(Task((_panel("a", 40, 40, 3),), stock, 0))
    assert sorted(sheet.stock for sheet in plan.sheets) == ["lying", "lying", "sold"]
    assert sum(len(sheet.cuts) for sheet in plan.sheets) == 2


def test_a_short_crosscut_comes_before_a_long_rip():
    """Two by two equal pieces can be parted either way first."""
    plan = plan_sheets(Task((_panel("a", 60, 30, 4),), (Stock("s", 121, 61, 50),), 1))
    assert [cut.axis for cut in plan.sheets[0].cuts] == ["x", "y", "y"]


def test_what_is_too_large_is_named_and_the_rest_planned():
    task = Task((_panel("large", 200, 10), _panel("a", 40, 40)), (Stock("s", 100, 100, 50),), 2)
    plan = plan_sheets(task)
    assert [(each.key, each.wants_length) for each in plan.refused] == [("large", 200)]
    assert [piece.key for piece in plan.sheets[0].pieces] == ["a"]


def test_without_sheets_everything_is_refused():
    plan = plan_sheets(Task((_panel("a", 40, 40),), (), 2))
    assert [(each.key, each.why) for each in plan.refused] == [("a", "no sheet is listed")]
    assert plan.sheets == ()


def test_nothing_wanted_is_nothing_bought():
    assert plan_sheets(Task((), (Stock("s", 10, 10, 1),), 1)) == SheetPlan(
        (), (), plan_sheets(Task((), (), 1)).proof
    )


@pytest.mark.parametrize(
    "task",
    [
        Task((), (), -1),
        Task((_panel("a", 0, 10),), (), 1),
        Task((_panel("a", 10, 10, -1),), (), 1),
        Task((), (Stock("s", 10, 10, -1),), 1),
        Task((), (Stock("s", 10, 10, 1, -1),), 1),
        Task((), (Stock("s", 10, 10, 1, trim_ends=-1),), 1),
    ],
)
def test_numbers_that_mean_nothing_are_turned_away(task):
    with pytest.raises(Refused):
        plan_sheets(task)


def test_a_dozen_panels_are_proven():
    assert sum(plan_sheets(draw_panels(seed, 10)).proof.is_proven for seed in range(8)) >= 7


def test_stopped_at_once_it_still_answers():
    task = draw_panels(1, 30)
    plan = plan_sheets(task, Effort(should_stop=lambda: True))
    assert not check_sheet_plan(task, plan)
    assert plan.proof.cost >= plan_sheets(task).proof.cost


def test_every_better_plan_is_told_and_sound():
    told: list[SheetPlan] = []
    task = draw_panels(0, 20)
    plan = plan_sheets(task, Effort(tell=told.append))
    costs = [each.proof.cost for each in told]
    assert costs == sorted(costs, reverse=True)
    assert costs[-1] == plan.proof.cost
    assert all(not check_sheet_plan(task, each) for each in told)
