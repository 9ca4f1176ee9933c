"""Closed outlines of lines and true arcs: their sizes, area and middle, and how they become polygons.

What elements an outline is made of belongs to model.moulding.elements. Inches.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import acos, atan2, ceil, cos, fabs, floor, hypot, pi, radians, sin, tan

from model.board import Point2

SMOOTH = radians(1.0)
"""Strokes whose directions differ by less where they meet run on without an edge. Shop choice."""
HAIR = 1e-9
"""Lengths below this, in inches, are arithmetic and not wood."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight stroke."""

    start: Point2
    end: Point2

    @property
    def bulge(self) -> float:
        """0, as drawing files say of straight strokes."""
        return 0.0

    def reach(self, angle: float) -> float:
        """How far it reaches in the direction `angle`, from the origin."""
        return max(x * cos(angle) + y * sin(angle) for x, y in (self.start, self.end))

    def headings(self) -> tuple[float, float]:
        """Its direction at its start and at its end, radians from +x towards +y."""
        way = atan2(self.end[1] - self.start[1], self.end[0] - self.start[0])
        return way, way


@dataclass(frozen=True, slots=True)
class Arc:
    """A stroke along a circle round `centre`; `turn` in radians, positive when it bends to the left."""

    start: Point2
    end: Point2
    centre: Point2
    turn: float

    @property
    def radius(self) -> float:
        """Inches."""
        return hypot(self.start[0] - self.centre[0], self.start[1] - self.centre[1])

    @property
    def bulge(self) -> float:
        """The tangent of a quarter of the turn, as drawing files keep arcs."""
        return tan(self.turn / 4)

    @property
    def first_angle(self) -> float:
        """Where on its circle it starts, radians."""
        return atan2(self.start[1] - self.centre[1], self.start[0] - self.centre[0])

    def point_at(self, angle: float) -> Point2:
        """The point of its circle at `angle`."""
        return (
            self.centre[0] + self.radius * cos(angle),
            self.centre[1] + self.radius * sin(angle),
        )

    def reach(self, angle: float) -> float:
        """How far it reaches in the direction `angle`, from the origin."""
        if self._passes(angle):
            return self.centre[0] * cos(angle) + self.centre[1] * sin(angle) + self.radius
        return Line(self.start, self.end).reach(angle)

    def _passes(self, angle: float) -> bool:
        """Whether it has a point at `angle` of its circle."""
        way = angle - self.first_angle if self.turn > 0 else self.first_angle - angle
        return way % (2 * pi) < fabs(self.turn)

    def headings(self) -> tuple[float, float]:
        """Its direction at its start and at its end, radians from +x towards +y."""
        quarter = pi / 2 if self.turn > 0 else -pi / 2
        return self.first_angle + quarter, self.first_angle + self.turn + quarter

    def quadrants(self) -> tuple[float, ...]:
        """Angles strictly inside the arc at which it is furthest left, right, up or down, in its order."""
        first, last = self.first_angle, self.first_angle + self.turn
        low, high = min(first, last), max(first, last)
        steps = range(floor(low / (pi / 2)), ceil(high / (pi / 2)) + 1)
        inside = [k * pi / 2 for k in steps if low + HAIR < k * pi / 2 < high - HAIR]
        return tuple(inside if self.turn > 0 else reversed(inside))


Stroke = Line | Arc


def arc_round(start: Point2, end: Point2, centre: Point2, left: bool) -> Arc:
    """The arc from `start` to `end` round `centre`, bending to the left or to the right."""
    first = atan2(start[1] - centre[1], start[0] - centre[0])
    last = atan2(end[1] - centre[1], end[0] - centre[0])
    turn = (last - first) % (2 * pi)
    return Arc(start, end, centre, turn if left else turn - 2 * pi)


def arc_bulged(start: Point2, end: Point2, bulge: float) -> Arc:
    """The arc between two points that a drawing file keeps as a bulge, which must not be 0."""
    (x0, y0), (x1, y1) = start, end
    # The centre lies off the chord's middle, to the left for arcs that bend to the left by less than half.
    off = (1 - bulge * bulge) / (4 * bulge)
    centre = ((x0 + x1) / 2 - off * (y1 - y0), (y0 + y1) / 2 + off * (x1 - x0))
    return arc_round(start, end, centre, left=bulge > 0)


