"""A section run along a path and mitred at its corners: mouldings, edge bands, plinths, panel moulds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from model.board import AXES, CROSS, Board, End, Point2, Stock, StockKind, Worked, signed_area
from model.moulding.section import Section

IN_PLAN, ON_FACE = "xz", "xy"
"""The plane a path lies in: level, seen from above with z up the page, or on a face, seen from the front."""


@dataclass(frozen=True, slots=True)
class Profile:
    """What is run: (out, across) points, `out` off the path's line and `across` along the third room axis.

    `curved` names the points that lie within a curve, `worked` how the piece is moulded, if it is: its
    directions are put right for each leg.
    """

    points: Sequence[Point2]
    curved: frozenset[int] = frozenset()
    worked: Worked | None = None


def run_section(
    roles: Sequence[str],
    assembly: str,
    stock: Stock,
    path: Sequence[Point2],
    profile: Profile,
    plane: str = IN_PLAN,
    closed: bool = False,
) -> tuple[Board, ...]:
    """One board for each leg of `path`, square at the path's two ends and mitred between.

    `path` is points in `plane` of the line the run lies against, legs along its two axes by turns, with
    the outer side on the right hand of travel. A `closed` path goes back to its first point and is mitred
    there too. `roles` names the legs in order.

    >>> from model.board import StockKind
    >>> pine = Stock(StockKind.BOARD, 1.0, "pine")
    >>> legs = run_section(["end", "front"], "shelf", pine, [(10, 0), (10, 5), (0, 5)],
    ...                    Profile([(0, 0), (1, 0), (1, 2), (0, 2)]))
    >>> [round(leg.length, 3) for leg in legs], [leg.high.mitre for leg in legs]
    ([6.0, 11.0], [45.0, 45.0])
    """
    legs = list(pairwise([*path, path[0]] if closed else path))
    normals = [_outward(start, stop) for start, stop in legs]
    boards = []
    for i, leg in enumerate(legs):
        before = normals[i - 1] if i > 0 or closed else None
        after = normals[(i + 1) % len(legs)] if i + 1 < len(legs) or closed else None
        frame = _Leg(plane, leg, normals[i], before, after)
        boards.append(_build_leg(roles[i], assembly, stock, frame, profile))
    return tuple(boards)


def _outward(start: Point2, stop: Point2) -> Point2:
    dx, dz = stop[0] - start[0], stop[1] - start[1]
    size = abs(dx) + abs(dz)
    return (dz / size, -dx / size)


@dataclass(frozen=True, slots=True)
class _Leg:
    """One leg of a path: its ends, its outward normal, and its neighbours' where it has any."""

    plane: str
    ends: tuple[Point2, Point2]
    normal: Point2
    before: Point2 | None
    after: Point2 | None

    @property
    def along(self) -> int:
        """Which of the path's two coordinates runs along the leg."""
        return 0 if self.normal[0] == 0 else 1

    @property
    def axis(self) -> str:
        """The room axis it runs along."""
        return self.plane[self.along]

    @property
    def off_axis(self) -> str:
        """The room axis of the path's plane that it stands off along."""
        return self.plane[1 - self.along]

    @property
    def line(self) -> float:
        """Where the leg's line lies on the off axis."""
        return self.ends[0][1 - self.along]

    @property
    def sign(self) -> float:
        """Which way along the off axis is out."""
        return self.normal[1 - self.along]

    def cut(self, corner: float, neighbour: Point2 | None) -> End:
        """The end at `corner`, square without a neighbour."""
        slope = 0.0 if neighbour is None else neighbour[self.along] * self.sign
        at = corner - slope * self.line
        off_is_u = AXES[CROSS[self.axis][0]] == self.off_axis
        return End(at, slope, 0.0) if off_is_u else End(at, 0.0, slope)

    def directions(self, worked: Worked) -> Worked:
        """`worked` with its face and its seat turned the way this leg lies."""
        out = ("-" if self.sign < 0 else "+") + self.off_axis
        if self.plane == IN_PLAN:
            return replace(worked, out=out)
        # On a face the seat lies against the path's line and the face looks forward.
        inward = {"+": "-", "-": "+"}[out[0]] + self.off_axis
        return replace(worked, out="+z", seat=inward)


def _build_leg(role: str, assembly: str, stock: Stock, leg: _Leg, profile: Profile) -> Board:
    axis, line, sign = leg.axis, leg.line, leg.sign
    if AXES[CROSS[axis][0]] == leg.off_axis:
        section = [(line + sign * out, across) for out, across in profile.points]
    else:
        section = [(across, line + sign * out) for out, across in profile.points]
    first, last = leg.ends[0][leg.along], leg.ends[1][leg.along]
    cuts = (leg.cut(first, leg.before), leg.cut(last, leg.after))
    low, high = cuts if first < last else cuts[::-1]
    curved = profile.curved
    if signed_area(section) < 0:
        section.reverse()
        curved = frozenset(len(section) - 1 - i for i in curved)
    worked = profile.worked and leg.directions(profile.worked)
    return Board(role, assembly, stock, axis, tuple(section), low, high, curved, worked=worked)


def moulding_stock(section: Section, wood: str) -> Stock:
    """What a moulding of that section is bought as: a strip as thick as it is square to its back."""
    return Stock(StockKind.MOULDING, section.stock_size[0], wood)


def under(section: Section, level: float) -> Profile:
    """`section` with its seat up against the underside at y = `level`, for a run in plan."""
    points, curved = section.polygon()
    worked = Worked(section.name, section.spring, seat="+y")
    return Profile([(x, level + y) for x, y in points], curved, worked)


def upon(section: Section, level: float) -> Profile:
    """`section` turned over, its seat down at y = `level`, for a run in plan."""
    points, curved = section.polygon()
    worked = Worked(section.name, section.spring, seat="-y")
    return Profile([(x, level - y) for x, y in points], curved, worked)


def against(section: Section, face: float) -> Profile:
    """`section` lying on the face at z = `face`, its seat against the path's line, for a run on a face."""
    points, curved = section.polygon()
    return Profile([(-y, face + x) for x, y in points], curved, Worked(section.name, section.spring))
