"""The fireplace as it was measured, front and from above, each size with its letter in the site record.

Only the site is drawn. What the record says is render.site_sheet's.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from model.site import Site
from model.surround import Surround
from render.dimension_strings import FIRST_LINE, LINE_STEP, TEXT_CLEAR, TEXT_HEIGHT
from render.dimension_strokes import TICK_LENGTH
from render.drawing import (
    Anchor,
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
    Text,
)
from render.sheets import SITE_FRONT
from render.views import FACING_HATCH

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
}
"""Letters of the sizes that are drawn; I and O are left out, since they are read as figures."""
MOST_WALL = 14.0
"""Wall drawn beside facing and hearth, in.; what goes on further is broken off. Shop choice."""
HEADROOM = 12.0
"""Wall drawn over the facing, in.; a higher ceiling is drawn nearer. Shop choice."""
WALL_DEPTH = 4.0
LEAST_SPAN = 0.25
"""Paper inches under which a letter stands past the end of its dimension. Shop choice."""


def draw_site(surround: Surround, name: str, ratio: float) -> Drawing:
    """The site from the front, or from above; `name` is SITE_FRONT or SITE_PLAN."""
    site = (surround.asked or surround.job).site
    draw = _draw_front if name == SITE_FRONT else _draw_plan
    return Drawing(tuple(draw(site, ratio)), ratio)


def _half_width(site: Site) -> float:
    return max(site.facing.width, site.hearth.width, site.opening.width) / 2


def _draw_front(site: Site, ratio: float) -> Iterator[Mark]:
    half, floor = site.opening.width / 2, -site.hearth.height
    facing, top = site.facing.width / 2, site.facing.height
    left, right = _wall_ends(site)
    ceiling = min(top + HEADROOM, site.room.ceiling - site.hearth.height) if _is_low(site) else top + HEADROOM
    ring = _ring(-facing, min(floor, 0.0), facing, top)
    mouth = _ring(-half, 0.0, half, site.opening.height)
    yield Region(Fill.FACING, (ring, mouth))
    yield Region(Fill.BAND, (mouth,))
    angle, spacing = FACING_HATCH
    yield Hatch(Pen.HATCH, (ring, mouth), angle, spacing * ratio)
    yield Polyline(Pen.EDGE, ring, closed=True)
    yield Polyline(Pen.OUTLINE, mouth, closed=True)
    if floor < 0:
        hearth = _ring(-site.hearth.width / 2, floor, site.hearth.width / 2, 0.0)
        yield Region(Fill.HEARTH, (hearth,))
        yield Polyline(Pen.OUTLINE, hearth, closed=True)
    yield Lines(Pen.GROUND, ((left, floor, right, floor),))
    yield Lines(
        Pen.SITE,
        ((left, ceiling, right, ceiling), (left, floor, left, ceiling), (right, floor, right, ceiling)),
    )
    yield from _draw_diagonals(half, site.opening.height, ratio)
    yield from _front_sizes(site, (left, floor, right, ceiling), ratio)


def _is_low(site: Site) -> bool:
    return site.room.ceiling - site.hearth.height <= site.facing.height + HEADROOM


def _wall_ends(site: Site) -> tuple[float, float]:
    """Where the wall is drawn to: as far as it is free, or broken off nearer."""
    half, reach = site.opening.width / 2, _half_width(site) + MOST_WALL
    return -min(max(half + site.room.left, half), reach), min(max(half + site.room.right, half), reach)


def _draw_diagonals(half: float, high: float, ratio: float) -> Iterator[Mark]:
    """Both diagonals of the opening, each with its letter on a small ground near its lower end."""
    yield Lines(Pen.GUIDE, ((-half, high, half, 0.0), (-half, 0.0, half, high)))
    for path, sign in (("readings.diagonal_falling", 1), ("readings.diagonal_rising", -1)):
        yield from _letter(KEYS[path], (sign * half * 0.6, high * 0.2), ratio)


def _letter(key: str, at: Point, ratio: float) -> Iterator[Mark]:
    height = TEXT_HEIGHT * ratio
    half = 0.9 * height
    yield Region(Fill.PAPER, (_ring(at[0] - half, at[1] - half, at[0] + half, at[1] + half),))
    yield Text(key, (at[0], at[1] - height / 2), height, Anchor.MIDDLE, bold=True)


def _front_sizes(site: Site, box: tuple[float, float, float, float], ratio: float) -> Iterator[Mark]:
    left, floor, right, ceiling = box
    half, top = site.opening.width / 2, site.facing.height
    step, first = LINE_STEP * ratio, FIRST_LINE * ratio
    below = floor - first
    yield _size("opening.width", (-half, 0.0), (half, 0.0), below, ratio)
    yield _size("room.left", (left, floor), (-half, 0.0), below, ratio)
    yield _size("room.right", (half, 0.0), (right, floor), below, ratio)
    yield _size("hearth.width", *_span(site.hearth.width, floor), below - step, ratio)
    yield _size("facing.width", *_span(site.facing.width, floor), below - 2 * step, ratio)
    side = left - first
    yield _size("opening.height", (-half, 0.0), (-half, site.opening.height), side, ratio, vertical=True)
    yield _size(
        "facing.height",
        (-site.facing.width / 2, 0.0),
        (-site.facing.width / 2, top),
        side - step,
        ratio,
        True,
    )
    other = right + first
    if floor < 0:
        yield _size(
            "hearth.height", (right, floor), (site.hearth.width / 2, 0.0), other, ratio, vertical=True
        )
    yield _size("room.ceiling", (right, floor), (right, ceiling), other + step, ratio, vertical=True)


def _span(width: float, y: float) -> tuple[Point, Point]:
    return (-width / 2, y), (width / 2, y)


def _size(
    path: str, first: Point, second: Point, line: float, ratio: float, vertical: bool = False
) -> Dimension:
    """A dimension that shows its letter."""
    i = 1 if vertical else 0
    middle, off = (first[i] + second[i]) / 2, (TEXT_CLEAR + TEXT_HEIGHT / 2) * ratio
    if abs(second[i] - first[i]) < LEAST_SPAN * ratio:
        middle = max(first[i], second[i]) + (TICK_LENGTH + TEXT_HEIGHT) * ratio
    at = (line - off, middle) if vertical else (middle, line + off)
    return Dimension(first, second, vertical, line, KEYS[path], at, TEXT_HEIGHT * ratio, stands_for=path)


def _draw_plan(site: Site, ratio: float) -> Iterator[Mark]:
    """Wall, facing and hearth from above, the wall at the top."""
    half, facing, hearth = site.opening.width / 2, site.facing.width / 2, site.hearth.width / 2
    left, right = _wall_ends(site)
    proud, deep = site.facing.proud, site.hearth.depth
    solid = _ring(left, proud, right, proud + WALL_DEPTH)
    breast = _ring(-facing, 0.0, facing, proud + WALL_DEPTH)
    mouth = _ring(-half, 0.0, half, proud + WALL_DEPTH)
    for ring in (solid, breast):
        yield Region(Fill.MASONRY, (ring,))
    yield Region(Fill.PAPER, (mouth,))
    yield Lines(Pen.OUTLINE, tuple(_plan_lines(site, (left, right))))
    if deep > 0:
        ring = _ring(-hearth, -deep, hearth, 0.0)
        yield Region(Fill.HEARTH, (ring,))
        yield Polyline(Pen.EDGE, ring, closed=True)
        yield _size(
            "hearth.depth",
            (hearth, -deep),
            (hearth, 0.0),
            max(hearth, facing) + FIRST_LINE * ratio,
            ratio,
            True,
        )
    if proud > 0:
        line = -max(hearth, facing) - FIRST_LINE * ratio
        yield _size("facing.proud", (-facing, 0.0), (-facing, proud), line, ratio, vertical=True)


def _plan_lines(site: Site, ends: tuple[float, float]) -> Iterable[tuple[float, float, float, float]]:
    half, facing, proud = site.opening.width / 2, site.facing.width / 2, site.facing.proud
    back = proud + WALL_DEPTH
    for sign, end in zip((-1, 1), ends, strict=True):
        yield sign * half, 0.0, sign * half, back
        yield sign * half, 0.0, sign * facing, 0.0
        yield sign * facing, 0.0, sign * facing, proud
        if abs(end) > facing:
            yield sign * facing, proud, end, proud


def _ring(x0: float, y0: float, x1: float, y1: float) -> tuple[Point, ...]:
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1)
