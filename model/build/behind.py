"""What was left on the masonry and lies behind the surround: an old ledger, bolts and studs.

Whether boards can be cut round it is model.check.left_on's; what they are bored for, model.takeoff.bores'.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.board import Point2
from model.build.ledger import Ledger
from model.build.obstacles import LEAST_LEFT, Ground, Obstacle
from model.site import KEEP, REMOVE, USE, Bolt, Site

OLD_LEDGER, BOLT = "old ledger", "bolt"
ROUND_BOLT = 0.125
"""Free all round a bolt and before its end, in. Shop choice."""
MOST_PACKED = 2.0
"""Most that an old ledger is packed up to the shelf, in. Shop choice."""
LEAST_TAB = 0.5
"""Least wood left between two notches, or a notch and an end, in.; less would break off. Shop choice."""
LEAST_PIECE = 3.0
"""Shortest nailer worth fixing, in. Shop choice."""
LEAST_STRIP = 0.75
"""Lowest strip worth fixing over or under an old ledger, in. Shop choice."""
NEAR = 1e-6
WHICH = ("first", "second", "third")

Notch = tuple[float, float, float]
"""Where a notch begins and ends along an edge, and z of its bottom."""


@dataclass(frozen=True, slots=True)
class Rest:
    """What is to rest on a ledger: y of the shelf's underside, x of the frieze's end, both ways, the hollow
    behind it, z behind the ledger that would be built, and whether there is room for one."""

    shelf_bottom: float
    inner: float
    hollow: float
    back: float
    has_room: bool


def list_behind(site: Site, ground: Ground, rest: Rest, ledger: Ledger) -> tuple[Obstacle, ...]:
    """The old ledger that stays, then the bolts; `met` of a ledger is KEEP or USE."""
    found = _old_ledger(site, ground, rest, ledger)
    for which, path in zip(WHICH, ("bolt_one", "bolt_two", "bolt_three"), strict=True):
        bolt: Bolt = getattr(site, path)
        if bolt.across is not None:
            found.append(_bolt(bolt, bolt.across, which, path, ground))
    return tuple(found)


def _old_ledger(site: Site, ground: Ground, rest: Rest, ledger: Ledger) -> list[Obstacle]:
    old = site.old_ledger
    if old.top is None or old.use == REMOVE or old.left + old.right < LEAST_PIECE:
        return []
    low = old.top - old.tall
    back = 0.0 if low < ground.facing_top else ground.wall
    met = old.use
    if met == USE:
        reason = _why_not_used(site, old.top, back, rest)
        if reason:
            met = KEEP
            ledger.swap("old_ledger.use", USE, KEEP, reason)
    x, z = (-old.left, old.right), (back, back + old.thick)
    return [Obstacle(OLD_LEDGER, "", "old_ledger.top", x, (low, old.top), z, met)]


def _why_not_used(site: Site, top: float, back: float, rest: Rest) -> str:
    """Why the shelf cannot rest on the old ledger; empty where it can."""
    old, gap = site.old_ledger, rest.shelf_bottom - top
    if not rest.has_room or old.thick > rest.hollow:
        return "it stands out further than there is room behind the frieze"
    if gap < -NEAR:
        return f"its top lies {-gap:.3g} in. over the shelf's underside"
    if gap > MOST_PACKED:
        return f"its top lies {gap:.3g} in. under the shelf's underside, too far to be packed up"
    if back != rest.back:
        return "it does not lie on what the shelf's own ledger would lie on"
    if min(old.left, rest.inner) + min(old.right, rest.inner) < rest.inner:
        return "it carries less than half of the shelf between the columns"
    return ""


def _bolt(bolt: Bolt, across: float, which: str, path: str, ground: Ground) -> Obstacle:
    r = bolt.diameter / 2
    on_facing = abs(across) < ground.facing_side and bolt.up < ground.facing_top
    back = 0.0 if on_facing else ground.wall
    side = "left" if across < 0 else "right"
    x, y = (across - r, across + r), (bolt.up - r, bolt.up + r)
    return Obstacle(BOLT, side, f"{path}.across", x, y, (back, back + bolt.out), called=f"{which} bolt")


def turn_over(behind: Sequence[Obstacle], sign: float) -> tuple[Obstacle, ...]:
    """Those seen from a side that is built as if it stood on the right; `sign` is -1 for the left."""
    return tuple(o if sign > 0 else o.turned() for o in behind)


def list_notches(
    behind: Sequence[Obstacle], across: tuple[Point2, int], along: int, front: float
) -> list[Notch]:
    """What is taken out of the back edge of a board whose front is at z = `front`, from its foot on.

    `across` is the board's span along one room axis and that axis, 0 or 1; its edge runs along `along`.
    Notches that would leave less than LEAST_LEFT before them are not made.
    """
    span, axis = across
    found = []
    for o in behind:
        grow = ROUND_BOLT if o.kind == BOLT else 0.0
        spans = (o.x, o.y)
        low, high = spans[axis]
        if low - grow < span[1] - NEAR and high + grow > span[0] + NEAR:
            found.append((spans[along][0] - grow, spans[along][1] + grow, o.z[1] + grow))
    return [notch for notch in found if notch[2] <= front - LEAST_LEFT + NEAR]


def notch_edge(edge: Sequence[Point2], notches: Sequence[Notch]) -> tuple[Point2, ...]:
    """`edge`, (along, z) points in rising order, with `notches` sawn out; those close together are one."""
    for notch in _join(sorted(notches)):
        edge = _cut(edge, notch)
    return tuple(edge)


def _join(notches: Sequence[Notch]) -> list[Notch]:
    joined: list[Notch] = []
    for low, high, deep in notches:
        if joined and low < joined[-1][1] + LEAST_TAB:
            first, last, depth = joined[-1]
            joined[-1] = (first, max(last, high), max(depth, deep))
        else:
            joined.append((low, high, deep))
    return joined


def _cut(edge: Sequence[Point2], notch: Notch) -> Sequence[Point2]:
    first, last = edge[0][0], edge[-1][0]
    low = first if notch[0] < first + LEAST_TAB else notch[0]
    high = last if notch[1] > last - LEAST_TAB else notch[1]
    if low >= last - NEAR or high <= first + NEAR or high - low < NEAR:
        return edge
    before = [p for p in edge if p[0] < low - NEAR]
    after = [p for p in edge if p[0] > high + NEAR]
    start, stop = _z_at(edge, low, -1), _z_at(edge, high, 1)
    within = [z for at, z in edge if low - NEAR <= at <= high + NEAR]
    if max(start, stop, *within) >= notch[2] - NEAR:
        return edge
    into = [(low, start), (low, notch[2])] if low > first + NEAR else [(low, notch[2])]
    out = [(high, notch[2]), (high, stop)] if high < last - NEAR else [(high, notch[2])]
    return [*before, *into, *out, *after]


def _z_at(edge: Sequence[Point2], at: float, way: int) -> float:
    """z of the edge at a place along it; where it jumps there, on the lower side for -1, else the upper."""
    below = max((i for i, p in enumerate(edge) if (p[0] < at - NEAR or i == 0)), default=0)
    above = min((i for i, p in enumerate(edge) if p[0] > at + NEAR), default=len(edge) - 1)
    exact = [z for place, z in edge if abs(place - at) <= NEAR]
    if exact:
        return exact[0] if way < 0 else exact[-1]
    (a0, z0), (a1, z1) = edge[below], edge[above]
    return z0 + (z1 - z0) * (at - a0) / (a1 - a0)


def part_upright(behind: Sequence[Obstacle], x: Point2, y: Point2, z: Point2) -> list[Point2]:
    """The heights that are left of an upright nailer over and under an old ledger; short ends are none."""
    pieces = [y]
    for o in _ledgers_in(behind, x, z):
        pieces = [p for low, high in pieces for p in ((low, min(high, o.y[0])), (max(low, o.y[1]), high))]
    whole = pieces == [y] or not any(_overlap(y, o.y) > NEAR for o in _ledgers_in(behind, x, z))
    return [y] if whole else [p for p in pieces if p[1] - p[0] >= LEAST_PIECE]


def part_strip(
    behind: Sequence[Obstacle], x: Point2, y: Point2, z: Point2, at_top: bool
) -> list[tuple[Point2, Point2]]:
    """(x, y) of what is left of a strip: over an old ledger, or under it, else beside its ends.

    `at_top` is for one that must keep its upper edge. One that is used takes the strip's whole place.
    """
    struck = [o for o in _ledgers_in(behind, x, z) if _overlap(y, o.y) > NEAR or (at_top and o.met == USE)]
    if not struck:
        return [(x, y)]
    old = struck[0]
    room = (old.y[1], y[1]) if at_top else (y[0], old.y[0])
    if room[1] - room[0] >= LEAST_STRIP and old.met != USE:
        return [(x, room)]
    ends = [((x[0], min(old.x[0], x[1])), y), ((max(old.x[1], x[0]), x[1]), y)]
    return [(span, level) for span, level in ends if span[1] - span[0] >= LEAST_PIECE]


def find_used(behind: Sequence[Obstacle]) -> Obstacle | None:
    """The old ledger that the shelf rests on, if any."""
    return next((o for o in behind if o.met == USE), None)


def _ledgers_in(behind: Sequence[Obstacle], x: Point2, z: Point2) -> list[Obstacle]:
    return [o for o in behind if o.kind == OLD_LEDGER and _overlap(x, o.x) > NEAR and _overlap(z, o.z) > NEAR]


def _overlap(one: Point2, other: Point2) -> float:
    return min(one[1], other[1]) - max(one[0], other[0])
