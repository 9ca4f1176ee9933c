"""Whether the surround can be put together as asked and fits the room and the hearth it stands on."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from model.build.ledger import Shortfall
from model.build.lines import LEAST_LAYER, Side
from model.build.nailers import THINNEST, overmantel_hollow
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.part import SHELF
from model.check.plain import FIT, build_plain
from model.check.wording import Wording
from model.parameters import Kind, find_parameter
from model.sentences import capitalise
from model.surround import Surround

STILL_NAILED = 1.5
"""A strip that had to be trimmed still takes a row of nails if it is as high as this, in. Shop choice."""
TRIMMED = {"nailer.ledger": STILL_NAILED, "nailer.cleat": STILL_NAILED}
"""What may be built smaller than asked without harm, and the least that will do, in."""


def check_fit(surround: Surround) -> tuple[Finding, ...]:
    """What cannot be built as asked, then walls, ceiling and hearth."""
    wording = Wording(surround.job.about.length_style)
    return (
        *(_report_shortfall(shortfall, wording) for shortfall in surround.layout.shortfalls),
        *_check_walls(surround, wording),
        _check_ceiling(surround, wording),
        *_check_feet(surround, wording),
        *_check_overmantel(surround, wording),
    )


def _report_shortfall(shortfall: Shortfall, wording: Wording) -> Finding:
    """What was asked and what is drawn instead."""
    row = find_parameter(shortfall.path)
    count = row.kind is Kind.COUNT
    values = (shortfall.asked, shortfall.built)
    asked, built = (row.format(int(v) if count else v, wording.tape) for v in values)
    measured, limit = (None if isinstance(v, str) else v for v in values)
    name = capitalise(row.name)
    message = f"{name} {asked} cannot be built, since {shortfall.reason}; {built} is drawn."
    cure = f"Settle for {built}, or change what is in its way."
    harmless = isinstance(shortfall.built, float) and shortfall.built >= TRIMMED.get(shortfall.path, inf)
    return build_plain(
        FIT,
        Status.WARN if harmless else Status.FAIL,
        row.group.lower(),
        message,
        shortfall.path,
        cure,
        measured,
        limit,
        "in" if row.kind is Kind.LENGTH else "",
        Bound.MOST if measured is not None and limit is not None and measured > limit else Bound.LEAST,
    )


def _check_walls(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """The surround against the wall that is free on either side."""
    layout, room = surround.layout, surround.job.site.room
    for side, free in ((layout.left, room.left), (layout.right, room.right)):
        foot = max(side.outer, side.outer_top) + layout.round_columns
        reach = max(side.shelf_side, foot) - layout.opening_side
        needs, has = wording.distance(reach), wording.distance(free)
        edge = f"the opening's {side.name} edge"
        message = f"The surround reaches {needs} beyond {edge}; {has} of wall is free there."
        status, path, cure = Status.PASS, "shelf.overhang_end", ""
        if reach > free + HAIR:
            status = Status.FAIL
            feet_fit = foot - layout.opening_side <= free + HAIR
            path, cure = _cure_reach(surround, side, reach - free, feet_fit, wording)
        yield build_plain(
            FIT, status, f"{side.name} side", message, path, cure, reach, free, bound=Bound.MOST
        )


def _cure_reach(
    surround: Surround, side: Side, over: float, feet_fit: bool, wording: Wording
) -> tuple[str, str]:
    """Shorten the shelf's end there where that is enough, else bring the columns in."""
    design = surround.job.design
    overhang = side.shelf_side - side.outer_top - over
    if overhang >= 0 and feet_fit:
        return (
            f"shelf.overhang_{side.name}",
            f"Let the shelf's {side.name} end overhang no more than {wording.at_most(overhang)}.",
        )
    margin = design.column.margin - over
    if margin < 0:
        return "column.width", "Make the columns narrower; the wall beside the opening is too short for them."
    place = wording.at_most(margin)
    return (
        "column.margin",
        f"Set the columns no more than {place} from the opening, if the clearances allow it.",
    )


def _check_ceiling(surround: Surround, wording: Wording) -> Finding:
    layout = surround.layout
    top, limit = layout.shelf_top - layout.floor, layout.ceiling - layout.floor
    fits = top <= limit + HAIR
    message = (
        f"The shelf's top lies {wording.mark(top)} over the floor; the ceiling is at {wording.mark(limit)}."
    )
    cure = "" if fits else f"Lower the shelf by at least {wording.at_least(top - limit)}."
    status = Status.PASS if fits else Status.FAIL
    return build_plain(FIT, status, SHELF, message, "shelf.height", cure, top, limit, bound=Bound.MOST)


def _check_feet(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """Columns that a raised hearth carries only in part."""
    layout, site = surround.layout, surround.job.site
    if site.hearth.height <= HAIR:
        return
    clear = layout.right.inner - layout.plinth_out >= layout.hearth_side - HAIR
    carried_in_part = [side for side in layout.sides if not (side.on_hearth or clear or side.step)]
    if not carried_in_part:
        return
    outside = max(side.outer for side in carried_in_part) + layout.plinth_out
    if outside > layout.hearth_side + HAIR:
        margin = wording.at_least(layout.hearth_side + layout.plinth_out - layout.opening_side)
        message = "The columns stand half on the raised hearth and half beyond its end."
        cure = (
            f"Set the columns at least {margin} from the opening so that they stand on the floor, "
            f"widen the hearth to {wording.at_least(2 * outside)}, or let the columns step down to the floor."
        )
        yield build_plain(
            FIT,
            Status.FAIL,
            "plinths",
            message,
            "column.margin",
            cure,
            outside,
            layout.hearth_side,
            bound=Bound.MOST,
        )
        return
    front, depth = layout.plinth_front, layout.hearth_front
    out, deep = wording.distance(front), wording.distance(depth)
    message = f"The plinths stand out {out}; the raised hearth is {deep} deep."
    cure = f"Let the columns stand out less, or bring the hearth out to {wording.at_least(front)}."
    yield build_plain(
        FIT, Status.FAIL, "plinths", message, "column.projection", cure, front, depth, bound=Bound.MOST
    )


def _check_overmantel(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """A hollow behind the overmantel that is too shallow for anything to nail its face to."""
    over = surround.layout.over
    if over is None:
        return
    hollow = overmantel_hollow(surround.layout, over)
    if LEAST_LAYER <= hollow < THINNEST:
        has, needs = wording.distance(hollow), wording.distance(THINNEST)
        message = f"Behind the overmantel {has} is hollow; a nailer there needs {needs}, and none is drawn."
        cure = (
            f"Let the overmantel stand out {wording.at_least(THINNEST - hollow)} more, "
            "or fix its returns and rails through to the wall."
        )
        yield build_plain(FIT, Status.WARN, "overmantel", message, "over.projection", cure, hollow, THINNEST)
