"""A price is added up as by hand, to the cent, and there is none where anything is missing."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.demo import list_demos, read_demo
from app.stock_lists import EXAMPLE, read_shipped_list
from model.cutting.buying import BuyingList, list_buying
from model.cutting.frozen import freeze_plan
from model.cutting.order import build_order
from model.cutting.plan import CuttingPlan, plan_order
from model.cutting.stock_list import StockList
from model.cutting.supplies import ANCHORS, SORTS, USUAL_SUPPLIES, Supply
from model.cutting.task import Effort
from model.days.plan import plan_days
from model.estimate import (
    BUILDING,
    CUTTING,
    FINISHING,
    FITTING,
    Bought,
    Estimate,
    Hours,
    Need,
    list_bought,
    list_hours,
    list_needs,
    make_estimate,
)
from model.job import Job, default_job, with_texts, with_value
from model.price import (
    FASTENINGS,
    FINISH,
    MARGIN,
    MATERIALS,
    OVERHEAD,
    SUM,
    SUNDRIES,
    TAX,
    TOTAL,
    WASTE,
    WORK,
    list_price,
    make_price,
)
from model.shop import Offer
from model.steps.finishing import list_finishing
from model.steps.plan import plan_steps
from model.surround import plan_surround
from model.takeoff.takeoff import take_off

OFFER = replace(
    default_job().shop.offer, hour=62.5, sundries=148.35, overhead=12.0, margin=15.0, tax=7.25, shows="lines"
)
SUPPLIES = tuple(replace(each, price=1000) for each in USUAL_SUPPLIES)
HOURS = (Hours(CUTTING, 2.0), Hours(BUILDING, 12.25), Hours(FITTING, 4.0), Hours(FINISHING, 3.0))
NEEDS = (Need("Wood glue", 20.0), Need(ANCHORS, 4), Need("Primer", 0.3), Need("Top coat", 0.6))


def _plan(job: Job, stock_list: StockList) -> CuttingPlan:
    order = build_order([("job", plan_surround(job))], stock_list)
    return plan_order(order, Effort(lambda: True))


@pytest.fixture(scope="module")
def buying() -> BuyingList:
    return list_buying(_plan(read_demo("bedroom"), read_shipped_list(EXAMPLE)))


def _price(buying: BuyingList, offer: Offer = OFFER, supplies=USUAL_SUPPLIES, bought=()):
    return make_price(Estimate(buying, HOURS, NEEDS, tuple(bought)), offer, supplies)


def _costs(price) -> dict[str, int | None]:
    return {line.name: line.cost for line in price.lines}


def test_it_is_what_it_is_by_hand(buying: BuyingList):
    """62.50 for 2, 12.25, 4 and 3 h are 125.00, 765.625, so 765.63, 250.00 and 187.50; 12 %, 15 % and 7.25 %
    each on all before it.
    """
    price = _price(buying)
    work = 12500 + 76563 + 25000 + 18750
    base = buying.total + 14835 + work
    overhead = int(base * 12 / 100 + 0.5)
    margin = int((base + overhead) * 15 / 100 + 0.5)
    tax = int((base + overhead + margin) * 7.25 / 100 + 0.5)
    costs = _costs(price)
    wood = sum(total.cost for total in buying.totals)
    assert wood == buying.total
    assert [costs[kind] for kind in (CUTTING, BUILDING, FITTING, FINISHING)] == [12500, 76563, 25000, 18750]
    assert (costs[SUNDRIES], costs[OVERHEAD], costs[MARGIN], costs[TAX]) == (14835, overhead, margin, tax)
    assert price.total == base + overhead + margin + tax
    assert not price.missing


def test_waste_is_on_wood_alone_and_everything_after_it_is_on_it_too(buying: BuyingList):
    price = _price(buying, replace(OFFER, waste=10.0, margin=0.0, tax=0.0))
    costs = _costs(price)
    assert costs[WASTE] == int(buying.total * 0.1 + 0.5)
    base = buying.total + costs[WASTE] + 14835 + 132813
    assert costs[OVERHEAD] == int(base * 0.12 + 0.5)


def test_supplies_are_added_up_in_whole_packs_or_by_what_is_used(buying: BuyingList):
    """20 fl oz of 16: two bottles; 4 anchors of 10: one pack; 0.3 and 0.6 gal in quarts: 2 and 3 cans."""
    open_offer = replace(OFFER, sundries=None)
    costs = _costs(_price(buying, open_offer, SUPPLIES))
    assert (costs[FASTENINGS], costs[FINISH]) == (3000, 5000)
    used = tuple(replace(each, whole=False) for each in SUPPLIES)
    costs = _costs(_price(buying, open_offer, used))
    assert (costs[FASTENINGS], costs[FINISH]) == (1250 + 400, 1200 + 2400)


def test_an_amount_that_fills_its_packs_needs_no_further_one():
    assert Supply("Caulk", 0.1, 100).cost(0.3) == 300
    assert Supply("Caulk", 1.0, 100).cost(3.0000000001) == 300


def test_hours_that_are_set_go_before_those_of_the_steps(buying: BuyingList):
    price = _price(buying, replace(OFFER, hours=10.0))
    assert _costs(price)[WORK] == 62500
    assert BUILDING not in _costs(price)


def test_hours_of_one_kind_are_overwritten_and_the_others_stay(buying: BuyingList):
    costs = _costs(_price(buying, replace(OFFER, building_hours=8.0, finishing_hours=0.0)))
    assert (costs[CUTTING], costs[BUILDING], costs[FITTING], costs[FINISHING]) == (12500, 50000, 25000, 0)


@pytest.mark.parametrize(
    ("change", "word"),
    [({"hour": None}, "hour of work"), ({"sundries": None}, "prices of wood glue, anchors and screws into")],
)
def test_without_something_there_is_no_total_and_it_is_named(buying: BuyingList, change, word: str):
    price = _price(buying, replace(OFFER, **change))
    assert price.total is None
    assert any(word in missing for missing in price.missing)


def test_a_price_of_which_one_supply_has_none_is_no_price(buying: BuyingList):
    all_but_one = tuple(each if each.name != "Primer" else replace(each, price=None) for each in SUPPLIES)
    price = _price(buying, replace(OFFER, sundries=None), all_but_one)
    assert price.total is None
    assert price.missing == ("what fastenings and finish cost: prices of primer",)
    assert _costs(price)[FASTENINGS] == 3000
    assert _costs(price)[FINISH] is None


def test_an_empty_price_list_gives_no_price():
    price = _price(list_buying(_plan(read_demo("bedroom"), read_shipped_list("usual"))))
    assert price.total is None
    assert "prices of" in price.missing[0]
    assert price.lines[0].cost is None
    nothing = _price(BuyingList((), (), (), "$"))
    assert nothing.total is None
    assert nothing.missing == ("a stock list that holds the boards",)


def test_a_piece_that_nothing_on_the_list_holds_leaves_no_total_and_is_named():
    job = with_texts(read_demo("bedroom"), [("shelf.kind", "plank"), ("shelf.thickness", "3")])
    buying = list_buying(_plan(job, read_shipped_list(EXAMPLE)))
    assert [short.marks for short in buying.short] == ["S1"]
    price = _price(buying)
    assert price.total is None
    assert price.missing == ("wood for S1, which nothing on the stock list holds",)


def test_boards_bought_before_are_in_the_price_and_not_bought_again():
    job = with_value(with_value(read_demo("bedroom"), "offer.hour", 50), "offer.sundries", 100)
    stock_list = read_shipped_list(EXAMPLE)
    surround, before = plan_surround(job), _plan(job, stock_list)
    bought = replace(job, purchase=freeze_plan(job.purchase, before))
    after = _plan(bought, stock_list)
    assert list_buying(after).total == 0
    prices = [
        make_price(make_estimate(plan_surround(each), take_off(surround), plan), job.shop.offer, ())
        for each, plan in ((job, before), (bought, after))
    ]
    assert prices[0].total == prices[1].total is not None


def test_a_board_bought_without_a_price_leaves_none(buying: BuyingList):
    price = _price(buying, bought=[Bought("Boards", None)])
    assert price.total is None
    assert price.missing == ("what boards cost that are bought already",)


OFFERS = st.builds(
    lambda hour, percents, shows, shown: replace(
        OFFER, hour=hour, waste=percents[0], overhead=percents[1], margin=percents[2], tax=percents[3],
        shows=shows, waste_shown=shown[0], overhead_shown=shown[1], margin_shown=shown[2], tax_shown=shown[3],
    ),
    st.floats(0, 300).map(lambda v: round(v, 2)),
    st.tuples(*[st.floats(0, 40).map(lambda v: round(v, 2))] * 4),
    st.sampled_from(["lines", "groups", "total"]),
    st.tuples(*[st.booleans()] * 4),
)  # fmt: skip


@given(OFFERS, st.sampled_from(["$", "¥1,234", "1.234,5 kr"]))
def test_whatever_is_shown_adds_up_to_the_total(buying, offer: Offer, currency: str):
    price = _price(replace(buying, currency=currency), offer)
    shown = list_price(price, offer)
    assert shown[-1].name == TOTAL
    assert shown[-1].cost == price.total
    parts = [line.cost for line in shown if not line.is_sum]
    assert not parts or sum(parts) == price.total
    assert all(line.cost >= 0 for line in shown)


@given(OFFERS)
def test_what_is_hidden_is_named_nowhere(buying, offer: Offer):
    shown = {line.name for line in list_price(_price(buying, offer), offer)}
    lines = offer.shows == "lines"
    for name, percent, is_shown in (
        (WASTE, offer.waste, lines and offer.waste_shown),
        (OVERHEAD, offer.overhead, lines and offer.overhead_shown),
        (MARGIN, offer.margin, lines and offer.margin_shown),
        (TAX, offer.tax, offer.shows != "total" and offer.tax_shown),
        (SUM, offer.tax, offer.shows != "total" and offer.tax_shown),
    ):
        assert (name in shown) == bool(percent and is_shown)


def test_tax_that_is_hidden_is_named_with_the_total(buying: BuyingList):
    for offer in (replace(OFFER, tax_shown=False), replace(OFFER, shows="total")):
        assert list_price(_price(buying, offer), offer)[-1].how == "7.25 % tax included"


def test_groups_are_materials_and_work(buying: BuyingList):
    offer = replace(OFFER, shows="groups")
    assert [line.name for line in list_price(_price(buying, offer), offer)] == [
        MATERIALS,
        WORK,
        SUM,
        TAX,
        TOTAL,
    ]


def test_money_without_decimals_is_rounded_line_by_line(buying: BuyingList):
    price = _price(replace(buying, currency="¥1,234"))
    costs = _costs(price)
    assert all(cost % 100 == 0 for name, cost in costs.items() if name in (SUNDRIES, BUILDING, OVERHEAD, TAX))
    assert costs[BUILDING] == 76600


def test_hours_are_those_of_all_steps_with_finish_and_coats():
    surround = plan_surround(read_demo("bedroom"))
    takeoff = take_off(surround)
    steps = plan_steps(surround, takeoff)
    times = surround.job.shop.times
    plain = sum(step.hours for step in steps)
    found = list_hours(steps, list_finishing(surround.job, takeoff.materials))
    hours = sum(each.hours for each in found)
    assert plain + times.finish + 3 * times.coat <= hours < plain + times.finish + 3 * times.coat + 0.25
    assert all(each.hours * 4 == int(each.hours * 4) for each in found)
    assert [each.kind for each in found] == [CUTTING, BUILDING, FITTING, FINISHING]
    assert found[0].hours == times.cut


@pytest.mark.parametrize("settings", [{}, {"rates.primer_coats": 0, "rates.top_coats": 0}])
def test_the_hours_that_are_offered_are_those_that_the_day_plan_lays_out(settings):
    job = read_demo("bedroom")
    for path, value in settings.items():
        job = with_value(job, path, value)
    surround = plan_surround(job)
    takeoff = take_off(surround)
    found = list_hours(plan_steps(surround, takeoff), list_finishing(job, takeoff.materials))
    hours = sum(each.hours for each in found)
    assert hours - 0.25 < plan_days(surround, takeoff).hours <= hours + 1e-9


def test_finishing_that_is_not_done_is_not_offered():
    job = read_demo("bedroom")
    takeoff = take_off(plan_surround(job))
    without = [m for m in takeoff.materials if m.name != "Caulk"]
    most, less = (list_hours([], list_finishing(job, own)) for own in (takeoff.materials, without))
    assert most[0].hours == job.shop.times.finish + 3 * job.shop.times.coat
    assert less[0].hours == most[0].hours - 0.5


@pytest.mark.parametrize("demo", list_demos())
def test_every_material_of_a_job_is_sold_as_a_supply_in_the_same_measure(demo: str):
    surround = plan_surround(read_demo(demo))
    takeoff = take_off(surround)
    for material in takeoff.materials:
        assert SORTS[material.name].measure == material.measure
        assert not material.unit or SORTS[material.name].unit.startswith(material.unit)
    needs = {need.name: need.amount for need in list_needs(takeoff)}
    caulk = sum(m.amount for m in takeoff.materials if m.name == "Caulk")
    assert needs["Caulk"] == pytest.approx(caulk)
    assert needs[ANCHORS] >= 2
    assert [supply.name for supply in USUAL_SUPPLIES] == list(SORTS)
    assert list_bought(surround.job.purchase) == ()
