"""A first design from the measurements alone: clear of the fire, of boards as they are sold, in proportion.

What kinds of faces there are, the boards and their wood stay as the job has them; every size is set anew. The
sizes that keep clear of the fire are found on the real model, as cures are.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import product
from math import ceil

from model.board import StockKind
from model.check.all import check_surround
from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.in_force import read_statuses
from model.check.mantel import CHECK as MANTEL
from model.check.part import stands_beside
from model.check.plain import FIT
from model.check.remedy import find_remedies
from model.check.wording import Wording
from model.errors import Refused
from model.job import Job, default_job, with_value
from model.reference.clearance import BUILD_TOLERANCE
from model.reference.lumber import DRESSED_WIDTHS
from model.reference.proportion import (
    ARCHITRAVE_TO_OPENING_HIGH,
    ARCHITRAVE_TO_OPENING_LOW,
    CARVED_FRIEZE_TO_HEAD,
    CORINTHIAN_DIAMETERS,
    CORINTHIAN_TO_OPENING,
    CORINTHIAN_TO_OPENING_SEEMLY,
    ENTABLATURE_TO_COLUMN,
    FRIEZE_TO_ARCHITRAVE,
    INDOOR_ENTABLATURE_TO_COLUMN,
    SHELF_OVER_FLOOR_HIGH,
    SHELF_OVER_FLOOR_LOW,
    TUSCAN_DIAMETERS,
)
from model.surround import Surround, plan_surround
from model.takeoff.cut_list import list_cuts

GUIDES = ("usual", "orders", "indoors", "le_muet", "serlio")
"""The proportion a first design follows: usual heights, an entablature of a quarter or a fifth, an architrave
or a pilaster measured by the opening."""

FACES = (5.5, 7.25, 9.25, 4.5)
RETURNS = (3.5, 2.5, 1.5)
FRIEZES = (9.25, 7.25, 11.25, 5.5)
"""Boards as they are sold, for column faces, returns and a plain frieze, in., the usual ones first. PS 20."""
SHELF_TOPS = (7.25, 5.5)
PLINTH, BAND, STILE, FRIEZE_STILE = 7.25, 1.5, 1.5, 2.5
"""The same for the shelf, plinth, edge band and the members of framed faces."""
MOULD = 2.0
"""Bed mould, in.: with a framed frieze's rail it takes a board of 3 1/2 in. Shop choice."""
BACK = 1.0
"""How far the frieze stays behind the columns' faces, in. Shop choice."""
STEP = 0.25
"""Sizes that no board decides are set in whole steps of this, in. Shop choice."""
LOWEST, HIGHEST = 30.0, 108.0
"""Lowest and highest shelf, in., as the table has them."""
OVER_OPENING, OVER_HEARTH, UNDER_CEILING = 36.0, 48.0, 6.0
"""How far over the opening a shelf is set at first, how high at least, and how far under the ceiling, in.

From there it is let down as far as the rules allow. Shop choice."""
WIDEST_MARGIN = 48.0
"""Furthest that columns are tried beside the opening, in. Shop choice."""
LEAST_OVER = 3.0
"""Of facing shown over the opening, where the rules ask for less, in. Shop choice."""
MOST_CURES = 6
"""Cures that are made one after the other, at most."""
ABOUT = 2 * len(RETURNS) * len(FACES) * len(FRIEZES)
"""Sizes that are tried at most."""
WARNED, RIPPED = 0.05, 0.01
"""What a caution and a ripped board weigh beside being off the guide by a hundredth of its size."""


@dataclass(frozen=True, slots=True)
class FirstDesign:
    """A job sized anew: of how many solid boards, how many of them ripped, and what is still over."""

    job: Job
    boards: int
    ripped: int
    left: tuple[Finding, ...]


def size_first_design(
    job: Job, guide: str = "usual", step: Callable[[float, str], object] = lambda done, words: None
) -> FirstDesign | None:
    """The design that follows the guide best among those that pass; None where no clearance is known.

    `guide` is one of GUIDES. `step` is told which part is done, and may raise to end it.
    """
    job = _start(job)
    if not read_statuses(plan_surround(job)):
        return None
    rated: list[tuple[tuple[int, float], Job]] = []
    for one in _list_candidates(job, guide):
        step(min(len(rated) / ABOUT, 0.95), "Trying sizes")
        rated.append((_rate(plan_surround(one), guide), one))
    return _finish(min(rated, key=lambda pair: pair[0])[1] if rated else job)


