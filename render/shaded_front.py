"""The front as a picture: the chosen colours, shades and shadows, and nothing that only a workshop needs.

How shades are worked out is render.shaded's, how a colour looks in them render.painted's. A working drawing
carries none of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from model.look import facing_colour, mix_colours, wall_colour, wood_colour
from model.once import once
from model.surround import Surround
from render.axonometric import rings_of
from render.drawing import Drawing, Fill, Hatch, Lines, Mark, Pen, Polyline, Region, Text
from render.extent import Box, box_ring
from render.hatching import hatch_segments
from render.painted import Paint, mix_paint
from render.pens import TINTS
from render.shaded import GRID, Backdrop, Tones, area_of, list_tones
from render.view_context import BESIDE, Frame
from render.views import ViewOptions, draw_view, project_boards

if TYPE_CHECKING:
    pass

WORKSHOP = frozenset({Pen.GUIDE, Pen.CENTRE, Pen.DIMENSION, Pen.FAULT, Pen.CLEARANCE})
"""Pens for what does not show in the room."""
LEFT_OUT = frozenset({"ceiling", "wall end"})
"""What the picture's own edge stands for."""
FLOOR = "floor"
ABOVE = 8.0
"""Wall shown over the highest part, in. Shop choice."""
HOLLOW = "#27282b"
"""The opening: darker than any facing in the light."""
JOINTS = 0.35
"""How strongly the courses of a facing are ruled in the ink that goes with its colour. Shop choice."""


def draw_shaded(surround: Surround, ratio: float) -> Drawing:
    """The front elevation without dimensions, notes and hidden lines, shaded and in the job's colours.

    Lettered for `ratio`.
    """
    backdrop = _wall_behind(surround)
    tones = once(surround, "tones", lambda: _list_tones(surround))
    colouring = _Colouring(surround, tones, backdrop.room)
    view = draw_view(surround, "front", ViewOptions(ratio=ratio, dimensions=False, by_board=True))
    wall = Region(Fill.WALL, (box_ring(backdrop.room),), "wall")
    kept = [wall, *(mark for mark in view.marks if _shows(mark))]
    areas = (mark for mark in kept if isinstance(mark, Region | Hatch))
    lines = (mark for mark in kept if not isinstance(mark, Region | Hatch))
    return Drawing(tuple(out for mark in (*areas, *lines) for out in colouring.colour(mark)), ratio)


def _list_tones(surround: Surround) -> Tones:
    projection, _ = project_boards(surround, "front")
    return list_tones(projection, _wall_behind(surround))


def _shows(mark: Mark) -> bool:
    if isinstance(mark, Text):
        return False
    return mark.stands_for not in LEFT_OUT and getattr(mark, "pen", None) not in WORKSHOP


@dataclass(frozen=True, slots=True)
class Paints:
    """What the picture's surfaces are painted with."""

    wood: Paint
    facing: Paint
    wall: Paint

    @staticmethod
    def of(surround: Surround) -> Paints:
        """Those of a job's look."""
        design = surround.job.design
        wood = wood_colour(design.look, design.board.species)
        both = facing_colour(design.look), wall_colour(design.look)
        return Paints(mix_paint(wood), *map(mix_paint, both))

    def on(self, fill: Fill) -> Paint:
        """What an area of the view is painted with; what was not chosen keeps its tint."""
        chosen = {Fill.WOOD: self.wood, Fill.FACING: self.facing, Fill.WALL: self.wall}
        return chosen.get(fill) or mix_paint(TINTS[fill])


class _Colouring:
    """Puts colours on the marks of a view."""

    def __init__(self, surround: Surround, tones: Tones, room: Box) -> None:
        self.room = room
        self.paints = Paints.of(surround)
        self.boards = frozenset(surround.marks)
        self.shade, self.shadow = (area_of(rings) for rings in (tones.shade, tones.shadow))

    def colour(self, mark: Mark) -> Iterator[Mark]:
        """The mark in its colours; an area with its shade and shadow over it."""
        match mark:
            case Region():
                yield from self._tint(mark)
            case Hatch():
                paint = self.paints.facing
                yield Lines(
                    mark.pen,
                    tuple(hatch_segments(mark)),
                    mark.stands_for,
                    mix_colours(paint.ink, paint.lit, JOINTS),
                )
            case Lines() if mark.stands_for == FLOOR and mark.pen is Pen.GROUND:
                (_, level, *_), *_ = mark.segments
                yield replace(mark, segments=((self.room[0], level, self.room[2], level),))
            case Lines():
                yield replace(mark, ink=self._ink(mark.stands_for))
            case Polyline():
                points = (*mark.points, mark.points[0]) if mark.closed else mark.points
                segments = tuple((*one, *two) for one, two in pairwise(points))
                yield Lines(mark.pen, segments, mark.stands_for, self._ink(mark.stands_for))
            case _:
                yield mark

    def _ink(self, stands_for: str) -> str:
        if stands_for in self.boards:
            return self.paints.wood.ink
        return self.paints.facing.ink if not stands_for else ""

    def _tint(self, region: Region) -> Iterator[Region]:
        if region.fill is Fill.OPENING:
            yield replace(region, tint=HOLLOW)
            return
        paint = self.paints.on(region.fill)
        yield replace(region, tint=paint.lit)
        area = area_of(region.rings)
        for fill, dark, tint in (
            (Fill.SHADE, self.shade, paint.shade),
            (Fill.SHADOW, self.shadow, paint.shadow),
        ):
            if rings := rings_of(dark.intersection(area, grid_size=GRID)):
                yield Region(fill, rings, fill.value, tint)


def _wall_behind(surround: Surround) -> Backdrop:
    """The wall as far as the picture shows it, and as it goes."""
    layout, room = surround.layout, surround.job.site.room
    left, _, right, top = Frame.around(surround, "front").outline
    left = max(left - BESIDE, -layout.opening_side - room.left)
    right = min(right + max(BESIDE, layout.shelf_foremost - layout.wall), layout.opening_side + room.right)
    high = max(top, min(top + ABOVE, layout.ceiling))
    return Backdrop(layout.wall, (min(left, right), layout.floor, right, high))
