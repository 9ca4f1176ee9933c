"""What differs between options is every line in which they differ, and no other."""

from __future__ import annotations

from dataclasses import replace

import pytest

from app.demo import read_demo
from model.check.all import check_surround
from model.cutting.buying import BuyingList
from model.differences import (
    NO_PRICE,
    NONE,
    WORKING,
    Compared,
    Heading,
    list_differences,
    say_more,
    say_price,
)
from model.estimate import BUILDING, Estimate, Hours
from model.job import Job, with_texts
from model.price import Price, PriceLine
from model.surround import plan_surround


def _compared(job: Job, total: int | None = None, hours: float = 10.0) -> Compared:
    surround = plan_surround(job)
    estimate = Estimate(BuyingList((), (), (), "$"), (Hours(BUILDING, hours),), ())
    price = Price((PriceLine("Boards", total),), total, () if total else ("prices",), "$")
    return Compared(surround, check_surround(surround), estimate, price)


PLAIN = read_demo("bedroom")
DEEP = with_texts(PLAIN, [("shelf.depth", "9"), ("column.kind", "plain"), ("offer.colour", "oiled\n oak")])


def _lines(*options: Compared) -> dict[tuple[str, str], tuple[str, ...]]:
    return {(line.heading, line.name): line.texts for line in list_differences(options)}


def test_options_that_are_alike_differ_in_nothing():
    assert list_differences([_compared(PLAIN, 100), _compared(PLAIN, 100)]) == ()
    assert list_differences([_compared(PLAIN)]) == ()


def test_settings_sizes_boards_work_and_price_that_differ_are_listed():
    lines = _lines(_compared(PLAIN, 225_613), _compared(DEEP, 219_052, 9.25))
    assert lines[Heading.SETTINGS, "Columns: face"] == ("Framed panels", "Plain board")
    assert lines[Heading.SETTINGS, "Offer: colour and finish"] == ("empty", "oiled oak")
    assert lines[Heading.PRICE, "Total"] == ("$2,256.13", "$2,190.52 (\N{MINUS SIGN}$65.61)")
    assert lines[Heading.WORK, BUILDING] == ("10 h", "9.25 h")
    pieces = [len(plan_surround(job).boards) for job in (PLAIN, DEEP)]
    assert lines[Heading.BOARDS, "Pieces in all"] == tuple(str(count) for count in pieces)
    assert not any(name == "Columns: width" for _, name in lines)


def test_a_setting_of_the_site_is_common_and_never_listed():
    other = with_texts(PLAIN, [("opening.height", "27")])
    assert not any("Opening" in name for _, name in _lines(_compared(PLAIN), _compared(other)))


def test_findings_that_differ_are_counted():
    over = read_demo("too-close")
    within = replace(over, design=PLAIN.design)
    lines = _lines(_compared(over), _compared(within))
    counts = [sum(f.status == "fail" for f in _compared(job).findings) for job in (over, within)]
    assert lines[Heading.CHECKS, "Over"] == tuple(str(count) if count else NONE for count in counts)


def test_what_is_not_known_yet_is_said_and_compared_with_nothing():
    bare = replace(_compared(DEEP), estimate=None, price=None)
    lines = _lines(_compared(PLAIN, 100), bare)
    assert lines[Heading.PRICE, "Total"] == ("$1.00", WORKING)
    assert not any(heading in (Heading.WORK, Heading.BUYING) for heading, _ in lines)


def test_three_options_have_three_texts_each():
    options = (_compared(PLAIN, 100), _compared(DEEP, 200), _compared(PLAIN, 300))
    assert {len(texts) for texts in _lines(*options).values()} == {3}
    assert _lines(*options)[Heading.PRICE, "Total"] == ("$1.00", "$2.00 (+$1.00)", "$3.00 (+$2.00)")


@pytest.mark.parametrize(
    ("total", "base", "words"),
    [
        (None, 100, NO_PRICE),
        (100, None, "$1.00"),
        (100, 100, "$1.00"),
        (50, 100, "$0.50 (\N{MINUS SIGN}$0.50)"),
    ],
)
def test_a_price_is_said_with_how_much_more_it_is(total, base, words):
    price, first = (Price((), each, (), "$") for each in (total, base))
    assert say_price(price, first) == words
    assert say_price(None, first) == WORKING
    assert say_more(None, None) == ""
