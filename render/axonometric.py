"""Boards seen from beside and above in parallel projection: what of each face shows, exactly, for any subset.

Faces are flat, so one hides a part of another that is found by cutting their pictures with each other and,
where they cross in depth, along the line where both are equally near. Nothing is sorted. What pens are used
is render.step_picture's; the axis-parallel views are render.views'.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, sin
from typing import TYPE_CHECKING, Any

import numpy as np

from model.board import Board
from model.takeoff.faces import Face, Floats, list_faces
from render.drawing import Ring
from render.extent import Box

if TYPE_CHECKING:
    from shapely import Polygon, STRtree
    from shapely.geometry.base import BaseGeometry

GRID = 2.0**-10
"""Corners of pictures lie on a grid this fine, in inches, so that faces which meet in the room meet there."""
EDGE_ON = 1e-3
"""Faces turned to the viewer by a smaller cosine than this are seen edge on."""
NEARER = 2.5e-3
"""A face less than this nearer than another, in inches, lies in its plane and hides nothing of it."""
SLIVER = 4e-3
"""What shows of a face is no narrower than this as a rule, in inches; narrower gaps come of rounding."""
LEAST = 1e-3
"""Square inches of picture that count."""
FAR = 1e4
"""Longer than anything drawn, in."""


@dataclass(frozen=True, slots=True)
class Stand:
    """Where the viewer stands: degrees round to the right of the front, degrees up, and that in words."""

    turn: float
    rise: float
    words: str

    @property
    def basis(self) -> Floats:
        """(3, 3) unit vectors of the room: to the picture's right, up, and towards the viewer."""
        turn, rise = radians(self.turn), radians(self.rise)
        right = np.array([cos(turn), 0.0, -sin(turn)])
        toward = np.array([sin(turn) * cos(rise), sin(rise), cos(turn) * cos(rise)])
        return np.array([right, np.cross(toward, right), toward])


FRONT_RIGHT = Stand(28.0, 20.0, "from the right, above")
FRONT_LEFT = Stand(-28.0, 20.0, "from the left, above")
BELOW_RIGHT = Stand(28.0, -20.0, "from the right, below")
BACK_LEFT = Stand(152.0, 20.0, "from behind, above")


@dataclass(frozen=True)
class _Hidden:
    """A part of a face's picture that a face of the solid `by` lies before; `all` where that is all of it."""

    by: int
    shape: BaseGeometry
    all: bool


