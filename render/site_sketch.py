"""The fireplace as it was measured, front and from above, each size with its letter in the site record.

Only the site is drawn. What the record says is render.site_sheet's.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from model.site import Site
from model.surround import Surround
from model.units import INCHES_16
from render.dimension_strings import Edge, Station, String, measure, place_strings
from render.drawing import (
    Dimension,
    Drawing,
    Fill,
    Hatch,
    Lines,
    Mark,
    Pen,
    Point,
    Polyline,
    Region,
)
from render.extent import Box, box_ring
from render.names import Name, place_names
from render.sheets import SITE_CUT, SITE_FRONT
from render.views import FACING_HATCH, MASONRY_HATCH

KEYS: Mapping[str, str] = {
    "opening.width": "A",
    "opening.height": "B",
    "readings.diagonal_falling": "C",
    "readings.diagonal_rising": "D",
    "facing.width": "E",
    "facing.height": "F",
    "facing.proud": "G",
    "hearth.width": "H",
    "hearth.depth": "J",
    "hearth.height": "K",
    "room.ceiling": "L",
    "room.left": "M",
    "room.right": "N",
    "hearth.thickness": "P",
    "opening.sill": "Q",
}
"""Letters of the sizes that are drawn; I and O are left out, since they are read as figures."""
MOST_WALL = 12.0
"""Wall drawn beside facing and hearth, in.; what goes on further is broken off. Shop choice."""
HEADROOM = 12.0
"""Wall drawn over the facing, in.; a higher ceiling is drawn nearer. Shop choice."""
WALL_DEPTH = 4.0


def draw_site(surround: Surround, name: str, ratio: float) -> Drawing:
    """The site from the front, cut upright or from above: `name` is SITE_FRONT, SITE_CUT or SITE_PLAN."""
    site = (surround.asked or surround.job).site
    if name == SITE_CUT:
        return Drawing(tuple(_draw_cut(site, ratio)), ratio)
    if name != SITE_FRONT:
        return Drawing(tuple(_draw_plan(site, ratio)), ratio)
    marks = list(_draw_front(site, ratio))
    names = _name_diagonals(site.opening.width / 2, site.opening.height)
    return Drawing((*marks, *place_names(names, marks, ratio)), ratio)


def _half_width(site: Site) -> float:
    return max(site.facing.width, site.hearth.width, site.opening.width) / 2


def _draw_front(site: Site, ratio: float) -> Iterator[Mark]:
    half, floor = site.opening.width / 2, -site.hearth.height
    facing, top = site.facing.width / 2, site.facing.height
    left, right = _wall_ends(site)
    ceiling = min(top + HEADROOM, site.room.ceiling - site.hearth.height) if _is_low(site) else top + HEADROOM
    ring = box_ring((-facing, min(floor, 0.0), facing, top))
    mouth = box_ring((-half, 0.0, half, site.opening.height))
    yield Region(Fill.FACING, (ring, mouth))
    yield Region(Fill.BAND, (mouth,))
    angle, spacing = FACING_HATCH
    yield Hatch(Pen.HATCH, (ring, mouth), angle, spacing * ratio)
    yield Polyline(Pen.EDGE, ring, closed=True)
    yield Polyline(Pen.OUTLINE, mouth, closed=True)
    if floor < 0:
        hearth = box_ring((-site.hearth.width / 2, floor, site.hearth.width / 2, 0.0))
        yield Region(Fill.HEARTH, (hearth,))
        yield Polyline(Pen.OUTLINE, hearth, closed=True)
    yield Lines(Pen.GROUND, ((left, floor, right, floor),))
    yield Lines(
        Pen.SITE,
        ((left, ceiling, right, ceiling), (left, floor, left, ceiling), (right, floor, right, ceiling)),
    )
    high = site.opening.height
    yield Lines(Pen.GUIDE, ((-half, high, half, 0.0), (-half, 0.0, half, high)))
    box = (left, floor, right, ceiling)
    yield from _letter_sizes(
        _front_strings(site, box),
        (min(left, -_half_width(site)), floor, max(right, _half_width(site)), ceiling),
        ratio,
    )


def _is_low(site: Site) -> bool:
    return site.room.ceiling - site.hearth.height <= site.facing.height + HEADROOM


def _wall_ends(site: Site) -> tuple[float, float]:
    """Where the wall is drawn to: as far as it is free, or broken off nearer."""
    half, reach = site.opening.width / 2, _half_width(site) + MOST_WALL
    return -min(max(half + site.room.left, half), reach), min(max(half + site.room.right, half), reach)


def _name_diagonals(half: float, high: float) -> list[Name]:
    """A letter for each diagonal of the opening, near its lower end."""
    signs = (("readings.diagonal_falling", 1), ("readings.diagonal_rising", -1))
    return [Name(KEYS[path], (sign * half * 0.6, high * 0.2), 0.0, path) for path, sign in signs]


def _letter_sizes(strings: list[String], outline: Box, ratio: float) -> tuple[Dimension, ...]:
    """Dimensions that show their letters."""
    lettered = [replace(string, stations=tuple(map(_letter, string.stations))) for string in strings]
    return place_strings(lettered, outline, ratio, INCHES_16)


def _letter(station: Station) -> Station:
    return replace(station, says=KEYS[station.shows] if station.shows else "")


def _front_strings(site: Site, box: Box) -> list[String]:
    left, floor, right, ceiling = box
    half, top = site.opening.width / 2, site.facing.height
    along = measure(
        Edge.BELOW,
        (left, floor, ""),
        (-half, 0.0, "room.left"),
        (half, 0.0, "opening.width"),
        (right, floor, "room.right"),
    )
    wide = sorted(((site.facing.width, "facing.width"), (site.hearth.width, "hearth.width")))
    high = sorted(
        ((site.opening.height, half, "opening.height"), (top, site.facing.width / 2, "facing.height"))
    )
    strings = [
        along,
        *(_string(Edge.BELOW, (-w / 2, floor), (w / 2, floor), path) for w, path in wide),
        *(_string(Edge.LEFT, (0.0, -x), (h, -x), path) for h, x, path in high),
    ]
    if floor < 0:
        strings.append(_string(Edge.RIGHT, (floor, right), (0.0, site.hearth.width / 2), "hearth.height"))
    return [*strings, _string(Edge.RIGHT, (floor, right), (ceiling, right), "room.ceiling")]


def _string(edge: Edge, first: Point, second: Point, path: str) -> String:
    """One size; both points along the string and across it."""
    return measure(edge, (*first, ""), (*second, path))


def _draw_cut(site: Site, ratio: float) -> Iterator[Mark]:
    """Wall, masonry and hearth cut on the opening's centre line, from the right; the wall on the right."""
    proud, deep, floor = site.facing.proud, site.hearth.depth, -site.hearth.height
    back, top, high = proud + WALL_DEPTH, site.facing.height, site.opening.height
    ceiling = min(top + HEADROOM, site.room.ceiling + floor) if _is_low(site) else top + HEADROOM
    masonry = box_ring((0.0, high, back, top)), box_ring((proud, top, back, ceiling))
    angle, spacing = MASONRY_HATCH
    for ring in masonry:
        yield Region(Fill.MASONRY, (ring,))
    yield Hatch(Pen.HATCH, masonry, angle, spacing * ratio)
    yield Region(Fill.BAND, (box_ring((0.0, 0.0, back, high)),))
    yield Lines(Pen.OUTLINE, ((0.0, high, back, high), (0.0, high, 0.0, top), (proud, top, proud, ceiling)))
    yield Lines(Pen.OUTLINE, ((0.0, top, proud, top),) if proud else ())
    yield Lines(Pen.EDGE, ((0.0, 0.0, 0.0, high),))
    reach = -deep - MOST_WALL
    yield Lines(Pen.GROUND, ((reach, floor, min(-deep, 0.0), floor), (-deep, 0.0, back, 0.0)))
    strings: list[String] = []
    slab = max(site.hearth.thickness or 0.0, site.hearth.height)
    if deep > 0 and slab > 0:
        ring = box_ring((-deep, -slab, 0.0, 0.0))
        yield Region(Fill.HEARTH, (ring,))
        yield Polyline(Pen.OUTLINE, ring, closed=True)
    if site.hearth.thickness:
        strings.append(_string(Edge.LEFT, (-site.hearth.thickness, -deep), (0.0, -deep), "hearth.thickness"))
    if site.opening.sill > 0:
        yield Region(Fill.MASONRY, (box_ring((0.0, 0.0, back, site.opening.sill)),))
        yield Lines(Pen.OUTLINE, ((0.0, site.opening.sill, back, site.opening.sill),))
        strings.append(_string(Edge.RIGHT, (0.0, back), (site.opening.sill, back), "opening.sill"))
    yield from _letter_sizes(strings, (reach, min(floor, -slab), back, ceiling), ratio)


