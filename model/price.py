"""What the homeowner pays, in whole hundredths: wood and supplies as bought, work by the hour, percentages.

Nothing is called a price that rests on something missing: then there is no total, and it is said what is
wanted.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum
from itertools import accumulate, pairwise

from model.cutting.buying import trade_of
from model.cutting.plan import Short
from model.cutting.supplies import SORTS, Supply
from model.estimate import BUILDING, CUTTING, FINISHING, FITTING, Estimate, Hours
from model.money import parse_currency
from model.shop import Offer

WOOD, SUNDRIES, WORK = "Wood and sheets", "Fastenings, glue and finish", "Work"
FASTENINGS, FINISH = "Fastenings and glue", "Filler, caulk and finish"
INVENTED = "All prices are invented, from the example list: for trying out only, no offer."
WASTE, OVERHEAD, MARGIN, TAX = "Waste allowance", "Overhead", "Margin", "Tax"
MATERIALS = "Materials"
SUM, TOTAL = "Before tax", "Total"
HUNDRED = Decimal(100)
MOST_NAMED = 3
OWN_HOURS = {
    CUTTING: "cutting_hours",
    BUILDING: "building_hours",
    FITTING: "fitting_hours",
    FINISHING: "finishing_hours",
}
"""The field of the offer that overwrites the hours of each kind of work."""


class Part(StrEnum):
    """What a line of a price is for."""

    MATERIAL = "material"
    WORK = "work"
    WASTE = "waste"
    OVERHEAD = "overhead"
    MARGIN = "margin"
    TAX = "tax"


@dataclass(frozen=True, slots=True)
class PriceLine:
    """`cost` in hundredths, None where something is missing; `how` says what it comes from."""

    name: str
    cost: int | None
    how: str = ""
    part: Part = Part.MATERIAL


@dataclass(frozen=True, slots=True)
class Price:
    """Lines in the order they are added up. `total` is None where anything is `missing`, in words.

    `is_invented` where it rests on prices that nobody sells at: it is no offer then.
    """

    lines: tuple[PriceLine, ...]
    total: int | None
    missing: tuple[str, ...]
    currency: str
    is_invented: bool = False


@dataclass(frozen=True, slots=True)
class ShownLine:
    """A line as the homeowner sees it."""

    name: str
    how: str
    cost: int
    is_sum: bool = False


def make_price(estimate: Estimate, offer: Offer, supplies: Sequence[Supply]) -> Price:
    """What `estimate` comes to; hours and sums set in the offer go first. Halves are rounded up."""
    currency, invented = estimate.buying.currency, estimate.buying.is_invented
    unit = parse_currency(currency).unit
    missing: list[str] = []
    wood = list(_list_wood(estimate, missing))
    lines = [*wood, *_list_supplies(estimate, offer, supplies, unit, missing)]
    lines += _list_work(estimate, offer, unit, missing)
    if missing:
        return Price(tuple(lines), None, tuple(missing), currency, invented)
    if offer.waste:
        cost = _share(_sum(wood), offer.waste, unit)
        lines.insert(len(wood), PriceLine(WASTE, cost, f"{offer.waste:g} % of the wood", Part.WASTE))
    for name, percent, part in (
        (OVERHEAD, offer.overhead, Part.OVERHEAD),
        (MARGIN, offer.margin, Part.MARGIN),
        (TAX, offer.tax, Part.TAX),
    ):
        if percent:
            lines.append(PriceLine(name, _share(_sum(lines), percent, unit), f"{percent:g} %", part))
    return Price(tuple(lines), _sum(lines), (), currency, invented)


# --- what it is added up from


def _list_wood(estimate: Estimate, missing: list[str]) -> Iterator[PriceLine]:
    """A line for each heading that something is bought under or was; what was bought before is in it."""
    buying = estimate.buying
    bought = {each.heading: each.cost for each in estimate.bought}
    totals = {total.heading: total for total in buying.totals}
    has_any = bool(buying.lines or buying.used or bought)
    if buying.short and has_any:
        missing.append(_name_short(buying.short))
    unpriced = len(buying.missing)
    if unpriced:
        missing.append(f"prices of {unpriced} size{'' if unpriced == 1 else 's'} on the buying list")
    if None in bought.values():
        missing.append("what boards cost that are bought already")
    if not has_any:
        missing.append("a stock list that holds the boards")
        yield PriceLine(WOOD, None)
    for heading in dict.fromkeys((*totals, *bought)):
        total, before = totals.get(heading), bought.get(heading, 0)
        known = before is not None and not (total and total.missing)
        cost = (total.cost if total else 0) + (before or 0)
        spare = any(line.spare for line in buying.lines if trade_of(line.row) == heading)
        yield PriceLine(heading, cost if known else None, "spare ones included" if spare else "")


def _name_short(shorts: Sequence[Short]) -> str:
    marks = list(dict.fromkeys(source.mark for short in shorts for source in short.sources))
    more = f" and {len(marks) - MOST_NAMED} more" if len(marks) > MOST_NAMED else ""
    return f"wood for {', '.join(marks[:MOST_NAMED])}{more}, which nothing on the stock list holds"


def _list_supplies(
    estimate: Estimate, offer: Offer, supplies: Sequence[Supply], unit: int, missing: list[str]
) -> Iterator[PriceLine]:
    """One sum where it is set, or fastenings and finish by what the job uses up."""
    if offer.sundries is not None:
        yield PriceLine(SUNDRIES, _round(HUNDRED * _exact(offer.sundries), unit))
        return
    sold = {supply.name: supply for supply in supplies}
    unpriced = []
    for name, is_finish in ((FASTENINGS, False), (FINISH, True)):
        needs = [need for need in estimate.needs if SORTS[need.name].finish == is_finish]
        costs = [sold[need.name].cost(need.amount) if need.name in sold else None for need in needs]
        unpriced += [need.name.lower() for need, cost in zip(needs, costs, strict=True) if cost is None]
        if needs:
            known = None not in costs
            yield PriceLine(name, _to_unit(sum(cost or 0 for cost in costs), unit) if known else None)
    if unpriced:
        more = f" and {len(unpriced) - MOST_NAMED} more" if len(unpriced) > MOST_NAMED else ""
        missing.append(f"what fastenings and finish cost: prices of {', '.join(unpriced[:MOST_NAMED])}{more}")


def _list_work(estimate: Estimate, offer: Offer, unit: int, missing: list[str]) -> Iterator[PriceLine]:
    """A line for each kind of work, its own hours set or not; one for all where all hours are set."""
    if offer.hour is None:
        missing.append("what an hour of work costs")
    for each in list_work(estimate, offer):
        cost = None if offer.hour is None else _round(HUNDRED * _exact(offer.hour) * _exact(each.hours), unit)
        yield PriceLine(each.kind, cost, f"{each.hours:g} hour{'' if each.hours == 1 else 's'}", Part.WORK)


def list_work(estimate: Estimate, offer: Offer) -> tuple[Hours, ...]:
    """The hours that are priced: those of the steps, or what the offer says in their place."""
    if offer.hours is not None:
        return (Hours(WORK, offer.hours),)
    steps = {each.kind: each.hours for each in estimate.work}
    found = []
    for kind, field in OWN_HOURS.items():
        own = getattr(offer, field)
        hours = steps.get(kind, 0.0) if own is None else own
        if hours or own is not None:
            found.append(Hours(kind, hours))
    return tuple(found)


# --- what is shown of it


def list_price(price: Price, offer: Offer) -> tuple[ShownLine, ...]:
    """The lines that the homeowner sees; they add up to the total whatever is hidden.

    ``groups`` spreads everything but tax over materials and work, ``total`` shows the sum alone. What is not
    to be shown is spread over the lines that are: waste over materials, the rest over materials and work.
    """
    assert price.total is not None
    tax = next((line for line in price.lines if line.part is Part.TAX), None)
    if offer.shows == "total":
        return (ShownLine(TOTAL, f"{tax.how} tax included" if tax else "", price.total, True),)
    unit = parse_currency(price.currency).unit
    lines = _hide(price.lines, _list_hidden(offer), unit)
    if offer.shows == "groups":
        lines = _group(lines)
    shown = [ShownLine(line.name, line.how, line.cost or 0) for line in lines if line.part is not Part.TAX]
    if tax and offer.tax_shown:
        cost = tax.cost or 0
        shown += [ShownLine(SUM, "", price.total - cost, True), ShownLine(TAX, tax.how, cost)]
    hidden_tax = f"{tax.how} tax included" if tax and not offer.tax_shown else ""
    return (*shown, ShownLine(TOTAL, hidden_tax, price.total, True))


def _list_hidden(offer: Offer) -> Mapping[Part, bool]:
    grouped = offer.shows == "groups"
    return {
        Part.WASTE: grouped or not offer.waste_shown,
        Part.OVERHEAD: grouped or not offer.overhead_shown,
        Part.MARGIN: grouped or not offer.margin_shown,
        Part.TAX: not offer.tax_shown,
    }


def _hide(lines: Sequence[PriceLine], hidden: Mapping[Part, bool], unit: int) -> list[PriceLine]:
    """The lines that are shown, each with its share of those that are not."""
    shown = [line for line in lines if not hidden.get(line.part, False)]
    for line in lines:
        if hidden.get(line.part, False):
            only = (Part.MATERIAL,) if line.part is Part.WASTE else (Part.MATERIAL, Part.WORK)
            shown = _spread(shown, line.cost or 0, only, unit)
    return shown


def _spread(lines: Sequence[PriceLine], cost: int, parts: Sequence[Part], unit: int) -> list[PriceLine]:
    """`cost` shared out over the lines of `parts` as they cost, to the last unit."""
    bearing = [line for line in lines if line.part in parts]
    weights = [line.cost or 0 for line in bearing]
    whole = sum(weights) or 1
    reached = [_to_unit(cost * so_far // whole, unit) for so_far in accumulate(weights)]
    reached[-1:] = [cost]
    shares = iter([high - low for low, high in pairwise([0, *reached])])
    return [
        replace(line, cost=(line.cost or 0) + next(shares)) if line.part in parts else line for line in lines
    ]


def _group(lines: Sequence[PriceLine]) -> list[PriceLine]:
    grouped = [
        PriceLine(name, sum(line.cost or 0 for line in lines if line.part is part), "", part)
        for name, part in ((MATERIALS, Part.MATERIAL), (WORK, Part.WORK))
    ]
    return [*grouped, *(line for line in lines if line.part not in (Part.MATERIAL, Part.WORK))]


# --- arithmetic


def _sum(lines: Sequence[PriceLine]) -> int:
    return sum(line.cost or 0 for line in lines)


def _exact(value: float) -> Decimal:
    """The number as it is written, not as it is stored."""
    return Decimal(repr(value))


def _share(cost: int, percent: float, unit: int) -> int:
    return _round(Decimal(cost) * _exact(percent) / HUNDRED, unit)


def _round(hundredths: Decimal, unit: int) -> int:
    """To the least amount that the currency has."""
    return int((hundredths / unit).quantize(Decimal(1), rounding=ROUND_HALF_UP)) * unit


def _to_unit(hundredths: int, unit: int) -> int:
    return hundredths if unit == 1 else _round(Decimal(hundredths), unit)
