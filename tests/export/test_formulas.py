"""No cell of any table written for a spreadsheet can run, whatever things are called."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import replace

import pytest

from app.demo import read_demo
from app.outputs import PARTS, build_outputs
from app.stock_lists import EXAMPLE, read_shipped_list
from export.csv import write_table
from export.stock_csv import write_stock_csv
from model.cutting.stock_list import StockList

RISKY = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
"""OWASP, "CSV Injection": what a cell must not begin with, the wide forms included."""
EVIL = (
    "=HYPERLINK(1)",
    "+1+cmd|' /C calc'!A0",
    "-2+3",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "\uff1d1+1",
    " =1+1",
    "\u00a0+1",
)


def _check(text: str):
    rows = list(csv.reader(io.StringIO(text, newline="")))
    assert len(rows) > 1
    for cell in (cell for row in rows for cell in row):
        seen = cell if cell.startswith(RISKY) else cell.strip(" \u00a0\u200b\ufeff")
        assert not seen.startswith(RISKY) or re.fullmatch(r"-?\d+(\.\d+)?", cell), cell


def _evil_list(word: str) -> StockList:
    stock = read_shipped_list(EXAMPLE)
    return replace(stock, name=word, sold=tuple(replace(row, name=word) for row in stock.sold))


@pytest.mark.parametrize("word", EVIL)
def test_every_table_of_a_job_is_only_read(word: str):
    job = read_demo("bedroom")
    job = replace(job, about=replace(job.about, name=word, client=word, maker=word, notes=word))
    tables = [part for part in PARTS if part not in ("packet", "drawing")]
    for output in build_outputs(job, "letter", "2026-01-01", tuple(tables), stock=_evil_list(word)):
        if output.name.endswith(".csv"):
            _check(output.data.decode())


@pytest.mark.parametrize("word", EVIL)
def test_a_stock_list_is_only_read(word: str):
    _check(write_stock_csv(_evil_list(word)))


def test_numbers_stay_numbers_and_words_are_quoted():
    text = write_table(("a", "b", "c"), [("-1.5", -2, "-1.5 or so"), ("=1", 3, "1+1")])
    assert text.splitlines()[1:] == ["-1.5,-2,'-1.5 or so", "'=1,3,1+1"]
