"""Stock lists from disk and from what is shipped, by name; what is in them is model.cutting's business."""

from __future__ import annotations

import os
from importlib.resources import files
from pathlib import Path

from app.files import FileTrouble, read_bytes, save_bytes
from model.cutting.stock_file import read_stock_list, write_stock_list
from model.cutting.stock_list import StockList
from model.errors import Refused, StockRefused

USUAL, EXAMPLE = "usual", "example"
"""The shipped lists: sizes commonly sold, without prices; what the shipped jobs need, at invented ones."""
SUFFIX, TABLE_SUFFIX = ".yard", ".csv"
LARGEST = 8_000_000
"""Bytes; a long list is a tenth of it, so anything beyond this is some other file."""


def read_shipped_list(name: str = USUAL) -> StockList:
    """The shipped list called USUAL or EXAMPLE."""
    return read_stock_list(files("assets").joinpath("stock", f"{name}{SUFFIX}").read_bytes())


def read_stock_named(name: str, base: StockList | None = None) -> StockList:
    """The list in the file called `name`, a table if it ends in .csv, or else the shipped one.

    A table takes what is common to its rows from `base`. Raises StockRefused for whatever is wrong,
    a file that cannot be opened included.
    """
    path = Path(name)
    if name in (USUAL, EXAMPLE) and not os.path.isfile(path):
        return read_shipped_list(name)
    try:
        data = read_bytes(path, LARGEST, "it is too large to be a stock list")
        if path.suffix.lower() != TABLE_SUFFIX:
            return read_stock_list(data)
        from export.stock_csv import read_stock_csv

        return read_stock_csv(data, base or StockList())
    except FileTrouble as trouble:
        raise StockRefused((str(trouble),)) from trouble
    except StockRefused as refusal:
        raise StockRefused(tuple(f"{path}: {fault}" for fault in refusal.faults)) from None


def save_stock_list(path: Path, stock_list: StockList) -> None:
    """Write `stock_list` to `path` as a list or a table, by its ending. Raises Refused or FileTrouble."""
    match path.suffix.lower():
        case ".yard":
            save_bytes(path, write_stock_list(stock_list).encode())
        case ".csv":
            from export.stock_csv import write_stock_csv

            save_bytes(path, write_stock_csv(stock_list).encode())
        case _:
            raise Refused("file", str(path), f"write a name that ends in {SUFFIX} or {TABLE_SUFFIX}")
