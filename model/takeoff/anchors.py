"""Where the nailers are anchored to the masonry, and whether the anchors carry the surround.

What one anchor may hold stands in model.reference.anchors and, for a job, in its own rows.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil
from typing import TYPE_CHECKING

from model.board import Board, StockKind
from model.build.behind import find_used
from model.build.nailers import CALLED, NAILERS
from model.once import once
from model.reference.anchors import MOST_FREE
from model.sentences import join_words
from model.takeoff.anchor_places import HAIR, Anchor, count_wanted, list_nailers, place_anchors
from model.takeoff.weight import Load, centre_of, list_loads, total_weight

if TYPE_CHECKING:
    from model.surround import Surround

OVER_STEP = (
    "Fix the overmantel's uprights plumb on the shelf and the strip between them, try it dry over "
    "them, scribe it to the wall, and nail it."
)
USED_STEP = (
    "The old ledger carries the shelf: pull-test each of its own fixings, and put an anchor through it "
    "beside each that gives, and near both its ends. How it is fixed is not known, so it is not planned here."
)
SETTLE = "settle first how each is held, as the checks say; what is not held carries nothing."
WHERE = {"ledger": "ledger to the level line", "cleat": "cleat behind the frieze"}
"""Where some of them go."""
STEP_ORDER = " Bed the notched foot on the hearth first, then scribe its leg to the floor."


@dataclass(frozen=True, slots=True)
class AnchorPlan:
    """All anchors, and what they carry: pounds `weight`, `lever` from the masonry to where it acts.

    `drop` is from the upper anchors down to where the feet bear; `tension` and `shear` are pounds on each
    upper anchor, `needed` how many the surround asks for, `used` tension and shear over what is allowed,
    added up: 1 is all of it. `loose` are the places in the list of boards of nailers that find no anchor,
    `partly` of those that find too few.
    """

    anchors: tuple[Anchor, ...]
    weight: float
    lever: float
    drop: float
    tension: float
    shear: float
    used: float
    needed: int
    loose: tuple[int, ...] = ()
    partly: tuple[int, ...] = ()

    @property
    def upper(self) -> int:
        """How many hold the top."""
        return sum(anchor.upper for anchor in self.anchors)

    @property
    def holds(self) -> bool:
        """Whether as many find room as are needed."""
        return self.upper >= self.needed


def plan_anchors(surround: Surround) -> AnchorPlan:
    """Anchors through every nailer, and the whole weight hung on the upper ones, as if no foot bore any."""
    return once(surround, plan_anchors, lambda: _plan(surround))


def measure_free(board: Board, anchors: Sequence[Anchor]) -> float:
    """The longest stretch of a nailer, in., from an end or an anchor to the next of `anchors`, its own."""
    along = 1 if board.length_axis == "y" else 0
    places = sorted((anchor.x, anchor.y)[along] for anchor in anchors)
    stops = [board.bounds[0][along], *places, board.bounds[1][along]]
    return max(far - near for near, far in pairwise(stops))


def _plan(surround: Surround) -> AnchorPlan:
    anchors = place_anchors(surround)
    loads = _list_hung(surround)
    weight, lever = total_weight(loads), max(centre_of(loads)[2], 0.0) if loads else 0.0
    rule, foot = surround.job.design.anchor, min(side.lowest for side in surround.layout.sides)
    upper = [anchor.y for anchor in anchors if anchor.upper]
    drop = (sum(upper) / len(upper) if upper else surround.layout.shelf_bottom) - foot
    share = weight * lever / drop / rule.tension + weight / rule.shear
    needed, count = max(2, ceil(share - HAIR)), len(upper)
    pull, hang = (weight * lever / drop / count, weight / count) if count else (0.0, 0.0)
    used = share / count if count else 0.0
    return AnchorPlan(
        anchors, weight, lever, drop, pull, hang, used, needed, *_list_not_held(surround, anchors)
    )


def _list_not_held(surround: Surround, anchors: Sequence[Anchor]) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Nailers without an anchor, and those with one where two are wanted or that lie free too far."""
    loose, partly, spacing = [], [], surround.job.design.anchor.spacing
    for i in list_nailers(surround):
        board, own = surround.boards[i], [anchor for anchor in anchors if anchor.board == i]
        if not own:
            loose.append(i)
        elif len(own) < min(2, count_wanted(board, spacing)) or (
            measure_free(board, own) > MOST_FREE.value * spacing + HAIR
        ):
            partly.append(i)
    return tuple(loose), tuple(partly)


def _list_hung(surround: Surround) -> list[Load]:
    """Everything but what is on the masonry already."""
    framing = {b.assembly for b in surround.boards if b.stock.kind is StockKind.FRAMING}
    return [load for load in list_loads(surround) if load.name not in framing]


def list_order(surround: Surround) -> tuple[str, ...]:
    """How it is fitted dry, levelled and fixed, one step to a line."""
    high = max(surround.layout.sides, key=lambda side: side.base)
    cord = surround.job.design.cord.on
    level = all(side.base == surround.layout.sides[0].base for side in surround.layout.sides)
    steps = [
        "Snap a level line on the masonry at the shelf's underside and a plumb one on its middle.",
        "Mark every anchor from the centre line and the hearth; move one that meets a crack or a head joint "
        "along the bed joint.",
        "Drill one hole in a bed joint and pull-test one anchor before drilling the rest.",
        *([USED_STEP] if find_used(surround.layout.behind) else []),
        *_list_unheld(surround),
        *_list_fixed(surround),
        "Try both columns dry over their uprights."
        + ("" if level else f" Begin at the {high.name} foot, the highest; shim the other.")
        + (STEP_ORDER if any(side.step for side in surround.layout.sides) else ""),
        "Set the frieze dry between the columns and check that all tops lie on the level line.",
        "Scribe feet and returns to hearth and masonry, take it down, cut, and try it once more.",
        *(["Bore the cord holes and draw the cords in before the shelf goes on."] if cord else []),
        "Fix columns, then frieze, then shelf; nail into the nailers only, and fit mouldings last.",
        *(
            [OVER_STEP]
            if any(board.role.startswith("overmantel nailer") for board in surround.boards)
            else []
        ),
    ]
    return tuple(f"{number}. {step}" for number, step in enumerate(steps, start=1))


def _list_unheld(surround: Surround) -> list[str]:
    """What is to be settled first where anchors do not hold every nailer."""
    plan = plan_anchors(surround)
    steps = []
    if plan.loose:
        marks = join_words([surround.marks[i] for i in plan.loose])
        steps.append(f"No sound place was found for an anchor through {marks}: {SETTLE}")
    if plan.partly:
        marks = join_words([surround.marks[i] for i in plan.partly])
        steps.append(f"Too few sound places were found for anchors through {marks}: {SETTLE}")
    return steps


def _list_fixed(surround: Surround) -> list[str]:
    """The nailers in the order they go up: ledger, cleat, uprights; only those there are."""
    own = [surround.boards[i] for i in list_nailers(surround) if surround.boards[i].assembly == NAILERS]
    roles = {board.role for board in own}
    found = [WHERE.get(called, called) for role, called in CALLED.items() if role in roles]
    if not found:
        return []
    first, *rest = found
    return [f"Fix the {', then the '.join([f'{first} first', *rest])}."]
