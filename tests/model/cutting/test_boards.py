"""Plans for boards: sawable, as cheap as any there is where they say so, and never cut short by bad input."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.cutting.boards import plan_boards
from model.cutting.task import BoardPlan, Effort, Stock, Task, Wanted
from model.errors import Refused
from tests.model.cutting import invented
from tests.model.cutting.certificate import certify
from tests.model.cutting.checker import keys_of, list_faults
from tests.model.cutting.oracle import Optimum, assign_pieces, find_optimum

MAKERS = {
    "small": invented.small_task,
    "ripped": invented.ripped_task,
    "mitred": invented.mitred_task,
    "batched": invented.batched_task,
}
BOARD = Stock("eight", 96 * 64, 352, 1000)


def _plan(task: Task) -> BoardPlan:
    plan = plan_boards(task)
    assert list_faults(task, plan) == []
    return plan


def _check_against(best: Optimum | None, plan: BoardPlan, task: Task) -> None:
    if best is None:
        assert plan.refused, task
        return
    assert not plan.refused, task
    assert plan.proof.bound <= best.cost <= plan.proof.cost, task
    assert plan.proof.is_proven, task
    assert len(plan.boards) >= best.boards, task


@pytest.mark.parametrize("kind", MAKERS)
def test_what_is_proven_is_what_two_hundred_enumerated_tasks_cost_at_least(kind):
    for seed in range(200):
        task = MAKERS[kind](seed)
        _check_against(find_optimum(task), _plan(task), task)


def test_boards_of_several_lanes_cost_what_enumeration_finds():
    """Within what it costs at most; nearly all are proven, and no bound is false."""
    proven = 0
    for seed in range(30):
        task = invented.wide_task(seed)
        best, plan = find_optimum(task), _plan(task)
        assert (best is None) == bool(plan.refused), task
        if best is not None:
            assert plan.proof.bound <= best.cost <= plan.proof.cost, task
            proven += plan.proof.is_proven
    assert proven >= 27


def test_costs_agree_with_a_model_that_knows_no_patterns():
    for seed in range(1000, 1150):
        task = invented.small_task(seed)
        plan = _plan(task)
        assert (None if plan.refused else plan.proof.cost) == assign_pieces(task), task


@pytest.mark.parametrize("part", range(4))
def test_two_thousand_tasks_of_any_kind_give_plans_that_can_be_sawn(part):
    for seed in range(500 * part, 500 * part + 500):
        _plan(invented.odd_task(seed))


def test_worths_show_a_bound_to_anyone_who_adds_up():
    for seed in range(120):
        for make in (invented.small_task, invented.ripped_task, invented.batched_task):
            task = make(seed)
            plan = _plan(task)
            if plan.proof.duals:
                assert certify(task, plan) <= plan.proof.bound, task


def test_worths_of_an_ordinary_section_show_nearly_all_of_its_cost():
    task = invented.section(3)
    plan = _plan(task)
    assert 0.97 * plan.proof.cost <= certify(task, plan) <= plan.proof.bound


def test_mitres_of_several_angles_are_sawn_as_drawn():
    for seed in range(200):
        _plan(invented.mitred_task(seed, one_mitre=False))


def test_the_same_task_gives_the_same_plan():
    task = invented.section(5)
    assert plan_boards(task) == plan_boards(task)


def test_whoever_stops_at_once_has_a_plan_and_a_bound():
    task = invented.section(1)
    plan = plan_boards(task, Effort(lambda: True))
    assert list_faults(task, plan) == []
    assert plan.proof.bound <= plan.proof.cost


def test_better_plans_are_told_on_the_way_each_cheaper_than_the_last():
    told: list[BoardPlan] = []
    task = invented.section(8)
    plan = plan_boards(task, Effort(tell=lambda better: told.append(better)))
    costs = [each.proof.cost for each in told]
    assert len(costs) > 1
    assert costs == sorted(set(costs), reverse=True)
    assert plan.proof.cost <= costs[-1]
    assert all(list_faults(task, each) == [] for each in told)


def test_like_pieces_of_many_jobs_keep_their_own_names():
    wanted = tuple(Wanted(f"job {n}", 64 * 30, 352) for n in range(40))
    plan = _plan(Task(wanted, (BOARD,), 8))
    assert plan.proof.cost == plan.proof.bound == 14_000
    assert {key for board in plan.boards for key in keys_of(board)} == {each.key for each in wanted}


# --- what cannot be had


def test_a_piece_longer_than_any_board_is_named_with_what_would_hold_it():
    task = Task((Wanted("a", 97 * 64, 352), Wanted("b", 640, 352)), (replace(BOARD, trim_ends=32),), 8)
    plan = _plan(task)
    (refusal,) = plan.refused
    assert (refusal.key, refusal.why) == ("a", "longer than any that is listed")
    assert (refusal.wants_length, refusal.wants_width) == (98 * 64, 352)
    assert plan.proof.cost == 1000


def test_a_piece_wider_than_any_board_is_named():
    (refusal,) = _plan(Task((Wanted("a", 640, 353),), (BOARD,), 8)).refused
    assert (refusal.why, refusal.wants_width) == ("wider than any that is listed", 353)


def test_a_piece_too_long_for_the_wide_and_too_wide_for_the_long_is_named():
    stock = (BOARD, Stock("wide", 640, 720, 500))
    (refusal,) = _plan(Task((Wanted("a", 700, 360),), stock, 8)).refused
    assert refusal.why == "none that is listed is both long and wide enough"


def test_nothing_listed_refuses_everything():
    plan = _plan(Task((Wanted("a", 640, 352, 3),), (), 8))
    assert [(each.key, each.count, each.why) for each in plan.refused] == [
        ("a", 3, "nothing to cut it from is listed")
    ]
    assert plan.boards == ()


def test_a_piece_without_a_size_is_refused():
    plan = _plan(Task((Wanted("a", 0, 352), Wanted("b", 640, 0), Wanted("c", 640, 352)), (BOARD,), 8))
    assert {each.key: each.why for each in plan.refused} == {"a": "has no size", "b": "has no size"}
    assert plan.proof.cost == 1000


def test_where_stock_is_too_little_the_least_wood_is_left_out():
    """One board of 96 in.: 60 and 30 go in, 60 and 40 do not; 30 is the least to leave out, not 40 or 60."""
    wanted = (Wanted("a", 60 * 64, 352), Wanted("b", 40 * 64, 352), Wanted("c", 30 * 64, 352))
    plan = _plan(Task(wanted, (replace(BOARD, supply=1),), 8))
    assert [(each.key, each.count) for each in plan.refused] == [("b", 1)]
    assert plan.refused[0].why == "too few boards are listed"


def test_a_batch_too_long_for_any_board_is_refused_whole():
    wanted = (Wanted("a", 60 * 64, 352, batch="x"), Wanted("b", 40 * 64, 352, batch="x"))
    plan = _plan(Task(wanted, (BOARD,), 8))
    assert {each.key: each.wants_length for each in plan.refused} == {"a": 6408, "b": 6408}
    assert "as a batch" in plan.refused[0].why


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"kerf": -1}, "kerf -1"),
        ({"keep": -1}, "length worth keeping -1"),
        ({"stock": (replace(BOARD, price=-1),)}, "price of eight -1"),
        ({"stock": (replace(BOARD, supply=-1),)}, "number of eight -1"),
        ({"stock": (replace(BOARD, trim_ends=-1),)}, "end trim of eight -1"),
        ({"stock": (BOARD, BOARD)}, 'stock "eight"'),
        ({"wanted": (Wanted("a", 1, 1), Wanted("a", 1, 1))}, 'piece "a"'),
    ],
)
def test_what_makes_no_sense_is_turned_away_by_name(change, says):
    with pytest.raises(Refused, match=says):
        plan_boards(replace(Task((Wanted("a", 640, 352),), (BOARD,), 8), **change))


def test_a_board_of_a_hundred_miles_is_planned_like_any_other():
    stock = (BOARD, Stock("miles", 100 * 63_360 * 64, 10**9, 5000))
    plan = _plan(Task((Wanted("a", 60 * 64, 352, 7), Wanted("b", 640, 100, 3)), stock, 8))
    assert (plan.proof.cost, plan.proof.bound) == (5000, 5000)


# --- rules, by hand


@pytest.mark.parametrize(("sixteenths", "boards"), [(1534, 1), (1535, 1), (1538, 1), (1533, 2)])
def test_three_pieces_of_31_7_8_need_95_7_8_with_a_kerf_of_an_eighth(sixteenths, boards):
    """95 5/8 and two cuts: none after the last piece where it ends at the board's end."""
    stock = (Stock("s", sixteenths * 4, 352, 100),)
    assert len(_plan(Task((Wanted("a", 31 * 64 + 56, 352, 3),), stock, 8)).boards) == boards


