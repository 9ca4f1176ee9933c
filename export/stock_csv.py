"""A stock list's rows as comma-separated text, and back; what fields may hold is model.cutting's business.

What is common to all rows (currency, trim, spare boards) and supplies are not in it.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches
from typing import Any

from export.csv import FORMULA_STARTS, write_table
from model.cutting.stock_fields import (
    HAND_FIELDS,
    SOLD_FIELDS,
    Field,
    Holds,
    build_hand,
    build_sold,
)
from model.cutting.stock_file import MOST_ROWS
from model.cutting.stock_list import HandRow, SoldRow, StockList
from model.errors import Refused, StockRefused
from model.money import HUNDREDTHS
from model.units import INCHES_16

QUOTED = (*FORMULA_STARTS, "'")
"""What gets a sign before it that keeps a spreadsheet from running it, that sign itself included."""
WHICH = "row"
SOLD, ON_HAND = "sold", "on hand"
FIELDS: Mapping[str, Field] = {field.name: field for field in (*SOLD_FIELDS, *HAND_FIELDS)}
NAMES = (WHICH, *FIELDS)
"""The columns, by their headings; lengths are in decimal inches, money in the list's currency."""
OF_ROW = {
    SOLD: {field.name for field in SOLD_FIELDS},
    ON_HAND: {field.name for field in HAND_FIELDS},
}
MOST_HEADINGS = 100
"""Far more than there are; a table of more is another file."""
ENOUGH = ("kind", "wood", "thickness", "width", "length")
"""Columns without which no row can be read."""


def write_stock_csv(stock_list: StockList) -> str:
    """The rows of `stock_list` as RFC 4180 text, a heading first; a spreadsheet runs nothing in it."""
    rows = [_list_cells(SOLD, row) for row in stock_list.sold]
    rows += [_list_cells(ON_HAND, row) for row in stock_list.on_hand]
    return write_table(NAMES, rows)


def _list_cells(which: str, row: SoldRow | HandRow) -> list[str]:
    values = [getattr(row, name) if name in OF_ROW[which] else None for name in FIELDS]
    return [which, *(_cell(FIELDS[name], value) for name, value in zip(FIELDS, values, strict=True))]


def _cell(field: Field, value: Any) -> str:
    if value is None:
        return ""
    if field.holds is Holds.LENGTH:
        return f"{value:.9f}".rstrip("0").rstrip(".")
    if field.holds is Holds.MONEY:
        return f"{value / HUNDREDTHS:.2f}"
    if field.holds is Holds.YES_NO:
        return "yes" if value else "no"
    text = str(value)
    return f"'{text}" if text.startswith(QUOTED) else text


def read_stock_csv(text: str | bytes, base: StockList) -> StockList:
    """`base` with the rows that `text` holds in place of its own. Raises StockRefused, line by line.

    Columns stand in any order below their headings; commas or semicolons part them. Lengths may be
    written as on a tape.
    """
    lines = _read_lines(text)
    _, heading = next(lines, (1, []))
    names = [_plain_heading(cell) for cell in heading]
    faults = _list_heading_faults(names)
    sold: list[SoldRow] = []
    hand: list[HandRow] = []
    for number, cells in lines if not faults else ():
        try:
            row = _read_row(f"line {number}", names, cells)
        except Refused as refusal:
            faults.append(str(refusal))
            continue
        (sold if isinstance(row, SoldRow) else hand).append(row)  # type: ignore[arg-type]
    if faults:
        raise StockRefused(tuple(faults))
    return replace(base, sold=tuple(sold), on_hand=tuple(hand))


def _read_lines(text: str | bytes) -> Iterator[tuple[int, list[str]]]:
    """The number of each line that says something, and its cells. Raises StockRefused."""
    try:
        plain = text if isinstance(text, str) else text.decode("utf-8")
    except UnicodeError:
        raise StockRefused(("not a table: its bytes are no text in UTF-8, which is wanted",)) from None
    plain = plain.removeprefix("\ufeff")
    first = plain.split("\n", 1)[0]
    reader = csv.reader(io.StringIO(plain, newline=""), delimiter=";" if ";" in first else ",", strict=True)
    try:
        for count, cells in enumerate(reader):
            if count > MOST_ROWS:
                raise StockRefused((f"not a stock list: it has more than {MOST_ROWS} rows",))
            if any(cell.strip() for cell in cells):
                yield reader.line_num, cells
    except csv.Error as fault:
        raise StockRefused(
            (f"line {reader.line_num}: no comma-separated text ({fault}); close every quotation mark",)
        ) from None


def _plain_heading(cell: str) -> str:
    return "_".join(cell.strip().lower().split())


def _list_heading_faults(names: Sequence[str]) -> list[str]:
    if len(names) > MOST_HEADINGS:
        return [f"line 1: {len(names)} headings; a stock list has {', '.join(NAMES)}"]
    faults = []
    for name in names:
        if name not in NAMES:
            near = get_close_matches(name, NAMES, n=1)
            hint = f"write {near[0]}" if near else f"write one of {', '.join(NAMES)}"
            faults.append(str(Refused("line 1, heading", name, hint)))
        elif names.count(name) > 1:
            faults.append(f"line 1, heading {name}: written twice; keep one of them")
    missing = [name for name in ENOUGH if name not in names]
    if missing:
        faults.append(f"line 1: no heading {', '.join(missing)}; a stock list has {', '.join(NAMES)}")
    return list(dict.fromkeys(faults))


def _read_row(where: str, names: Sequence[str], cells: Sequence[str]) -> SoldRow | HandRow:
    """One row. Raises Refused."""
    if len(cells) > len(names) and any(cell.strip() for cell in cells[len(names) :]):
        raise Refused(where, cells[len(names)], f"write {len(names)} cells, as the heading has")
    texts = {name: cell.strip() for name, cell in zip(names, cells, strict=False)}
    which = " ".join(texts.pop(WHICH, SOLD).lower().replace("_", " ").split()) or SOLD
    if which not in OF_ROW:
        raise Refused(f"{where}, {WHICH}", which, f"write {SOLD} or {ON_HAND}")
    values = {}
    for name, text in texts.items():
        if not text:
            continue
        if name not in OF_ROW[which]:
            raise Refused(f"{where}, {name}", text, f"leave it empty in a row of what is {which}")
        values[name] = FIELDS[name].parse(_without_quote(text, FIELDS[name], where), where, INCHES_16)
    sizes = {name: 0.0 for name in ("thickness", "width") if name not in values}
    build = build_sold if which == SOLD else build_hand
    return build({**sizes, **values}, where)


def _without_quote(text: str, field: Field, where: str) -> str:
    """`text` without the sign that keeps a spreadsheet from running it; what it would run is refused."""
    if text.startswith("'") and text[1:].startswith(QUOTED):
        return text[1:]
    if field.holds is Holds.WORD and text.startswith(FORMULA_STARTS):
        raise Refused(
            f"{where}, {field.label}", text, "begin with a letter or a figure: a spreadsheet runs this"
        )
    return text
