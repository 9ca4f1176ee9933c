"""One piece of wood: a section pushed along its length, cut at both ends, in its place in the room.

Room axes, inches: x to the viewer's right from the opening's centre line, y up from the finished
hearth at the opening, z out of the masonry's face towards the viewer.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cached_property
from math import atan, cos, degrees, hypot, radians, sin

from model.bore import CROSS as CROSS
from model.bore import Bore
from model.bore import Point2 as Point2
from model.bore import Point3 as Point3

AXES = "xyz"

ROUNDED = 6
"""Decimals of an inch that sides are told to where the nearer of two is asked for."""
STEEPEST_SCRIBE = 0.1
"""Slope under which an end is scribed and not mitred. Shop choice."""


class StockKind(StrEnum):
    """What a piece is bought as."""

    BOARD = "board"
    PANEL = "panel"
    MOULDING = "moulding"
    FRAMING = "framing"
    STANDING = "standing"
    """Not bought: there already, such as masonry."""


@dataclass(frozen=True, slots=True)
class Stock:
    """What a piece is cut from: kind, thickness in inches and the wood."""

    kind: StockKind
    thickness: float
    wood: str


@dataclass(frozen=True, slots=True)
class End:
    """The plane that cuts one end: position along the grain is ``at + slope_u * u + slope_v * v``.

    u and v are the room coordinates across the grain, in CROSS order; a square end has both slopes 0,
    an end mitred for a square corner has one slope of 1 or -1.
    """

    at: float
    slope_u: float = 0.0
    slope_v: float = 0.0

    def position(self, u: float, v: float) -> float:
        """Where the cut lies along the grain at section point (u, v)."""
        return self.at + self.slope_u * u + self.slope_v * v

    @property
    def is_square(self) -> bool:
        """Whether the cut is square to the grain."""
        return self.slope_u == 0 and self.slope_v == 0

    @property
    def is_near_square(self) -> bool:
        """Whether it is askew, but so little that it meets no piece mitred round a corner."""
        return not self.is_square and self.slope_u**2 + self.slope_v**2 < STEEPEST_SCRIBE**2

    @property
    def mitre(self) -> float:
        """Degrees off square, 0 for a square end, 45 for a mitre at a square corner."""
        return degrees(atan((self.slope_u**2 + self.slope_v**2) ** 0.5))


@dataclass(frozen=True, slots=True)
class Worked:
    """How a piece is moulded: the section's name, and degrees its back is sprung off what it lies against.

    `out` is the room's direction from its back to its face, `seat` that from its foot to its seat, which
    lies under a shelf, on a plinth or against a frame; both are written like ``+z``.
    """

    name: str
    spring: float = 0.0
    out: str = "+z"
    seat: str = "+y"

    def mirrored(self) -> Worked:
        """The same on the other side of the opening's centre line."""
        turned = {"+x": "-x", "-x": "+x"}
        out, seat = turned.get(self.out, self.out), turned.get(self.seat, self.seat)
        return Worked(self.name, self.spring, out, seat)