@dataclass(frozen=True)
class Outline:
    """A closed chain of strokes, each starting where the one before it ends, the last ending at the first.

    It runs clockwise, so that its wood lies on the right hand of the way.
    """

    strokes: tuple[Stroke, ...]

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        """Lowest x and y, highest x and y, arcs' own reach included."""
        points = [p for stroke in self.strokes for p in _reach(stroke)]
        xs, ys = zip(*points, strict=True)
        return min(xs), min(ys), max(xs), max(ys)

    def reach(self, angle: float) -> float:
        """How far it reaches in the direction `angle` (radians from +x towards +y), from the origin."""
        return max(stroke.reach(angle) for stroke in self.strokes)

    @cached_property
    def area(self) -> float:
        """Square inches, exact."""
        return -sum(_area(stroke) for stroke in self.strokes)

    @cached_property
    def centroid(self) -> Point2:
        """The middle of its area, exact."""
        moments = [_moments(stroke) for stroke in self.strokes]
        return (-sum(m[0] for m in moments) / self.area, -sum(m[1] for m in moments) / self.area)

    def facet(self, sagitta: float) -> tuple[tuple[Point2, ...], frozenset[int]]:
        """Corners of a polygon whose sides lie no further than `sagitta` off the arcs, clockwise.

        With them, which corners lie within a curve or where strokes run on smoothly, so that no edge
        shows there. Where an arc is furthest left, right, up or down there is a corner, so that the
        polygon reaches as far as the outline.
        """
        points: list[Point2] = []
        smooth: set[int] = set()
        before = self.strokes[-1]
        for stroke in self.strokes:
            if _runs_on(before, stroke):
                smooth.add(len(points))
            points.append(stroke.start)
            inner = list(_inner_points(stroke, sagitta))
            smooth.update(range(len(points), len(points) + len(inner)))
            points += inner
            before = stroke
        return tuple(points), frozenset(smooth)


def _reach(stroke: Stroke) -> Iterator[Point2]:
    yield stroke.start
    yield stroke.end
    if isinstance(stroke, Arc):
        yield from (stroke.point_at(angle) for angle in stroke.quadrants())


def _area(stroke: Stroke) -> float:
    """Its share of the area on the left hand: under the chord by the shoelace, and the arc's segment."""
    (x0, y0), (x1, y1) = stroke.start, stroke.end
    chord = (x0 * y1 - x1 * y0) / 2
    if isinstance(stroke, Line):
        return chord
    return chord + stroke.radius**2 * (stroke.turn - sin(stroke.turn)) / 2


def _moments(stroke: Stroke) -> Point2:
    """The same for the area's first moments."""
    (x0, y0), (x1, y1) = stroke.start, stroke.end
    cross = (x0 * y1 - x1 * y0) / 6
    mx, my = cross * (x0 + x1), cross * (y0 + y1)
    if isinstance(stroke, Line):
        return mx, my
    # A segment's moment about the circle's centre is 2/3 r^3 sin^3(turn/2), towards the arc's middle.
    own = 2 / 3 * stroke.radius**3 * sin(stroke.turn / 2) ** 3
    middle = stroke.first_angle + stroke.turn / 2
    segment = stroke.radius**2 * (stroke.turn - sin(stroke.turn)) / 2
    return (
        mx + segment * stroke.centre[0] + own * cos(middle),
        my + segment * stroke.centre[1] + own * sin(middle),
    )


def _runs_on(before: Stroke, after: Stroke) -> bool:
    bend = after.headings()[0] - before.headings()[1]
    return fabs((bend + pi) % (2 * pi) - pi) < SMOOTH


def _inner_points(stroke: Stroke, sagitta: float) -> Iterator[Point2]:
    """Points of an arc between its ends, none for a line."""
    if isinstance(stroke, Line):
        return
    first, last = stroke.first_angle, stroke.first_angle + stroke.turn
    stops = [first, *stroke.quadrants(), last]
    step = 2 * acos(max(1 - sagitta / stroke.radius, 0.0))
    for i, (a, b) in enumerate(pairwise(stops)):
        if i:
            yield stroke.point_at(a)
        count = max(1, ceil(fabs(b - a) / step - HAIR))
        yield from (stroke.point_at(a + (b - a) * k / count) for k in range(1, count))


def join_strokes(points: Sequence[Point2]) -> tuple[Line, ...]:
    """Straight strokes through `points`; points that fall together make none."""
    pairs = pairwise(points)
    return tuple(Line(a, b) for a, b in pairs if hypot(b[0] - a[0], b[1] - a[1]) > HAIR)
