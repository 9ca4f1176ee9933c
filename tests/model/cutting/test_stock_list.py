"""What rows are called, and the lists that are shipped."""

from __future__ import annotations

from importlib.resources import files

import pytest

from model.board import StockKind
from model.cutting.stock_file import read_stock_list, write_stock_list
from model.cutting.stock_list import SoldRow, StockList, describe_row, wood_name
from model.parameters import SPECIES
from model.units import FEET_INCHES_16
from tests.model.cutting.yard import on_hand, sold
from tests.write_stock_lists import build_example, build_usual

SHIPPED = {"usual": build_usual(), "example": build_example()}


def test_a_board_is_asked_for_by_name_wood_and_length():
    assert describe_row(sold("1x4", 3.5, 96), FEET_INCHES_16) == "1x4 yellow poplar, 8'-0\""
    assert describe_row(on_hand(3.5, 40), FEET_INCHES_16) == "left over yellow poplar, 3'-4\""


def test_a_sheets_width_comes_before_its_length():
    sheet = SoldRow(StockKind.PANEL, "plywood", "1/4 in.", 0.25, 48, 96)
    assert describe_row(sheet, FEET_INCHES_16) == "1/4 in. plywood, 4'-0\" x 8'-0\""


def test_a_word_is_not_said_twice():
    assert (
        describe_row(SoldRow(StockKind.FRAMING, "framing", "framing", 1.5, 3.5, 96), FEET_INCHES_16)
        == "framing, 8'-0\""
    )


def test_woods_are_called_as_in_a_job():
    assert (wood_name("white_oak"), wood_name("spruce_pine")) == ("white oak", "spruce pine")


@pytest.mark.parametrize("name", SHIPPED)
def test_a_shipped_file_is_what_its_sizes_would_write(name: str):
    text = files("assets").joinpath("stock", f"{name}.yard").read_text("utf-8")
    assert read_stock_list(text) == SHIPPED[name]
    assert write_stock_list(SHIPPED[name]) == text


def test_the_usual_list_has_no_price_and_every_wood_of_a_job():
    usual = SHIPPED["usual"]
    assert all(row.price is None for row in usual.sold)
    for kind in (StockKind.BOARD, StockKind.MOULDING):
        assert {row.wood for row in usual.sold if row.kind is kind} == set(SPECIES)


def test_the_example_says_that_its_prices_are_invented_and_has_them_all():
    example = SHIPPED["example"]
    assert "invented" in example.name
    assert all(row.price for row in example.sold)


@pytest.mark.parametrize("name", SHIPPED)
def test_longer_and_wider_costs_more(name: str):
    by_size: dict[tuple[object, ...], list[SoldRow]] = {}
    for row in SHIPPED[name].sold:
        by_size.setdefault((row.kind, row.wood, row.name, row.width), []).append(row)
    for rows in by_size.values():
        lengths = [row.length for row in rows]
        assert lengths == sorted(set(lengths))
        prices = [row.price for row in rows if row.price is not None]
        assert prices == sorted(set(prices))


def test_an_empty_list_has_nothing():
    assert StockList().sold == StockList().on_hand == ()
