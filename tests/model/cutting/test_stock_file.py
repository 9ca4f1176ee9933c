"""Stock lists as files: they come back as they were kept, and what is wrong is named by row and field."""

from __future__ import annotations

import json
from contextlib import suppress
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.board import StockKind
from model.cutting.stock_fields import DEAREST
from model.cutting.stock_file import read_stock_list, write_stock_list
from model.cutting.stock_list import HEADINGS, HandRow, SoldRow, StockList
from model.errors import StockRefused

WORDS = st.text(st.characters(exclude_categories=("C", "Z")), max_size=20)
SIZES = st.floats(0.0625, 16)
LENGTHS = st.floats(1, 600)
KINDS = st.sampled_from(sorted(HEADINGS))
WOODS = st.sampled_from(("poplar", "white_oak", "framing", "plywood", "spruce"))
SOLD = st.builds(
    SoldRow,
    KINDS,
    WOODS,
    WORDS,
    SIZES,
    SIZES,
    LENGTHS,
    st.none() | st.integers(1, DEAREST * 100),
    st.none() | st.integers(0, 99999),
    st.just(""),
    WORDS,
    st.none() | st.integers(0, 999),
)
HAND = st.builds(
    HandRow,
    KINDS,
    WOODS,
    WORDS,
    SIZES,
    SIZES,
    LENGTHS,
    st.integers(0, 99),
    st.just(0.25),
    st.just(""),
    st.booleans(),
)
LISTS = st.builds(
    StockList,
    st.lists(SOLD, max_size=4).map(tuple),
    st.lists(HAND, max_size=3).map(tuple),
    WORDS,
    st.sampled_from(("$", "EUR", "")),
    st.floats(0, 12),
    st.floats(0, 12),
    st.floats(0, 600),
    st.integers(0, 999),
)
ROW = {"kind": "board", "wood": "poplar", "name": "1x4", "thickness": 0.75, "width": 3.5, "length": 96}


def _read(rows: list[Any], **common: Any) -> StockList:
    return read_stock_list(json.dumps({"yard": 1, "sold": rows, **common}))


@given(LISTS)
def test_any_list_comes_back_as_it_was_kept(stock_list: StockList):
    text = write_stock_list(stock_list)
    assert read_stock_list(text) == stock_list
    assert write_stock_list(read_stock_list(text)) == text


def test_a_row_stands_on_a_line_of_its_own():
    rows = tuple(SoldRow(StockKind.BOARD, "poplar", "1x4", 0.75, 3.5, 12.0 * i) for i in range(1, 9))
    lines = write_stock_list(StockList(rows)).splitlines()
    assert sum('"1x4"' in line for line in lines) == 8


def test_what_a_file_leaves_out_takes_its_default():
    (row,) = _read([ROW]).sold
    assert row == SoldRow(StockKind.BOARD, "poplar", "1x4", 0.75, 3.5, 96.0)
    assert read_stock_list('{"yard": 1}') == StockList()


@pytest.mark.parametrize(
    ("said", "kept"), [("Yellow poplar", "poplar"), ("WHITE OAK", "white_oak"), ("Spruce", "spruce")]
)
def test_a_wood_may_be_called_as_jobs_show_it(said: str, kept: str):
    assert _read([{**ROW, "wood": said}]).sold[0].wood == kept


@pytest.mark.parametrize(
    ("field", "value", "words"),
    [
        ("price", 0, "price 0: write what one costs, such as 12.40, or leave it empty"),
        ("price", -3, "price -3"),
        ("price", 1.005, "price 1.005"),
        ("price", "12", 'price "12"'),
        ("price", 1e12, "price 1000000000000.0"),
        ("limit", -1, "limit -1: write a whole number from 0"),
        ("limit", 2.5, "limit 2.5"),
        ("limit", True, "limit true"),
        ("length", 0, "length 0: write a length from 1"),
        ("length", 1e9, "length"),
        ("width", 0, "width 0.0: write a length above 0"),
        ("width", None, "width null"),
        ("thickness", "thick", 'thickness "thick"'),
        ("kind", "log", 'kind "log": write one of board, moulding, framing, panel'),
        ("kind", "standing", 'kind "standing"'),
        ("wood", "", 'wood "": write a wood'),
        ("name", "a\nb\x07", "name"),
        ("name", "x" * 81, "up to 80 characters"),
        ("section", "Cove", "only a moulding has a section"),
        ("spare", 1000, "spare 1000"),
        ("colour", "red", "colour: not known here"),
        ("lenght", 3, "lenght: not known here; did you mean length"),
    ],
)
def test_a_bad_value_is_named_by_row_and_field(field: str, value: Any, words: str):
    with pytest.raises(StockRefused) as refused:
        _read([ROW, {**ROW, field: value}])
    (fault,) = refused.value.faults
    assert fault.startswith("sold row 2, ")
    assert words in fault


