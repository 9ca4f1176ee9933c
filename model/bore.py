"""A hole right through a piece of wood: round for a cord, or sawn out square. Which piece has it stands in
model.board, what becomes of a piece whose edge it breaks in model.carving.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, pi, sin

Point2 = tuple[float, float]
Point3 = tuple[float, float, float]

CROSS = {"x": (1, 2), "y": (2, 0), "z": (0, 1)}
"""Indices of the two room axes across each axis, in the order that keeps the frame right-handed."""
SIDES = 24
"""Sides that a round hole is built and drawn with; four of them are level or plumb."""
SPREAD = (pi / (SIDES * sin(pi / SIDES) * cos(pi / SIDES))) ** 0.5
"""How much further out than the circle the corners lie, so that the polygon is as large as the circle."""


@dataclass(frozen=True, slots=True)
class Bore:
    """A hole along the room axis `axis` from `span[0]` to `span[1]`, where it enters and leaves the wood.

    `at` is its middle across the axis and `size` how wide it is there, both in CROSS order. `area` is how
    much of the face it takes, square inches, and `taken_at` where the middle of that lies: all of it, or of
    one that `breaks` out of an edge only what lies in the wood.
    """

    axis: str
    at: Point2
    size: Point2
    span: Point2
    is_round: bool
    area: float
    taken_at: Point2
    breaks: bool = False

    @property
    def volume(self) -> float:
        """Cubic inches of wood it takes."""
        return self.area * (self.span[1] - self.span[0])

    @property
    def middle(self) -> Point3:
        """Where the middle of what it takes lies in the room."""
        return self.place(self.taken_at, (self.span[0] + self.span[1]) / 2)

    @property
    def wall_area(self) -> float:
        """Square inches of the wood round it from face to face; 0 where it breaks out, as that is edge."""
        if self.breaks:
            return 0.0
        around = pi * self.size[0] if self.is_round else 2 * (self.size[0] + self.size[1])
        return around * (self.span[1] - self.span[0])

    @property
    def ring(self) -> tuple[Point2, ...]:
        """Its outline across the axis, counter-clockwise, a round one as a polygon of the circle's size."""
        (u, v), offsets = self.at, self.offsets
        return tuple((u + du, v + dv) for du, dv in offsets)

    @property
    def offsets(self) -> tuple[Point2, ...]:
        """The same corners off its middle."""
        (wide, high), around = self.size, _ROUND if self.is_round else _SQUARE
        return tuple((wide / 2 * u, high / 2 * v) for u, v in around)

    def place(self, point: Point2, along: float) -> Point3:
        """A point across the axis, `along` it, in the room."""
        room = [along] * 3
        iu, iv = CROSS[self.axis]
        room[iu], room[iv] = point
        return room[0], room[1], room[2]

    def moved(self, shift: Point3) -> Bore:
        """The same elsewhere in the room."""
        iu, iv = CROSS[self.axis]
        along = shift["xyz".index(self.axis)]

        def moved(point: Point2) -> Point2:
            return point[0] + shift[iu], point[1] + shift[iv]

        span = self.span[0] + along, self.span[1] + along
        return replace(self, at=moved(self.at), taken_at=moved(self.taken_at), span=span)

    def mirrored(self) -> Bore:
        """The same on the other side of the opening's centre line."""
        if self.axis == "x":
            return replace(self, span=(-self.span[1], -self.span[0]))
        x_is_u = CROSS[self.axis][0] == 0

        def turned(point: Point2) -> Point2:
            return (-point[0], point[1]) if x_is_u else (point[0], -point[1])

        return replace(self, at=turned(self.at), taken_at=turned(self.taken_at))


_ROUND = tuple(
    (SPREAD * cos(2 * pi * (k + 0.5) / SIDES), SPREAD * sin(2 * pi * (k + 0.5) / SIDES)) for k in range(SIDES)
)
_SQUARE = ((-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0))
