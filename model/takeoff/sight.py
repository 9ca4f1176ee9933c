"""Which parts of faces can be seen from the room: a straight line of sight reaches them from somewhere in it.

Lines of sight run in LINES, a set of directions close enough that nothing but slits and undercuts is
missed. What is covered by contact is taken off before, in model.takeoff.contacts.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from model.takeoff.contacts import without_slivers
from model.takeoff.faces import Face, Floats

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

Shapes = NDArray[Any]
EDGE_ON = 1e-6
"""Cosine between a face's normal and a line of sight under which the face is seen edge on."""
CLOSE = 1 / 512
"""What is no further in front of a face than this does not hide it, in."""
GRID = 2.0**-20
"""Pictures are laid on a grid this fine, in., so that what falls together stays together."""
NOTHING = 1e-4
"""Square inches too small to be looked for any more."""


def _list_lines() -> Floats:
    """Unit vectors from the wood to the eye: in each of the three planes of the axes, round to the wall."""
    quarters = [(0, 1), (1, 2), (1, 1), (2, 1), (1, 0)]
    steps = {(0, 0, 1): None}
    for a, b in quarters:
        for s in (1, -1):
            steps[(s * a, 0, b)] = steps[(0, -s * a, b)] = None
    for a, b in quarters:
        for s in (1, -1):
            steps[(s * a, b, 0)] = steps[(s * a, -b, 0)] = None
    lines = np.array(list(steps), dtype=float)
    unit: Floats = lines / np.linalg.norm(lines, axis=1)[:, None]
    return unit


LINES = _list_lines()


def list_seen(
    faces: Sequence[Face], bare: Sequence[BaseGeometry], standing: Sequence[Face] = ()
) -> tuple[BaseGeometry, ...]:
    """The parts of `bare`, which lie in the planes of `faces`, that can be seen past `faces` and `standing`.

    Exact for each line of sight: a face is hidden where another one that turns to the eye lies before it.
    """
    import shapely

    unseen: Shapes = np.array(bare, dtype=object)
    around = _Around((*faces, *standing))
    for line in LINES:
        turned = around.normals[: len(faces)] @ line > EDGE_ON
        at = np.flatnonzero(turned & (shapely.area(unseen) > NOTHING))
        if len(at):
            unseen[at] = around.hide(unseen[at], at, line)
    return tuple(without_slivers(whole.difference(rest)) for whole, rest in zip(bare, unseen, strict=True))


