"""The cutting plans on paper: material by material every board as a bar and every sheet to scale.

What is cut from what is decided in model.cutting; how one board or sheet is drawn, in board_bar and
sheet_face.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence

from model.cutting.frozen import Outgrown, list_outgrown
from model.cutting.plan import CuttingPlan, GroupPlan, Sawn
from model.cutting.stock_list import wood_name
from model.cutting.task import SawnBoard, Stock, to_inches
from model.cutting.wording import describe_outgrown, describe_short
from model.money import format_money
from model.units import LengthStyle, format_length
from render.board_bar import Bars, bar_strips
from render.drawing import MM, Drawing
from render.sheet_face import sheet_strips
from render.tables import (
    Strip,
    heading_strip,
    lead,
    opening_strips,
    paragraph_strips,
    pour_strips,
    strips_height,
)

HOW = (
    "Lengths are to scale, widths larger. Cut from the end drawn on the left; trim that end first. Hatched "
    "is lost. A piece narrower than its strip is ripped once it is cut to length. Sizes are rough: scribe, "
    "trim and glue-up allowances are on them."
)
OUTGROWN = "Smaller since these boards were bought"
TRIM_LATER = "Drawn below at the size they were planned with; cut them so, then trim them to the size of now."
SHEETS_HIGH = 110 * MM
"""The most that a sheet is drawn high."""


def cutting_strips(
    plan: CuttingPlan,
    style: LengthStyle,
    width: float,
    bought: CuttingPlan | None = None,
    cut: Collection[int] = (),
) -> tuple[Strip, ...]:
    """Every board and sheet of a plan, and what could not be had, for a page `width` wide.

    Those `bought` already come first, under a heading of their own, each by itself; `cut` are the numbers of
    those that are sawn.
    """
    if bought is not None and bought.groups:
        done = frozenset(cut)
        groups = (_group_strips(g, f"{_say_count(g)}, bought.", style, width, done) for g in bought.groups)
        held = (
            *opening_strips("Bought already", HOW, width),
            *_outgrown_strips(list_outgrown(bought, plan.order), style, width),
            *(strip for group in groups for strip in group),
        )
        more = tuple(_list_planned(plan, style, width))
        return (*held, *([heading_strip("Still to buy or cut anew"), *more] if more else ()))
    planned = tuple(_list_planned(plan, style, width))
    return (*opening_strips("Cutting plans", HOW, width), *planned) if planned else ()


def _outgrown_strips(pieces: Sequence[Outgrown], style: LengthStyle, width: float) -> Iterator[Strip]:
    """Pieces that the design asks for smaller than they are drawn here."""
    if pieces:
        yield heading_strip(OUTGROWN, above=2 * MM)
        yield from paragraph_strips(TRIM_LATER, width)
        for piece in pieces:
            yield from paragraph_strips(describe_outgrown(piece, style), width)


def _list_planned(plan: CuttingPlan, style: LengthStyle, width: float) -> Iterator[Strip]:
    """What is still to be cut, with the notes on it; nothing where there is none."""
    if plan.groups or plan.short:
        for note in plan.order.notes:
            yield from paragraph_strips(note, width)
        for group in plan.groups:
            yield from _planned_strips(group, plan, style, width)
        yield from _short_strips(plan, style, width)


def _planned_strips(group: GroupPlan, plan: CuttingPlan, style: LengthStyle, width: float) -> Iterator[Strip]:
    return _group_strips(group, say_proof(group, plan.order.stock_list.currency), style, width)


def _group_strips(
    group: GroupPlan, words: str, style: LengthStyle, width: float, cut: frozenset[int] | None = None
) -> Iterator[Strip]:
    """Boards or sheets of one material, under its name and what is said of them all.

    Like ones are drawn once; but where they are bought each by itself, with those that are `cut` named.
    """
    yield heading_strip(title_of(group, style), above=3 * MM)
    yield from lead(paragraph_strips(words, width))
    yield Strip(MM, leads=True)
    longest = max(to_inches(stock.length) for stock in _used(group))
    if group.group.is_sheet:
        widest = max(to_inches(stock.width) for stock in _used(group))
        bars = Bars(min(width / longest, SHEETS_HIGH / widest), style, width, cut or frozenset())
        for sawn in group.sawn:
            yield from sheet_strips(sawn, group, bars)
    else:
        bars = Bars(width / longest, style, width, cut or frozenset())
        for alike in _group_alike(group.sawn) if cut is None else [[sawn] for sawn in group.sawn]:
            yield from bar_strips(alike, group, bars)


def _used(group: GroupPlan) -> list[Stock]:
    keys = {sawn.cut.stock for sawn in group.sawn}
    return [stock for stock in group.task.stock if stock.key in keys]


def _group_alike(sawn: Sequence[Sawn]) -> Iterable[list[Sawn]]:
    """Boards out of one stock with the same pieces in the same places, together."""
    alike: dict[object, list[Sawn]] = {}
    for each in sawn:
        assert isinstance(each.cut, SawnBoard)
        alike.setdefault(each.cut, []).append(each)
    return alike.values()


def title_of(group: GroupPlan, style: LengthStyle) -> str:
    """What a group is cut from: wood, kind and thickness; a moulding's section and size."""
    material = group.group.material
    wood = wood_name(material.wood)
    thick = format_length(material.thickness, style)
    if material.section:
        size = f"{thick} × {format_length(material.width, style)}"
        return f"{wood.capitalize()} moulding, {material.section.lower()} {size}"
    return f"{wood.capitalize()}, {thick} thick"


def say_proof(group: GroupPlan, currency: str) -> str:
    """What a group costs and how good its plan is, in a sentence."""
    proof, number = group.proof, _say_count(group)
    if not group.is_priced:
        wood = f"{proof.cost / 100:.1f} board feet"
        least = (
            "no plan takes less wood"
            if proof.is_proven
            else f"no plan takes less than {proof.bound / 100:.1f}"
        )
        return f"{number}, {wood}; {least}. No price is listed for any."
    cost = format_money(proof.cost, currency)
    if proof.is_proven:
        return f"{number}, {cost}. Proven: nothing cheaper exists."
    gap = format_money(proof.cost - proof.bound, currency)
    return f"{number}, {cost}. A cheaper plan could save {gap} at most."


def _say_count(group: GroupPlan) -> str:
    count = len(group.sawn)
    return f"{count} {'sheet' if group.group.is_sheet else 'board'}{'' if count == 1 else 's'}"


def _short_strips(plan: CuttingPlan, style: LengthStyle, width: float) -> Iterator[Strip]:
    """Pieces that nothing on the stock list holds, and what would."""
    if not plan.short:
        return
    yield heading_strip("Not to be had", above=3 * MM)
    for short in plan.short:
        yield from paragraph_strips(describe_short(short, short.marks, style), width)


def draw_cutting(
    plan: CuttingPlan,
    style: LengthStyle,
    width: float,
    bought: CuttingPlan | None = None,
    cut: Collection[int] = (),
) -> Drawing:
    """The same as one long drawing, paper inches, from (0, 0) downwards; a Region stands for its piece.

    What it stands for is read by render.board_bar.read_pieces.
    """
    strips = cutting_strips(plan, style, width, bought, cut)
    (page,) = pour_strips(strips, (0.0, 0.0), strips_height(strips))
    return Drawing(page)
