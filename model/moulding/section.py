"""A moulding's section: a back, a seat, and a face made of elements, with its sizes.

Sections in the order they are shipped stand in model.moulding.library; their text in
model.moulding.notation; what a run of one looks like in a room is model.build.run's.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from math import cos, pi, radians, sin

from model.board import Point2
from model.moulding.elements import Element, draw_element
from model.moulding.outline import Outline, Stroke, join_strokes

FACET_SAGITTA = 1 / 128
"""How far the flats that stand for an arc in boards may lie off it, in. Shop choice."""

Polygon = tuple[tuple[Point2, ...], frozenset[int]]
"""Corners, and which of them lie in a curve where no edge shows."""


@dataclass(frozen=True, slots=True)
class Section:
    """A moulding across its length, inches.

    Its face is read from the seat's outer edge on (see model.moulding.elements); `foot` is what is left
    between the face's end and the wall. `spring` is the angle in degrees from the wall to the back of a
    sprung moulding, 0 for a flat back; a sprung one is `thickness` thick, square to its back.
    """

    name: str
    elements: tuple[Element, ...]
    foot: float = 0.0
    spring: float = 0.0
    thickness: float = 0.0

    @property
    def height(self) -> float:
        """From the seat to the foot."""
        return sum(element.down for element in self.elements)

    @property
    def seat(self) -> float:
        """From the wall to the face's beginning."""
        return self.foot + sum(element.back for element in self.elements)

    @property
    def projection(self) -> float:
        """From the wall to whatever stands out furthest."""
        return self.outline.bounds[2]

    @property
    def outline(self) -> Outline:
        """Its closed outline: x out from the wall, y up from the seat, so that all of it lies below."""
        return _outline(self)

    @property
    def is_sprung(self) -> bool:
        """Whether its back stands off the corner it sits in."""
        return self.spring > 0

    @property
    def stock_size(self) -> Point2:
        """Thickness and width of the strip it is worked from: square to its back and along it."""
        turn = radians(self.spring)
        outline = self.outline
        across = outline.reach(-turn) + outline.reach(pi - turn)
        return across, outline.reach(pi / 2 - turn) + outline.reach(-pi / 2 - turn)

    def scaled(self, factor: float) -> Section:
        """The same section `factor` times as large, its spring angle kept."""
        return replace(
            self,
            elements=tuple(element.scaled(factor) for element in self.elements),
            foot=self.foot * factor,
            thickness=self.thickness * factor,
        )

    def sized(self, height: float) -> Section:
        """The same section made `height` high."""
        return self if height == self.height else self.scaled(height / self.height)

    def polygon(self, sagitta: float = FACET_SAGITTA) -> Polygon:
        """Its outline in flats no further than `sagitta` off it, clockwise from the wall at the seat."""
        return _facet(self, sagitta)


def draw_face(section: Section) -> tuple[Stroke, ...]:
    """The face's strokes, from the seat's outer edge to the foot."""
    at = (section.seat, 0.0)
    strokes: list[Stroke] = []
    for element in section.elements:
        strokes += draw_element(element, at)
        at = (at[0] - element.back, at[1] - element.down)
    return tuple(strokes)


@lru_cache(maxsize=256)
def _facet(section: Section, sagitta: float) -> Polygon:
    return section.outline.facet(sagitta)


@lru_cache(maxsize=256)
def _outline(section: Section) -> Outline:
    face = draw_face(section)
    last = face[-1].end
    wall = (0.0, last[1])
    corner: tuple[Point2, ...] = ((0.0, 0.0),)
    if section.is_sprung:
        level, plumb = back_contacts(section)
        corner = ((0.0, -plumb), (level, 0.0))
    seat, *rest = (face[0].start, last, wall, *corner)
    return Outline((*join_strokes((corner[-1], seat)), *face, *join_strokes(rest)))


def back_contacts(section: Section) -> Point2:
    """Where a sprung back meets the seat's line and the wall: distances from their corner.

    Negative where the section is thicker than its corner is deep.
    """
    turn = radians(section.spring)
    back = max(stroke.reach(-turn) for stroke in draw_face(section)) - section.thickness
    return back / cos(turn), back / sin(turn)


def thinnest(section: Section) -> float:
    """The least wood between a sprung back and the face. Raises ValueError for a flat back."""
    if not section.is_sprung:
        raise ValueError(f"{section.name} has a flat back")
    turn = radians(section.spring)
    level, _ = back_contacts(section)
    # The face's ends stand on the seat and at the foot, so that what counts lies between them.
    return min(-stroke.reach(pi - turn) for stroke in draw_face(section)) - level * cos(turn)
