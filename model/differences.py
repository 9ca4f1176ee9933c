"""What differs between options, line by line: settings, sizes that follow from them, boards, purchase, price.

Each line has a text for every option in the order they were given; what is alike in all is left out.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeVar

from model.board import StockKind
from model.check.finding import STATUS_WORD, Finding, Status
from model.cutting.buying import describe_line
from model.cutting.stock_list import wood_name
from model.derived import ALIKE, list_derived
from model.estimate import Estimate
from model.job import list_own_rows, read_value
from model.measures import FOOT, format_measure
from model.money import format_money
from model.parameters import Parameter
from model.price import TOTAL, Price
from model.sentences import capitalise
from model.surround import Surround
from model.units import INCHES_PER_FOOT, LengthStyle, format_length

Found = TypeVar("Found")
NONE = "none"
NO_PRICE = "no price yet"
WORKING = "being worked out"
LONGEST = 80
"""Characters of a setting that is text."""


class Heading(StrEnum):
    """What a line of differences is about."""

    CHECKS = "Checks"
    SETTINGS = "Settings"
    SIZES = "Sizes"
    BOARDS = "Boards"
    BUYING = "To buy"
    WORK = "Work"
    PRICE = "Price"


@dataclass(frozen=True, slots=True)
class Difference:
    """One line: under which heading, of what, and how it is in each option. `path` is that of a setting."""

    heading: Heading
    name: str
    texts: tuple[str, ...]
    path: str = ""


@dataclass(frozen=True, slots=True)
class Compared:
    """One option as it is compared. `estimate` and `price` are missing while they are worked out."""

    surround: Surround
    findings: tuple[Finding, ...]
    estimate: Estimate | None = None
    price: Price | None = None


def list_differences(options: Sequence[Compared]) -> tuple[Difference, ...]:
    """Every line in which `options` differ; the first one's units hold for all."""
    if len(options) < 2:
        return ()
    style = options[0].surround.job.about.length_style
    lines = (
        *_list_price(options),
        *_list_checks(options),
        *_list_settings(options, style),
        *_list_sizes(options, style),
        *_list_boards(options, style),
        *_list_work(options),
        *_list_buying(options, style),
    )
    return tuple(line for line in lines if len(set(line.texts)) > 1)


def _list_checks(options: Sequence[Compared]) -> Iterator[Difference]:
    for status in Status:
        counts = [sum(finding.status is status for finding in each.findings) for each in options]
        name = STATUS_WORD[status].capitalize()
        yield Difference(Heading.CHECKS, name, tuple(str(count) if count else NONE for count in counts))


def _list_settings(options: Sequence[Compared], style: LengthStyle) -> Iterator[Difference]:
    for row in list_own_rows():
        values = [read_value(each.surround.job, row.path) for each in options]
        if any(value != values[0] for value in values):
            texts = tuple(say_setting(row, value, style) for value in values)
            yield Difference(Heading.SETTINGS, f"{row.group}: {row.label.lower()}", texts, row.path)


def say_setting(row: Parameter, value: object, style: LengthStyle) -> str:
    """A setting's value on one line, no longer than LONGEST; ``empty`` where there is none."""
    text = " ".join(row.format(value, style).split())  # type: ignore[arg-type]
    return (text if len(text) <= LONGEST else f"{text[:LONGEST]}…") or "empty"


def _list_sizes(options: Sequence[Compared], style: LengthStyle) -> Iterator[Difference]:
    """Lengths that follow from the settings; those that differ by less than a tape shows are alike."""
    derived = [list_derived(each.surround.layout, each.surround.job.design.cord) for each in options]
    for lines in zip(*derived, strict=True):
        values = [line.value for line in lines]
        known = [value for value in values if value is not None]
        if len(known) == len(values) and max(known) - min(known) <= ALIKE:
            continue
        texts = tuple(NONE if value is None else format_length(value, style) for value in values)
        yield Difference(Heading.SIZES, f"{lines[0].group}: {lines[0].label.lower()}", texts)