class Scene:
    """Solids looked at from one place. Numbers are places in the list of solids.

    What hides a face is found once, when first asked for; then any of the solids may be taken away.
    """

    def __init__(self, solids: Sequence[Board], stand: Stand) -> None:
        self.solids = tuple(solids)
        self.stand = stand
        self._basis = stand.basis
        every = list_faces(self.solids)
        flat = [face for face in every if float(face.normal @ self._basis[2]) > EDGE_ON]
        pictures = [self._picture(face) for face in flat]
        kept = [i for i, picture in enumerate(pictures) if picture is not None and picture.area > LEAST]
        self._faces = [flat[i] for i in kept]
        self._pictures: list[Any] = [pictures[i] for i in kept]
        self._of: dict[int, list[int]] = {}
        for i, face in enumerate(self._faces):
            self._of.setdefault(face.owner, []).append(i)
        self._parts: dict[int, tuple[_Hidden, ...]] = {}
        self._known: dict[tuple[int, frozenset[int]], BaseGeometry] = {}

    def see(self, solid: int, present: Collection[int]) -> tuple[tuple[int, BaseGeometry], ...]:
        """What shows of a solid where those `present` are there: a patch's number and its area, for each.

        Facets of one curve make one patch.
        """
        import shapely

        patches: dict[int, list[BaseGeometry]] = {}
        patch_of = self._patches[solid]
        for i in self._of.get(solid, ()):
            patches.setdefault(patch_of.get(self._faces[i].side, -1), []).append(self._see_face(i, present))
        return tuple(
            (patch, shape if len(parts) == 1 else shapely.union_all(parts, grid_size=GRID))
            for patch, parts in patches.items()
            for shape in parts[:1]
        )

    def whole(self, solid: int) -> float:
        """Square inches of picture that all faces turned to the viewer would show."""
        return float(sum(self._pictures[i].area for i in self._of.get(solid, ())))

    def seen(self, solid: int, present: Collection[int]) -> float:
        """Square inches of picture that do show."""
        return float(sum(self._see_face(i, present).area for i in self._of.get(solid, ())))

    def extent(self, present: Collection[int]) -> Box:
        """Left, bottom, right and top of the picture of the solids that are `present`."""
        corners = np.concatenate([np.array(self.solids[i].vertices) for i in sorted(present)])
        flat = corners @ self._basis[:2].T
        (left, low), (right, high) = flat.min(axis=0).tolist(), flat.max(axis=0).tolist()
        return left, low, right, high

    def _see_face(self, face: int, present: Collection[int]) -> BaseGeometry:
        import shapely

        hidden = [part for part in self._hidden(face) if part.by in present]
        if hidden and hidden[0].all:
            return shapely.Polygon()
        key = face, frozenset(part.by for part in hidden)
        if key not in self._known:
            picture = self._pictures[face]
            if hidden:
                over = shapely.union_all([part.shape for part in hidden], grid_size=GRID)
                picture = _without_slivers(shapely.difference(picture, over, grid_size=GRID))
            self._known[key] = picture
        return self._known[key]

    def _picture(self, face: Face) -> Polygon | None:
        import shapely

        rings = [ring @ self._basis[:2].T for ring in (face.ring, *face.holes)]
        shape = shapely.make_valid(shapely.Polygon(rings[0], rings[1:]))
        return shapely.set_precision(shape, GRID)

    @cached_property
    def _patches(self) -> list[dict[int, int]]:
        """For each solid the patch of each of its sides."""
        return [_patch_sides(solid.carved) for solid in self.solids]

    @cached_property
    def _planes(self) -> Floats:
        """(n, 3) a, b, c of each face: nearness = a*h + b*v + c."""
        normals = np.array([face.normal for face in self._faces]) @ self._basis.T
        offsets = np.array([face.offset for face in self._faces])
        return np.column_stack([-normals[:, 0], -normals[:, 1], offsets]) / normals[:, 2:]

    @cached_property
    def _reach(self) -> Floats:
        """(n, 2) how near the furthest and the nearest corner of each face are."""
        near = [face.ring @ self._basis[2] for face in self._faces]
        return np.array([(own.min(), own.max()) for own in near])

    @cached_property
    def _tree(self) -> STRtree:
        import shapely

        return shapely.STRtree(self._pictures)

    def _hidden(self, face: int) -> tuple[_Hidden, ...]:
        """The parts of a face's picture that others lie before, one that hides all of it first."""
        if face not in self._parts:
            found = list(self._list_hidden(face))
            self._parts[face] = tuple(sorted(found, key=lambda part: not part.all))
        return self._parts[face]

    def _list_hidden(self, face: int) -> Iterator[_Hidden]:
        import shapely

        picture = self._pictures[face]
        others = self._tree.query(picture, predicate="intersects")
        others = others[(others != face) & (self._reach[others, 1] > self._reach[face, 0] + NEARER)]
        if not len(others):
            return
        shapes = shapely.intersection(picture, np.array(self._pictures, dtype=object)[others])
        large = shapely.area(shapes) > LEAST
        for near, shape in zip(others[large].tolist(), shapes[large], strict=True):
            part = self._nearer_part(_only_areas(shape), face, near)
            if part is not None:
                whole = part.area > picture.area - LEAST
                yield _Hidden(self._faces[near].owner, part, whole)

    def _nearer_part(self, shape: BaseGeometry, far: int, near: int) -> BaseGeometry | None:
        """Where in `shape` the face `near` lies before the face `far`; None where it nowhere does."""
        import shapely

        a, b, c = self._planes[near] - self._planes[far]
        points = shapely.get_coordinates(shape)
        ahead = points @ np.array([a, b]) + c
        if ahead.max() < NEARER:
            return None
        if ahead.min() > -NEARER:
            return shape
        part = _only_areas(shapely.intersection(shape, _half_plane(a, b, c)))
        return part if part.area > LEAST else None


def _without_slivers(shape: BaseGeometry) -> BaseGeometry:
    """The parts of a shape that are wider than rounding makes gaps between two faces before it."""
    import shapely

    parts = shapely.get_parts(shape)
    wide = [part for part in parts if 2 * part.area > SLIVER * part.length]
    return shape if len(wide) == len(parts) else shapely.MultiPolygon(wide)


def _only_areas(shape: BaseGeometry) -> BaseGeometry:
    """A shape without the lines and points in which two areas touch besides."""
    import shapely

    if shape.geom_type != "GeometryCollection":
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


def _patch_sides(board: Board) -> dict[int, int]:
    """The patch of each side along the section: sides on both hands of a curve's corner are of one patch."""
    count = len(board.section)
    patch = list(range(count))
    for corner in sorted(board.curved):
        before, after = patch[(corner - 1) % count], patch[corner % count]
        patch = [before if number == after else number for number in patch]
    return {**dict(enumerate(patch)), count: count, count + 1: count + 1}


def rings_of(shape: BaseGeometry) -> tuple[Ring, ...]:
    """All rings of an area, outer and inner, not closed."""
    import shapely

    return tuple(
        tuple((float(h), float(v)) for h, v in shapely.get_coordinates(ring)[:-1])
        for part in shapely.get_parts(shape)
        if part.geom_type == "Polygon"
        for ring in shapely.get_rings(part)
    )
