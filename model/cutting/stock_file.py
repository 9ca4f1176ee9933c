"""A stock list to and from JSON text. The disk is app's; which values are allowed is stock_fields' business.

The text is one object: its version, what is common to all rows, the rows of what is sold and of what lies
there, and those supplies that are not in usual packs without prices.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from difflib import get_close_matches
from typing import Any, TypeVar

from model.cutting.stock_fields import (
    HAND_FIELDS,
    LIST_FIELDS,
    SOLD_FIELDS,
    SUPPLY_FIELDS,
    Field,
    Holds,
    build_hand,
    build_sold,
    build_supply,
)
from model.cutting.stock_list import HandRow, SoldRow, StockList
from model.cutting.supplies import USUAL_SUPPLIES, Supply
from model.errors import LONGEST_SHOWN, MOST_FAULTS, Refused, StockRefused
from model.json_object import Unread, check_version, read_object
from model.money import HUNDREDTHS

FORMAT_KEY = "yard"
FORMAT_VERSION = 2
"""The newest that is read."""
NO_SUPPLIES = 1
"""The version of a file that says nothing of supplies: they are in usual packs without prices."""
EXAMPLE = '{"yard": 1, "sold": [], "on_hand": []}'
SUPPLIES = "supplies"
MOST_ROWS = 20_000
Row = TypeVar("Row", SoldRow, HandRow, Supply)


def write_stock_list(stock_list: StockList) -> str:
    """JSON text of `stock_list`, a row to a line; `read_stock_list` gives the same list back."""
    own = [supply for supply in stock_list.supplies if supply not in USUAL_SUPPLIES]
    version = FORMAT_VERSION if own else NO_SUPPLIES
    head = {FORMAT_KEY: version, **_stored(LIST_FIELDS, stock_list, {})}
    sold = [_line(_stored(SOLD_FIELDS, row, _SOLD_DEFAULTS)) for row in stock_list.sold]
    hand = [_line(_stored(HAND_FIELDS, row, _HAND_DEFAULTS)) for row in stock_list.on_hand]
    lines = [f" {_line(name)}: {_line(value)}," for name, value in head.items()]
    lists = ",\n".join(_lines(name, rows) for name, rows in (("sold", sold), ("on_hand", hand)))
    if own:
        lists += ",\n" + _lines(SUPPLIES, [_line(_stored(SUPPLY_FIELDS, each, {})) for each in own])
    return "\n".join(["{", *lines, lists, "}", ""])


def _line(value: object) -> str:
    import msgspec

    return msgspec.json.format(msgspec.json.encode(value), indent=0).decode()


def _lines(name: str, rows: Sequence[str]) -> str:
    inside = ",\n".join(f"  {row}" for row in rows)
    return f' "{name}": [\n{inside}\n ]' if rows else f' "{name}": []'


_SOLD_DEFAULTS = {"heading": "", "limit": None, "section": "", "spare": None}
_HAND_DEFAULTS = {"clear": 0.0, "section": "", "bought": False}


def _stored(fields: Sequence[Field], record: object, defaults: dict[str, Any]) -> dict[str, Any]:
    """The fields of a record as a file holds them, without those at a default that goes without saying."""
    held = {}
    for field in fields:
        value = getattr(record, field.name)
        if field.name in defaults and value == defaults[field.name]:
            continue
        held[field.name] = value / HUNDREDTHS if field.holds is Holds.MONEY and value is not None else value
    return held


def read_stock_list(text: str | bytes) -> StockList:
    """The list that `text` holds. Raises StockRefused naming every fault by its row and field."""
    try:
        data = read_object(text, FORMAT_KEY, "a stock list", EXAMPLE)
        check_version(data.pop(FORMAT_KEY), FORMAT_KEY, FORMAT_VERSION)
    except Unread as trouble:
        raise StockRefused(trouble.faults) from None
    faults: list[str] = []
    sold = _read_rows(data.pop("sold", []), "sold", SOLD_FIELDS, build_sold, faults)
    hand = _read_rows(data.pop("on_hand", []), "on_hand", HAND_FIELDS, build_hand, faults)
    supplies = _read_rows(data.pop(SUPPLIES, []), SUPPLIES, SUPPLY_FIELDS, build_supply, faults)
    common = _read_fields(data, LIST_FIELDS, "", faults)
    names = [supply.name for supply in supplies]
    faults += [f"{SUPPLIES}: {name} stands twice" for name, count in Counter(names).items() if count > 1]
    if faults:
        raise StockRefused(tuple(faults))
    own = {supply.name: supply for supply in supplies}
    every = tuple(own.get(usual.name, usual) for usual in USUAL_SUPPLIES)
    return StockList(sold=sold, on_hand=hand, supplies=every, **common)


def _read_rows(
    rows: object,
    name: str,
    fields: Sequence[Field],
    build: Callable[[dict[str, Any], str], Row],
    faults: list[str],
) -> tuple[Row, ...]:
    if not isinstance(rows, list) or len(rows) > MOST_ROWS:
        faults.append(str(Refused(name, rows, f"write a list of at most {MOST_ROWS} rows")))
        return ()
    read = []
    for number, row in enumerate(rows, start=1):
        where = f"{name} row {number}"
        if not isinstance(row, dict):
            faults.append(str(Refused(where, row, 'write an object of fields, such as {"kind": "board"}')))
            continue
        before = len(faults)
        values = _read_fields(row, fields, where, faults)
        try:
            if len(faults) == before:
                read.append(build(values, where))
        except Refused as refusal:
            faults.append(str(refusal))
    return tuple(read)


def _read_fields(
    held: dict[str, Any], fields: Sequence[Field], where: str, faults: list[str]
) -> dict[str, Any]:
    """Checked values by field; what is wrong goes to `faults`."""
    known = {field.name: field for field in fields}
    values = {}
    for name, value in held.items():
        if name not in known:
            near = get_close_matches(name, known, n=1) if len(faults) < MOST_FAULTS else []
            hint = f"; did you mean {near[0]}" if near else ""
            faults.append(f"{where}{', ' if where else ''}{name[:LONGEST_SHOWN]}: not known here{hint}")
            continue
        try:
            values[name] = known[name].check(value, where)
        except Refused as refusal:
            faults.append(str(refusal))
    return values
