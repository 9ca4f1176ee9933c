"""What lies before each of many flat faces that are seen from one place: whole solids, or parts of faces.

Which parts of a face are left over is worked out in render.axonometric. A face that hides a part of another
is found by cutting their pictures with each other and, where they cross in depth, along the line where both
are equally near. Nothing is sorted.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from model.takeoff.faces import Face, Floats
from model.takeoff.nearness import Nearness, Numbers, Outlines

if TYPE_CHECKING:
    from shapely import Polygon
    from shapely.geometry.base import BaseGeometry

Flags = NDArray[np.bool_]
Shapes = NDArray[Any]
GRID = 2.0**-10
"""Corners of pictures lie on a grid this fine, in inches, so that faces which meet in the room meet there."""
NEARER = 2.5e-3
"""A face less than this nearer than another, in inches, lies in its plane and hides nothing of it."""
LEAST = 1e-3
"""Square inches of picture that count."""
FAR = 1e4
"""Longer than anything drawn, in."""
Found = tuple[int, "BaseGeometry"]


@dataclass(frozen=True, slots=True)
class Before:
    """What lies before a face, at least in a part of it: the `owners` and the `shapes` of what they hide.

    A shape may reach beyond the face. `hides_all` says which of them hide the whole face.
    """

    owners: tuple[int, ...]
    shapes: Shapes
    hides_all: tuple[bool, ...]


@dataclass(frozen=True, slots=True)
class _Rivals:
    """Faces whose pictures may meet that of one face, and between what numbers of inches each is nearer."""

    faces: Numbers
    low: Floats
    high: Floats


class Screens:
    """Faces with their `pictures`, seen along the third row of `basis`; numbers are places in both lists.

    What lies before a face is found once, when first asked for.
    """

    def __init__(self, faces: Sequence[Face], pictures: Shapes, basis: Floats) -> None:
        self._pictures, self._basis = pictures, basis
        self._outlines = Outlines(faces)
        self._owner = [face.owner for face in faces]
        self._owners = np.array(self._owner, dtype=np.intp)
        self._silhouettes: dict[int, BaseGeometry] = {}
        self._found: dict[int, Before] = {}

    def find(self, face: int) -> Before:
        """What lies before a face: solids that are before it altogether, of others each face."""
        if face not in self._found:
            rivals = self._rivals[face]
            found = [*self._list_before(face, rivals), *self._list_crossing(face, rivals)]
            self._found[face] = self._keep_in_sight(face, found)
        return self._found[face]

    @cached_property
    def _nearness(self) -> Nearness:
        return Nearness(self._outlines, self._basis, GRID)

    @cached_property
    def _rivals(self) -> list[_Rivals]:
        """For each face those whose boxes meet its own."""
        import shapely

        count = len(self._pictures)
        far, near = shapely.STRtree(self._pictures).query(self._pictures)
        far, near = far[far != near], near[far != near]
        low, high = self._nearness.bound_ahead(far, near)
        starts = np.searchsorted(far, np.arange(count + 1)).tolist()
        return [_Rivals(near[a:b], low[a:b], high[a:b]) for a, b in pairwise(starts)]

    def _list_before(self, face: int, rivals: _Rivals) -> Iterator[Found]:
        """Solids, and faces of further ones, that are before a face wherever they meet it."""
        before = (rivals.low > -NEARER) & (rivals.high > NEARER)
        owners = self._owners[rivals.faces]
        partly = {self._owner[face], *owners[~before].tolist()}
        for solid in dict.fromkeys(owners[before].tolist()):
            if solid not in partly:
                yield solid, self._silhouette(solid)
        for near in rivals.faces[before].tolist():
            if self._owner[near] in partly:
                yield self._owner[near], self._pictures[near]

    def _list_crossing(self, face: int, rivals: _Rivals) -> Iterator[Found]:
        """The parts of faces in which they are before a face that they may be behind elsewhere."""
        import shapely

        picture = self._pictures[face]
        crossing = rivals.faces[(rivals.low <= -NEARER) & (rivals.high > NEARER)]
        crossing = crossing[_overlap(picture, self._pictures[crossing])]
        if not len(crossing):
            return
        shapes = shapely.intersection(picture, self._pictures[crossing])
        large = shapely.area(shapes) > LEAST
        for near, shape in zip(crossing[large].tolist(), shapes[large], strict=True):
            part = self._nearer_part(only_areas(shape), face, near)
            if part is not None:
                yield self._owner[near], part

    def _keep_in_sight(self, face: int, found: Sequence[Found]) -> Before:
        """Those that have more than an edge in common with a face's picture."""
        import shapely

        picture = self._pictures[face]
        shapes = np.empty(len(found), dtype=object)
        shapes[:] = [shape for _, shape in found]
        meets = _overlap(picture, shapes)
        owners = tuple(owner for (owner, _), is_met in zip(found, meets.tolist(), strict=True) if is_met)
        shapes = shapes[meets]
        return Before(owners, shapes, tuple(shapely.covered_by(picture, shapes).tolist()))

    def _silhouette(self, solid: int) -> BaseGeometry:
        """All faces of a solid as one area."""
        import shapely

        if solid not in self._silhouettes:
            self._silhouettes[solid] = shapely.union_all(self._pictures[self._owners == solid])
        return self._silhouettes[solid]

    def _nearer_part(self, shape: BaseGeometry, far: int, near: int) -> BaseGeometry | None:
        """Where in `shape` the face `near` lies before the face `far`; None where it nowhere does."""
        import shapely

        a, b, c = self._nearness.planes[near] - self._nearness.planes[far]
        points = shapely.get_coordinates(shape)
        ahead = points @ np.array([a, b]) + c
        if ahead.max() < NEARER:
            return None
        if ahead.min() > -NEARER:
            return shape
        part = only_areas(shapely.intersection(shape, _half_plane(a, b, c)))
        return part if part.area > LEAST else None


def _overlap(picture: BaseGeometry, shapes: Shapes) -> Flags:
    """Which of `shapes` have more than an edge in common with a picture."""
    import shapely

    shapely.prepare(picture)
    meets: Flags = shapely.intersects(picture, shapes)
    meets[meets] = ~shapely.touches(picture, shapes[meets])
    return meets


def only_areas(shape: BaseGeometry) -> BaseGeometry:
    """A shape without the lines and points in which areas touch besides."""
    import shapely

    if shape.geom_type in ("Polygon", "MultiPolygon"):
        return shape
    return shapely.MultiPolygon([part for part in shapely.get_parts(shape) if part.geom_type == "Polygon"])


def _half_plane(a: float, b: float, c: float) -> Polygon:
    """A square, as large as anything drawn, on the side of a line where a*h + b*v + c is over 0."""
    from shapely import Polygon

    size = float(np.hypot(a, b))
    inward = np.array([a, b]) / size
    foot, along = -c / size * inward, np.array([-inward[1], inward[0]]) * FAR
    deep = inward * FAR
    return Polygon([foot - along, foot + along, foot + along + deep, foot - along + deep])