def test_offcuts_at_no_price_are_used_before_anything_is_bought():
    stock = (BOARD, Stock("left", 50 * 64, 352, 0, 1))
    plan = _plan(Task((Wanted("a", 45 * 64, 352, 3),), stock, 8))
    assert plan.proof.cost == plan.proof.bound == 1000
    assert sorted(board.stock for board in plan.boards) == ["eight", "left"]


def test_everything_free_costs_nothing_and_is_proven():
    plan = _plan(Task((Wanted("a", 640, 352, 9),), (replace(BOARD, price=0),), 8))
    assert (plan.proof.cost, plan.proof.bound) == (0, 0)


def test_a_wide_board_is_ripped_where_that_is_cheaper():
    """Two strips of 2 in. and a cut of 1/8 out of one of 4 1/4 for less than two boards of 2 in."""
    stock = (Stock("narrow", 96 * 64, 128, 600), Stock("wide", 96 * 64, 272, 1000))
    plan = _plan(Task((Wanted("a", 90 * 64, 128, 2),), stock, 8))
    (board,) = plan.boards
    assert (board.stock, [lane.width for lane in board.lanes]) == ("wide", [128, 128])


def test_a_strip_that_wants_the_last_of_the_width_needs_no_cut_beyond_it():
    wide = Stock("wide", 96 * 64, 264, 1000)
    assert len(_plan(Task((Wanted("a", 90 * 64, 128, 2),), (wide,), 8)).boards) == 1
    assert len(_plan(Task((Wanted("a", 90 * 64, 128, 2),), (replace(wide, width=263),), 8)).boards) == 2


