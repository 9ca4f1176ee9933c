"""From jobs to tasks: everything once, like pieces counted, widths as they are sold."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings

from model.board import StockKind
from model.cutting.order import Order, build_order
from model.cutting.pieces import Material
from model.cutting.stock_list import SoldRow, StockList
from model.job import default_job, with_texts
from model.surround import plan_surround
from tests.model.cutting.yard import on_hand, order_of, piece, sold
from tests.planned import plan_of
from tests.strategies import jobs
from tests.write_stock_lists import build_usual

USUAL = build_usual()
PLAIN = plan_surround(default_job())


def _sources(order: Order) -> Counter[tuple[str, str]]:
    return Counter(
        (source.job, source.mark)
        for group in order.groups
        for whose in group.sources.values()
        for source in whose
    )


@settings(max_examples=25)
@given(jobs())
def test_every_piece_of_any_job_is_asked_for_or_is_there_already(job):
    surround = plan_of(job)
    order = build_order([("x", surround)], USUAL)
    marks = {mark for _, mark in _sources(order)} | {taken.source.mark for taken in order.taken}
    assert marks == set(surround.marks)
    for group in order.groups:
        keys = [wanted.key for wanted in group.task.wanted]
        assert len(set(keys)) == len(keys)
        assert {w.key: w.count for w in group.task.wanted} == {
            key: len(whose) for key, whose in group.sources.items()
        }


def test_like_jobs_share_their_keys():
    one = build_order([("a", PLAIN)], USUAL)
    many = build_order([(str(i), PLAIN) for i in range(200)], USUAL)
    assert many.piece_count == 200 * one.piece_count
    keys = [sum(len(group.task.wanted) for group in order.groups) for order in (one, many)]
    assert keys[0] == keys[1]
    assert max(Counter(job for job, _ in _sources(many)).values()) == one.piece_count


def test_jobs_called_alike_are_told_apart():
    order = build_order([("hearth", PLAIN), ("hearth", PLAIN)], USUAL)
    assert order.jobs == ("hearth", "hearth (2)")


def test_a_piece_as_wide_as_a_board_is_sold_is_not_ripped():
    rows = sold("1x4", 3.5, 96), sold("1x6", 5.5, 96)
    order = order_of([piece("A1", 30, 3.75, bare=3.5), piece("A2", 30, 3.65, bare=3.4)], *rows)
    widths = {w.key: w.width for w in order.groups[0].task.wanted}
    assert widths == {"1": 3.5 * 64, "2": round(3.65 * 64 + 0.4)}


def test_pieces_are_rounded_up_and_boards_down():
    order = order_of([piece("A1", 30.001, 3.001)], sold("1x4", 3.507, 95.99, 100), kerf=0.127)
    task = order.groups[0].task
    assert (task.wanted[0].length, task.wanted[0].width) == (30 * 64 + 1, 3 * 64 + 1)
    assert (task.stock[0].length, task.stock[0].width) == (int(95.99 * 64), int(3.507 * 64))
    assert task.kerf == 9


def test_rows_without_a_price_stand_apart_and_weigh_their_wood():
    order = order_of([piece("A1", 30)], sold("1x4", 3.5, 96), sold("1x6", 5.5, 96, 1200), on_hand(3.5, 40))
    (group,) = order.groups
    assert {stock.key for stock in group.task.stock} == {"s2", "h1"}
    (bare,) = group.unpriced
    assert bare.price == round(100 * 0.75 * 3.5 * 96 / 144)


def test_rows_of_which_there_are_none_are_left_out():
    order = order_of([piece("A1", 30)], sold("1x4", 3.5, 96, 500, limit=0), on_hand(3.5, 40, count=0))
    assert order.groups[0].task.stock == ()


def test_ends_that_are_kept_clear_are_trimmed_off_what_lies_there():
    order = order_of([piece("A1", 30)], on_hand(3.5, 40, clear=2.5), sold("1x4", 3.5, 96, 9), trim_end=0.5)
    trims = {stock.key: stock.trim_ends for stock in order.groups[0].task.stock}
    assert trims == {"h1": 160, "s1": 32}


def test_a_batch_that_no_board_is_long_enough_for_is_freed_and_named():
    pieces = [piece(f"A{i}", 40, batch="a: stiles") for i in range(3)]
    short = order_of(pieces, sold("1x4", 3.5, 96, 500))
    assert [w.batch for w in short.groups[0].task.wanted] == [""]
    assert "a: stiles" in short.notes[0]
    long = order_of(pieces, sold("1x4", 3.5, 144, 500))
    assert [w.batch for w in long.groups[0].task.wanted] == ["a: stiles"]
    assert long.notes == ()


def test_what_comes_out_of_a_piece_on_hand_is_not_bought_again():
    settings_ = [
        ("piece_one.use", "shelf"),
        ("piece_one.name", "old beam"),
        ("piece_one.length", "160"),
        ("piece_one.width", "20"),
        ("piece_one.thickness", "3"),
    ]
    surround = plan_surround(with_texts(default_job(), settings_))
    order = build_order([("x", surround)], USUAL)
    assert {taken.out_of for taken in order.taken} == {"old beam"}
    taken = {taken.source.mark for taken in order.taken}
    assert taken
    assert not taken & {mark for _, mark in _sources(order)}


def test_a_moulding_run_to_order_is_as_wide_as_the_piece():
    material = Material(StockKind.MOULDING, "poplar", 1.378, "Cove", 1.378)
    row = SoldRow(StockKind.MOULDING, "poplar", "to order", 0.0, 0.0, 96, 500)
    task = order_of([piece("M1", 30, 1.378, material=material)], row).groups[0].task
    assert task.stock[0].width == task.wanted[0].width > 0


@pytest.mark.parametrize("low", [0, 1])
def test_pieces_mitred_at_one_end_are_one_whichever_end_it_is(low: int):
    runs = [(2.0, 0.0), (0.0, 2.0)]
    order = order_of([piece("A1", 30, mitres=runs[low]), piece("A2", 30, mitres=runs[1 - low])])
    (wanted,) = order.groups[0].task.wanted
    assert (wanted.count, wanted.mitre_low, wanted.mitre_high) == (2, 128, 0)


def test_an_empty_list_asks_for_everything_and_offers_nothing():
    order = build_order([("x", PLAIN)], StockList())
    assert order.piece_count >= len(PLAIN.boards)
    assert all(group.task.stock == group.unpriced == () for group in order.groups)