def _draw_plan(site: Site, ratio: float) -> Iterator[Mark]:
    """Wall, facing and hearth from above, the wall at the top."""
    half, facing, hearth = site.opening.width / 2, site.facing.width / 2, site.hearth.width / 2
    left, right = _wall_ends(site)
    proud, deep = site.facing.proud, site.hearth.depth
    strings: list[String] = []
    solid = box_ring((left, proud, right, proud + WALL_DEPTH))
    breast = box_ring((-facing, 0.0, facing, proud + WALL_DEPTH))
    mouth = box_ring((-half, 0.0, half, proud + WALL_DEPTH))
    for ring in (solid, breast):
        yield Region(Fill.MASONRY, (ring,))
    yield Region(Fill.PAPER, (mouth,))
    yield Lines(Pen.OUTLINE, tuple(_plan_lines(site, (left, right))))
    if deep > 0:
        ring = box_ring((-hearth, -deep, hearth, 0.0))
        yield Region(Fill.HEARTH, (ring,))
        yield Polyline(Pen.EDGE, ring, closed=True)
        strings.append(_string(Edge.RIGHT, (-deep, hearth), (0.0, hearth), "hearth.depth"))
    if proud > 0:
        strings.append(_string(Edge.LEFT, (0.0, -facing), (proud, -facing), "facing.proud"))
    reach = max(hearth, facing, -left, right)
    yield from _letter_sizes(strings, (-reach, -deep, reach, proud), ratio)


def _plan_lines(site: Site, ends: tuple[float, float]) -> Iterable[tuple[float, float, float, float]]:
    half, facing, proud = site.opening.width / 2, site.facing.width / 2, site.facing.proud
    back = proud + WALL_DEPTH
    for sign, end in zip((-1, 1), ends, strict=True):
        yield sign * half, 0.0, sign * half, back
        yield sign * half, 0.0, sign * facing, 0.0
        yield sign * facing, 0.0, sign * facing, proud
        if abs(end) > facing:
            yield sign * facing, proud, end, proud
