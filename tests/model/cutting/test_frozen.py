"""Plans kept once the wood is bought, and what of them serves after the design was changed."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.demo import list_demos, read_demo
from app.stock_lists import read_shipped_list
from model.cutting.buying import list_buying
from model.cutting.frozen import (
    freeze_plan,
    list_since_printed,
    mark_cut,
    note_printed,
    printed_counts,
    show_frozen,
)
from model.cutting.order import Order, build_order
from model.cutting.places import list_places
from model.cutting.plan import CuttingPlan, plan_order
from model.cutting.printed import count_printed
from model.cutting.purchase import Purchase
from model.cutting.stock_list import HandRow
from model.cutting.task import Effort, to_inches
from model.errors import Refused
from model.job import Job, default_job, read_job, with_texts, write_job
from model.surround import plan_surround
from tests.strategies import jobs
from tests.write_stock_lists import build_example

LIST = replace(build_example(), on_hand=())
QUICK = Effort(lambda: True)


def _order(job: Job) -> Order:
    return build_order([("hall", plan_surround(job))], LIST)


def _plan(job: Job) -> CuttingPlan:
    return plan_order(_order(job), QUICK)


def _buy(job: Job) -> Job:
    return replace(job, purchase=freeze_plan(job.purchase, _plan(job)))


BOUGHT = _buy(default_job())
FIRST = _plan(default_job())
HIGHER = [("shelf.height", "56")]


def _marks(order: Order) -> Counter[str]:
    found = Counter(taken.source.mark for taken in order.settled)
    found.update(s.mark for g in order.groups for whose in g.sources.values() for s in whose)
    return found


def test_once_bought_nothing_is_left_to_buy():
    order = _order(BOUGHT)
    assert order.piece_count == 0
    assert set(order.kept) == {board.number for board in BOUGHT.purchase.boards}
    assert _plan(BOUGHT).cost == 0


def test_a_frozen_plan_is_shown_as_it_was_made():
    shown = show_frozen(BOUGHT.purchase, _order(BOUGHT))
    assert shown.cost == FIRST.cost
    for name in ("length", "kind", "wood", "name"):
        assert [getattr(s.row, name) for s in shown.sawn] == [getattr(s.row, name) for s in FIRST.sawn]
    assert [s.sources for s in shown.sawn] == [s.sources for s in FIRST.sawn]
    first = [(p.along, p.across, p.length) for g in FIRST.groups for s in g.sawn for p in list_places(s, g)]
    again = [(p.along, p.across, p.length) for g in shown.groups for s in g.sawn for p in list_places(s, g)]
    assert first == again


def test_a_purchase_goes_through_the_job_file():
    job = replace(BOUGHT, purchase=note_printed(BOUGHT.purchase))
    assert read_job(write_job(job)) == job
    assert printed_counts(job.purchase) == count_printed(list_buying(FIRST))


def test_buying_what_was_printed_is_no_change_and_letting_go_of_it_is_none_either():
    printed = note_printed(Purchase(), list_buying(FIRST))
    assert list_since_printed(Purchase(), list_buying(FIRST)) is None
    assert list_since_printed(printed, list_buying(FIRST)) == ()
    bought = replace(printed, boards=BOUGHT.purchase.boards)
    assert list_since_printed(bought, list_buying(_plan(BOUGHT))) == ()


@pytest.mark.parametrize("name", list_demos())
def test_a_bought_board_is_called_what_the_list_called_it(name):
    order = build_order([(name, plan_surround(read_demo(name)))], read_shipped_list("example"))
    plan = plan_order(order, QUICK)
    bought = note_printed(freeze_plan(Purchase(), plan))
    assert list_since_printed(bought, list_buying(plan)) is not None
    assert printed_counts(bought) == {
        item: count for item, count in count_printed(list_buying(plan)).items() if count
    }


def test_an_edit_after_buying_says_how_many_more():
    bought = note_printed(BOUGHT.purchase)
    job = with_texts(replace(BOUGHT, purchase=bought), HIGHER)
    plan = _plan(job)
    changes = list_since_printed(bought, list_buying(plan))
    assert sum(change.now - change.before for change in changes) == sum(
        line.count + line.spare for line in list_buying(plan).lines
    )


def test_an_edit_plans_only_what_changed_and_takes_what_is_left_first():
    order = _order(with_texts(BOUGHT, HIGHER))
    assert 0 < order.piece_count < len(plan_surround(BOUGHT).boards)
    assert order.kept
    assert any(isinstance(row, HandRow) and row.bought for row in order.stock.values())
    plan = plan_order(order, QUICK)
    assert plan.cost < _plan(with_texts(default_job(), HIGHER)).cost
    marks = _marks(order)
    assert set(marks) == set(plan_surround(with_texts(default_job(), HIGHER)).marks)


def test_what_is_free_after_an_edit_is_the_boards_that_do_not_stay():
    order = _order(with_texts(BOUGHT, HIGHER))
    freed = [board for board in BOUGHT.purchase.boards if board.number not in order.kept]
    lengths = Counter(to_inches(board.length) for board in freed if board.sheet is None)
    rows = Counter[float]()
    for row in order.stock.values():
        if isinstance(row, HandRow) and not row.name.startswith("offcut"):
            rows[row.length] += row.count
    assert lengths <= rows


def test_pieces_of_a_cut_board_stay_and_the_useless_ones_are_offcuts():
    everything = mark_cut(BOUGHT.purchase, [board.number for board in BOUGHT.purchase.boards])
    order = _order(replace(with_texts(BOUGHT, HIGHER), purchase=everything))
    assert order.kept == ()
    assert any("cut already" in taken.out_of for taken in order.settled)
    names = [row.name for row in order.stock.values() if isinstance(row, HandRow)]
    assert any(name.startswith("cut as ") for name in names)
    whole = {(to_inches(board.length), to_inches(board.width)) for board in BOUGHT.purchase.boards}
    left = {(row.length, row.width) for row in order.stock.values() if isinstance(row, HandRow)}
    assert not whole & left


def test_shorter_needs_are_met_by_pieces_that_are_cut_already():
    everything = mark_cut(BOUGHT.purchase, [board.number for board in BOUGHT.purchase.boards])
    lower = with_texts(replace(BOUGHT, purchase=everything), [("shelf.height", "53")])
    order = _order(lower)
    assert _marks(order).keys() == set(plan_surround(lower).marks)
    assert plan_order(order, QUICK).cost == 0


def test_cutting_is_marked_and_unmarked_by_number():
    cut = mark_cut(BOUGHT.purchase, [1, 3])
    assert [board.number for board in cut.boards if board.is_cut] == [1, 3]
    assert mark_cut(cut, [1, 3], False) == BOUGHT.purchase


def test_a_second_purchase_keeps_the_first():
    changed = with_texts(BOUGHT, HIGHER)
    plan = _plan(changed)
    first = max(board.number for board in changed.purchase.boards)
    assert [sawn.number for sawn in plan.sawn] == [*range(first + 1, first + 1 + len(plan.sawn))]
    again = freeze_plan(changed.purchase, plan)
    numbers = [board.number for board in again.boards]
    assert len(set(numbers)) == len(numbers)
    assert set(plan.order.kept) <= set(numbers)
    assert _order(replace(changed, purchase=again)).piece_count == 0


def test_several_jobs_are_not_bought_into_one():
    surround = plan_surround(default_job())
    plan = plan_order(build_order([("a", surround), ("b", surround)], LIST), QUICK)
    with pytest.raises(Refused, match="plan one job by itself"):
        freeze_plan(Purchase(), plan)


@settings(max_examples=12)
@given(jobs(in_between=False), jobs(in_between=False), st.integers(1, 6))
def test_whatever_is_changed_after_buying_every_piece_has_one_place(before, after, every):
    bought = freeze_plan(before.purchase, _plan(before))
    bought = mark_cut(bought, [board.number for board in bought.boards if board.number % every == 0])
    order = _order(replace(after, purchase=bought))
    plain = _order(after)
    assert _marks(order) == _marks(plain)
    plan = plan_order(order, QUICK)
    assert not plan.short or plan_order(plain, QUICK).short
    again = freeze_plan(bought, plan)
    marks = [(p.mark, p.part) for b in again.boards if b.number in order.kept for p in b.pieces]
    assert len(set(marks)) == len(marks)