def _start(job: Job) -> Job:
    """The job with its site, its kinds of faces and its boards, and a plain design otherwise."""
    plain, old = default_job().design, job.design
    design = replace(
        plain,
        column=replace(plain.column, kind=old.column.kind, stile=STILE, rail=3.5 - 0.75),
        frieze=replace(plain.frieze, kind=old.frieze.kind, stile=FRIEZE_STILE, rail=BAND),
        board=old.board,
        panel=old.panel,
        plinth=replace(plain.plinth, height=PLINTH, projection=old.board.thickness),
        own_section=old.own_section,
        nailer=old.nailer,
        anchor=old.anchor,
        cord=old.cord,
        shelf=replace(
            plain.shelf,
            height_from=old.shelf.height_from,
            thickness=2 * old.board.thickness,
            edge_height=2 * old.board.thickness,
        ),
        bed_mould=replace(plain.bed_mould, size=MOULD),
    )
    return replace(job, design=design)


def _list_candidates(job: Job, guide: str) -> Iterator[Job]:
    """Sizes that are clear of the fire, those first that are most usual."""
    for back in RETURNS:
        shelves = (_set_depths(job, back, top) for top in SHELF_TOPS)
        clear = next((clear for deep in shelves if deep and (clear := _clear(deep))), None)
        if clear is None:
            continue
        for face, frieze in product(FACES, FRIEZES):
            for lift in (0.0, *_list_lifts(clear, guide, frieze)):
                height = _on_tape(clear, _height(clear, frieze) + lift)
                sizes = (("column.width", face), ("frieze.height", frieze), ("shelf.height", height))
                sized = _set(clear, *sizes)
                if sized is not None:
                    yield sized


def _set_depths(job: Job, back: float, top: float) -> Job | None:
    """Returns and shelf out of boards `back` and `top` wide."""
    board = job.design.board.thickness
    return _set(
        job,
        ("column.projection", back + board),
        ("frieze.projection", max(back + board - BACK, 1.5 + board)),
        ("shelf.depth", top + board),
    )


def _set(job: Job, *values: tuple[str, float]) -> Job | None:
    """The job with these sizes; None where one is out of bounds."""
    try:
        for path, value in values:
            job = with_value(job, path, value)
    except Refused:
        return None
    return job


def _clear(job: Job) -> Job | None:
    """The columns as near to the opening and the frieze as low over it as the rules and a tolerance allow."""
    spare = BUILD_TOLERANCE.value
    ceiling = job.site.room.ceiling
    high = min(max(job.site.opening.height + OVER_OPENING, OVER_HEARTH), ceiling - UNDER_CEILING, HIGHEST)
    job = with_value(job, "shelf.height", high)
    beside = _least(job, "column.margin", [i * STEP for i in range(int(WIDEST_MARGIN / STEP))], beside=True)
    if beside is None:
        return None
    job = with_value(job, "column.margin", _on_tape(job, beside + spare if beside else STEP))
    start = max(high - (_bottom(job, high) - job.site.opening.height - LEAST_OVER), LOWEST)
    heights = [start + i * STEP for i in range(int(max(ceiling - start, 0) / STEP) + 1)]
    above = _least(job, "shelf.height", heights, beside=False)
    if above is None:
        return None
    return _set(job, ("shelf.height", _on_tape(job, above + spare)))


def _on_tape(job: Job, value: float) -> float:
    """`value` rounded up to a step of the job's tape."""
    step = Wording(job.about.length_style).step
    return ceil(value / step - HAIR) * step


def _least(job: Job, path: str, values: list[float], beside: bool) -> float | None:
    """The first of rising values that leaves no part on that side of the opening over."""

    def passes(value: float) -> bool:
        tried = _set(job, (path, value))
        statuses = read_statuses(plan_surround(tried)) if tried else {"": Status.FAIL}
        return not any(s is Status.FAIL for part, s in statuses.items() if stands_beside(part) is beside)

    low, high = 0, len(values) - 1
    if not values or not passes(values[high]):
        return None
    while low < high:
        middle = (low + high) // 2
        low, high = (low, middle) if passes(values[middle]) else (middle + 1, high)
    return values[low]


def _bottom(job: Job, height: float) -> float:
    """The frieze's lower edge over the hearth where the shelf's top is `height` over where it counts from."""
    from_floor = job.design.shelf.height_from == "floor"
    over = height - job.site.hearth.height if from_floor else height
    return over - job.design.shelf.thickness - job.design.frieze.height


def _height(job: Job, frieze: float) -> float:
    """The shelf's height with another frieze whose lower edge stays where it is."""
    return job.design.shelf.height - job.design.frieze.height + frieze


