"""Small signs drawn with strokes, the same on paper and on screen, told apart by shape and not by colour."""

from __future__ import annotations

from functools import lru_cache
from math import cos, pi, sin, tan

from model.check.finding import Status
from render.drawing import Lines, Mark, Pen, Point, Polyline, Ring, Segment

CIRCLE_STEPS = 32


def status_marks(status: Status, centre: Point, size: float) -> tuple[Mark, ...]:
    """The sign of a check's answer within a square of side `size`.

    Over: a triangle with a bar in it. Close: a diamond with a level bar. Not known: an empty square
    crossed once. Within: a plain circle.
    """
    x, y = centre
    r = size / 2
    match status:
        case Status.FAIL:
            triangle = ((x - r, y - 0.85 * r), (x + r, y - 0.85 * r), (x, y + r))
            bar = ((x, y + 0.45 * r, x, y - 0.15 * r), (x, y - 0.45 * r, x, y - 0.55 * r))
            return Polyline(Pen.EDGE, triangle, closed=True), Lines(Pen.EDGE, bar)
        case Status.WARN:
            diamond = ((x - r, y), (x, y - r), (x + r, y), (x, y + r))
            return Polyline(Pen.EDGE, diamond, closed=True), Lines(Pen.EDGE, ((x - r / 2, y, x + r / 2, y),))
        case Status.UNKNOWN:
            q = 0.85 * r
            square = ((x - q, y - q), (x + q, y - q), (x + q, y + q), (x - q, y + q))
            return Polyline(Pen.EDGE, square, closed=True), Lines(Pen.EDGE, ((x - q, y - q, x + q, y + q),))
        case Status.PASS:
            return (Polyline(Pen.EDGE, circle_points(centre, 0.9 * r), closed=True),)


def circle_points(centre: Point, radius: float, steps: int = CIRCLE_STEPS) -> Ring:
    """A regular polygon that passes for a circle on paper."""
    x, y = centre
    return tuple([(x + radius * across, y + radius * up) for across, up in _list_ways(steps)])


@lru_cache(maxsize=8)
def _list_ways(steps: int) -> tuple[Point, ...]:
    """From the middle to so many points of a circle of radius 1."""
    turns = [2 * pi * step / steps for step in range(steps)]
    return tuple((cos(turn), sin(turn)) for turn in turns)


CONE_LENGTH = 0.25 / tan(pi / 12)
"""Length of the projection sign's cone for a height of 1: its sides open at 30 degrees (from memory)."""
SIGN_GAP = 0.3
SIGN_OVER = 0.12
"""Clear between its two views, and how far its centre lines pass them, for a height of 1. Shop choice."""


def third_angle_marks(corner: Point, height: float) -> tuple[Mark, ...]:
    """The third-angle sign: a cut-off cone, the view of its small end placed on the small end's side.

    `corner` is the lower left of its views, without the centre lines' overrun.
    """
    big, small = height / 2, height / 4
    end, y = corner[0] + big, corner[1] + big
    near = corner[0] + height * (1 + SIGN_GAP)
    far, over = near + height * CONE_LENGTH, height * SIGN_OVER
    cone = ((near, y - small), (far, y - big), (far, y + big), (near, y + small))
    axes: tuple[Segment, ...] = (
        (corner[0] - over, y, far + over, y),
        (end, y - big - over, end, y + big + over),
    )
    return (
        Polyline(Pen.EDGE, circle_points((end, y), big), closed=True),
        Polyline(Pen.EDGE, circle_points((end, y), small), closed=True),
        Polyline(Pen.EDGE, cone, closed=True),
        Lines(Pen.ARRIS, axes),
    )


def third_angle_width(height: float) -> float:
    """How wide its two views are together."""
    return height * (1 + SIGN_GAP + CONE_LENGTH)


def box_marks(corner: Point, size: float) -> tuple[Mark, ...]:
    """An empty square to tick off by hand; `corner` is its lower left."""
    x, y = corner
    return (Polyline(Pen.ARRIS, ((x, y), (x + size, y), (x + size, y + size), (x, y + size)), closed=True),)
