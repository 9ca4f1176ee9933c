"""Stock lists through a spreadsheet and back, nothing in them run on the way."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from time import process_time

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from export.csv import FORMULA_STARTS
from export.stock_csv import read_stock_csv, write_stock_csv
from model.cutting.stock_file import MOST_ROWS
from model.cutting.stock_list import StockList
from model.errors import StockRefused
from tests.model.cutting.yard import on_hand, sold
from tests.write_stock_lists import build_example, build_usual

HEADING = "kind,wood,name,thickness,width,length,price"
LIST = StockList(
    (sold("1x4", 3.5, 96, 1240, limit=3, spare=1, heading="Boards"),), (on_hand(5.5, 61.25, 2, 1.5),)
)


def _cells(text: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text, newline="")))


@pytest.mark.parametrize("stock_list", [LIST, build_usual(), build_example(), StockList()])
def test_a_list_comes_back_from_its_table(stock_list: StockList):
    text = write_stock_csv(stock_list)
    assert read_stock_csv(text, replace(stock_list, sold=(), on_hand=())) == stock_list
    assert read_stock_csv(text.encode(), stock_list) == stock_list


def test_what_a_table_lacks_is_kept():
    base = StockList(currency="EUR", trim_end=1.25, spare=2)
    read = read_stock_csv(write_stock_csv(LIST), base)
    assert (read.currency, read.trim_end, read.spare) == ("EUR", 1.25, 2)


@example("'=1+1")
@example("''")
@given(st.text(st.characters(exclude_categories=("C", "Z")), min_size=1, max_size=20))
def test_no_name_is_run_and_every_name_comes_back(name: str):
    stock_list = StockList((sold(name, 3.5, 96, heading=name),))
    text = write_stock_csv(stock_list)
    for cells in _cells(text):
        assert not any(cell.startswith(FORMULA_STARTS) for cell in cells)
    assert read_stock_csv(text, StockList()) == stock_list


@pytest.mark.parametrize("start", ["=1+1", "+cmd", "-x", "@sum"])
def test_what_a_spreadsheet_would_run_is_refused(start: str):
    text = f'{HEADING}\nboard,poplar,"{start}",0.75,3.5,96,12.40\n'
    with pytest.raises(StockRefused, match=r"line 2, name .*a spreadsheet runs this"):
        read_stock_csv(text, StockList())


def test_columns_stand_in_any_order_with_semicolons_and_tape_text():
    heading = "\ufefflength;Width;thickness;wood;kind;price"
    text = f'{heading}\r\n"8\'";3 1/2;3/4;Yellow poplar;Boards;12.40\r\n;;;;;\r\n'
    (row,) = read_stock_csv(text, StockList()).sold
    assert row == sold("", 3.5, 96.0, 1240)


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("board,poplar,1x4,0.75,3.5,96,free", 'line 3, price "free": write what one costs'),
        ("board,poplar,1x4,0.75,3.5,96,0", 'line 3, price "0"'),
        ("board,poplar,1x4,0.75,3.5,,12", 'line 3 "length": is missing'),
        ("board,poplar,1x4,0.75,,96,12", "line 3, width 0.0: write a length above 0"),
        ("board,,1x4,0.75,3.5,96,12", 'line 3 "wood": is missing'),
        ("log,poplar,1x4,0.75,3.5,96,12", 'line 3, kind "log"'),
        ("board,poplar,1x4,0.75,3.5,96,12,extra", 'line 3 "extra": write 7 cells'),
        ("board,poplar,1x4,3/5/7,3.5,96,12", 'line 3, thickness "3/5/7"'),
    ],
)
def test_a_bad_line_is_named_with_its_field(line: str, words: str):
    good = "board,poplar,1x4,0.75,3.5,96,12.40"
    with pytest.raises(StockRefused) as refused:
        read_stock_csv(f"{HEADING}\n{good}\n{line}\n", StockList())
    (fault,) = refused.value.faults
    assert fault.startswith(words)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "no heading kind, wood"),
        ("kind,wood\n", "no heading thickness, width, length"),
        (f"{HEADING},colour\n", 'heading "colour"'),
        (f"{HEADING},lenght\n", "write length"),
        (f"{HEADING},price\n", "heading price: written twice"),
        (f'{HEADING}\n"board', "close every quotation mark"),
        (b"\xff\xfe\x00", "no text in UTF-8"),
        (HEADING + "\n" * (MOST_ROWS + 2), f"more than {MOST_ROWS} rows"),
        (f"row,{HEADING}\nstolen,board,poplar,1x4,0.75,3.5,96,1\n", 'row "stolen": write sold or on hand'),
        (
            f"row,{HEADING}\non hand,board,poplar,1x4,0.75,3.5,96,1\n",
            "leave it empty in a row of what is on hand",
        ),
    ],
)
def test_what_is_no_table_is_refused_in_words(text: str | bytes, words: str):
    with pytest.raises(StockRefused) as refused:
        read_stock_csv(text, StockList())
    assert any(words in fault for fault in refused.value.faults)


def test_a_table_of_far_too_many_columns_is_refused_soon_in_one_sentence():
    begun = process_time()
    with pytest.raises(StockRefused) as refusal:
        read_stock_csv(",".join(["kind"] * 100_000), StockList())
    (fault,) = refusal.value.faults
    assert fault.startswith("line 1: 100000 headings; a stock list has row, ")
    assert process_time() - begun < 5  # counted one by one it was minutes
