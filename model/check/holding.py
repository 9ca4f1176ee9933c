"""Whether the shelf holds what is put on it: its sag between the columns, and what pulls at its back edge."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from model.board import Board, Point2
from model.build.behind import find_used
from model.build.nailers import SHELF_NAILER
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.part import SHELF
from model.check.wording import Wording
from model.measures import CUBIC_INCHES
from model.reference.bending import (
    CREEP,
    FULL_LOAD,
    HEAVY,
    LEANING,
    NDS_SCREW,
    SAG_PER_FOOT,
    STIFFNESS,
    sag_between,
    sag_under,
    screw_holds,
)
from model.reference.nails import SCREW_DIAMETER, SCREW_THREAD
from model.reference.sourced import Sourced
from model.reference.weights import SPECIFIC_GRAVITIES, WATER
from model.sentences import capitalise
from model.surround import Surround
from model.takeoff.anchors import plan_anchors
from model.units import INCHES_PER_FOOT

SAG, WEIGHED, FIXING = "shelf sag", "shelf under a weight", "shelf fixing"
OLD = "the old ledger"
SHARING = 2
"""Screws at 16 in. that share what pulls at one spot: the shelf is stiff enough. Shop choice."""


@dataclass(frozen=True, slots=True)
class Sag:
    """The shelf as a beam between the columns: inches, psi, inches to the fourth, lb per in.

    `load` is what stands on it, `own` its own weight, `first` its sag at once and `most` what it may be;
    `heavy` is how much further a weight at its middle bends it, and `full` what it may be then; `carried`
    says that a ledger that is held and the frieze hold it up all along, `ledger` that there is one at all.
    """

    span: float
    load: float
    own: float
    stiffness: Sourced
    inertia: float
    first: float
    most: float
    heavy: float
    full: float
    carried: bool
    ledger: bool

    @property
    def weighed(self) -> float:
        """Its sag with the weight at its middle, in."""
        return self.first + self.heavy


@dataclass(frozen=True, slots=True)
class Pull:
    """Somebody leans on the front edge: it lies `front` in. before the frieze's face, over which the shelf
    turns, the screws `behind` in. behind it; what they feel and what they may, lb.

    `thread` is what of each is in the ledger, in., `ledger` its mark, empty where none is held: then they
    hold nothing.
    """

    front: float
    behind: float
    pull: float
    holds: float
    thread: float
    ledger: str


def check_holding(surround: Surround) -> Iterator[Finding]:
    """Sag, under a weight at the middle too where nothing carries it, and the pull on the screws behind."""
    sag = work_out_sag(surround)
    if sag is not None:
        yield _report_sag(surround, sag)
        if not sag.carried:
            yield _report_weight(sag)
        yield _report_pull(surround, work_out_pull(surround))


def work_out_sag(surround: Surround) -> Sag | None:
    """As if only the columns carried it; None for a shelf that no single board runs the length of."""
    members = [board for board in surround.boards if _runs_over_the_middle(board)]
    if not members:
        return None
    design = surround.job.design
    span = surround.layout.left.inner_top + surround.layout.right.inner_top
    inertia, area = _section(members)
    species = design.board.species
    stiffness = STIFFNESS[species]
    density = WATER.value * SPECIFIC_GRAVITIES[species].value * (1 + surround.job.shop.rates.moisture / 100)
    load, own = design.shelf.load / INCHES_PER_FOOT, area * density / CUBIC_INCHES
    first = sag_between(load + own, span, stiffness.value, inertia)
    carried = bool(_find_bearing(surround))
    heavy = sag_under(HEAVY.value, span, stiffness.value, inertia)
    most, full = SAG_PER_FOOT.value * span / INCHES_PER_FOOT, FULL_LOAD.value * span
    ledger = surround.layout.strips[0] > HAIR
    return Sag(span, load, own, stiffness, inertia, first, most, heavy, full, carried, ledger)


def _list_held(surround: Surround) -> list[int]:
    """Places of the ledger's boards that have their anchors."""
    plan = plan_anchors(surround)
    ledgers = [i for i, board in enumerate(surround.boards) if board.role == SHELF_NAILER]
    return [i for i in ledgers if i not in plan.loose and i not in plan.partly]


def _covers(surround: Surround, spans: Iterable[Point2]) -> bool:
    """Whether together they run along half of the way between the columns, or more."""
    inner = surround.layout.column_inner
    return sum(min(high, inner) - max(low, -inner) for low, high in spans) >= inner


def _find_bearing(surround: Surround) -> str:
    """What carries the shelf's back, by its mark: a ledger that is held, or the old one; empty where none
    runs along half of the way between the columns."""
    held, old = _list_held(surround), find_used(surround.layout.behind)
    spans = [(low[0], high[0]) for low, high in (surround.boards[i].bounds for i in held)]
    if held and _covers(surround, spans):
        return surround.marks[held[0]]
    return OLD if old is not None and _covers(surround, [*spans, old.x]) else ""


