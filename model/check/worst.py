"""From many points to one reading for each part: its tightest place, and how it is judged."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import isnan

import numpy as np

from model.board import Point3
from model.build.nailers import list_once_moved
from model.check.clearance import HAIR, Held, Lengths, square_distance, straight_distance
from model.check.cure import LeastDistance
from model.check.finding import Status
from model.check.nearest import Plane, Points, list_box_corners, list_points
from model.check.part import list_parts
from model.corners import list_corners
from model.reference.clearance import BUILD_TOLERANCE
from model.reference.sourced import Sourced
from model.surround import Surround

HoldRule = Callable[[Lengths, Lengths, Lengths, Lengths], Held]
"""projection, beside, above and the distance that counts at corners, to what is measured and needed."""

HOPELESS = -1000.0
"""Spare distance, in., that stands for one that no distance could make good."""
TIE_DIGITS = 6
"""Distances that agree to as many decimals of an inch are alike."""
WORST_FIRST = (Status.FAIL, Status.UNKNOWN, Status.WARN, Status.PASS)


@dataclass(frozen=True, slots=True)
class Rule:
    """A clearance rule: its clause, a short name, how points are held against it, and where to read it.

    `beside` and `above` give the least distance that is enough whatever the other is. `cite` gives the
    figure that decides at a projection, beside the opening or above it.
    """

    name: str
    short: str
    hold: HoldRule
    beside: LeastDistance
    above: LeastDistance
    cite: Callable[[float, bool], Sourced]


@dataclass(frozen=True, slots=True)
class Reading:
    """A part's tightest place by one rule, inches.

    `boards` are indices of the boards that are not well clear. `square` is set when the part passes
    straight to the corner only. `needed` is infinite where no distance is enough; `measured` and `needed`
    are NaN where nothing is known.
    """

    part: str
    rule: Rule
    status: Status
    spare: float
    measured: float
    needed: float
    projection: float
    beside: float
    above: float
    upward: bool
    at: Point3
    boards: tuple[int, ...]
    square: bool

    @property
    def badness(self) -> tuple[int, float]:
        """Sorts the worst first, left before right where they are alike."""
        return WORST_FIRST.index(self.status), 0.0 if isnan(self.spare) else round(self.spare, TIE_DIGITS)

    @property
    def wants_cure(self) -> bool:
        """Whether it fails, or passes by one way to measure at corners only."""
        return self.status is Status.FAIL or self.square


def judge(straight: float, square: float) -> Status:
    """The status by what is to spare, straight and square to the corner; NaN is not known."""
    if straight < -HAIR:
        return Status.FAIL
    if isnan(straight):
        return Status.UNKNOWN
    return Status.WARN if square < BUILD_TOLERANCE.value - HAIR else Status.PASS


@dataclass(frozen=True, slots=True)
class Grouped:
    """Points with those of each part together, in the parts' order, and where each part's lie."""

    points: Points
    spans: dict[str, slice]


def group_corners(surround: Surround, planes: Sequence[Plane] = ()) -> Grouped:
    """The points of all boards that a rule is held against, sorted by part; see `list_points` for planes."""
    points = list_points(surround.corners, surround.job.site.opening, planes)
    return group_points(points, list_parts(surround.boards))


def group_suspects(surround: Surround, planes: Sequence[Plane], rules: Sequence[Rule]) -> Grouped:
    """The points of those parts only that may break one of the `rules`: most are plainly clear.

    Each board is held against them at the worst corner of the box round it. The rules must never ask less of
    what stands further out or nearer the opening.
    """
    opening, corners = surround.job.site.opening, surround.corners
    at = list_box_corners(corners, opening)
    straight = straight_distance(at.beside, at.above)
    spares = [rule.hold(at.projection, at.beside, at.above, straight).spare for rule in rules]
    clear = np.all([spare >= 0.0 for spare in spares], axis=0).tolist()
    parts = list_parts(surround.boards)
    suspect = {part: own for part, own in parts.items() if not all(clear[i] for i in own)}
    boards = np.array(sorted(i for own in suspect.values() for i in own), dtype=np.intp)
    return group_points(list_points(corners.of(boards), opening, planes), suspect)


def group_for_cure(surround: Surround, planes: Sequence[Plane]) -> Grouped:
    """The same with those nailers beside them that may be there once what they are in is moved."""
    more = list_once_moved(surround.layout, surround.job.design.nailer)
    if not more:
        return group_corners(surround, planes)
    opening, boards = surround.job.site.opening, surround.boards
    points = list_points(surround.corners, opening, planes).with_more(
        list_points(list_corners(more), opening, planes), len(boards)
    )
    return group_points(points, list_parts((*boards, *more)))


def group_points(points: Points, parts: dict[str, list[int]]) -> Grouped:
    """`points` by part; `parts` holds the indices of each part's boards in rising order."""
    part_of_board = np.empty(max((own[-1] + 1 for own in parts.values()), default=0), dtype=np.intp)
    for i, boards in enumerate(parts.values()):
        part_of_board[boards] = i
    part_of_point = part_of_board[points.board]
    ends = np.cumsum(np.bincount(part_of_point, minlength=len(parts))).tolist()
    spans = {part: slice(start, end) for part, start, end in zip(parts, [0, *ends], ends, strict=False)}
    return Grouped(points.pick(np.argsort(part_of_point, kind="stable")), spans)


