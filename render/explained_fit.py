"""Findings of fit and of measurements drawn: the boards they name, and the size they are about."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from model.build.lines import Layout, Side
from model.check.finding import Finding
from model.surround import Surround
from render.drawing import Lines, Mark, Pen, Point
from render.explained_base import (
    LINE,
    draw_front,
    draw_side,
    list_boards_of,
    measure,
    stand_beside,
)

ASIDE = 6.0
"""How much of a baseboard is shown beside a plinth, in. Shop choice."""
Span = tuple[Point, Point, bool]
"""Two points of the front, and whether they are measured plumb."""


def draw_fit_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """Front and side with what it names picked out; the walls, the ceiling or the size it is about."""
    tinted = finding.boards or list_boards_of(surround, finding.part)
    front = list(_draw_front(surround, finding, tinted, ratio))
    return stand_beside(front, _draw_side(surround, finding, tinted, ratio), ratio)


def draw_plinth_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """Front and side with the plinth picked out, and both heights over the floor on its own side."""
    layout, turn = surround.layout, _turn_to(finding.part.split()[0])
    side = layout.left if turn < 0 else layout.right
    foot, wall = (turn * x for x in (side.outer + layout.plinth_out, side.outer + layout.plinth_out + ASIDE))
    front = list(draw_front(surround, finding.boards))
    heights = [layout.floor + (height or 0.0) for height in (finding.measured, finding.limit)]
    front.append(
        Lines(Pen.SITE, ((foot, layout.floor, wall, layout.floor), (foot, heights[1], wall, heights[1])))
    )
    for i, (x, y) in enumerate(zip((foot, wall), heights, strict=True)):
        line = wall + turn * (1 + i) * LINE * ratio
        front.append(measure(surround, (x, layout.floor), (x, y), True, line, ratio))
    return stand_beside(front, draw_side(surround, finding.boards), ratio)


def _draw_front(
    surround: Surround, finding: Finding, tinted: tuple[str, ...], ratio: float
) -> Iterator[Mark]:
    yield from draw_front(surround, tinted)
    if finding.part in ("left side", "right side"):
        yield from _draw_wall(surround, finding, ratio)
    elif finding.part == "shelf" and finding.path == "shelf.height":
        yield from _draw_ceiling(surround, ratio)
    elif finding.path in SPANS:
        yield from _draw_span(surround, SPANS[finding.path](surround), ratio)
    if finding.path.startswith("readings.diagonal"):
        mouth, top = surround.layout.opening_side, surround.layout.opening_top
        yield Lines(Pen.CENTRE, ((-mouth, 0.0, mouth, top), (-mouth, top, mouth, 0.0)))


def _draw_side(surround: Surround, finding: Finding, tinted: tuple[str, ...], ratio: float) -> Iterator[Mark]:
    layout = surround.layout
    yield from draw_side(surround, tinted)
    low = layout.floor - LINE * ratio
    if finding.path.startswith("plumb."):
        side = layout.left if finding.path.endswith("left") else layout.right
        foot, head = (-layout.set_back(_turn_to(side.name) * side.inner, y) for y in (0.0, layout.shelf_top))
        yield Lines(Pen.CLEARANCE, ((-foot, 0.0, -head, layout.shelf_top),))
    if finding.path in OUT:
        yield measure(surround, (0.0, 0.0), (-OUT[finding.path](surround), 0.0), False, low, ratio)


def _turn_to(side: str) -> float:
    """Which way from the centre line a side lies."""
    return -1.0 if side == "left" else 1.0


def _draw_wall(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    """The wall that is free beside the opening, and how far the surround reaches."""
    layout, room = surround.layout, surround.job.site.room
    turn = _turn_to(finding.part.split()[0])
    free = room.left if turn < 0 else room.right
    mouth, wall = turn * layout.opening_side, turn * (layout.opening_side + free)
    reach = mouth + turn * (finding.measured or 0.0)
    yield Lines(Pen.SITE, ((wall, layout.floor, wall, layout.shelf_top + 6),))
    for i, x in enumerate((reach, wall)):
        line = layout.floor - (1 + i) * LINE * ratio
        yield measure(surround, (mouth, layout.floor), (x, layout.floor), False, line, ratio)


def _draw_ceiling(surround: Surround, ratio: float) -> Iterator[Mark]:
    layout = surround.layout
    half = max(layout.facing_side, layout.shelf_reach)
    yield Lines(Pen.SITE, ((-half, layout.ceiling, half, layout.ceiling),))
    for i, y in enumerate((layout.shelf_top, layout.ceiling)):
        line = half + (1 + i) * LINE * ratio
        yield measure(surround, (half, layout.floor), (half, y), True, line, ratio)


def _draw_span(surround: Surround, span: Span, ratio: float) -> Iterator[Mark]:
    first, second, vertical = span
    layout = surround.layout
    beside = max(layout.shelf_reach, layout.facing_side) + LINE * ratio
    line = math.copysign(beside, first[0]) if vertical else layout.floor - LINE * ratio
    yield measure(surround, first, second, vertical, line, ratio)


def _across(half: float, y: float) -> Span:
    return (-half, y), (half, y), False


def _along_shelf(left: Side, right: Side, y: float) -> Span:
    return (-left.shelf_side, y), (right.shelf_side, y), False


def _up(x: float, low: float, high: float) -> Span:
    return (x, low), (x, high), True


def _up_lower_plinth(layout: Layout) -> Span:
    """The height that a finding tells where the frieze leaves less room for one plinth."""
    side = min((layout.right, layout.left), key=lambda side: side.plinth_top - side.base)
    return _up(_turn_to(side.name) * side.outer, side.base, side.plinth_top)


SPANS: dict[str, Callable[[Surround], Span]] = {
    "facing.width": lambda s: _across(s.layout.facing_side, 0.0),
    "hearth.width": lambda s: _across(s.layout.hearth_side, 0.0),
    "opening.width": lambda s: _across(s.layout.opening_side, 0.0),
    "facing.height": lambda s: _up(s.layout.facing_side, 0.0, s.layout.facing_top),
    "opening.height": lambda s: _up(s.layout.opening_side, 0.0, s.layout.opening_top),
    "opening.sill": lambda s: _up(s.layout.opening_side, 0.0, s.job.site.opening.sill),
    "column.margin": lambda s: ((s.layout.opening_side, 0.0), (s.layout.right.inner, 0.0), False),
    "plinth.height": lambda s: _up_lower_plinth(s.layout),
    "column.width": lambda s: ((s.layout.right.inner, 0.0), (s.layout.right.outer, 0.0), False),
    "frieze.kind": lambda s: _up(0.0, s.layout.frieze_bottom, s.layout.shelf_bottom),
    "frieze.height": lambda s: _up(0.0, s.layout.frieze_bottom, s.layout.shelf_bottom),
    "shelf.thickness": lambda s: _up(0.0, s.layout.shelf_bottom, s.layout.shelf_top),
    "shelf.overhang_end": lambda s: _along_shelf(s.layout.left, s.layout.right, s.layout.shelf_top),
}
"""What is measured on the front, by the parameter a finding names."""
OUT: dict[str, Callable[[Surround], float]] = {
    "shelf.kind": lambda s: s.layout.shelf_foremost,
    "shelf.overhang_front": lambda s: s.layout.shelf_foremost,
    "column.projection": lambda s: s.layout.right.frame.front,
    "frieze.projection": lambda s: s.layout.frieze_front,
    "hearth.depth": lambda s: s.layout.hearth_front,
}
"""What is measured out from the masonry from the side."""
