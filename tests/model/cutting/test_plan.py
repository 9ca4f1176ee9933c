"""Orders planned: every copy once and traceable, dear rows last, what cannot be had named with what would."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings

from model.board import StockKind
from model.cutting.buying import list_buying
from model.cutting.order import build_order
from model.cutting.pieces import Material, Source
from model.cutting.places import list_places
from model.cutting.plan import CuttingPlan, list_keys, plan_order
from model.cutting.stock_list import HandRow
from model.cutting.task import Effort
from model.job import default_job
from model.surround import plan_surround
from tests.model.cutting.checker import list_faults
from tests.model.cutting.sheet_checker import check_sheet_plan
from tests.model.cutting.yard import PLYWOOD, on_hand, order_of, piece, sold
from tests.planned import plan_of
from tests.strategies import jobs
from tests.write_stock_lists import build_example, build_usual

LIST = replace(
    build_example(),
    sold=tuple(
        replace(row, price=priced.get((row.kind, row.wood, row.name, row.length)))
        for priced in [{(r.kind, r.wood, r.name, r.length): r.price for r in build_example().sold}]
        for row in build_usual().sold
    ),
    spare=1,
)
"""Every usual size, some of them priced, and what lies there in the example."""


def _sources(plan: CuttingPlan) -> Counter[Source]:
    return Counter(source for sawn in plan.sawn for source in sawn.sources)


def test_every_copy_is_cut_once_under_its_own_mark():
    pieces = [piece(f"A{i}", 30, job=job) for i in range(5) for job in ("a", "b")]
    plan = plan_order(order_of(pieces, sold("1x4", 3.5, 96, 1000)))
    assert _sources(plan) == Counter(each.source for each in pieces)
    assert plan.cost == plan.bound == 4000
    assert plan.is_proven


def test_numbers_run_through_all_groups():
    thick = Material(StockKind.BOARD, "poplar", 1.0)
    rows = sold("1x4", 3.5, 96, 1000), sold("5/4x4", 3.5, 96, 1500, thickness=1.0)
    plan = plan_order(order_of([piece("A1", 90), piece("A2", 90), piece("B1", 90, material=thick)], *rows))
    assert [sawn.number for sawn in plan.sawn] == [1, 2, 3]
    assert plan.cost == 1500 + 2 * 1000


def test_a_row_without_a_price_serves_only_what_no_other_row_holds():
    rows = sold("1x4", 3.5, 96, 1000), sold("1x12", 11.25, 96)
    plan = plan_order(order_of([piece("A1", 90, 3.5), piece("A2", 90, 9)], *rows))
    by_name = {sawn.row.name: [source.mark for source in sawn.sources] for sawn in plan.sawn}
    assert by_name == {"1x4": ["A1"], "1x12": ["A2"]}
    assert plan.cost == 1000
    assert [group.is_priced for group in plan.groups] == [True, False]
    assert plan.groups[1].proof.cost == round(100 * 0.75 * 11.25 * 96 / 144)


def test_without_prices_the_least_wood_is_taken():
    rows = sold("1x4", 3.5, 96), sold("1x4", 3.5, 144), sold("1x6", 5.5, 96)
    plan = plan_order(order_of([piece("A1", 70), piece("A2", 70)], *rows))
    assert [sawn.row.length for sawn in plan.sawn] == [144]
    assert plan.cost == 0


def test_where_too_few_have_a_price_the_rest_comes_out_of_what_has_none():
    rows = sold("1x4", 3.5, 96, 1000, limit=1), sold("1x6", 5.5, 96)
    plan = plan_order(order_of([piece(f"A{i}", 90) for i in range(3)], *rows))
    assert Counter(sawn.row.name for sawn in plan.sawn) == {"1x4": 1, "1x6": 2} or Counter(
        sawn.row.name for sawn in plan.sawn
    ) == {"1x4": 1, "1x6": 1}
    assert len(_sources(plan)) == 3
    assert plan.short == ()


def test_what_lies_there_goes_first_and_only_once():
    plan = plan_order(
        order_of([piece("A1", 60), piece("A2", 60)], on_hand(3.5, 70), sold("1x4", 3.5, 96, 900))
    )
    assert [isinstance(sawn.row, HandRow) for sawn in plan.sawn].count(True) == 1
    assert plan.cost == 900


def test_what_lies_there_is_left_for_pieces_without_a_price():
    rows = sold("1x4", 3.5, 48, 500), sold("1x4", 3.5, 144), on_hand(3.5, 110)
    plan = plan_order(order_of([piece("A1", 40), piece("A2", 100)], *rows))
    assert {sawn.row.name for sawn in plan.sawn} == {"1x4", "left over"}
    assert plan.cost == 500


def test_a_piece_that_nothing_holds_is_named_with_what_would_and_the_rest_is_planned():
    plan = plan_order(order_of([piece("A1", 100), piece("A2", 90)], sold("1x4", 3.5, 96, 1000)))
    (short,) = plan.short
    assert [source.mark for source in short.sources] == ["A1"]
    assert short.wants_length == 100
    assert [source.mark for source in _sources(plan)] == ["A2"]
    assert plan.cost == 1000


def test_without_any_stock_everything_is_short_and_nothing_costs():
    plan = plan_order(order_of([piece("A1", 30), piece("A2", 40)]))
    assert sorted(source.mark for short in plan.short for source in short.sources) == ["A1", "A2"]
    assert (plan.cost, plan.bound, plan.groups) == (0, 0, ())


def test_an_empty_order_is_planned_to_nothing():
    plan = plan_order(order_of([], sold("1x4", 3.5, 96, 1000)))
    assert (plan.sawn, plan.cost, plan.is_proven) == ((), 0, True)


def test_stopped_at_once_there_is_still_a_whole_plan_with_its_bound():
    pieces = [piece(f"A{i}", 20 + 3 * i) for i in range(12)]
    plan = plan_order(order_of(pieces, sold("1x4", 3.5, 96, 1000)), Effort(lambda: True))
    assert len(_sources(plan)) == 12
    assert 0 <= plan.bound <= plan.cost


def test_whoever_watches_is_told_of_every_group():
    thick = Material(StockKind.BOARD, "poplar", 1.0)
    order = order_of([piece("A1", 30), piece("B1", 30, material=thick)], sold("1x4", 3.5, 96, 1000))
    told = []
    plan_order(order, watch=lambda i, group: told.append((i, group.material.thickness)))
    assert told == [(0, 1.0), (1, 0.75)]


def test_panels_are_cut_from_sheets():
    sheet = sold("1/4", 48, 96, 4000, kind=StockKind.PANEL, wood="plywood", thickness=0.25)
    pieces = [piece(f"C{i}", 40, 10, material=PLYWOOD) for i in range(8)]
    plan = plan_order(order_of(pieces, sheet))
    assert plan.cost == plan.bound == 4000
    assert len(_sources(plan)) == 8


@settings(max_examples=40)
@given(jobs())
def test_any_job_is_planned_so_that_it_can_be_sawn(job):
    order = build_order([("x", plan_of(job))], LIST)
    plan = plan_order(order, Effort(lambda: True))
    found = _sources(plan)
    found.update(source for short in plan.short for source in short.sources)
    wanted = Counter(s for group in order.groups for whose in group.sources.values() for s in whose)
    assert found == wanted
    for group in plan.groups:
        check = check_sheet_plan if group.group.is_sheet else list_faults
        assert check(group.task, group.plan) == []
    for line in (*list_buying(plan).lines, *list_buying(plan).used):
        assert 0 <= line.made <= line.bought
        assert line.made + line.kept <= line.bought
    for group in plan.groups:
        for sawn in group.sawn:
            for place in list_places(sawn, group):
                length = sawn.row.length or 0
                assert place.along + place.length <= length * 64 + 1


@pytest.mark.parametrize("count", [1, 2])
def test_a_job_is_planned_whole_from_the_example_list(count: int):
    surround = plan_surround(default_job())
    order = build_order([(str(i), surround) for i in range(count)], build_example())
    plan = plan_order(order, Effort(lambda: True))
    assert plan.short == ()
    assert sum(_sources(plan).values()) == order.piece_count
    for group in plan.groups:
        for sawn in group.sawn:
            assert len(list_keys(sawn.cut)) == len(sawn.sources)