def test_every_fault_is_told():
    with pytest.raises(StockRefused) as refused:
        _read([{**ROW, "price": 0}, 7, {**ROW, "width": -1, "limit": -1}], currency=5)
    assert len(refused.value.faults) == 5


def test_a_row_without_a_size_is_refused():
    with pytest.raises(StockRefused, match='sold row 1 "length": is missing'):
        _read([{name: value for name, value in ROW.items() if name != "length"}])


def test_ends_kept_clear_leave_something():
    hand = {**ROW, "count": 1, "clear": 48}
    with pytest.raises(StockRefused, match="less than half of the length"):
        _read([], on_hand=[hand])


def test_only_a_moulding_may_be_run_to_any_size():
    rows = [{**ROW, "kind": "moulding", "thickness": 0, "width": 0}]
    assert _read(rows).sold[0].width == 0
    with pytest.raises(StockRefused, match="above 0"):
        _read([], on_hand=[{**rows[0], "count": 1}])


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "not a stock list"),
        ("[]", 'no "yard" version'),
        ('{"sold": []}', 'no "yard" version'),
        ('{"yard": 3}', "written by a newer program"),
        ('{"yard": "1"}', "write a whole version number"),
        ('{"yard": 1, "sold": {}}', "write a list"),
        ('{"yard": 1, "yard": 1}', "yard: written twice"),
        ('{"yard": 1, "trim": 3}', "trim: not known here"),
        ('{"yard": 1, "keep": -1}', "length worth keeping -1"),
        ('{"mantelwright": 1}', 'no "yard" version'),
    ],
)
def test_what_is_no_list_is_refused_in_words(text: str, words: str):
    with pytest.raises(StockRefused) as refused:
        read_stock_list(text)
    assert any(words in fault for fault in refused.value.faults)


@given(
    st.recursive(
        st.none() | st.booleans() | st.floats() | st.text(max_size=5),
        lambda inner: (
            st.lists(inner, max_size=3)
            | st.dictionaries(st.sampled_from(("sold", "on_hand", "kind", "length", "x")), inner, max_size=3)
        ),
    )
)
def test_nothing_in_a_file_makes_it_crash(value: Any):
    with suppress(StockRefused):
        read_stock_list(json.dumps({"yard": 1, "sold": value, "on_hand": [value]}))


def test_supplies_with_a_price_come_back_and_a_list_without_is_written_as_before():
    assert '"yard": 1' in write_stock_list(StockList())
    assert "supplies" not in write_stock_list(StockList())
    priced = tuple(
        replace(each, price=1250, pack=2.5, whole=False) if each.name == "Primer" else each
        for each in StockList().supplies
    )
    text = write_stock_list(StockList(supplies=priced))
    assert '"yard": 2' in text
    assert read_stock_list(text) == StockList(supplies=priced)
    assert write_stock_list(read_stock_list(text)) == text


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ({"name": "Tar"}, "supplies row 1, name"),
        ({}, "supplies row 1, name"),
        ({"name": "Primer", "pack": 0}, "supplies row 1, in a pack 0: write a number from 0.001"),
        ({"name": "Primer", "price": -2}, "supplies row 1, price"),
        ({"name": "Primer", "whole": 1}, "supplies row 1, whole packs"),
        ({"name": "Primer", "tint": 1}, "supplies row 1, tint: not known here"),
    ],
)
def test_a_supply_that_cannot_be_is_refused_by_its_row(row, words: str):
    with pytest.raises(StockRefused) as refused:
        read_stock_list(json.dumps({"yard": 2, "supplies": [row]}))
    assert any(words in fault for fault in refused.value.faults), refused.value.faults


def test_a_supply_that_stands_twice_is_refused():
    with pytest.raises(StockRefused, match="Primer stands twice"):
        read_stock_list(json.dumps({"yard": 2, "supplies": [{"name": "Primer"}, {"name": "Primer"}]}))


def test_a_currency_is_an_example_or_a_symbol():
    assert read_stock_list('{"yard": 1, "currency": "1.234,50 €"}').currency == "1.234,50 €"
    with pytest.raises(StockRefused, match="currency"):
        read_stock_list('{"yard": 1, "currency": "1,2,3"}')
