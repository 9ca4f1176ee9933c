"""The buying list on paper: a box to tick for every size, counts, money where it is known, and totals.

What is bought is decided in model.cutting; how it is cut stands on the cutting plans.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.cutting.buying import BuyingList, Line, describe_line
from model.cutting.plan import CuttingPlan
from model.cutting.printed import Change, share_changes
from model.cutting.stock_list import SoldRow
from model.cutting.supplies import ANCHORS
from model.cutting.wording import describe_bound, describe_short
from model.money import format_money
from model.takeoff.materials import Material
from model.takeoff.packages import format_package
from model.units import LengthStyle, format_length
from render.drawing import MM
from render.tables import (
    FIGURES,
    ROW,
    Cell,
    Row,
    Strip,
    Table,
    heading_strip,
    paragraph_strips,
    share_columns,
    table_strips,
)

NO_PRICE, ON_HAND = "no price", "On hand"
FASTENED = {"": 8, "Item": 100, "No.": 18, "Take": 90}
"""The columns of what is driven, and their widths in proportion."""
NAILS = "Finish nails"
COLUMNS = {
    "": 8,
    "Item": 78,
    "No.": 12,
    "Spare": 15,
    "Each": 24,
    "Together": 28,
    "Pieces": 17,
    "Waste": 34,
}
"""Headings, and their columns' widths in proportion."""
CHANGED = {"Since printed": 36}
"""One column more where anything changed since the list was last printed."""
WORDS = ("", "Item", "Waste", *CHANGED)
BOLD = ("No.", *CHANGED)
NO_LONGER = "Not on the list any more"
CHANGES = "What changed since this list was last printed or bought stands in its last column."
NO_CHANGES = "Nothing changed since this list was last printed or bought."


def buying_strips(
    plan: CuttingPlan,
    buying: BuyingList,
    style: LengthStyle,
    width: float,
    changes: Sequence[Change] | None = None,
    fastened: Sequence[Material] = (),
) -> tuple[Strip, ...]:
    """What is bought, heading by heading, what lies there already, totals and how good the plan is.

    `fastened` are nails, screws and anchors, which have a count here and no price.
    Where anything changed since the list was last printed, each row says what; None where it never was.
    """
    if not (buying.lines or buying.used or buying.short or changes):
        return ()
    shares = COLUMNS | (CHANGED if changes else {})
    ends = shares.keys() - set(WORDS)
    columns = share_columns(width, tuple(shares), tuple(shares.values()), ends, BOLD)
    rows = tuple(_list_rows(buying, style, changes or ()))
    words = list_words(plan, buying, style, changes)
    return (
        heading_strip("Buying list"),
        *table_strips(Table(columns, rows, FIGURES, ROW, ruled=True)),
        Strip(2 * MM, leads=True),
        *(strip for text in words for strip in paragraph_strips(text, width)),
        *_fastened_strips(fastened, style, width),
    )


def _list_rows(buying: BuyingList, style: LengthStyle, changes: Sequence[Change]) -> Iterator[Row]:
    shared, rest = share_changes(changes, buying.lines)
    for total in buying.totals:
        yield f"{total.heading}: {_amount(total.cost, total.missing, buying.currency)}"
        for line, change in zip(buying.lines, shared, strict=True):
            if isinstance(line.row, SoldRow) and line.row.trade == total.heading:
                since = (change.words if change else "",) if changes else ()
                yield _row(line, buying.currency, style, since)
    if buying.used:
        yield f"{ON_HAND}, used"
        yield from (_row(line, buying.currency, style, ("",) if changes else ()) for line in buying.used)
    if rest:
        yield NO_LONGER
        yield from (tuple(map(Cell, ("", *gone_texts(change)[1:]))) for change in rest)


