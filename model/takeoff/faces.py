"""Every flat face of every board, in its own plane: what is primed, and the start of what touches and shows.

Which parts of faces touch stands in model.takeoff.contacts, which can be seen in model.takeoff.sight.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from model.board import Board
from model.carving import find_sides

if TYPE_CHECKING:
    from shapely import Polygon
    from shapely.geometry.base import BaseGeometry

Floats = NDArray[np.float64]
LEAST_AREA = 1e-9
"""Square inches under which a side is no face: an edge that two cuts meet in."""


@dataclass(frozen=True, eq=False)
class Face:
    """One flat face.

    `owner` is the board's place in its list, `side` the number of the face: 0.. along the section, then
    the low and the high end. `ring` (n, 3) its corners in the room, counter-clockwise seen from outside.
    `basis` (2, 3) two unit vectors of its plane that with `normal` (outwards) are right-handed: a
    point's place in the plane is its dot product with them. `holes` are the outlines of holes in it.
    """

    owner: int
    side: int
    ring: Floats
    normal: Floats
    basis: Floats
    holes: tuple[Floats, ...] = ()

    @cached_property
    def offset(self) -> float:
        """Distance of its plane from the room's origin along the normal."""
        return float(self.ring[0] @ self.normal)

    @cached_property
    def polygon(self) -> Polygon:
        """Its shape, in places of the plane."""
        return self.laid_in(self.basis)

    def laid_in(self, basis: Floats) -> Polygon:
        """Its shape in places of a plane with that basis (2, 3), which it lies in."""
        from shapely import Polygon

        return Polygon(self.ring @ basis.T, [hole @ basis.T for hole in self.holes])

    @cached_property
    def area(self) -> float:
        """Square inches, less holes."""
        return ring_area(self.ring) - sum(ring_area(hole) for hole in self.holes)

    def place(self, shape: BaseGeometry) -> list[Floats]:
        """The outer and inner rings of a shape in its plane, as closed rings of points (n, 3) in the room."""
        from shapely import get_coordinates, get_parts, get_rings

        return [self.lift(get_coordinates(ring)) for part in get_parts(shape) for ring in get_rings(part)]

    def lift(self, flat: Floats) -> Floats:
        """Places (n, 2) of its plane as points (n, 3) in the room."""
        lifted: Floats = flat @ self.basis + self.offset * self.normal
        return lifted


def list_faces(boards: Sequence[Board]) -> tuple[Face, ...]:
    """The faces of `boards` in their order: sides along the section, then low and high end.

    Holes are taken off the faces they pierce; the walls of holes are no faces of theirs.
    """
    return tuple(face for owner, board in enumerate(boards) for face in _board_faces(owner, board))


def _board_faces(owner: int, board: Board) -> list[Face]:
    board = board.carved
    corners = np.array(board.vertices)
    count = len(board.section)
    low, high = corners[:count], corners[count:]
    onward = [*range(1, count), 0]
    sides = np.stack([low, low[onward], high[onward], high], axis=1)
    rings = [*sides, low[::-1], high]
    # Twice the area of a flat four-sided ring is the product of its diagonals.
    across = _cross((sides[:, 2] - sides[:, 0]).T, (sides[:, 3] - sides[:, 1]).T).T / 2
    vectors = np.concatenate([across, [_area_vector(ring) for ring in rings[count:]]])
    areas = np.linalg.norm(vectors, axis=1)
    real = np.flatnonzero(areas > LEAST_AREA)
    normals, bases = _turn_planes(vectors[real] / areas[real, None])
    holes = _list_holes(board)
    return [
        Face(owner, side, rings[side], normal, basis, holes.get(side, ()))
        for side, normal, basis in zip(real.tolist(), normals, bases, strict=True)
    ]


def _turn_planes(normals: Floats) -> tuple[Floats, Floats]:
    """The same unit vectors without what is only rounding in them, and two more in the plane of each."""
    normals = np.where(np.abs(normals) < 1e-12, 0.0, normals)
    away = np.eye(3)[np.argmin(np.abs(normals), axis=1)]
    across = away - np.einsum("nx,nx->n", away, normals)[:, None] * normals
    across /= np.linalg.norm(across, axis=1)[:, None]
    return normals, np.stack([across, _cross(normals.T, across.T).T], axis=1)


def _list_holes(board: Board) -> dict[int, tuple[Floats, ...]]:
    """By the number of each pierced face the outlines of its holes in the room."""
    holes: dict[int, tuple[Floats, ...]] = {}
    for bore in board.bores:
        for side, along in zip(find_sides(board, bore) or (), bore.span, strict=True):
            outline = np.array([bore.place(point, along) for point in bore.ring])
            holes[side] = (*holes.get(side, ()), outline)
    return holes


def ring_area(ring: Floats) -> float:
    """Square inches of a flat ring of points (n, 3) in the room."""
    return float(np.linalg.norm(_area_vector(ring)))


def _area_vector(ring: Floats) -> Floats:
    """Along the ring's normal, as long as its area."""
    from_first = ring - ring[0]
    total: Floats = _cross(from_first[1:-1].T, from_first[2:].T).T.sum(axis=0) / 2
    return total


def _cross(first: Floats, second: Floats) -> Floats:
    """The cross product of vectors whose parts are rows; numpy's own takes ten times as long for a few."""
    a, b, c = first
    d, e, f = second
    return np.array([b * f - c * e, c * d - a * f, a * e - b * d])


def primed_area(faces: Sequence[Face]) -> float:
    """Square inches of all faces: what gets a primer before anything is put together."""
    return sum(face.area for face in faces)
