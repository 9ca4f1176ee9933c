"""Which rows serve which material."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.board import StockKind
from model.cutting.pieces import Material
from model.cutting.serving import Serving
from model.cutting.stock_list import SoldRow, StockList
from tests.model.cutting.yard import POPLAR, on_hand, sold

COVE = Material(StockKind.MOULDING, "poplar", 1.5, "Cove and fillets", 1.5)


def _serving(*rows: SoldRow) -> Serving:
    return Serving(StockList(rows))


@pytest.mark.parametrize(
    ("measured", "served"), [(0.75, True), (0.748, True), (0.78125, True), (0.8, False), (0.71, False)]
)
def test_a_thickness_as_measured_is_served_within_a_thirtysecond(measured: float, served: bool):
    serving = _serving(sold("1x4", 3.5, 96))
    material = replace(POPLAR, thickness=measured)
    assert bool(serving.keys_for(material)) is served


def test_jobs_in_inches_and_in_millimetres_ask_for_one_material():
    serving = _serving(sold("1x4", 3.5, 96))
    assert serving.listed(replace(POPLAR, thickness=19 / 25.4)) == serving.listed(POPLAR) == POPLAR


def test_a_thin_board_is_planed_from_the_next_thicker_and_no_thick_one_from_a_thin():
    serving = _serving(sold("1x4", 3.5, 96), replace(sold("5/4x4", 3.5, 96), thickness=1.0))
    assert serving.listed(replace(POPLAR, thickness=0.5)).thickness == 0.75
    assert serving.listed(replace(POPLAR, thickness=0.9)).thickness == 1.0
    assert serving.keys_for(serving.listed(replace(POPLAR, thickness=2.0))) == ()


def test_another_wood_does_not_serve():
    assert _serving(sold("1x4", 3.5, 96, wood="maple")).keys_for(POPLAR) == ()


def test_a_moulding_run_to_order_serves_any_section_and_size():
    serving = _serving(SoldRow(StockKind.MOULDING, "poplar", "to order", 0.0, 0.0, 96))
    assert serving.keys_for(serving.listed(COVE)) == ("s1",)


@pytest.mark.parametrize(
    ("section", "size", "served"),
    [
        ("Cove and fillets", 1.5, True),
        ("cove and fillets", 1.5, True),
        ("Three steps", 1.5, False),
        ("Cove and fillets", 1.75, False),
    ],
)
def test_a_moulding_sold_by_section_serves_that_section_in_that_size(section: str, size: float, served: bool):
    row = SoldRow(StockKind.MOULDING, "poplar", "cove", size, size, 96, section=section)
    assert bool(_serving(row).keys_for(COVE)) is served


def test_the_widest_is_that_of_what_is_sold_and_what_lies_there():
    serving = Serving(StockList((sold("1x4", 3.5, 96),), (on_hand(9.25, 40),)))
    assert serving.widest(POPLAR) == 9.25
    assert serving.widest(replace(POPLAR, wood="maple")) == 0.0
