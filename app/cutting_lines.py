"""What the cutting commands say in words: buying list, cuts of every board and sheet, stock list."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from textwrap import fill

from app.records import LINE, table_lines
from model.cutting.buying import BuyingList, Line, describe_line
from model.cutting.frozen import list_outgrown
from model.cutting.pieces import Source
from model.cutting.places import Place, list_places
from model.cutting.plan import CuttingPlan, GroupPlan, Sawn
from model.cutting.printed import Change
from model.cutting.stock_list import SoldRow, StockList, describe_row
from model.cutting.task import SawnBoard, SawnSheet, to_inches
from model.cutting.wording import describe_bound, describe_material, describe_outgrown, describe_short
from model.money import HUNDREDTHS, format_money
from model.takeoff.cut_list import thickness_style
from model.units import LengthStyle, format_length
from render.buying_sheet import line_texts


def cutting_lines(
    plan: CuttingPlan,
    buying: BuyingList,
    changes: Sequence[Change] | None,
    style: LengthStyle,
    bought: Sequence[CuttingPlan] = (),
) -> Iterator[str]:
    """The buying list, what could not be had, and every board's and sheet's cuts, in words.

    Those `bought` already come before those still to be bought.
    """
    yield from buying_lines(plan, buying, style)
    yield from _change_lines(changes)
    yield from _short_lines(plan, style)
    for each in bought:
        yield from _bought_lines(each, plan, style)
    for group in plan.groups:
        yield ""
        yield f"{describe_material(group.group.material, style)}: {proof_text(group, buying.currency)}"
        yield from _sawn_lines(group, plan, style)
    for note in plan.order.notes:
        yield f"Not matched: {note}."


def _bought_lines(bought: CuttingPlan, plan: CuttingPlan, style: LengthStyle) -> Iterator[str]:
    """Boards that are there already, as they are to be cut, and what of them is wanted smaller by now."""
    for group in bought.groups:
        yield ""
        yield f"{describe_material(group.group.material, style)}: bought already"
        yield from _sawn_lines(group, plan, style)
    for piece in list_outgrown(bought, plan.order):
        yield f"Smaller since: {describe_outgrown(piece, style)}."


def buying_lines(plan: CuttingPlan, buying: BuyingList, style: LengthStyle) -> Iterator[str]:
    """What to buy as a table, with totals and what no plan can cost less than."""
    heading = ("Buy", "No.", "Spare", "Each", "Together", "Pieces", "Waste", "Item")
    yield from table_lines(heading, [_buying_row(line, buying.currency, style) for line in buying.lines])
    for line in buying.used:
        yield f"On hand, used: {line.count} of {describe_line(line, style)}, {len(line.sources)} pieces"
    for taken in plan.order.taken:
        yield f"On hand, used: {taken.out_of} for {_mark(taken.source, plan)}"
    if plan.order.settled:
        kept = ", ".join(str(number) for number in plan.order.kept)
        stay = f"; still to be cut as planned: boards {kept}" if kept else ""
        yield f"Bought already: boards for {len(plan.order.settled)} pieces{stay}"
    yield ""
    for total in buying.totals:
        missing = f", {total.missing} without a price" if total.missing else ""
        yield f"{total.heading}: {format_money(total.cost, buying.currency)}{missing}"
    yield f"Total: {format_money(buying.total, buying.currency)}{_spare_text(buying)}"
    yield describe_bound(plan, buying.currency)
    if buying.missing:
        names = "; ".join(describe_line(line, style) for line in buying.missing)
        yield f"No price in the stock list, so not counted: {names}."


def _spare_text(buying: BuyingList) -> str:
    spare = sum(line.spare for line in buying.lines)
    if not spare:
        return ""
    boards = "board" if spare == 1 else "boards"
    return f", of it {format_money(buying.spare_cost, buying.currency)} for {spare} spare {boards}"


def proof_text(group: GroupPlan, currency: str) -> str:
    """The same of one group, in wood where it has no price."""
    proof = group.proof

    def amount(value: int) -> str:
        return format_money(value, currency) if group.is_priced else f"{value / HUNDREDTHS:.2f} board feet"

    if proof.is_proven:
        return f"{amount(proof.cost)}, proven"
    return f"{amount(proof.cost)}, no plan takes less than {amount(proof.bound)}"


def _buying_row(line: Line, currency: str, style: LengthStyle) -> tuple[str, ...]:
    """A line of the list on paper, with the item last."""
    trade, item, *figures = line_texts(line, currency, style)
    return trade, *figures, item


def _change_lines(changes: Sequence[Change] | None) -> Iterator[str]:
    if changes is None:
        return
    yield ""
    yield (
        "Since the list was last printed or bought:"
        if changes
        else "Nothing changed since the list was last printed or bought."
    )
    for change in changes:
        yield f"  {change.item}: {change.words}; {change.before} before, {change.now} now"


def _short_lines(plan: CuttingPlan, style: LengthStyle) -> Iterator[str]:
    for short in plan.short:
        marks = ", ".join(_mark(source, plan) for source in short.sources)
        yield f"Not to be had: {describe_short(short, marks, style)}"


def _sawn_lines(group: GroupPlan, plan: CuttingPlan, style: LengthStyle) -> Iterator[str]:
    """Each board and sheet, its lanes below it; like ones that are cut alike once, with everyone's marks."""
    for _, alike in groupby(group.sawn, key=lambda sawn: sawn.cut):
        same = list(alike)
        first, last = same[0].number, same[-1].number
        numbers = f"{first}" if first == last else f"{first} to {last}"
        left = _left_text(same[0], style)
        yield f"  {numbers}: {describe_row(same[0].row, style)}" + (f"; left {left}" if left else "")
        for text in _cut_texts(same, group, plan, style):
            yield fill(text, LINE, initial_indent=" " * 6, subsequent_indent=" " * 8)