class _Around:
    """Everything that may hide: faces, with what is needed to look at them in any direction."""

    def __init__(self, faces: Sequence[Face]) -> None:
        self.normals = np.array([face.normal for face in faces])
        self._offsets = np.array([face.offset for face in faces])
        self._basis = np.array([face.basis for face in faces])
        self._corners = np.concatenate([face.ring for face in faces])
        counts = np.array([len(face.ring) for face in faces])
        self._owners = np.repeat(np.arange(len(faces)), counts)
        self._starts = np.cumsum(counts) - counts

    def hide(self, shapes: Shapes, at: NDArray[np.intp], line: Floats) -> Shapes:
        """The parts of `shapes`, in the planes of faces `at`, that are hidden along `line`."""
        import shapely

        right, up = _picture(line)
        turned = np.flatnonzero(self.normals @ line > EDGE_ON)
        before = self._draw(turned, np.stack([right, up]))
        matrices, shifts = self._laid(at, np.stack([right, up]))
        pictures = _snap(_moved(shapes, matrices, shifts))
        mine, other = shapely.STRtree(before).query(pictures, predicate="intersects")
        far, near = self._reach(line)
        apart = (at[mine] != turned[other]) & (near[turned[other]] > far[at[mine]] + CLOSE)
        mine, other = mine[apart], other[apart]
        overlaps = _areas_of(_overlaps(pictures[mine], before[other]))
        real = shapely.area(overlaps) > NOTHING / 10
        mine, other, overlaps = mine[real], other[real], overlaps[real]
        spots = shapely.get_coordinates(shapely.point_on_surface(overlaps))
        depths = [self._depth(which, spots, line, right, up) for which in (turned[other], at[mine])]
        hiding = depths[0] > depths[1] + CLOSE
        hidden = _unite(overlaps[hiding], mine[hiding], len(at))
        inverse = np.asarray(np.linalg.inv(matrices), dtype=np.float64)
        return _moved(hidden, inverse, -(inverse @ shifts[:, :, None])[:, :, 0])

    def _reach(self, line: Floats) -> tuple[Floats, Floats]:
        """How far towards the eye each face lies, at the least and at the most."""
        depths = self._corners @ line
        starts = self._starts
        return np.minimum.reduceat(depths, starts), np.maximum.reduceat(depths, starts)

    def _draw(self, which: NDArray[np.intp], axes: Floats) -> Shapes:
        import shapely

        flat = self._corners @ axes.T
        chosen = np.zeros(len(self.normals), dtype=bool)
        chosen[which] = True
        use = chosen[self._owners]
        _, owners = np.unique(self._owners[use], return_inverse=True)
        drawn: Shapes = shapely.polygons(shapely.linearrings(flat[use], indices=owners))
        return drawn

    def _laid(self, at: NDArray[np.intp], axes: Floats) -> tuple[Floats, Floats]:
        """How places in the planes of faces `at` become places in the picture: matrices and shifts."""
        matrices = np.einsum("pk,nbk->npb", axes, self._basis[at])
        shifts = (self._offsets[at, None] * self.normals[at]) @ axes.T
        return matrices, shifts

    def _depth(
        self, which: NDArray[np.intp], spots: Floats, line: Floats, right: Floats, up: Floats
    ) -> Floats:
        """How far towards the eye each face lies at its spot in the picture."""
        normals = self.normals[which]
        across = spots[:, :1] * right + spots[:, 1:] * up
        depth: Floats = (self._offsets[which] - (normals * across).sum(axis=1)) / (normals @ line)
        return depth


def _picture(line: Floats) -> tuple[Floats, Floats]:
    """Two unit vectors across a line of sight."""
    aside = np.eye(3)[int(np.argmin(np.abs(line)))]
    right = np.cross(aside, line)
    right /= np.linalg.norm(right)
    return right, np.cross(line, right)


def _moved(shapes: Shapes, matrices: Floats, shifts: Floats) -> Shapes:
    """Each shape by its own matrix and shift."""
    import shapely

    flat, which = shapely.get_coordinates(shapes, return_index=True)
    moved: Shapes = shapely.set_coordinates(
        shapes.copy(), np.einsum("nij,nj->ni", matrices[which], flat) + shifts[which]
    )
    return moved


def _unite(shapes: Shapes, groups: NDArray[np.intp], count: int) -> Shapes:
    """One shape for each of `count` groups, empty where there is none."""
    import shapely

    united: Shapes = np.full(count, shapely.Polygon(), dtype=object)
    for group in np.unique(groups):
        united[group] = shapely.union_all(shapes[groups == group])
    return united


def _overlaps(shapes: Shapes, others: Shapes) -> Shapes:
    """Where each shape and its other lie on each other."""
    import shapely

    try:
        found: Shapes = shapely.intersection(shapes, others)
    except shapely.errors.GEOSException:
        found = shapely.intersection(shapes, others, grid_size=GRID)
    return found


def _areas_of(shapes: Shapes) -> Shapes:
    """The same without the lines and points that touching leaves beside areas."""
    import shapely

    for i in np.flatnonzero(shapely.get_type_id(shapes) == shapely.GeometryType.GEOMETRYCOLLECTION):
        parts = shapely.get_parts(shapes[i])
        shapes[i] = shapely.union_all(parts[shapely.get_dimensions(parts) == 2])
    return shapes


def _snap(shapes: Shapes) -> Shapes:
    """Shapes on the grid; where snapping folds one over itself, corner by corner and put right afterwards."""
    import shapely

    try:
        snapped: Shapes = shapely.set_precision(shapes, GRID)
    except shapely.errors.GEOSException:
        snapped = shapely.make_valid(shapely.set_precision(shapes, GRID, mode="pointwise"))
    return snapped
