"""The buying list, against sums done by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.board import StockKind
from model.cutting.buying import BuyingList, describe_line, face_of, list_buying
from model.cutting.pieces import Material
from model.cutting.plan import plan_order
from model.cutting.stock_list import SoldRow
from model.cutting.task import Wanted
from model.money import format_money
from model.units import FEET_INCHES_16
from tests.model.cutting.yard import on_hand, order_of, piece, sold


def _buy(pieces, *rows, **common) -> BuyingList:
    return list_buying(plan_order(order_of(pieces, *rows, **common)))


def test_three_lengths_to_a_board_waste_what_the_blade_and_the_end_take():
    """Three of 31 7/8 in. make 95 5/8 of 96 in.: 3/8 in. is lost, 0.39 % of 10.00, which is 4 hundredths."""
    buying = _buy([piece(f"A{i}", 31.875) for i in range(6)], sold("1x4", 3.5, 96, 1000))
    (line,) = buying.lines
    assert (line.count, line.price, line.cost, len(line.sources)) == (2, 1000, 2000, 6)
    assert line.waste == pytest.approx(0.375 / 96)
    assert line.waste_cost == 8
    assert buying.total == buying.cost == 2000


def test_an_offcut_worth_keeping_is_not_wasted():
    """60 in. of 96 leave 35 7/8 after an eighth of blade: an eighth of 96 in. is lost, 0.13 %."""
    (line,) = _buy([piece("A1", 60)], sold("1x4", 3.5, 96, 1000)).lines
    assert line.waste == pytest.approx(0.125 / 96)
    (line,) = _buy([piece("A1", 60)], sold("1x4", 3.5, 96, 1000), keep=36.0).lines
    assert line.waste == pytest.approx(36 / 96)
    assert line.waste_cost == 375


def test_what_is_ripped_off_is_wasted_by_area():
    """Two of 90 by 2 1/2 in. out of 96 by 5 1/2: 450 of 528 sq in.; the rest of 6 in. and 3/8 in. is lost."""
    (line,) = _buy([piece("A1", 90, 2.5), piece("A2", 90, 2.5)], sold("1x6", 5.5, 96, 1000)).lines
    assert line.count == 1
    assert line.waste == pytest.approx(1 - 450 / 528)
    assert line.waste_cost == round(1000 * (78 / 528))


@pytest.mark.parametrize(
    ("spare", "own", "limit", "over"),
    [
        (0, None, None, 0),
        (2, None, None, 2),
        (2, 0, None, 0),
        (0, 3, None, 3),
        (2, None, 3, 1),
        (2, None, 2, 0),
    ],
)
def test_spare_boards_are_whole_and_no_more_than_there_are(
    spare: int, own: int | None, limit: int | None, over: int
):
    """Four of 40 in. take two boards of 96 in. at 10.00 each."""
    row = sold("1x4", 3.5, 96, 1000, spare=own, limit=limit)
    buying = _buy([piece(f"A{i}", 40) for i in range(4)], row, spare=spare)
    (line,) = buying.lines
    assert (line.count, line.spare) == (2, over)
    assert (buying.cost, buying.spare_cost, buying.total) == (2000, over * 1000, 2000 + over * 1000)


def test_totals_stand_under_their_headings_and_add_up():
    framing = Material(StockKind.FRAMING, "framing", 1.5)
    rows = (
        sold("1x4", 3.5, 96, 1000),
        sold("1x6", 5.5, 96, 1700, heading="Wide boards"),
        sold("2x4", 3.5, 96, 450, kind=StockKind.FRAMING, wood="framing", thickness=1.5),
    )
    pieces = [piece("A1", 90), piece("A2", 90, 5.5), piece("N1", 90, material=framing)]
    buying = _buy(pieces, *rows, spare=1)
    found = {total.heading: (total.count, total.cost, total.missing) for total in buying.totals}
    assert found == {"Boards": (2, 2000, 0), "Wide boards": (2, 3400, 0), "Framing": (2, 900, 0)}
    assert sum(total.cost for total in buying.totals) == buying.total == 6300


def test_a_missing_price_is_missing_and_adds_nothing():
    buying = _buy(
        [piece("A1", 90), piece("A2", 90, 9)], sold("1x4", 3.5, 96, 1000), sold("1x12", 11.25, 96), spare=1
    )
    (missing,) = buying.missing
    assert missing.row.name == "1x12"
    assert missing.price is missing.cost is missing.spare_cost is missing.waste_cost is None
    assert buying.total == 2000
    assert [total.missing for total in buying.totals] == [1]


def test_what_lies_there_is_used_and_not_bought():
    buying = _buy([piece("A1", 60)], on_hand(3.5, 70), sold("1x4", 3.5, 96, 1000), spare=1)
    assert buying.lines == ()
    (used,) = buying.used
    assert (used.count, used.spare, used.cost) == (1, 0, 0)
    assert buying.total == 0


def test_a_moulding_run_to_order_is_asked_for_by_section_and_size():
    material = Material(StockKind.MOULDING, "poplar", 1.5, "Cove and fillets", 2.0)
    row = SoldRow(StockKind.MOULDING, "poplar", "to order", 0.0, 0.0, 96, 2000)
    (line,) = _buy([piece("M1", 60, 2.0, material=material)], row).lines
    words = describe_line(line, FEET_INCHES_16)
    assert words == 'to order, cove and fillets 1 1/2" x 2", yellow poplar, 8\'-0"'


def test_a_mitre_takes_its_triangle_off_the_face():
    square = Wanted("1", 640, 128)
    assert face_of(square) == 640 * 128
    assert face_of(replace(square, mitre_low=128, mitre_high=128)) == 640 * 128 - 128 * 128


@pytest.mark.parametrize(
    ("amount", "currency", "text"),
    [(1240, "$", "$12.40"), (1240, "EUR", "12.40 EUR"), (123456789, "$", "$1,234,567.89"), (5, "", "0.05")],
)
def test_money_is_written_with_its_currency(amount: int, currency: str, text: str):
    assert format_money(amount, currency) == text
