"""Whether the shelf holds what is put on it: its sag between the columns, and what pulls at its back edge."""

from __future__ import annotations

from collections.abc import Iterator

from model.board import Board
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.part import SHELF
from model.check.wording import Wording
from model.reference.bending import (
    CREEP,
    LEANING,
    NDS_SCREW,
    SAG_PER_FOOT,
    STIFFNESS,
    sag_between,
    screw_holds,
)
from model.reference.weights import SPECIFIC_GRAVITIES, WATER
from model.surround import Surround

SAG, FIXING = "shelf sag", "shelf fixing"
FEET, CUBIC_INCHES = 12.0, 1728.0
SCREW, THREAD = 0.164, 1.0
"""A no. 8 screw with 1 in. of thread in the ledger, in. Shop choice."""
SHARING = 2
"""Screws at 16 in. that share what pulls at one spot: the shelf is stiff enough. Shop choice."""


def check_holding(surround: Surround) -> Iterator[Finding]:
    """Sag, then the pull on the screws behind when somebody leans on the front edge."""
    members = [board for board in surround.boards if _runs_over_the_middle(board)]
    if members:
        yield _check_sag(surround, members)
        yield _check_pull(surround)


def _runs_over_the_middle(board: Board) -> bool:
    low, high = board.bounds
    return board.assembly == SHELF and board.axis == "x" and low[0] < 0 < high[0]


def _check_sag(surround: Surround, members: list[Board]) -> Finding:
    """As if only the columns carried it; a ledger and the frieze under it carry it all along."""
    wording, design = Wording(surround.job.about.length_style), surround.job.design
    span = surround.layout.left.inner_top + surround.layout.right.inner_top
    inertia, area = _section(members)
    species = design.board.species
    stiffness = STIFFNESS[species]
    density = WATER.value * SPECIFIC_GRAVITIES[species].value * (1 + surround.job.shop.rates.moisture / 100)
    load = design.shelf.load / FEET + area * density / CUBIC_INCHES
    first = sag_between(load, span, stiffness.value, inertia)
    least = SAG_PER_FOOT.value * span / FEET
    carried = surround.layout.strips[0] > HAIR
    fits = carried or first <= least + HAIR
    message = (
        f"With {design.shelf.load:g} lb to the foot and its own weight the shelf alone would sag "
        f"{first:.3f} in. over the {wording.distance(span)} between the columns, "
        f"{first * CREEP.value:.3f} in. in time; a shelf may sag {least:.3f} in. at first."
    )
    if carried:
        message += " The ledger behind and the frieze in front carry it all along."
    return Finding(
        check=SAG,
        rule="sag, 0.02 in. per ft",
        standing=SAG_PER_FOOT.standing,
        source=f"{SAG_PER_FOOT.source}; {stiffness.source}; {CREEP.source}",
        status=Status.PASS if fits else Status.WARN,
        part=SHELF,
        measured=None if carried else round(first, 4),
        limit=None if carried else round(least, 4),
        unit="in",
        message=message,
        cure="" if fits else "Make the frieze high enough for a ledger, or the shelf thicker.",
        path="shelf.thickness",
        bound=Bound.MOST,
    )


def _section(members: list[Board]) -> tuple[float, float]:
    """Moment of inertia about the level, and area, of boards that are not glued to each other: their sum."""
    sizes = [(b.bounds[1][1] - b.bounds[0][1], b.bounds[1][2] - b.bounds[0][2]) for b in members]
    return sum(deep * tall**3 / 12 for tall, deep in sizes), sum(deep * tall for tall, deep in sizes)


def _check_pull(surround: Surround) -> Finding:
    """Somebody leans on the front edge: the shelf turns about the frieze's front and pulls at its back."""
    layout, wording = surround.layout, Wording(surround.job.about.length_style)
    front = max(layout.shelf_foremost - layout.frieze_front, 0.0)
    behind = max(layout.frieze_front - layout.shelf_back, HAIR)
    pull = LEANING.value * front / behind
    holds = SHARING * screw_holds(SPECIFIC_GRAVITIES["framing"].value, SCREW, THREAD)
    fits = pull <= holds
    return Finding(
        check=FIXING,
        rule="pull on a screw",
        standing=NDS_SCREW.standing,
        source=f"{NDS_SCREW.source}; load: {LEANING.source}",
        status=Status.PASS if fits else Status.WARN,
        part=SHELF,
        measured=round(pull, 1),
        limit=round(holds, 1),
        unit="lb",
        message=(
            f"{LEANING.value:g} lb on the front edge, {wording.distance(front)} before the frieze, pull "
            f"{pull:.0f} lb at the back, {wording.distance(behind)} behind it; two no. 8 screws "
            f"with {wording.distance(THREAD)} of thread in the ledger may take {holds:.0f} lb by the "
            "standard's allowable value."
        ),
        cure=""
        if fits
        else "Let the shelf overhang less, let the frieze stand out more, or carry it on brackets.",
        path="shelf.overhang_front",
        bound=Bound.MOST,
    )
