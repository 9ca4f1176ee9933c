"""The fireplace alone, plainly drawn from three sides, for pictures of where a tape goes. No sizes.

What is drawn of a surround stands in render.views, the sketch of the site record in render.site_sketch.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

from model.site import Site
from render.drawing import Fill, Lines, Mark, Pen, Region
from render.extent import Box, box_ring
from render.picture_frame import draw_box

WALL_DEPTH = 4.0
"""Masonry shown behind its face from above and from beside, in. Shop choice."""
CASING = 3.5
"""Width of a door's or window's casing as it is drawn, in.: it is not measured. Invented."""
BEYOND = 144.0
"""The floor runs on this far before the hearth, in.; what is too much is cut off by the picture."""


class Scene(StrEnum):
    """Which way the fireplace is looked at: axes as in the front view, the vertical section and the plan."""

    FRONT = "front"
    SIDE = "side"
    ABOVE = "above"
    ROOM = "room"


def draw_scene(site: Site, scene: Scene) -> tuple[Mark, ...]:
    """Everything of the site that is seen so; from beside it is cut through the opening's middle."""
    drawn = {Scene.FRONT: _front, Scene.SIDE: _side, Scene.ABOVE: _above, Scene.ROOM: _room}
    return tuple(drawn[scene](site))


def scene_box(site: Site, scene: Scene) -> Box:
    """Left, bottom, right and top of what a picture shows at least: opening, facing and hearth."""
    facing, hearth = site.facing.width / 2, site.hearth.width / 2
    floor, half = -site.hearth.height, max(facing, hearth)
    match scene:
        case Scene.FRONT:
            return -half - 3, floor, half + 3, site.facing.height + 3
        case Scene.SIDE:
            return -site.hearth.depth - 4, floor - 2, _back(site), site.facing.height + 3
        case Scene.ABOVE:
            return -half - 3, -site.hearth.depth - 1, half + 3, _back(site)
        case _:
            long, broad = room_sides(site)
            return -long / 2, 0.0, long / 2, broad


def room_sides(site: Site) -> tuple[float, float]:
    """Length and breadth of the room, the longer first; 18 by 14 feet where they were not measured."""
    return site.room.length or 216.0, site.room.breadth or 168.0


def _back(site: Site) -> float:
    return site.facing.proud + WALL_DEPTH


def _front(site: Site) -> Iterator[Mark]:
    half, high, foot = site.opening.width / 2, site.opening.height, site.opening.sill
    facing, top, floor = site.facing.width / 2, site.facing.height, -site.hearth.height
    ceiling = floor + site.room.ceiling
    left, right = -half - site.room.left, half + site.room.right
    yield Region(Fill.WALL, (box_ring((left, floor, right, ceiling)),))
    yield Lines(Pen.SITE, ((left, ceiling, right, ceiling), (left, floor, left, ceiling)))
    yield Lines(Pen.SITE, ((right, floor, right, ceiling),))
    yield from draw_box(Fill.FACING, (-facing, min(floor, 0.0), facing, top), Pen.EDGE)
    yield from draw_box(Fill.MASONRY, (-half, 0.0, half, high), Pen.OUTLINE)
    if foot > 0:
        yield from draw_box(Fill.BAND, (-half, 0.0, half, foot), Pen.EDGE)
    yield from _on_the_wall(site)
    if floor < 0:
        hearth = site.hearth.width / 2
        yield from draw_box(Fill.HEARTH, (-hearth, floor, hearth, 0.0), Pen.OUTLINE)
    yield Lines(Pen.GROUND, ((left, floor, right, floor),))