def _cut_texts(
    same: Sequence[Sawn], group: GroupPlan, plan: CuttingPlan, style: LengthStyle
) -> Iterator[str]:
    """Lane after lane: its width, then each piece's length and mark; of like boards all marks in turn."""
    places = [list_places(sawn, group) for sawn in same]
    fine = thickness_style(style)
    for lane, run in groupby(enumerate(places[0]), key=lambda each: each[1].lane):
        pieces = [
            f"{'/'.join(_mark(its[i].source, plan) for its in places)} {_size_text(place, same[0], fine)}"
            for i, place in run
        ]
        yield f"{_lane_width(same[0], lane, fine)}{', '.join(pieces)}"


def _lane_width(sawn: Sawn, lane: int, style: LengthStyle) -> str:
    """The width a lane is ripped to, where there is anything to rip."""
    if isinstance(sawn.cut, SawnSheet) or not sawn.row.width:
        return ""
    width = to_inches(sawn.cut.lanes[lane - 1].width)
    whole = len(sawn.cut.lanes) == 1 and abs(width - sawn.row.width) < 1 / 128
    return "" if whole else f"ripped to {format_length(width, style)}: "


def _size_text(place: Place, sawn: Sawn, style: LengthStyle) -> str:
    """The length; with the width on a sheet, and in a lane that is wider."""
    length, width = (format_length(to_inches(size), style) for size in (place.length, place.width))
    alone = isinstance(sawn.cut, SawnBoard) and place.width == sawn.cut.lanes[place.lane - 1].width
    return length if alone else f"{length} x {width}"


def _left_text(sawn: Sawn, style: LengthStyle) -> str:
    return ", ".join(
        f"{format_length(to_inches(left.length), style)} x {format_length(to_inches(left.width), style)}"
        for left in sawn.left
    )


def _mark(source: Source, plan: CuttingPlan) -> str:
    """The mark, with the job before it where there are several, and the strip behind it."""
    job = f"{source.job} " if len(plan.order.jobs) > 1 else ""
    return f"{job}{source.mark}" + (f" ({source.part})" if source.part else "")


def stock_lines(stock_list: StockList, style: LengthStyle) -> Iterable[str]:
    """A stock list as a table, with what is common to its rows."""
    sold, hand = len(stock_list.sold), len(stock_list.on_hand)
    yield f"{stock_list.name or 'Stock list'}: {sold} sizes sold, {hand} on hand"
    lengths = (stock_list.trim_end, stock_list.trim_sheet, stock_list.keep)
    end, sheet, keep = (format_length(value, style) for value in lengths)
    yield f"Trimmed off each end {end}, off a sheet's edges {sheet}; offcuts kept from {keep} on"
    yield f"Spare boards of each size: {stock_list.spare}"
    rows = [_stock_row(row, stock_list, style) for row in stock_list.sold]
    rows += [("On hand", str(row.count), "", describe_row(row, style)) for row in stock_list.on_hand]
    yield from table_lines(("Heading", "No.", "Price", "Item"), rows)


def _stock_row(row: SoldRow, stock_list: StockList, style: LengthStyle) -> tuple[str, ...]:
    limit = "any" if row.limit is None else str(row.limit)
    price = "" if row.price is None else format_money(row.price, stock_list.currency)
    return row.trade, limit, price, describe_row(row, style)
