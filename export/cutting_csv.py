"""The buying list and the cutting plan as comma-separated text; what stands in them is model.cutting's."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from export.csv import decimal_text, unit_name, write_table
from model.cutting.buying import BuyingList, Line, describe_line
from model.cutting.frozen import list_outgrown
from model.cutting.pieces import Source
from model.cutting.places import Place, list_places
from model.cutting.plan import CuttingPlan, GroupPlan, Sawn, Short
from model.cutting.stock_list import SoldRow, describe_row
from model.cutting.task import to_inches
from model.cutting.wording import describe_short
from model.takeoff.cut_list import thickness_style
from model.takeoff.materials import Material
from model.units import LengthStyle, format_length
from render.buying_sheet import describe_fastened

_EMPTY = ("", "")
"""In place of the size of now of a piece that is asked for as it was planned."""


def write_buying_csv(buying: BuyingList, style: LengthStyle, fastened: Sequence[Material] = ()) -> str:
    """What is bought, then what lies there, as RFC 4180 text; money is empty where no price is known.

    What is not to be had follows by its marks, without a count; last `fastened`, nails, screws and anchors,
    with their counts and without prices.
    """
    heading = (
        "heading", "item", f"length_{unit_name(style)}", "count", "spare", "price", "cost", "spare_cost",
        "pieces", "waste_percent", "waste_cost",
    )  # fmt: skip
    rows = [_buying_row(line, style) for line in (*buying.lines, *buying.used)]
    rows += [_short_row(short, style) for short in buying.short]
    return write_table(heading, (*rows, *(_fastened_row(material, style) for material in fastened)))


def _short_row(short: Short, style: LengthStyle) -> tuple[str | int, ...]:
    long = decimal_text(short.wants_length, thickness_style(style))
    item = describe_short(short, short.marks, style)
    return ("not to be had", item, long, "", "", "", "", "", len(short.sources), "", "")


def _fastened_row(material: Material, style: LengthStyle) -> tuple[str | int, ...]:
    long = decimal_text(material.basis.length or 0.0, thickness_style(style))
    item, count = describe_fastened(material, style), material.basis.count or 0
    return ("Nails, screws and anchors", item, long, count, 0, "", "", "", "", "", "")


def _buying_row(line: Line, style: LengthStyle) -> tuple[str | int, ...]:
    return (
        line.row.trade if isinstance(line.row, SoldRow) else "on hand",
        describe_line(line, style),
        decimal_text(line.row.length, thickness_style(style)),
        line.count,
        line.spare,
        *(_money(amount) for amount in (line.price, line.cost, line.spare_cost)),
        len(line.sources),
        f"{100 * line.waste:.1f}",
        _money(line.waste_cost),
    )


def _money(hundredths: int | None) -> str:
    return "" if hundredths is None else f"{hundredths / 100:.2f}"


def write_cutting_csv(plan: CuttingPlan, style: LengthStyle, bought: Sequence[CuttingPlan] = ()) -> str:
    """A line for every piece: the board or sheet it comes out of, where it lies there, and whose it is.

    Those out of boards `bought` already come first; where the design asks for one smaller by now, its size
    of now stands behind.
    """
    unit = unit_name(style)
    heading = (
        "number", "stock", "lane", "place", f"across_{unit}", f"along_{unit}", "job", "mark", "name",
        "assembly", "part", "length", "width", f"length_{unit}", f"width_{unit}", "bought",
        f"length_now_{unit}", f"width_now_{unit}",
    )  # fmt: skip
    fine = thickness_style(style)
    rows: list[tuple[str | int, ...]] = []
    for each in bought:
        now = {(p.number, p.source): p.now for p in list_outgrown(each, plan.order)}
        for number, source, row in _list_pieces(each, style):
            sizes = now.get((number, source))
            rows.append((*row, "yes", *([decimal_text(size, fine) for size in sizes] if sizes else _EMPTY)))
    rows += [(*row, "no", *_EMPTY) for _, _, row in _list_pieces(plan, style)]
    return write_table(heading, rows)


def _list_pieces(
    plan: CuttingPlan, style: LengthStyle
) -> Iterator[tuple[int, Source, tuple[str | int, ...]]]:
    """Every piece's board and whose it is, with what is told of it."""
    for group in plan.groups:
        for sawn in group.sawn:
            for place, row in _piece_rows(sawn, group, style):
                yield sawn.number, place.source, row


def _piece_rows(
    sawn: Sawn, group: GroupPlan, style: LengthStyle
) -> Iterator[tuple[Place, tuple[str | int, ...]]]:
    fine = thickness_style(style)
    for place in list_places(sawn, group):
        source, sizes = place.source, (to_inches(place.length), to_inches(place.width))
        yield (
            place,
            (
                sawn.number,
                describe_row(sawn.row, style),
                place.lane,
                place.number,
                decimal_text(to_inches(place.across), fine),
                decimal_text(to_inches(place.along), fine),
                *(source.job, source.mark, source.name, source.assembly),
                source.part,
                *(format_length(size, style) for size in sizes),
                *(decimal_text(size, fine) for size in sizes),
            ),
        )
