"""What is looked for among plans of one cost: few boards, and one long offcut."""

from __future__ import annotations

from model.cutting.boards import plan_boards
from model.cutting.task import Stock, Task, Wanted
from tests.model.cutting import invented
from tests.model.cutting.checker import keys_of, list_faults
from tests.model.cutting.oracle import find_optimum

WIDTH = 64


def test_one_long_board_is_bought_rather_than_two_short_ones_at_the_same_price():
    stock = (Stock("four", 48 * 64, WIDTH, 400), Stock("eight", 96 * 64, WIDTH, 800))
    plan = plan_boards(Task((Wanted("a", 40 * 64, WIDTH, 2),), stock, 8))
    assert [board.stock for board in plan.boards] == ["eight"]


def test_an_offcut_is_left_alone_where_what_is_bought_holds_all():
    stock = (Stock("left", 30 * 64, WIDTH, 0, 1), Stock("eight", 96 * 64, WIDTH, 800))
    wanted = (Wanted("a", 60 * 64, WIDTH), Wanted("b", 20 * 64, WIDTH))
    plan = plan_boards(Task(wanted, stock, 8))
    assert [board.stock for board in plan.boards] == ["eight"]


def test_boards_are_as_few_as_enumeration_finds_nearly_always():
    more = 0
    for seed in range(2000, 2150):
        task = invented.small_task(seed)
        plan, best = plan_boards(task), find_optimum(task)
        assert list_faults(task, plan) == []
        more += best is not None and len(plan.boards) > best.boards
    assert more <= 1


def test_the_waste_of_several_boards_is_gathered_into_one_offcut():
    """40 and 40 beside 30 and 20 on boards of 90 leave 10 and 40; 40, 30 and 20 fill one, 50 is left."""
    wanted = (Wanted("a", 40 * 64, WIDTH, 2), Wanted("b", 30 * 64, WIDTH), Wanted("c", 20 * 64, WIDTH))
    plan = plan_boards(Task(wanted, (Stock("s", 90 * 64, WIDTH, 100),), 0))
    assert sorted(sorted(keys_of(board)) for board in plan.boards) == [["a"], ["a", "b", "c"]]
