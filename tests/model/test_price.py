"""A price is added up as by hand, to the cent, and there is none where anything is missing."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.demo import read_demo
from app.stock_lists import EXAMPLE, read_shipped_list
from model.cutting.buying import BuyingList, list_buying
from model.cutting.order import build_order
from model.cutting.plan import plan_order
from model.cutting.task import Effort
from model.days.plan import plan_days
from model.job import default_job, with_value
from model.price import MARGIN, OVERHEAD, SUNDRIES, TAX, WOOD, WORK, count_hours, make_price
from model.shop import Offer
from model.steps.finishing import list_finishing
from model.steps.plan import plan_steps
from model.surround import plan_surround
from model.takeoff.takeoff import take_off
from render.offer_sheet import list_price

OFFER = replace(
    default_job().shop.offer, hour=62.5, sundries=148.35, overhead=12.0, margin=15.0, tax=7.25, shows="lines"
)


@pytest.fixture(scope="module")
def buying() -> BuyingList:
    surround = plan_surround(read_demo("bedroom"))
    order = build_order([("bedroom", surround)], read_shipped_list(EXAMPLE))
    return list_buying(plan_order(order, Effort(lambda: True)))


def _price(buying: BuyingList, offer: Offer = OFFER, hours: float = 21.25):
    return make_price(buying, offer, hours)


def test_it_is_what_it_is_by_hand(buying: BuyingList):
    """21.25 h at 62.50 are 1,328.125, so 1,328.13; 12 %, 15 % and 7.25 % each on all before it."""
    price = _price(buying)
    costs = {line.name: line.cost for line in price.lines}
    base = buying.total + 14835 + 132813
    overhead = int(base * 12 / 100 + 0.5)
    margin = int((base + overhead) * 15 / 100 + 0.5)
    tax = int((base + overhead + margin) * 7.25 / 100 + 0.5)
    assert costs == {
        WOOD: buying.total, SUNDRIES: 14835, WORK: 132813, OVERHEAD: overhead, MARGIN: margin, TAX: tax
    }  # fmt: skip
    assert price.total == base + overhead + margin + tax
    assert not price.missing


def test_hours_that_are_set_go_before_those_of_the_steps(buying: BuyingList):
    price = _price(buying, replace(OFFER, hours=10.0))
    assert {line.name: line.cost for line in price.lines}[WORK] == 62500


@pytest.mark.parametrize(
    ("change", "word"), [({"hour": None}, "hour of work"), ({"sundries": None}, "fastenings")]
)
def test_without_something_there_is_no_total_and_it_is_named(buying: BuyingList, change, word: str):
    price = _price(buying, replace(OFFER, **change))
    assert price.total is None
    assert any(word in missing for missing in price.missing)


def test_an_empty_price_list_gives_no_price():
    surround = plan_surround(read_demo("bedroom"))
    order = build_order([("bedroom", surround)], read_shipped_list("usual"))
    price = _price(list_buying(plan_order(order, Effort(lambda: True))))
    assert price.total is None
    assert "prices of" in price.missing[0]
    assert price.lines[0].cost is None
    nothing = _price(BuyingList((), (), (), "$"))
    assert nothing.total is None


@given(
    st.floats(0, 300).map(lambda v: round(v, 2)),
    st.floats(0, 60).map(lambda v: round(v, 1)),
    st.tuples(*[st.floats(0, 40).map(lambda v: round(v, 2))] * 3),
    st.sampled_from(["lines", "groups", "total"]),
)
def test_whatever_is_shown_adds_up_to_the_total(buying, hour, hours, percents, shows):
    offer = replace(OFFER, hour=hour, overhead=percents[0], margin=percents[1], tax=percents[2])
    price = _price(buying, offer, hours)
    shown = list(list_price(price, shows))
    assert shown[-1][2] == price.total
    parts = [cost for _, _, cost, is_sum in shown if not is_sum]
    assert not parts or sum(parts) == price.total
    assert all(cost >= 0 for _, _, cost, _ in shown)


def test_hours_are_those_of_all_steps_with_finish_and_coats():
    surround = plan_surround(read_demo("bedroom"))
    takeoff = take_off(surround)
    steps = plan_steps(surround, takeoff)
    times = surround.job.shop.times
    plain = sum(step.hours for step in steps)
    hours = count_hours(steps, list_finishing(surround.job, takeoff.materials))
    assert plain + times.finish + 3 * times.coat <= hours < plain + times.finish + 3 * times.coat + 0.25
    assert hours * 4 == int(hours * 4)


@pytest.mark.parametrize("settings", [{}, {"rates.primer_coats": 0, "rates.top_coats": 0}])
def test_the_hours_that_are_offered_are_those_that_the_day_plan_lays_out(settings):
    job = read_demo("bedroom")
    for path, value in settings.items():
        job = with_value(job, path, value)
    surround = plan_surround(job)
    takeoff = take_off(surround)
    hours = count_hours(plan_steps(surround, takeoff), list_finishing(job, takeoff.materials))
    assert hours - 0.25 < plan_days(surround, takeoff).hours <= hours + 1e-9


def test_finishing_that_is_not_done_is_not_offered():
    job = read_demo("bedroom")
    takeoff = take_off(plan_surround(job))
    without = [m for m in takeoff.materials if m.name != "Caulk"]
    most, less = (count_hours([], list_finishing(job, own)) for own in (takeoff.materials, without))
    assert most == job.shop.times.finish + 3 * job.shop.times.coat
    assert less == most - 0.5
