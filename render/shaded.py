"""Shades and shadows of a front view, by the conventional light over the left shoulder, face by face.

The light runs along the diagonal of a cube, down to the right: what stands p in front of a plane throws
its shadow p to the right and p down on it (Gwilt, An Encyclopaedia of Architecture, art. 2460). Where shades
lie is worked out here; what a view shows is render.views'. shapely is imported on use.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from render.arrangement import Face, Floats, trace_rings
from render.axonometric import rings_of
from render.drawing import Fill, Region, Ring
from render.extent import Box
from render.screens import only_areas
from render.visibility import Projection, list_faces

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

Plane = tuple[float, float, float]
"""a, b, c of depth = a*h + b*v + c."""

OFF = 1e-3
"""What lies nearer to a face than this, in inches, throws no shadow on it."""
GRID = 1e-6
"""Areas are taken apart on a grid this fine, in inches, so that edges which run on in each other stay so."""
GRAZING = 1e-6
"""Faces the light passes along count as turned away from it."""
LEAST = 1e-3
"""Slivers of shade narrower than this, in inches, are left out."""
DARK = frozenset({"opening"})
"""What is drawn too dark for a shadow to show on it; it is a hole, so it throws none either."""


@dataclass(frozen=True, slots=True)
class Backdrop:
    """The wall behind everything: its depth, and how far it goes: left, bottom, right, top."""

    depth: float
    room: Box


@dataclass(frozen=True, slots=True)
class Tones:
    """Where a front view is dark: rings for the even-odd rule, model inches.

    `shade` is turned away from the light, `shadow` is turned to it and yet not reached.
    """

    shade: tuple[Ring, ...]
    shadow: tuple[Ring, ...]

    @property
    def regions(self) -> tuple[Region, ...]:
        """As areas of a drawing, those there are."""
        both = ((Fill.SHADE, self.shade), (Fill.SHADOW, self.shadow))
        return tuple(Region(fill, rings, fill.value) for fill, rings in both if rings)


def list_tones(projection: Projection, backdrop: Backdrop | None = None) -> Tones:
    """Shades and shadows of a front view, those on the wall behind it too where there is a `backdrop`."""
    import shapely

    caster = _Caster(projection)
    shade, shadow = [], []
    for plane, seen in _list_receivers(projection, backdrop):
        if _facing(plane) <= GRAZING:
            shade.append(seen)
        elif (dark := caster.throw_on(plane, seen)) is not None:
            shadow.append(dark)
    return Tones(*(_to_rings(shapely.union_all(areas, grid_size=GRID)) for areas in (shade, shadow)))


def _facing(plane: Plane) -> float:
    """How far a face is turned to the light: 1 for one parallel to the picture, nothing along the light."""
    return 1.0 + plane[0] - plane[1]


def _list_receivers(
    projection: Projection, backdrop: Backdrop | None
) -> Iterator[tuple[Plane, BaseGeometry]]:
    """Every plane that is seen, with what is seen of it; what is behind the surround comes last."""
    from shapely import box

    planes: dict[Plane, list[int]] = {}
    for i in projection.seen_faces():
        role = projection.solids.boards[projection.owner[i]].role
        if role not in DARK:
            a, b, c = projection.faces[i].plane
            planes.setdefault((round(a, 9), round(b, 9), round(c, 6)), []).append(i)
    for plane, faces in planes.items():
        yield plane, _seen_area(projection, faces)
    if backdrop is not None:
        hidden = _seen_area(projection, projection.seen_faces())
        yield (0.0, 0.0, backdrop.depth), only_areas(box(*backdrop.room).difference(hidden, grid_size=GRID))


def _seen_area(projection: Projection, faces: list[int]) -> BaseGeometry:
    """All that is seen of some faces, as one area."""
    inside = np.zeros(len(projection.owner), dtype=bool)
    inside[faces] = True
    return area_of(trace_rings(projection.borders, inside))


def area_of(rings: Iterable[Ring]) -> BaseGeometry:
    """Rings for the even-odd rule as one area."""
    from shapely import MultiPolygon, Polygon

    area: Any = MultiPolygon()
    for ring in rings:
        if len(ring) > 2:
            area = only_areas(area.symmetric_difference(Polygon(ring).buffer(0), grid_size=GRID))
    return area


class _Caster:
    """Everything that stands in the light, as the light sees it: moved so that each ray is one point.

    A point (x, y, z) is seen at h = x + z, v = y - z, its depth is z.
    """

    def __init__(self, projection: Projection) -> None:
        from shapely import STRtree

        x, y, z = projection.solids.corners.T
        faces, owner, _ = list_faces(projection.solids, np.stack([x + z, y - z, z], axis=1))
        boards = projection.solids.boards
        self.faces = [f for f, who in zip(faces, owner, strict=True) if boards[who].role not in DARK]
        self.areas = [_to_polygon(face) for face in self.faces]
        self.tree = STRtree(self.areas)

    def throw_on(self, plane: Plane, seen: BaseGeometry) -> BaseGeometry | None:
        """What of `seen`, which lies in `plane`, the light does not reach; `None` where it reaches all."""
        from shapely import union_all
        from shapely.affinity import affine_transform

        a, b, c = plane
        room = affine_transform(seen, [1 + a, b, -a, 1 - b, c, -c])
        met = [part for i in self.tree.query(room) if (part := self._before(int(i), _to_light(plane)))]
        if not met:
            return None
        dark = only_areas(room.intersection(union_all(met, grid_size=GRID), grid_size=GRID))
        a, b, c = _to_light(plane)
        return affine_transform(dark, [1 - a, -b, a, 1 + b, -c, c])

    def _before(self, i: int, plane: Plane) -> BaseGeometry | None:
        """The part of a face that stands in front of `plane`, both as the light sees them."""
        a, b, c = (mine - other for mine, other in zip(self.faces[i].plane, plane, strict=True))
        corners = self.faces[i].corners
        over = corners @ (a, b) + c
        if (over <= OFF).all():
            return None
        return self.areas[i] if (over > OFF).all() else _cut(self.areas[i], (a, b, c - OFF))


def _to_light(plane: Plane) -> Plane:
    """The same plane as the light sees it."""
    a, b, c = plane
    facing = _facing(plane)
    return a / facing, b / facing, c / facing


def _cut(area: BaseGeometry, over: Plane) -> BaseGeometry | None:
    """The part of an area where a*h + b*v + c is more than nothing."""
    from shapely import Polygon

    a, b, c = over
    length = float(np.hypot(a, b))
    if length < 1e-12:
        return area if c > 0 else None
    nx, ny = a / length, b / length
    far = 4 * (max(map(abs, area.bounds)) + abs(c) / length + 1.0)
    foot = (-nx * c / length, -ny * c / length)
    ends = [(foot[0] - ny * t, foot[1] + nx * t) for t in (far, -far)]
    half = Polygon([*ends, *((x + nx * 2 * far, y + ny * 2 * far) for x, y in reversed(ends))])
    part = area.intersection(half)
    return None if part.is_empty else part


def _to_polygon(face: Face) -> BaseGeometry:
    from shapely import Polygon

    corners: Floats = face.corners
    parts = np.split(corners, face.starts) if face.starts else [corners]
    polygon = Polygon(parts[0], parts[1:])
    return polygon if polygon.is_valid else polygon.buffer(0)


def _to_rings(area: BaseGeometry) -> tuple[Ring, ...]:
    """Outlines of an area without its slivers, in the order of their first points."""
    kept = area.buffer(-LEAST / 2, join_style="mitre").buffer(LEAST / 2, join_style="mitre")
    return tuple(sorted(ring for ring in rings_of(kept) if ring))
