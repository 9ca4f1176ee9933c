"""Writes the shipped stock lists anew from the sizes in model.reference.lumber; not a test.

The usual list has no prices. The example's prices are invented here, by a rule of thumb that is invented too.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from model.board import StockKind
from model.cutting.stock_file import write_stock_list
from model.cutting.stock_list import INVENTED, HandRow, SoldRow, StockList
from model.cutting.supplies import ANCHORS, USUAL_SUPPLIES
from model.parameters import SPECIES
from model.reference.lumber import (
    BOARD_LENGTHS,
    DRESSED_THICKNESSES,
    DRESSED_WIDTHS,
    FRAMING_LENGTHS,
    HARDWOOD_WIDTHS,
    MOULDING_LENGTHS,
    PANEL_THICKNESSES,
    SHEETS,
    STRIP_LENGTHS,
)

FOLDER = Path(__file__).resolve().parents[1] / "assets" / "stock"
SOFTWOODS = ("white_pine", "ponderosa")
NAILER_WIDTHS = (2, 3, 4, 6, 8)
BOARD_FOOT = {"poplar": 480, "white_pine": 390, "white_oak": 1120, "framing": 110}
"""Invented: hundredths for a board foot of what the shipped jobs are made of."""
MOULDED = 2.2
"""Invented: how many times dearer a foot of moulding is than the strip it is run from."""
SUPPLIES = {
    "Wood glue": 950,
    "Finish nails": 720,
    "Brads": 640,
    "Pocket screws": 890,
    "Wood screws": 780,
    ANCHORS: 1150,
    "Hook-and-loop tape": 1480,
    "Wood filler": 1290,
    "Abrasive": 860,
    "Primer": 1750,
    "Stain": 1320,
    "Sealer": 1640,
    "Caulk": 590,
    "Top coat": 2380,
    "Clear coat": 2150,
}
"""Invented: hundredths for a usual pack."""
SHEET_FOOT = 165
"""Invented: hundredths for a square foot of thin plywood; a part sheet costs a quarter more by the foot."""


def build_usual() -> StockList:
    """Sizes really sold, without prices."""
    rows = [*_boards(), *_mouldings(), *_framing(), *_panels()]
    return StockList(tuple(rows), name="Sizes commonly sold; no prices")


def _boards() -> Iterator[SoldRow]:
    for wood in SPECIES:
        widths = DRESSED_WIDTHS if wood in SOFTWOODS else HARDWOOD_WIDTHS
        for nominal, width in widths.items():
            if nominal != 5:
                for length in BOARD_LENGTHS:
                    yield SoldRow(StockKind.BOARD, wood, f"1x{nominal}", 0.75, width, length)
    for wood in SOFTWOODS:
        for nominal in (4, 6, 8, 10, 12):
            for length in BOARD_LENGTHS[1:]:
                thick, width = DRESSED_THICKNESSES["5/4"], DRESSED_WIDTHS[nominal]
                yield SoldRow(StockKind.BOARD, wood, f"5/4x{nominal}", thick, width, length)


def _mouldings() -> Iterator[SoldRow]:
    for wood in SPECIES:
        for length in MOULDING_LENGTHS:
            yield SoldRow(StockKind.MOULDING, wood, "moulding run to order", 0.0, 0.0, length)


def _framing() -> Iterator[SoldRow]:
    for nominal, lengths in (("1", STRIP_LENGTHS), ("2", FRAMING_LENGTHS)):
        for width in NAILER_WIDTHS:
            for length in lengths:
                name = f"{nominal}x{width}"
                thick = DRESSED_THICKNESSES[nominal]
                yield SoldRow(StockKind.FRAMING, "framing", name, thick, DRESSED_WIDTHS[width], length)


def _panels() -> Iterator[SoldRow]:
    for name, thickness in PANEL_THICKNESSES.items():
        for length, width in SHEETS:
            yield SoldRow(StockKind.PANEL, "plywood", f"{name} in.", thickness, width, length)


def build_example() -> StockList:
    """The usual sizes of what the shipped jobs need, with invented prices and invented left-overs."""
    rows = tuple(
        replace(row, price=_invent_price(row))
        for row in build_usual().sold
        if row.wood in BOARD_FOOT or row.kind is StockKind.PANEL
    )
    hand = (
        HandRow(StockKind.BOARD, "poplar", "left over 1x6", 0.75, 5.5, 62.0, 1, 1.0),
        HandRow(StockKind.PANEL, "plywood", "left over 1/4 in.", 0.25, 24.0, 30.0),
    )
    supplies = tuple(replace(each, price=SUPPLIES[each.name]) for each in USUAL_SUPPLIES)
    return StockList(rows, hand, f"Example, {INVENTED}", supplies=supplies)


def _invent_price(row: SoldRow) -> int:
    feet = row.length / 12
    if row.kind is StockKind.PANEL:
        part = 1.0 if row.length > 48 else 1.25
        return _round(SHEET_FOOT * (0.6 + 1.6 * row.thickness) * feet * row.width / 12 * part)
    if row.kind is StockKind.MOULDING:
        return _round(BOARD_FOOT[row.wood] * 0.3 * MOULDED * feet)
    nominal = float(row.name.split("x")[1])
    thick = {0.75: 1.0, 1.0: 1.25, 1.5: 2.0}[row.thickness]
    wide = 1 + max(0.0, nominal - 6) / 24
    long = 1 + max(0.0, feet - 10) / 60
    return _round(BOARD_FOOT[row.wood] * thick * nominal / 12 * feet * wide * long)


def _round(hundredths: float) -> int:
    """To what a price tag shows: whole fives."""
    return max(5, round(hundredths / 5) * 5)


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for name, stock_list in (("usual", build_usual()), ("example", build_example())):
        (FOLDER / f"{name}.yard").write_text(write_stock_list(stock_list), "utf-8")