def _list_boards(options: Sequence[Compared], style: LengthStyle) -> Iterator[Difference]:
    """How many pieces, and the feet of them, by what they are cut from."""
    taken = [_take_stock(each.surround, style) for each in options]
    counts = [sum(count for count, _ in each.values()) for each in taken]
    yield Difference(Heading.BOARDS, "Pieces in all", tuple(str(count) for count in counts))

    def say(found: tuple[int, float]) -> str:
        count, feet = found
        return f"{count}, {format_measure(feet, FOOT, style)}"

    yield from _list_by_name(Heading.BOARDS, taken, say)


def _take_stock(surround: Surround, style: LengthStyle) -> dict[str, tuple[int, float]]:
    """Pieces and feet of each stock, by its words."""
    taken: dict[str, tuple[int, float]] = {}
    for board in surround.boards:
        stock = board.stock
        if stock.kind is StockKind.STANDING:
            continue
        name = f"{wood_name(stock.wood)} {stock.kind}, {format_length(stock.thickness, style)}"
        count, feet = taken.get(name, (0, 0.0))
        taken[name] = (count + 1, feet + board.length / INCHES_PER_FOOT)
    return {capitalise(name): found for name, found in taken.items()}


def _list_by_name(
    heading: Heading, taken: Sequence[Mapping[str, Found]], say: Callable[[Found], str]
) -> Iterator[Difference]:
    """A line for each name in any of them, NONE where one has nothing of it."""
    for name in dict.fromkeys(name for each in taken for name in each):
        yield Difference(heading, name, tuple(say(each[name]) if name in each else NONE for each in taken))


def _list_work(options: Sequence[Compared]) -> Iterator[Difference]:
    known = [each.estimate for each in options if each.estimate is not None]
    if len(known) == len(options):
        hours = [{work.kind: work.hours for work in each.work} for each in known]
        yield from _list_by_name(Heading.WORK, hours, lambda value: f"{value:g} h")


def _list_buying(options: Sequence[Compared], style: LengthStyle) -> Iterator[Difference]:
    known = [each.estimate for each in options if each.estimate is not None]
    if len(known) < len(options):
        return
    counts: list[dict[str, int]] = []
    for estimate in known:
        own: dict[str, int] = {}
        for line in estimate.buying.lines:
            name = describe_line(line, style)
            own[name] = own.get(name, 0) + line.count + line.spare
        counts.append(own)
    yield from _list_by_name(Heading.BUYING, counts, str)


def _list_price(options: Sequence[Compared]) -> Iterator[Difference]:
    """The total first, with how much more or less than in the first option; then what it is made of."""
    prices = [each.price for each in options]
    yield Difference(Heading.PRICE, TOTAL, tuple(say_price(price, prices[0]) for price in prices))
    known = [price for price in prices if price is not None]
    if len(known) < len(prices):
        return
    costs = [{line.name: (line.cost, price.currency) for line in price.lines} for price in known]
    yield from _list_by_name(
        Heading.PRICE, costs, lambda found: NO_PRICE if found[0] is None else format_money(found[0], found[1])
    )


def say_price(price: Price | None, base: Price | None) -> str:
    """The total, and in brackets how much more or less than `base`; that there is none, or none yet."""
    if price is None:
        return WORKING
    if price.total is None:
        return NO_PRICE
    text = format_money(price.total, price.currency)
    more = say_more(price, base)
    return f"{text} ({more})" if more else text


def say_more(price: Price | None, base: Price | None) -> str:
    """``+$120.00`` or ``−$120.00`` against `base`, "" where one of them has no total or both are alike."""
    if price is None or base is None or price.total is None or base.total is None:
        return ""
    more = price.total - base.total
    if not more:
        return ""
    sign = "+" if more > 0 else "\N{MINUS SIGN}"
    return f"{sign}{format_money(abs(more), price.currency)}"
