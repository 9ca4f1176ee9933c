"""What the homeowner pays, in whole hundredths: wood by the buying list, work by the hour, percentages.

Nothing is called a price that rests on something missing: then there is no total, and it is said what is
wanted.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from model.cutting.buying import BuyingList
from model.shop import Offer
from model.steps.finishing import Finish
from model.steps.step import Step
from model.steps.work import round_up

WOOD, SUNDRIES, WORK = "Wood and sheets", "Fastenings, glue and finish", "Work"
OVERHEAD, MARGIN, TAX = "Overhead", "Margin", "Tax"
SUM, TOTAL = "Before tax", "Total"
HUNDRED = Decimal(100)


@dataclass(frozen=True, slots=True)
class PriceLine:
    """`cost` in hundredths, None where something is missing; `how` says what it comes from."""

    name: str
    cost: int | None
    how: str = ""


@dataclass(frozen=True, slots=True)
class Price:
    """Lines in the order they are added up. `total` is None where anything is `missing`, in words."""

    lines: tuple[PriceLine, ...]
    total: int | None
    missing: tuple[str, ...]
    currency: str


def count_hours(steps: Sequence[Step], finishing: Sequence[Finish]) -> float:
    """Hours of all hands, in quarters: what the day plan lays out, every step and all of the finishing."""
    return round_up(sum(step.hours for step in steps) + sum(finish.hours for finish in finishing))


def make_price(buying: BuyingList, offer: Offer, hours: float) -> Price:
    """What `buying` and `hours` of work come to; hours set in the offer go first. Halves are rounded up."""
    hours = offer.hours if offer.hours is not None else hours
    missing = tuple(_list_missing(buying, offer))
    wood = None if buying.missing or (not buying.lines and not buying.used) else buying.total
    work = None if offer.hour is None else _round(HUNDRED * _exact(offer.hour) * _exact(hours))
    sundries = None if offer.sundries is None else _round(HUNDRED * _exact(offer.sundries))
    lines = [
        PriceLine(WOOD, wood, "spare boards included" if buying.spare_cost else ""),
        PriceLine(SUNDRIES, sundries),
        PriceLine(WORK, work, f"{hours:g} hours" if offer.hour is not None else ""),
    ]
    if missing:
        return Price(tuple(lines), None, missing, buying.currency)
    so_far = sum(line.cost or 0 for line in lines)
    for name, percent in ((OVERHEAD, offer.overhead), (MARGIN, offer.margin), (TAX, offer.tax)):
        if percent:
            lines.append(PriceLine(name, _share(so_far, percent), f"{percent:g} %"))
            so_far += lines[-1].cost or 0
    return Price(tuple(lines), so_far, (), buying.currency)


def _list_missing(buying: BuyingList, offer: Offer) -> list[str]:
    missing = []
    if buying.missing:
        count = len(buying.missing)
        missing.append(f"prices of {count} size{'' if count == 1 else 's'} on the buying list")
    elif not buying.lines and not buying.used:
        missing.append("a stock list that holds the boards")
    if offer.sundries is None:
        missing.append("what fastenings and finish cost")
    if offer.hour is None:
        missing.append("what an hour of work costs")
    return missing


def _exact(value: float) -> Decimal:
    """The number as it is written, not as it is stored."""
    return Decimal(repr(value))


def _share(cost: int, percent: float) -> int:
    return _round(Decimal(cost) * _exact(percent) / HUNDRED)


def _round(hundredths: Decimal) -> int:
    return int(hundredths.quantize(Decimal(1), rounding=ROUND_HALF_UP))