def list_broken(grouped: Grouped, part: str, rules: Sequence[Rule]) -> Points:
    """The points of a part that break any of the rules, straight or square."""
    own = grouped.spans[part]
    points = grouped.points.pick(np.arange(own.start, own.stop))
    square = square_distance(points.beside, points.above)
    spares = [rule.hold(points.projection, points.beside, points.above, square).spare for rule in rules]
    return points.pick(np.flatnonzero(np.any([spare < -HAIR for spare in spares], axis=0)))


@dataclass(frozen=True, slots=True)
class _Way:
    """A rule's answer for all points by one way to measure at corners; `rank` is least at the tightest."""

    held: Held
    spare: Lengths
    rank: Lengths

    def list_tightest(self, spans: Sequence[slice], projection: Lengths) -> list[int]:
        """The tightest point of each part, of which `spans` are one after the other; of equals the one
        furthest out, then beside the opening before above it, then the nearest.

        Equal but for rounding is equal, so that both sides of a surround are told the same.
        """
        least = np.minimum.reduceat(self.rank, [own.start for own in spans])
        part = np.repeat(np.arange(len(spans)), [own.stop - own.start for own in spans])
        tied = np.flatnonzero(self.rank == least[part])
        out, near = (np.round(lengths[tied], TIE_DIGITS) for lengths in (projection, self.held.measured))
        order = np.lexsort((near, self.held.upward[tied], -out, part[tied]))
        first = np.searchsorted(part[tied], np.arange(len(spans)))
        tightest: list[int] = tied[order[first]].tolist()
        return tightest


def list_readings(grouped: Grouped, rule: Rule) -> tuple[Reading, ...]:
    """One reading for each part."""
    points = grouped.points
    ways = [
        _measure(
            rule.hold(points.projection, points.beside, points.above, distance(points.beside, points.above))
        )
        for distance in (straight_distance, square_distance)
    ]
    spans = grouped.spans
    tightest = [way.list_tightest(tuple(spans.values()), points.projection) for way in ways]
    return tuple(
        _read_part(part, own, rule, points, ways, places)
        for (part, own), places in zip(spans.items(), zip(*tightest, strict=True), strict=True)
    )


def _measure(held: Held) -> _Way:
    spare = held.spare
    return _Way(held, spare, np.round(rank_spares(spare), TIE_DIGITS))


def rank_spares(spares: Lengths) -> Lengths:
    """Spare distances to be sorted by, least first: failures, then what is not known, then what is clear."""
    ranks: Lengths = np.where(np.isnan(spares), -HAIR, np.maximum(spares, HOPELESS))
    return ranks


def _read_part(
    part: str, own: slice, rule: Rule, points: Points, ways: Sequence[_Way], tightest: Sequence[int]
) -> Reading:
    """Of a part whose `tightest` points by each of the `ways` are known."""
    spares = [float(way.spare[i]) for way, i in zip(ways, tightest, strict=True)]
    status = judge(*spares)
    square = status is Status.WARN and spares[1] < -HAIR
    way, i = ways[square], tightest[square]
    x, y, z = points.room[i].tolist()
    return Reading(
        part=part,
        rule=rule,
        status=status,
        spare=spares[square],
        measured=float(way.held.measured[i]),
        needed=float(way.held.needed[i]),
        projection=float(points.projection[i]),
        beside=max(float(points.beside[i]), 0.0),
        above=max(float(points.above[i]), 0.0),
        upward=bool(way.held.upward[i]),
        at=(x, y, z),
        boards=_list_tight(points, own, way.spare, spares[square], i),
        square=square,
    )


def _list_tight(points: Points, own: slice, spare: Lengths, least: float, tightest: int) -> tuple[int, ...]:
    """Boards that break the rule, or else come within the tolerance; the tightest one when none does."""
    if least >= BUILD_TOLERANCE.value - HAIR:
        return (int(points.board[tightest]),)
    bound = 0.0 if least < -HAIR else BUILD_TOLERANCE.value
    return tuple(sorted(set(points.board[own][~(spare[own] >= bound - HAIR)].tolist())))
