"""The elements that mouldings are made of, each as the strokes of its face.

The shapes are those Peter Nicholson gives for regular mouldings (The Mechanic's Companion: bead and torus
a half circle, ovolo and cavetto a quarter, the cyma two quarters, the scotia two quarters of different
radii). Where height and projection differ he flattens the curve; here it stays a true arc that keeps
within its height and projection and leaves along the longer of the two: shop choice.

A face is read from the seat on: from the side that lies under a shelf, on a plinth or at a frame's
edge. `down` leads away from the seat, `back` towards the wall, negative where the face comes out.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from model.board import Point2
from model.moulding.outline import HAIR, Line, Stroke, arc_bulged, arc_round, join_strokes


class Shape(StrEnum):
    """What an element is called, in the text of a section too."""

    FILLET = "fillet"
    BEAD = "bead"
    TORUS = "torus"
    OVOLO = "ovolo"
    CAVETTO = "cavetto"
    SCOTIA = "scotia"
    CYMA_RECTA = "cyma recta"
    CYMA_REVERSA = "cyma reversa"
    BEVEL = "bevel"
    LINE = "line"
    ROUND = "round"
    HOLLOW = "hollow"


DRAWN = frozenset({Shape.LINE, Shape.ROUND, Shape.HOLLOW})
"""Shapes without a name in the orders: a straight stroke and an arc anywhere, as drawings hold them."""
HALF_ROUND = frozenset({Shape.BEAD, Shape.TORUS})
CURVED = frozenset({Shape.OVOLO, Shape.CAVETTO, Shape.CYMA_RECTA, Shape.CYMA_REVERSA})
"""Shapes that need both a height and a way back or out."""


@dataclass(frozen=True, slots=True)
class Element:
    """One element: how far down it goes and how far back it leads, inches.

    A fillet is a flat face `down` high; where it leads back it steps back below its face, where it leads
    out it steps out above it. `down` may be negative for DRAWN shapes alone. `radius` is that of ROUND
    and HOLLOW, and `long` says that such an arc is the longer way round its circle.
    """

    shape: Shape
    down: float
    back: float = 0.0
    radius: float = 0.0
    long: bool = False

    def scaled(self, factor: float) -> Element:
        """The same element `factor` times as large."""
        return replace(self, down=self.down * factor, back=self.back * factor, radius=self.radius * factor)


def fillet(down: float, back: float = 0.0) -> Element:
    """A flat band."""
    return Element(Shape.FILLET, down, back)


def bead(down: float) -> Element:
    """A small half round."""
    return Element(Shape.BEAD, down)


def torus(down: float) -> Element:
    """A large half round."""
    return Element(Shape.TORUS, down)


def ovolo(down: float, back: float) -> Element:
    """A quarter round."""
    return Element(Shape.OVOLO, down, back)


def cavetto(down: float, back: float) -> Element:
    """A quarter hollow."""
    return Element(Shape.CAVETTO, down, back)


def scotia(down: float, back: float = 0.0) -> Element:
    """A deep hollow of two quarters."""
    return Element(Shape.SCOTIA, down, back)


def cyma_recta(down: float, back: float) -> Element:
    """A double curve, hollow where it projects."""
    return Element(Shape.CYMA_RECTA, down, back)


def cyma_reversa(down: float, back: float) -> Element:
    """A double curve, round where it projects."""
    return Element(Shape.CYMA_REVERSA, down, back)


def bevel(down: float, back: float) -> Element:
    """A slope."""
    return Element(Shape.BEVEL, down, back)


def draw_element(element: Element, at: Point2) -> tuple[Stroke, ...]:
    """The strokes of `element` starting `at`, x out from the wall, y up; wood on the right hand.

    >>> [stroke.end for stroke in draw_element(Element(Shape.CYMA_RECTA, 2, 2), (2, 0))]
    [(1.0, -1.0), (0, -2)]
    """
    end = (at[0] - element.back, at[1] - element.down)
    match element.shape:
        case Shape.FILLET:
            knee = (at[0], end[1]) if element.back > 0 else (end[0], at[1])
            return join_strokes((at, knee, end))
        case Shape.BEVEL | Shape.LINE:
            return (Line(at, end),)
        case Shape.BEAD | Shape.TORUS:
            return (arc_round(at, end, (at[0], (at[1] + end[1]) / 2), left=False),)
        case Shape.OVOLO:
            return (_quarter(at, end, hollow=False),)
        case Shape.CAVETTO:
            return (_quarter(at, end, hollow=True),)
        case Shape.CYMA_RECTA | Shape.CYMA_REVERSA:
            return _cyma(at, end, recta=element.shape is Shape.CYMA_RECTA)
        case Shape.SCOTIA:
            return _scotia(element, at, end)
        case Shape.ROUND | Shape.HOLLOW:
            return (_free_arc(element, at, end),)


def _quarter(start: Point2, end: Point2, hollow: bool) -> Stroke:
    """A quarter circle; where height and projection differ, an arc that leaves along the longer one."""
    (x0, y0), (x1, y1) = start, end
    high, deep = y0 - y1, abs(x0 - x1)
    outer, inner = (start, end) if x0 > x1 else (end, start)
    if high >= deep:
        radius = (high * high + deep * deep) / (2 * deep)
        centre = (outer[0] - radius, outer[1])
    else:
        radius = (high * high + deep * deep) / (2 * high)
        centre = (inner[0], inner[1] + radius if inner[1] < outer[1] else inner[1] - radius)
    if hollow:  # the same arc turned half round about the middle
        centre = (x0 + x1 - centre[0], y0 + y1 - centre[1])
    return arc_round(start, end, centre, left=hollow)


def _cyma(start: Point2, end: Point2, recta: bool) -> tuple[Stroke, ...]:
    """Two quarters that meet in the middle; the cyma recta is hollow where it projects."""
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    hollow_first = recta == (start[0] > end[0])
    return (_quarter(start, middle, hollow_first), _quarter(middle, end, not hollow_first))


def _scotia(element: Element, start: Point2, end: Point2) -> tuple[Stroke, ...]:
    """Two quarters round a throat; their radii add up to the height and differ by what it leads out."""
    upper, lower = (element.down + element.back) / 2, (element.down - element.back) / 2
    level = start[1] - upper
    throat = (start[0] - upper, level)
    return (
        arc_round(start, throat, (start[0], level), left=True),
        arc_round(throat, end, (throat[0] + lower, level), left=True),
    )


def _free_arc(element: Element, start: Point2, end: Point2) -> Stroke:
    """An arc by its radius. A radius that does not reach is taken as half the distance."""
    chord = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2) ** 0.5
    half = chord / 2
    apart = max(element.radius**2 - half**2, 0.0) ** 0.5
    rise = element.radius + apart if element.long else element.radius - apart
    if half < HAIR:
        return Line(start, end)
    bulge = max(rise, HAIR) / half
    return arc_bulged(start, end, bulge if element.shape is Shape.HOLLOW else -bulge)