def _on_the_wall(site: Site) -> Iterator[Mark]:
    """Baseboards, outlets, casings, an old ledger and bolts, as far as there are any."""
    floor, half, facing = -site.hearth.height, site.opening.width / 2, site.facing.width / 2
    for side, sign, free in (("left", -1, site.room.left), ("right", 1, site.room.right)):
        height = getattr(site.baseboard, f"height_{side}")
        if height:
            yield from draw_box(Fill.BAND, _box(sign, facing, half + free, floor, floor + height), Pen.EDGE)
        casing = getattr(site.casing, side)
        if casing is not None:
            low, high = (floor + getattr(site.casing, f"{end}_{side}") for end in ("bottom", "top"))
            yield from draw_box(Fill.BAND, _box(sign, casing, casing + CASING, low, high), Pen.EDGE)
        outlet = getattr(site.outlet, side)
        if outlet is not None:
            middle, wide, tall = (
                floor + getattr(site.outlet, f"height_{side}"),
                site.outlet.width,
                site.outlet.tall,
            )
            box = _box(sign, outlet - wide / 2, outlet + wide / 2, middle - tall / 2, middle + tall / 2)
            yield from draw_box(Fill.PAPER, box, Pen.EDGE)
    ledger = site.old_ledger
    if ledger.top is not None:
        yield from draw_box(
            Fill.CUT_WOOD, (-ledger.left, ledger.top - ledger.tall, ledger.right, ledger.top), Pen.EDGE
        )
    for bolt in (site.bolt_one, site.bolt_two, site.bolt_three):
        if bolt.across is not None:
            r = bolt.diameter / 2
            yield from draw_box(
                Fill.PAPER, (bolt.across - r, bolt.up - r, bolt.across + r, bolt.up + r), Pen.OUTLINE
            )


def _side(site: Site) -> Iterator[Mark]:
    """Cut through the opening's middle, the room on the left."""
    floor, high, top = -site.hearth.height, site.opening.height, site.facing.height
    proud, back, depth = site.facing.proud, _back(site), site.hearth.depth
    slab = max(site.hearth.thickness or 0.0, site.hearth.height, 1.0)
    ceiling = floor + site.room.ceiling
    yield Region(Fill.BAND, (box_ring((0.0, 0.0, back, high)),))
    if top > high:
        yield from draw_box(Fill.MASONRY, (0.0, high, back, top), Pen.OUTLINE)
    yield from draw_box(Fill.MASONRY, (proud, top, back, ceiling), Pen.EDGE)
    yield from draw_box(Fill.HEARTH, (-depth, -slab, back, 0.0), Pen.OUTLINE)
    if site.opening.sill > 0:
        yield from draw_box(Fill.MASONRY, (0.0, 0.0, back, site.opening.sill), Pen.EDGE)
    yield Lines(Pen.GROUND, ((-depth - BEYOND, floor, -depth, floor),))
    ledger = site.old_ledger
    if ledger.top is not None:
        yield from draw_box(
            Fill.CUT_WOOD, (-ledger.thick, ledger.top - ledger.tall, 0.0, ledger.top), Pen.EDGE
        )
    for bolt in (site.bolt_one, site.bolt_two, site.bolt_three):
        if bolt.across is not None:
            r = bolt.diameter / 2
            yield from draw_box(Fill.PAPER, (-bolt.out, bolt.up - r, 0.0, bolt.up + r), Pen.OUTLINE)


def _above(site: Site) -> Iterator[Mark]:
    """From above at the height of the opening, the room below."""
    half, facing = site.opening.width / 2, site.facing.width / 2
    proud, back, hearth = site.facing.proud, _back(site), site.hearth.width / 2
    yield from draw_box(Fill.HEARTH, (-hearth, -site.hearth.depth, hearth, 0.0), Pen.OUTLINE)
    yield Region(Fill.BAND, (box_ring((-half, 0.0, half, back)),))
    for side, sign, free in (("left", -1, site.room.left), ("right", 1, site.room.right)):
        yield from draw_box(Fill.MASONRY, _box(sign, half, facing, 0.0, back), Pen.OUTLINE)
        yield from draw_box(Fill.MASONRY, _box(sign, facing, half + free, proud, back), Pen.OUTLINE)
        if site.facing.added > 0:
            yield from draw_box(Fill.BAND, _box(sign, half, facing, -site.facing.added, 0.0), Pen.EDGE)
        if getattr(site.baseboard, f"height_{side}"):
            own = getattr(site.baseboard, f"thickness_{side}") or site.baseboard.thickness
            yield from draw_box(Fill.PAPER, _box(sign, facing, half + free, proud - own, proud), Pen.EDGE)
        casing = getattr(site.casing, side)
        if casing is not None:
            box = _box(sign, casing, casing + CASING, proud - site.casing.proud, proud)
            yield from draw_box(Fill.PAPER, box, Pen.EDGE)


def _room(site: Site) -> Iterator[Mark]:
    """Four walls from above."""
    box = scene_box(site, Scene.ROOM)
    yield from draw_box(Fill.WALL, box, Pen.CUT)


def _box(sign: int, near: float, far: float, low: float, high: float) -> Box:
    """A box on one side of the centre line, from `near` out to `far`."""
    first, last = sorted((sign * near, sign * max(far, near)))
    return first, low, last, high
