"""Where the nailers are anchored to the masonry, and whether the anchors carry the surround.

What one anchor may hold stands in model.reference.anchors and, for a job, in its own rows.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, hypot
from typing import TYPE_CHECKING

from model.board import Board, Point2, StockKind
from model.build.behind import BOLT, find_used
from model.build.lines import Layout
from model.build.nailers import PACKING
from model.build.obstacles import Obstacle
from model.fixing import AnchorRule
from model.reference.anchors import LEAST_APART
from model.takeoff.weight import Load, centre_of, list_loads, total_weight

if TYPE_CHECKING:
    from model.surround import Surround

END = 2.0
"""From a nailer's end to its first anchor, in., so that it does not split. Shop choice."""
HAIR = 1e-6
OVER_STEP = (
    "Fix the overmantel's uprights plumb on the shelf and the strip between them, try it dry over "
    "them, scribe it to the wall, and nail it."
)
USED_STEP = (
    "The old ledger carries the shelf: pull-test each of its own fixings, and put an anchor through it "
    "beside each that gives, and near both its ends. How it is fixed is not known, so it is not planned here."
)
STEP_ORDER = " Bed the notched foot on the hearth first, then scribe its leg to the floor."
MASONRY, WALL = "masonry", "wall framing"


@dataclass(frozen=True, slots=True)
class Anchor:
    """One anchor: x from the opening's centre line, y over the hearth, and the nailer it goes through.

    `board` is that nailer's index. `upper` ones lie high enough to hold the surround up; an overmantel's own,
    over the shelf, are not among them. `into` is MASONRY, or WALL for a screw into the framing beside the
    facing, which is planned to hold no more.
    """

    x: float
    y: float
    board: int
    upper: bool
    into: str


@dataclass(frozen=True, slots=True)
class AnchorPlan:
    """All anchors, and what they carry: pounds `weight`, `lever` from the masonry to where it acts.

    `drop` is from the upper anchors down to where the feet bear; `tension` and `shear` are pounds on each
    upper anchor, `needed` how many the surround asks for, `used` tension and shear over what is allowed,
    added up: 1 is all of it.
    """

    anchors: tuple[Anchor, ...]
    weight: float
    lever: float
    drop: float
    tension: float
    shear: float
    used: float
    needed: int

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
    anchors = _place(surround)
    loads = _list_hung(surround)
    weight, lever = total_weight(loads), max(centre_of(loads)[2], 0.0) if loads else 0.0
    rule, foot = surround.job.design.anchor, min(side.lowest for side in surround.layout.sides)
    upper = [anchor.y for anchor in anchors if anchor.upper]
    drop = (sum(upper) / len(upper) if upper else surround.layout.shelf_bottom) - foot
    share = weight * lever / drop / rule.tension + weight / rule.shear
    needed, count = max(2, ceil(share - HAIR)), len(upper)
    pull, hang = (weight * lever / drop / count, weight / count) if count else (0.0, 0.0)
    return AnchorPlan(anchors, weight, lever, drop, pull, hang, share / count if count else 0.0, needed)


def _list_hung(surround: Surround) -> list[Load]:
    """Everything but what is on the masonry already."""
    framing = {b.assembly for b in surround.boards if b.stock.kind is StockKind.FRAMING}
    return [load for load in list_loads(surround) if load.name not in framing]


def _place(surround: Surround) -> tuple[Anchor, ...]:
    layout, rule = surround.layout, surround.job.design.anchor
    middle = layout.shelf_bottom / 2
    found: list[Anchor] = []
    for i, board in enumerate(surround.boards):
        if board.stock.kind is not StockKind.FRAMING or board.role == PACKING:
            continue  # packing is screwed down to the ledger below it
        on_wall = board.bounds[0][2] == layout.wall
        for x, y in (_beside_bolts(layout, rule, board, spot) for spot in _list_spots(board, rule)):
            into = WALL if on_wall and _is_beside_facing(layout, x, y) else MASONRY
            sound = into == WALL or (board.bounds[0][2] == 0.0 and _is_sound(surround, x, y))
            sound = sound and not _meets_bolt(layout, rule, x, y)
            if sound and not _is_crowded(found, x, y):
                found.append(Anchor(x, y, i, middle < y < layout.shelf_top, into))
    return tuple(found)


def _list_spots(board: Board, rule: AnchorRule) -> list[Point2]:
    """Along the nailer's middle, one near each end and the rest no further apart than asked."""
    (x0, y0, _), (x1, y1, _) = board.bounds
    if board.length_axis == "y":
        return [((x0 + x1) / 2, y) for y in _share(y0, y1, rule.spacing)]
    return [(x, (y0 + y1) / 2) for x in _share(x0, x1, rule.spacing)]


def _share(low: float, high: float, spacing: float) -> list[float]:
    if high - low < 4 * END:
        return [(low + high) / 2]
    first, last = low + END, high - END
    bays = max(1, ceil((last - first) / spacing - HAIR))
    return [first + (last - first) * i / bays for i in range(bays + 1)]


def _is_sound(surround: Surround, x: float, y: float) -> bool:
    """Far enough from the opening, its lintel and the masonry's own edges, and above the hearth."""
    layout, rule = surround.layout, surround.job.design.anchor
    over = layout.opening_top + max(rule.edge, rule.lintel)
    off_opening = abs(x) >= layout.opening_side + rule.edge - HAIR or y >= over - HAIR
    within = abs(x) <= layout.facing_side - rule.edge + HAIR and y <= layout.facing_top - rule.edge + HAIR
    return off_opening and within and y >= END - HAIR


def _meets_bolt(layout: Layout, rule: AnchorRule, x: float, y: float) -> bool:
    """Nearer to a bolt left in the masonry than an anchor may be to an edge."""
    bolts = [o for o in layout.behind if o.kind == BOLT]
    return any(_off_bolt(bolt, x, y) < rule.edge - HAIR for bolt in bolts)


def _off_bolt(bolt: Obstacle, x: float, y: float) -> float:
    """From the bolt's side."""
    middle = [sum(span) / 2 for span in (bolt.x, bolt.y)]
    return hypot(x - middle[0], y - middle[1]) - (bolt.x[1] - bolt.x[0]) / 2


def _beside_bolts(layout: Layout, rule: AnchorRule, board: Board, spot: Point2) -> Point2:
    """`spot`, or the nearest place along the nailer that is clear of every bolt."""
    if not layout.behind or not _meets_bolt(layout, rule, *spot):
        return spot
    i = 1 if board.length_axis == "y" else 0
    low, high = board.bounds[0][i] + END, board.bounds[1][i] - END
    places = []
    for bolt in (o for o in layout.behind if o.kind == BOLT):
        middle, off = sum((bolt.x, bolt.y)[i]) / 2, rule.edge + (bolt.x[1] - bolt.x[0]) / 2
        places += [middle - off, middle + off]
    moved = [(spot[0], at) if i else (at, spot[1]) for at in places if low <= at <= high]
    clear = [place for place in moved if not _meets_bolt(layout, rule, *place)]
    return min(clear, key=lambda place: abs(place[i] - spot[i]), default=spot)


def _is_beside_facing(layout: Layout, x: float, y: float) -> bool:
    return abs(x) > layout.facing_side or y > layout.facing_top


def _is_crowded(found: list[Anchor], x: float, y: float) -> bool:
    apart = LEAST_APART.value - HAIR
    return any((anchor.x - x) ** 2 + (anchor.y - y) ** 2 < apart**2 for anchor in found)


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
        "Fix the ledger to the level line first, then the cleat behind the frieze, then the uprights.",
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