def _list_lifts(job: Job, guide: str, frieze: float) -> Iterator[float]:
    """How much higher the shelf would have to be for the guide."""
    bottom = _bottom(job, job.design.shelf.height)
    over = bottom + frieze + job.design.shelf.thickness
    wanted = SHELF_OVER_FLOOR_LOW.value - job.site.hearth.height - over
    ratio = {"orders": ENTABLATURE_TO_COLUMN, "indoors": INDOOR_ENTABLATURE_TO_COLUMN}.get(guide)
    if ratio is not None:
        wanted = (frieze + job.design.shelf.thickness) / ratio.value - bottom
    if wanted > 0:
        yield round(wanted / STEP) * STEP


def _rate(surround: Surround, guide: str) -> tuple[int, float]:
    """What is over counts first; then how far it is off the guide, with what is cautioned and ripped."""
    findings = check_surround(surround)
    over = sum(f.status is Status.FAIL for f in findings)
    warned = sum(f.status is Status.WARN for f in findings)
    off = sum(_list_off(surround, guide))
    return over, off + WARNED * warned + RIPPED * _count_ripped(surround)[1]


def _list_off(surround: Surround, guide: str) -> Iterator[float]:
    """By which part of itself each proportion of the guide is missed."""
    layout, opening = surround.layout, surround.job.site.opening
    width, column = layout.right.width, layout.frieze_bottom - layout.right.base
    head = layout.shelf_top - layout.frieze_bottom
    frieze = layout.shelf_bottom - layout.frieze_bottom
    over_floor = layout.shelf_top - layout.floor
    yield 0.5 * _off(over_floor, SHELF_OVER_FLOOR_LOW.value, SHELF_OVER_FLOOR_HIGH.value)
    if guide in ("orders", "indoors"):
        share = ENTABLATURE_TO_COLUMN if guide == "orders" else INDOOR_ENTABLATURE_TO_COLUMN
        yield _off(head, column * share.value, column * share.value)
        yield _off(width, column / CORINTHIAN_DIAMETERS.value, column / TUSCAN_DIAMETERS.value)
    elif guide == "le_muet":
        low, high = ARCHITRAVE_TO_OPENING_LOW.value, ARCHITRAVE_TO_OPENING_HIGH.value
        yield _off(width, opening.width * low, opening.width * high)
        yield _off(frieze, width * FRIEZE_TO_ARCHITRAVE.value, width * FRIEZE_TO_ARCHITRAVE.value)
    elif guide == "serlio":
        low, high = CORINTHIAN_TO_OPENING_SEEMLY.value, CORINTHIAN_TO_OPENING.value
        yield _off(width, opening.width * low, opening.width * high)
        yield _off(frieze, width * CARVED_FRIEZE_TO_HEAD.value, width * CARVED_FRIEZE_TO_HEAD.value)
    else:
        low, high = CORINTHIAN_TO_OPENING_SEEMLY.value, ARCHITRAVE_TO_OPENING_HIGH.value
        yield _off(width, opening.width * low, opening.width * high)


def _off(own: float, low: float, high: float) -> float:
    nearest = min(max(own, low), high)
    return abs(own - nearest) / nearest


def _finish(job: Job) -> FirstDesign:
    """Cure what is left, in the order of the findings, as far as that puts nothing else over."""
    for _ in range(MOST_CURES):
        surround = plan_surround(job)
        over = [f for f in check_surround(surround) if f.status is Status.FAIL and _is_wood(f)]
        sound = (r for f in over for r in find_remedies(surround, f) if not (r.breaks or r.builds_masonry))
        remedy = next(sound, None)
        if remedy is None:
            break
        job = remedy.apply(job)
    surround = plan_surround(job)
    left = tuple(f for f in check_surround(surround) if f.status is Status.FAIL)
    boards, ripped = _count_ripped(surround)
    return FirstDesign(job, boards, ripped, left)


def _is_wood(finding: Finding) -> bool:
    return finding.check in (MANTEL, FIT)


def _count_ripped(surround: Surround) -> tuple[int, int]:
    """Pieces of solid board, and how many of them are narrower than any board sold."""
    widths = DRESSED_WIDTHS.values()
    solid = [
        (len(cut.pieces), any(abs(cut.width - width) < 1e-6 for width in widths))
        for cut in list_cuts(surround)
        if cut.pieces and _stock_kind(surround, cut.pieces[0]) is StockKind.BOARD
    ]
    return sum(count for count, _ in solid), sum(count for count, sold in solid if not sold)


def _stock_kind(surround: Surround, mark: str) -> StockKind:
    return surround.boards[surround.marks.index(mark)].stock.kind