def test_edges_are_trimmed_of_boards_that_are_ripped_and_of_no_others():
    edged = replace(BOARD, trim_edges=8)
    assert not _plan(Task((Wanted("a", 640, 352),), (edged,), 8)).refused
    assert _plan(Task((Wanted("a", 640, 340),), (edged,), 8)).refused
    mixed = _plan(Task((Wanted("a", 640, 352), Wanted("b", 640, 336)), (edged,), 8))
    assert [lane.width for board in mixed.boards for lane in board.lanes] == [352]


def test_a_batch_comes_out_of_one_board_though_that_costs_more():
    """35 + 60 and 35 + 60 would fill two boards; 60 and 60 together need a longer one."""
    stock = (BOARD, Stock("twelve", 144 * 64, 352, 1900))
    wanted = (Wanted("a", 60 * 64, 352, 2), Wanted("b", 35 * 64, 352, 2))
    assert _plan(Task(wanted, stock, 8)).proof.cost == 2000
    batched = (replace(wanted[0], batch="grain"), wanted[1])
    plan = _plan(Task(batched, stock, 8))
    assert plan.proof.cost == plan.proof.bound == 2900


def test_mitred_ends_share_a_cut():
    """Four rails 25 long at the long points, mitred over 5: 100 - 3 * 5 and three slanting cuts."""
    wanted = Wanted("rail", 25 * 64, 5 * 64, 4, 5 * 64, 5 * 64)
    fits = Stock("fits", 85 * 64 + 3 * 12, 5 * 64, 1000)
    (board,) = _plan(Task((wanted,), (fits,), 8)).boards
    assert board.lanes[0].turned.count(True) == 2
    assert len(_plan(Task((wanted,), (replace(fits, length=fits.length - 1),), 8)).boards) == 2


def test_hands_are_kept_apart_where_mitres_share_cuts():
    """Two left-hand returns share a cut, one of each hand cannot without being turned over."""
    left, right = Wanted("l", 640, 64, 1, 64, 0), Wanted("r", 640, 64, 1, 0, 64)
    stock = (Stock("s", 2 * 640 + 8 - 32, 64, 100),)
    assert len(_plan(Task((replace(left, count=2),), stock, 8)).boards) == 1
    assert len(_plan(Task((left, right), stock, 8)).boards) == 2
