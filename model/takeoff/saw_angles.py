"""How a mitre saw is set for a moulding's end, for any corner and any spring, and how the piece lies on it.

Every setting is for a saw whose blade tilts to the left. Left and right on the saw are the sawyer's. The
ends of a piece are left and right as seen from its face, in place.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import asin, atan, cos, degrees, radians, sin, tan

from model.board import AXES, CROSS, Board, End, Point3, Worked

TOP_AND_BOTTOM = ("top edge", "bottom edge")


class Corner(StrEnum):
    """Which way a run turns: INSIDE into a hollow corner, OUTSIDE round a standing one."""

    INSIDE = "inside"
    OUTSIDE = "outside"


class Hand(StrEnum):
    """Left or right."""

    LEFT = "left"
    RIGHT = "right"

    @property
    def other(self) -> Hand:
        """The other hand."""
        return Hand.LEFT if self is Hand.RIGHT else Hand.RIGHT


class Lie(StrEnum):
    """How a piece lies on the saw."""

    FLAT = "flat on its back"
    STANDING = "seat on the table"


@dataclass(frozen=True, slots=True)
class SawSetting:
    """One end's cut. `mitre` and `bevel` in degrees off square; the blade tilts left by `bevel`.

    `swing` is the way the table turns, `fence` the edge or face against the fence, `keep` the side of
    the blade on which the piece lies.
    """

    lie: Lie
    mitre: float
    bevel: float
    swing: Hand
    fence: str
    keep: Hand

    def describe(self) -> str:
        """``table 31.6° right, blade 33.9° left, top edge to the fence, keep what is left of the blade``."""
        tilt = f", blade {format_degrees(self.bevel)} left" if self.bevel else ""
        return (
            f"table {format_degrees(self.mitre)} {self.swing}{tilt}, {self.fence} to the fence, "
            f"keep what is {self.keep} of the blade"
        )


def format_degrees(angle: float) -> str:
    """To the tenth that a saw's scale can be read to: ``31.6°``, ``45°``."""
    return f"{round(angle, 1):g}°"


def lying_angles(spring: float, corner: float) -> tuple[float, float]:
    """Mitre and bevel, degrees, for a moulding lying flat on its back.

    `spring` is the angle from the wall to its back, above 0 and up to 90; `corner` the angle between the
    walls, above 0 and below 180, measured in the open at an inside corner and in the wall at an outside
    one: 90 for a square corner either way.

    >>> [round(angle, 2) for angle in lying_angles(38, 90)]
    [31.62, 33.86]
    """
    half = radians(corner) / 2
    turn = radians(spring)
    return degrees(atan(sin(turn) / tan(half))), degrees(asin(cos(turn) * cos(half)))


def standing_angle(corner: float) -> float:
    """Mitre, degrees, for a moulding standing as it hangs, and for one with a flat back; no bevel.

    >>> standing_angle(135)
    22.5
    """
    return 90 - corner / 2


def set_lying(
    spring: float, corner: float, kind: Corner, end: Hand, edges: tuple[str, str] = TOP_AND_BOTTOM
) -> SawSetting:
    """The setting for one end of a sprung moulding flat on its back, face up.

    `end` is as seen from its face with its seat up; `edges` are what its seat's edge and the other are
    called. With the seat's edge to the fence the piece lies as it hangs, else it is turned round: which
    of the two lets the blade tilt to the left depends on the way the cut slopes.
    """
    mitre, bevel = lying_angles(spring, corner)
    longer_behind = (kind is Corner.INSIDE) == (end is Hand.RIGHT)
    fence, swing = (edges[0], Hand.RIGHT) if longer_behind else (edges[1], Hand.LEFT)
    keep = end.other if longer_behind else end
    return SawSetting(Lie.FLAT, mitre, bevel, swing, fence, keep)


def set_standing(corner: float, kind: Corner, end: Hand, fence: str = "back") -> SawSetting:
    """The setting for one end of a moulding standing with its seat on the table.

    `fence` is what lies against the fence: the back, or the far edge of a sprung moulding.
    """
    swing = Hand.RIGHT if (kind is Corner.INSIDE) == (end is Hand.RIGHT) else Hand.LEFT
    return SawSetting(Lie.STANDING, standing_angle(corner), 0.0, swing, fence, end)


def set_frame(corner: float, end: Hand) -> SawSetting:
    """The setting for one end of a piece of a frame, flat on its back, its outer edge to the fence."""
    return SawSetting(Lie.FLAT, standing_angle(corner), 0.0, end.other, "outer edge", end.other)


@dataclass(frozen=True, slots=True)
class EndCut:
    """A mitred end of a moulding: which, round which corner, and the ways to cut it, the best first.

    `end` is as seen from its face in place; for a piece of a frame as seen with its outer edge up. `kind`
    is None for a frame.
    """

    end: Hand
    corner: float
    kind: Corner | None
    settings: tuple[SawSetting, ...]


def list_end_cuts(board: Board, corner: float | None = None) -> tuple[EndCut, ...]:
    """The mitred ends of a moulded piece, left before right; empty for one without mitres.

    `corner` is what every corner measures, degrees, where that is not what was drawn.
    """
    if board.worked is None:
        return ()
    cuts = [
        _list_end(board, board.worked, cut, way, corner)
        for cut, way in ((board.low, -1), (board.high, 1))
        if not (cut.is_square or cut.is_near_square)
    ]
    return tuple(sorted(cuts, key=lambda cut: cut.end))


def _list_end(board: Board, worked: Worked, cut: End, way: int, measured: float | None) -> EndCut:
    out, seat = _direction(worked.out), _direction(worked.seat)
    across = [0.0, 0.0, 0.0]
    iu, iv = CROSS[board.axis]
    across[iu], across[iv] = cut.slope_u * way, cut.slope_v * way
    # How much longer the piece is at that end for each inch further out, and further towards the seat.
    by_out, by_seat = _dot(across, out), _dot(across, seat)
    right = _dot(_cross(seat, out), _direction(f"+{board.axis}")) * way > 0
    end = Hand.RIGHT if right else Hand.LEFT
    corner = measured or 2 * degrees(atan(1 / abs(by_out or by_seat)))
    if not by_out:
        return EndCut(end, corner, None, (set_frame(corner, end),))
    kind = Corner.OUTSIDE if by_out > 0 else Corner.INSIDE
    upside_down = worked.seat == "-y"
    edges = TOP_AND_BOTTOM[::-1] if upside_down else TOP_AND_BOTTOM
    seen = end.other if upside_down else end
    if not worked.spring:
        return EndCut(seen, corner, kind, (set_standing(corner, kind, end),))
    lying = set_lying(worked.spring, corner, kind, end, edges)
    return EndCut(seen, corner, kind, (lying, set_standing(corner, kind, end, edges[1])))


def _direction(signed_axis: str) -> tuple[float, float, float]:
    sign = -1.0 if signed_axis[0] == "-" else 1.0
    x, y, z = (sign if axis == signed_axis[1] else 0.0 for axis in AXES)
    return (x, y, z)


def _dot(one: Sequence[float], other: Sequence[float]) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def _cross(one: Point3, other: Point3) -> Point3:
    (ax, ay, az), (bx, by, bz) = one, other
    return (ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx)