def _fastened_strips(fastened: Sequence[Material], style: LengthStyle, width: float) -> tuple[Strip, ...]:
    """Nails, screws and anchors by size, each with how many are driven and what is taken."""
    if not fastened:
        return ()
    columns = share_columns(width, tuple(FASTENED), tuple(FASTENED.values()), ("No.",), ("No.",))
    rows = tuple(
        (
            Cell(box=True),
            *map(Cell, (describe_fastened(each, style), str(each.basis.count), _take(each, style))),
        )
        for each in fastened
    )
    return (
        heading_strip("Nails, screws and anchors", above=4 * MM),
        *table_strips(Table(columns, rows, FIGURES, ROW, ruled=True)),
    )


def _take(material: Material, style: LengthStyle) -> str:
    """The package, and why it may be another."""
    package = format_package(material, style)
    return f"{package}, if the maker allows it in this wall" if material.name == ANCHORS else package


def describe_fastened(material: Material, style: LengthStyle) -> str:
    """What to ask for: ``1/4 in. masonry screws, 3 1/4"``, ``Brads: 18 gauge, 2"``."""
    words = material.basis.words
    named = words if material.name in (NAILS, ANCHORS) else f"{material.name}: {words}"
    return f"{named}, {format_length(material.basis.length or 0.0, style)}"


def _amount(cost: int, missing: int, currency: str) -> str:
    """A sum of what has a price; never one where nothing has."""
    if not missing:
        return format_money(cost, currency)
    return f"{format_money(cost, currency)} and {missing} without a price" if cost else NO_PRICE


def _row(line: Line, currency: str, style: LengthStyle, since: tuple[str, ...]) -> tuple[Cell, ...]:
    return (Cell(box=True), *map(Cell, (*line_texts(line, currency, style)[1:], *since)))


def gone_texts(change: Change) -> tuple[str, ...]:
    """What is said of an item that the list does not ask for any more, in the same columns."""
    return NO_LONGER, change.item, "", "", "", "", "", "", f"{change.words}, {change.before} before"


def line_texts(line: Line, currency: str, style: LengthStyle) -> tuple[str, ...]:
    """What a line says: trade heading, item, number, spare, price, cost, pieces and waste."""

    def money(value: int | None) -> str:
        return NO_PRICE if value is None else format_money(value, currency)

    on_hand = not isinstance(line.row, SoldRow)
    waste = f"{100 * line.waste:.0f} %" + (f", {money(line.waste_cost)}" if line.waste_cost else "")
    return (
        line.row.trade if isinstance(line.row, SoldRow) else ON_HAND,
        describe_line(line, style),
        str(line.count),
        str(line.spare or ""),
        "" if on_hand else money(line.price),
        "" if on_hand else money(line.cost),
        str(len(line.sources)),
        waste,
    )


def list_words(
    plan: CuttingPlan,
    buying: BuyingList,
    style: LengthStyle,
    changes: Sequence[Change] | None,
    brief: bool = False,
) -> Iterator[str]:
    """What is not to be had, what it comes to, how good the plan is, what has no price and what changed.

    A `brief` one counts what has no price instead of naming it once more.
    """
    if buying.is_invented:
        yield "All prices here are invented, from the example list: for trying out only."
    for short in buying.short:
        yield f"Not to be had, so neither listed nor counted: {describe_short(short, short.marks, style)}"
    spare = f", of it {format_money(buying.spare_cost, buying.currency)} spare" if buying.spare_cost else ""
    if buying.total:
        yield f"Total of what has a price: {format_money(buying.total, buying.currency)}{spare}."
        yield describe_bound(plan, buying.currency)
    for taken in plan.order.taken:
        yield f"On hand, used: {taken.out_of} for {taken.source.mark}."
    if buying.missing:
        names = "; ".join(describe_line(line, style) for line in buying.missing)
        lines = f"{len(buying.missing)} of {len(buying.lines)} lines" if brief else names
        yield f"No price in the stock list, so not counted: {lines}."
    if changes is not None:
        yield CHANGES if changes else NO_CHANGES