@dataclass(frozen=True)
class Board:
    """A straight piece.

    `section` is a simple polygon across `axis` in room coordinates (u, v), counter-clockwise, not closed.
    `curved` names the section's vertices that lie within one curve, where no edge shows. `low` and `high`
    are the end cuts along `axis`. The grain runs along `axis` too, but for a piece sawn to shape from a
    flat board: its face is the section, `axis` goes through its thickness, and `grain` names the axis its
    length lies along; where `low` and `high` are askew along it the piece leans, and its ends stay level.
    `role` says what it is ("column stile"), `assembly` the sub-assembly it is lifted
    with ("left column"). `worked` says how it is moulded, if it is. `bores` are the holes through it.
    """

    role: str
    assembly: str
    stock: Stock
    axis: str
    section: tuple[Point2, ...]
    low: End
    high: End
    curved: frozenset[int] = frozenset()
    grain: str = ""
    worked: Worked | None = None
    bores: tuple[Bore, ...] = ()

    @cached_property
    def carved(self) -> Board:
        """The same with holes that break out of an edge in its section, for whoever looks at solids."""
        if not self.bores:
            return self
        from model.carving import carve

        return carve(self)

    @cached_property
    def is_box(self) -> bool:
        """Whether it is a rectangle across the grain and cut square, as most pieces are; bored or not."""
        if len(self.section) != 4 or not (self.low.is_square and self.high.is_square):
            return False
        (u0, v0), (u1, v1), (u2, v2), (u3, v3) = self.section
        return (u0 == u3 and u1 == u2 and v0 == v1 and v2 == v3) or (
            u0 == u1 and u2 == u3 and v1 == v2 and v3 == v0
        )

    @cached_property
    def vertices(self) -> tuple[Point3, ...]:
        """All corners but those of holes: the section's at the low end, then the same at the high end."""
        return tuple(
            self._place(u, v, end.position(u, v)) for end in (self.low, self.high) for u, v in self.section
        )

    def _place(self, u: float, v: float, along: float) -> Point3:
        room = [0.0, 0.0, 0.0]
        iu, iv = CROSS[self.axis]
        room[iu], room[iv], room[AXES.index(self.axis)] = u, v, along
        return (room[0], room[1], room[2])

    @cached_property
    def bounds(self) -> tuple[Point3, Point3]:
        """Lowest and highest x, y, z."""
        us, vs = zip(*self.section, strict=True)
        if self.low.is_square and self.high.is_square:
            first, last = self.low.at, self.high.at
        else:
            first = min(self.low.position(u, v) for u, v in self.section)
            last = max(self.high.position(u, v) for u, v in self.section)
        return self._place(min(us), min(vs), first), self._place(max(us), max(vs), last)

    @property
    def length_axis(self) -> str:
        """The room axis that the grain, and so the length, runs along."""
        return self.grain or self.axis

    def extent(self, axis: str) -> float:
        """How far it reaches along a room axis."""
        i = AXES.index(axis)
        return self.bounds[1][i] - self.bounds[0][i]

    @property
    def is_scribed(self) -> bool:
        """Whether it runs out from the wall with an end cut to follow masonry out of plumb there."""
        return self.axis == "z" and not self.grain and self.low.is_near_square

    @property
    def lean(self) -> float:
        """How far a piece leans through its thickness, inches for each inch along its length; most do not."""
        if not self.grain or self.low.is_square:
            return 0.0
        along_u = AXES[CROSS[self.axis][0]] == self.grain
        return self.low.slope_u if along_u else self.low.slope_v

    @property
    def length(self) -> float:
        """Along the grain, long point to long point."""
        level = self.extent(self.length_axis)
        if not self.lean:
            return level
        slant = hypot(1.0, self.lean)
        return level * slant + (self.high.at - self.low.at) * abs(self.lean) / slant

    @property
    def _across(self) -> tuple[float, float]:
        """Both sides across the grain; of a sprung moulding square to its back and along it."""
        if self.worked is not None and self.worked.spring:
            return self._off_back(self.worked)
        if self.lean:
            wide = next(axis for axis in AXES if axis not in (self.axis, self.grain))
            return (self.high.at - self.low.at) / hypot(1.0, self.lean), self.extent(wide)
        first, second = (self.extent(axis) for axis in AXES if axis != self.length_axis)
        return first, second

    def _off_back(self, worked: Worked) -> tuple[float, float]:
        c, s = cos(radians(worked.spring)), sin(radians(worked.spring))
        points = [(self._along(worked.out, p), self._along(worked.seat, p)) for p in self.section]
        off, up = [x * c - y * s for x, y in points], [x * s + y * c for x, y in points]
        return max(off) - min(off), max(up) - min(up)

    def _along(self, direction: str, point: Point2) -> float:
        """How far a section point lies in one of the room's directions, written like ``+z``."""
        value = point[0] if AXES[CROSS[self.axis][0]] == direction[1] else point[1]
        return -value if direction[0] == "-" else value

    @property
    def thickness(self) -> float:
        """The side across the grain that is nearest the stock's thickness; of two as near, the lesser."""
        return min(self._across, key=self._off_stock)

    @property
    def width(self) -> float:
        """The other side across the grain."""
        first, second = self._across
        return second if min(first, second, key=self._off_stock) == first else first

    def _off_stock(self, side: float) -> tuple[float, float]:
        """How far a side is from the stock's thickness, rounding left out, and the side itself."""
        return round(abs(side - self.stock.thickness), ROUNDED), side

    @property
    def section_area(self) -> float:
        """Square inches across the grain."""
        return signed_area(self.section)

    @property
    def volume(self) -> float:
        """Cubic inches less holes; exact, both ends being planes."""
        from model.solid import fill_space

        return fill_space(self)[0]

    def moved(self, dx: float = 0.0, dy: float = 0.0, dz: float = 0.0) -> Board:
        """The same piece elsewhere in the room."""
        shift = (dx, dy, dz)
        iu, iv = CROSS[self.axis]
        du, dv, dt = shift[iu], shift[iv], shift[AXES.index(self.axis)]

        def end(cut: End) -> End:
            return End(cut.at + dt - cut.slope_u * du - cut.slope_v * dv, cut.slope_u, cut.slope_v)

        section = tuple((u + du, v + dv) for u, v in self.section)
        bores = tuple(bore.moved(shift) for bore in self.bores)
        return replace(self, section=section, low=end(self.low), high=end(self.high), bores=bores)

    def mirrored(self, assembly: str) -> Board:
        """Its twin on the other side of the opening's centre line."""
        if self.axis == "x":
            low = End(-self.high.at, -self.high.slope_u, -self.high.slope_v)
            high = End(-self.low.at, -self.low.slope_u, -self.low.slope_v)
            return self._twin(assembly, self.section, low, high, self.curved)
        last = len(self.section) - 1
        curved = frozenset([last - i for i in self.curved])
        if CROSS[self.axis][0] == 0:
            flipped = tuple([(-u, v) for u, v in reversed(self.section)])
            low, high = (End(cut.at, -cut.slope_u, cut.slope_v) for cut in (self.low, self.high))
        else:
            flipped = tuple([(u, -v) for u, v in reversed(self.section)])
            low, high = (End(cut.at, cut.slope_u, -cut.slope_v) for cut in (self.low, self.high))
        return self._twin(assembly, flipped, low, high, curved)

    def _twin(
        self, assembly: str, section: tuple[Point2, ...], low: End, high: End, curved: frozenset[int]
    ) -> Board:
        """Of this shape, its moulding and its holes mirrored. Half of all boards are made here."""
        worked = self.worked and self.worked.mirrored()
        bores = tuple([bore.mirrored() for bore in self.bores])
        return Board(
            self.role,
            assembly,
            self.stock,
            self.axis,
            section,
            low,
            high,
            curved,
            self.grain,
            worked,
            bores,
        )


def signed_area(section: Sequence[Point2]) -> float:
    """Square inches within an outline that is not closed, below nothing where it runs clockwise."""
    onward = (*section[1:], section[0])
    return sum([u0 * v1 - u1 * v0 for (u0, v0), (u1, v1) in zip(section, onward, strict=True)]) / 2


def block(role: str, assembly: str, stock: Stock, axis: str, x: Point2, y: Point2, z: Point2) -> Board:
    """A square-cut rectangular piece filling the given spans, its grain along `axis`."""
    spans = (x, y, z)
    iu, iv = CROSS[axis]
    (u0, u1), (v0, v1) = spans[iu], spans[iv]
    t0, t1 = spans[AXES.index(axis)]
    return Board(role, assembly, stock, axis, ((u0, v0), (u1, v0), (u1, v1), (u0, v1)), End(t0), End(t1))
