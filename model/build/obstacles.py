"""What is on the wall already where the surround goes up: baseboard, outlets and window casings, in the room.

Whether boards keep clear of it is model.check.obstacles'.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from model.board import Point2
from model.build.ledger import Ledger
from model.site import CUT_BACK, NOTCHED, Site

if TYPE_CHECKING:
    from model.build.lines import Side

BASEBOARD, OUTLET, CASING = "baseboard", "outlet", "casing"
PLATE = 0.25
"""How far an outlet's plate stands out, in. Shop choice."""
BESIDE = 24.0
"""How much of a baseboard is taken beyond the column, in.; it runs on."""
CASING_WIDTH = 3.5
"""How much of a casing is taken beyond its edge, in.; its far edge is not measured."""
LEAST_LEFT = 1.0
"""Least width of a return left in front of its notch, in. Shop choice."""
NEAR = 1e-6


@dataclass(frozen=True, slots=True)
class Obstacle:
    """A box in the room: what it is, on which side, the row that says where, and its spans in inches.

    `met` says of a baseboard how the column meets it: CUT_BACK, NOTCHED, or empty where it keeps clear; of
    an old ledger what becomes of it. `called` is its name where kind and side do not make one.
    """

    kind: str
    side: str
    path: str
    x: Point2
    y: Point2
    z: Point2
    met: str = ""
    called: str = ""

    @property
    def name(self) -> str:
        """``right outlet``, or what it is called."""
        return self.called or f"{self.side} {self.kind}".strip()

    def turned(self) -> Obstacle:
        """The same on the other side of the centre line."""
        return replace(self, x=(-self.x[1], -self.x[0]))


@dataclass(frozen=True, slots=True)
class Ground:
    """What obstacles stand on and against.

    x of the facing's side and of a raised hearth's, y of the facing's top and of the floor, and z of the wall
    beside the facing.
    """

    facing_side: float
    facing_top: float
    hearth_side: float
    floor: float
    wall: float


@dataclass(frozen=True, slots=True)
class Meeting:
    """What a baseboard meets at a column's foot, inches.

    How far a plinth stands out, 0 for none; `clear` from the masonry to the back of the columns' faces,
    where a notch must leave wood; the thickness of a `board`; the height of the plinth's `cap`, 0 for none;
    whether anything lies `inside` the columns on the masonry; y of the foot of the capital, or of the frieze
    without one; and how far the capital stands out, 0 for none.
    """

    plinth_out: float
    clear: float
    board: float
    cap: float
    inside: bool
    under_capital: float
    capital_out: float


def find_ground(site: Site) -> Ground:
    """The ground at a site."""
    facing, hearth = site.facing, site.hearth
    return Ground(facing.width / 2, facing.height, hearth.width / 2, -hearth.height, -facing.proud)


def list_obstacles(
    site: Site, sides: Sequence[Side], meeting: Meeting, ground: Ground, ledger: Ledger
) -> tuple[Obstacle, ...]:
    """Every obstacle in the room that was measured, left before right."""
    found: list[Obstacle] = []
    for side in sides:
        found += _baseboard(site, side, meeting, ground, ledger)
        found += [*_outlet(site, side.name, ground), *_casing(site, side.name, ground)]
    return tuple(found)


def notch_at(obstacles: Sequence[Obstacle], side: str) -> Obstacle | None:
    """The baseboard that a column on that side is notched round, if any."""
    return next((o for o in obstacles if o.side == side and o.met == NOTCHED), None)


def _turned(x: Point2, side: str) -> Point2:
    return (-x[1], -x[0]) if side == "left" else x


def _baseboard(site: Site, side: Side, meeting: Meeting, ground: Ground, ledger: Ledger) -> list[Obstacle]:
    """Along the wall from the facing, or a raised hearth, outwards; up to the column, or on behind it."""
    board = site.baseboard
    left = side.name == "left"
    height, own = (
        (board.height_left, board.thickness_left) if left else (board.height_right, board.thickness_right)
    )
    if height is None:
        return []
    thickness = board.thickness if own is None else own
    path, y = f"baseboard.height_{side.name}", (ground.floor, ground.floor + height)
    start = max(ground.facing_side, ground.hearth_side if ground.floor < 0 else 0.0)
    foot = side.outer + meeting.plinth_out
    if side.taper is not None:
        foot = max(foot, side.taper.outer.at(y[1]))  # a column that widens upwards reaches over its foot
    if meeting.under_capital < y[1] - NEAR:
        foot = max(foot, side.outer_top + meeting.capital_out)
    met = "" if start >= foot - NEAR or side.lowest >= y[1] - NEAR else board.meets
    z = (ground.wall, ground.wall + thickness)
    if met == NOTCHED:
        reason = _why_not(side, meeting, (start, y[1], z[1]), ground.wall)
        if reason:
            met = CUT_BACK
            ledger.swap("baseboard.meets", NOTCHED, CUT_BACK, reason)
    first = foot if met == CUT_BACK else start
    x = (first, max(first, foot) + BESIDE)
    return [Obstacle(BASEBOARD, side.name, path, _turned(x, side.name), y, z, met)]


def _why_not(side: Side, meeting: Meeting, corner: tuple[float, float, float], wall: float) -> str:
    """Why a column cannot be notched round a baseboard with its inner upper front `corner`; or empty."""
    start, top, front = corner
    if side.lean is not None:
        return "the returns are cut to masonry out of plumb there"
    if meeting.clear - front < LEAST_LEFT:
        return "too little of the returns would be left before it"
    if side.outer_back != wall or start > side.outer - meeting.board + NEAR:
        return "it does not run on behind the column's outer side"
    if meeting.inside and start < side.inner - NEAR:
        return "what lies on the masonry inside the column would be in its way"
    if meeting.cap and side.plinth_top + NEAR < top < side.plinth_top + meeting.cap - NEAR:
        return "its top meets the plinth cap part of the way up, and that cannot be coped"
    if meeting.under_capital < top - NEAR:
        return (
            f"the {'capital' if meeting.capital_out else 'frieze'} comes down to it, and that cannot be coped"
        )
    return ""


def _outlet(site: Site, side: str, ground: Ground) -> list[Obstacle]:
    outlet = site.outlet
    middle, up = (outlet.left, outlet.height_left) if side == "left" else (outlet.right, outlet.height_right)
    if middle is None:
        return []
    x = (middle - outlet.width / 2, middle + outlet.width / 2)
    y = (ground.floor + up - outlet.tall / 2, ground.floor + up + outlet.tall / 2)
    on_facing = middle < ground.facing_side and ground.floor + up < ground.facing_top
    z = 0.0 if on_facing else ground.wall
    return [Obstacle(OUTLET, side, f"outlet.{side}", _turned(x, side), y, (z, z + PLATE))]


def _casing(site: Site, side: str, ground: Ground) -> list[Obstacle]:
    casing = site.casing
    edge, ends = (
        (casing.left, (casing.bottom_left, casing.top_left))
        if side == "left"
        else (casing.right, (casing.bottom_right, casing.top_right))
    )
    if edge is None or ends[0] == ends[1]:
        return []
    x, y = (edge, edge + CASING_WIDTH), (ground.floor + min(ends), ground.floor + max(ends))
    z = (ground.wall, ground.wall + casing.proud)
    return [Obstacle(CASING, side, f"casing.{side}", _turned(x, side), y, z)]