def work_out_pull(surround: Surround) -> Pull:
    """The shelf turns about the frieze's front and pulls at its back."""
    layout = surround.layout
    front = max(layout.shelf_foremost - layout.frieze_front, 0.0)
    behind = max(layout.frieze_front - layout.shelf_back, HAIR)
    ledger = _find_bearing(surround)
    high = min((surround.boards[i].extent("y") for i in _list_held(surround)), default=SCREW_THREAD.value)
    thread = min(SCREW_THREAD.value if ledger == OLD else high, SCREW_THREAD.value)
    one = screw_holds(SPECIFIC_GRAVITIES["framing"].value, SCREW_DIAMETER.value, thread)
    return Pull(
        front, behind, LEANING.value * front / behind, SHARING * one if ledger else 0.0, thread, ledger
    )


def _runs_over_the_middle(board: Board) -> bool:
    low, high = board.bounds
    return board.assembly == SHELF and board.axis == "x" and low[0] < 0 < high[0]


def _section(members: list[Board]) -> tuple[float, float]:
    """Moment of inertia about the level, and area, of boards that are not glued to each other: their sum."""
    sizes = [(b.bounds[1][1] - b.bounds[0][1], b.bounds[1][2] - b.bounds[0][2]) for b in members]
    return sum(deep * tall**3 / 12 for tall, deep in sizes), sum(deep * tall for tall, deep in sizes)


def _report_sag(surround: Surround, sag: Sag) -> Finding:
    wording = Wording(surround.job.about.length_style)
    fits = sag.carried or sag.first <= sag.most + HAIR
    message = (
        f"With {surround.job.design.shelf.load:g} lb to the foot and its own weight the shelf alone would "
        f"sag {sag.first:.3f} in. over the {wording.distance(sag.span)} between the columns, "
        f"{sag.first * CREEP.value:.3f} in. in time; a shelf may sag {sag.most:.3f} in. at first."
    )
    if sag.carried:
        message += " The ledger behind and the frieze in front carry it all along."
    elif sag.ledger:
        message += " The ledger behind is not held all along, and counts for nothing."
    return Finding(
        check=SAG,
        rule="sag, 0.02 in. per ft",
        standing=SAG_PER_FOOT.standing,
        source=f"{SAG_PER_FOOT.source}; {sag.stiffness.source}; {CREEP.source}",
        status=Status.PASS if fits else Status.WARN,
        part=SHELF,
        measured=None if sag.carried else round(sag.first, 4),
        limit=None if sag.carried else round(sag.most, 4),
        unit="in",
        message=message,
        cure="" if fits else _say_stiffer(sag),
        path="shelf.thickness",
        bound=Bound.MOST,
    )


def _say_stiffer(sag: Sag) -> str:
    first = "See that the ledger is anchored" if sag.ledger else "Give the frieze room for a ledger behind it"
    return f"{first}, or make the shelf thicker."


def _report_weight(sag: Sag) -> Finding:
    fits = sag.weighed <= sag.full + HAIR
    message = (
        f"With {HEAVY.value:g} lb at its middle besides, the shelf would sag {sag.weighed:.3f} in., "
        f"{sag.heavy:.3f} in. of it by that weight; under its full load it may sag {sag.full:.3f} in., a "
        "144th of its span."
    )
    return Finding(
        check=WEIGHED,
        rule="sag, a 144th of the span",
        standing=HEAVY.standing,
        source=f"{FULL_LOAD.source}; the weight: {HEAVY.source}; {sag.stiffness.source}",
        status=Status.PASS if fits else Status.WARN,
        part=SHELF,
        measured=round(sag.weighed, 4),
        limit=round(sag.full, 4),
        unit="in",
        message=message,
        cure="" if fits else _say_stiffer(sag),
        path="shelf.thickness",
        bound=Bound.MOST,
    )


def _report_pull(surround: Surround, found: Pull) -> Finding:
    wording = Wording(surround.job.about.length_style)
    fits = found.pull <= found.holds
    ease = "let the shelf overhang less, let the frieze stand out more, or carry it on brackets."
    cure = capitalise(ease) if found.ledger else f"Give the shelf a ledger that is anchored, or {ease}"
    message = (
        f"{LEANING.value:g} lb on the front edge, {wording.distance(found.front)} before the frieze, pull "
        f"{found.pull:.0f} lb at the back, {wording.distance(found.behind)} behind it; "
    )
    return Finding(
        check=FIXING,
        rule="pull on a screw",
        standing=NDS_SCREW.standing,
        source=f"{NDS_SCREW.source}; load: {LEANING.source}",
        status=Status.PASS if fits else Status.WARN,
        part=SHELF,
        measured=round(found.pull, 1),
        limit=round(found.holds, 1),
        unit="lb",
        message=message + _say_held(found, wording),
        cure="" if fits else cure,
        path="shelf.overhang_front",
        bound=Bound.MOST,
    )


def _say_held(found: Pull, wording: Wording) -> str:
    if not found.ledger:
        return "no ledger that is held all along takes its screws."
    its_own = ", if that holds itself: pull-test it" if found.ledger == OLD else ""
    return (
        f"two no. 8 screws with {wording.distance(found.thread)} of thread in {found.ledger} may take "
        f"{found.holds:.0f} lb by the standard's allowable value{its_own}."
    )
