"""What the homeowner reads and signs: what is made, of what, at what price, what is in it and what is not.

How the price is made up is model.price's; where this stands on a page is render.offer's.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.board import StockKind
from model.build.groove import is_floating
from model.job import Job, default_job, read_value
from model.look import STAINED, is_painted, name_finish
from model.money import format_money
from model.parameters import SPECIES
from model.price import INVENTED, Price, list_price
from model.surround import Surround
from model.units import format_length
from render.cover_sheet import say_what
from render.drawing import MM, Anchor, Lines, Pen, Text
from render.lettering import ASCENT, tie_words
from render.tables import (
    FIGURES,
    SMALL,
    Cell,
    Column,
    Strip,
    Table,
    heading_strip,
    lead,
    paragraph_strips,
    table_strips,
)

INDENT = 5 * MM
GAP = 3 * MM
SIGN_ROOM = 20 * MM
"""Height to sign in."""
MATERIALS = "Materials"
SAFE = (
    "Clearances to the fire are held against the rules named on the workshop's sheets. The code adopted "
    "here, the appliance's manual and the authority having jurisdiction decide."
)
NO_PRICE = "No price yet. Wanted for it: {}."
AGREED = "Agreed as drawn and written here:"


def offer_strips(surround: Surround, price: Price, width: float) -> tuple[Strip, ...]:
    """The page of words, for a page `width` wide; it may go on over several.

    Nobody signs without a price or at an invented one.
    """
    offer = surround.job.shop.offer
    strips: list[Strip] = [heading_strip("What is made")]
    strips += _points(_say_made(surround), width)
    strips += _price_strips(surround, price, width)
    in_it = (*_lines(offer.promised), *_say_finish(surround), *_lines(offer.included))
    strips += _list("In the price", in_it, width)
    strips += _list("Not in the price", (*_lines(offer.left_out), *_lines(offer.excluded)), width)
    strips += _list("Allowances", _lines(offer.allowances), width)
    strips += _list("Payment and dates", _lines(offer.terms), width)
    strips += _list("Notes", (*_lines(offer.notes), SAFE), width)
    if price.total is not None and not price.is_invented:
        strips += _sign(surround, width)
    return tuple(strips)


def _lines(text: str) -> tuple[str, ...]:
    return tuple(line.strip() for line in text.splitlines() if line.strip())


def _say_made(surround: Surround) -> Iterator[str]:
    job, layout = surround.job, surround.layout
    style = job.about.length_style
    yield say_what(surround)
    shelf = format_length(layout.left.shelf_side + layout.right.shelf_side, style)
    high, deep = format_length(layout.shelf_top, style), _say_depth(job)
    yield f"The shelf is {shelf} long and {deep} deep, its top {high} over the hearth."
    has_panels = any(board.stock.kind is StockKind.PANEL for board in surround.boards)
    panels = ", panels of plywood where they are framed" if has_panels else ""
    panels = ", solid panels in their frames" if any(map(is_floating, surround.boards)) else panels
    yield f"Wood: {SPECIES[job.design.board.species].lower()}{panels}."
    if job.shop.offer.colour.strip():
        yield f"Colour and finish: {' '.join(job.shop.offer.colour.split())}"
    elif (shown := job.design.look) != default_job().design.look:
        yield f"Colour and finish as in the picture: {name_finish(shown)}"


def _say_depth(job: Job) -> str:
    depth = read_value(job, "shelf.depth")
    return format_length(float(depth), job.about.length_style)


def _say_finish(surround: Surround) -> Iterator[str]:
    rates, look = surround.job.shop.rates, surround.job.design.look
    first, last = ("primer", "paint") if is_painted(look) else ("sealer", "clear finish")
    coats = [
        f"{count} coat{'' if count == 1 else 's'} of {what}"
        for count, what in ((rates.primer_coats, first), (rates.top_coats, last))
        if count
    ]
    if look.finish == STAINED:
        coats.insert(0, "stain")
    if coats:
        yield ", ".join((*coats[:-2], " and ".join(coats[-2:]))).capitalize()


def _price_strips(surround: Surround, price: Price, width: float) -> Iterator[Strip]:
    yield heading_strip("Price", above=GAP)
    if price.is_invented:
        yield from paragraph_strips(INVENTED, width)
    if price.total is None:
        yield from paragraph_strips(NO_PRICE.format("; ".join(price.missing)), width)
        return
    rows = tuple(
        (
            Cell(line.name, bold=line.is_sum),
            Cell(line.how),
            Cell(tie_words(format_money(line.cost, price.currency)), bold=line.is_sum),
        )
        for line in list_price(price, surround.job.shop.offer)
    )
    columns = (
        Column("", 0.4 * width),
        Column("", 0.35 * width),
        Column("Price", 0.25 * width, Anchor.END),
    )
    yield from table_strips(Table(columns, rows, FIGURES))
    if price.is_invented:
        return
    days = surround.job.shop.offer.days
    words = f"This offer holds for {days} day{'' if days == 1 else 's'} from the date on this sheet."
    yield Strip(1.5 * MM)
    yield from paragraph_strips(words, width)


def _list(title: str, lines: Sequence[str], width: float) -> list[Strip]:
    return [heading_strip(title, above=GAP), *_points(lines, width)] if lines else []


def _points(lines: Sequence[str] | Iterator[str], width: float) -> list[Strip]:
    return [strip for line in lines for strip in paragraph_strips(line, width, indent=INDENT, first="–")]


def _sign(surround: Surround, width: float) -> list[Strip]:
    """A line for each side to sign on, with place and date; it is not torn off from its words."""
    about = surround.job.about
    half = (width - 10 * MM) / 2
    names = (about.client or "Homeowner", about.maker or "Maker")
    marks: list[Lines | Text] = []
    for x, name in zip((0.0, half + 10 * MM), names, strict=True):
        marks.append(Lines(Pen.RULE, ((x, -SIGN_ROOM, x + half, -SIGN_ROOM),)))
        marks.append(Text(f"{name}; place, date", (x, -SIGN_ROOM - ASCENT * SMALL - 1 * MM), SMALL))
    strip = Strip(SIGN_ROOM + 2 * SMALL + 2 * MM, tuple(marks))
    return [heading_strip("Signed", above=GAP), *lead(paragraph_strips(AGREED, width)), strip]
