"""The edges of what is seen of faces, all in tables, for whoever asks where they meet. No joints here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from model.takeoff.faces import Face, Floats
from model.takeoff.spans import Numbers

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


@dataclass(frozen=True, eq=False)
class Edges:
    """Edges of what is seen: ends (n, 3), the faces' normals and the way into each face, and whose it is."""

    start: Floats
    stop: Floats
    normal: Floats
    inward: Floats
    owner: Numbers

    @property
    def low(self) -> Floats:
        """(n, 3) low corners of the boxes round them."""
        return np.minimum(self.start, self.stop)

    @property
    def high(self) -> Floats:
        """(n, 3) high corners."""
        return np.maximum(self.start, self.stop)

    @property
    def size(self) -> Floats:
        """(n,) inches."""
        return np.asarray(np.linalg.norm(self.stop - self.start, axis=1))


def list_edges(faces: Sequence[Face], seen: Sequence[BaseGeometry], shortest: float) -> Edges:
    """The edges longer than `shortest` of `seen`, which lie in the planes of `faces`."""
    import shapely

    parts, of_face = shapely.get_parts(np.array(seen, dtype=object), return_index=True)
    rings, of_part = shapely.get_rings(shapely.orient_polygons(parts), return_index=True)
    flat, of_ring = shapely.get_coordinates(rings, return_index=True)
    face = of_face[of_part[of_ring]]
    basis, normals = np.array([f.basis for f in faces]), np.array([f.normal for f in faces])
    offsets = np.array([f.offset for f in faces])
    corners = np.einsum("ni,nij->nj", flat, basis[face]) + offsets[face, None] * normals[face]
    real = of_ring[1:] == of_ring[:-1]
    real &= np.linalg.norm(np.diff(corners, axis=0), axis=1) > shortest
    start, stop, face = corners[:-1][real], corners[1:][real], face[:-1][real]
    along = (stop - start) / np.linalg.norm(stop - start, axis=1)[:, None]
    owners = np.array([f.owner for f in faces], dtype=np.intp)
    return Edges(start, stop, normals[face], np.cross(normals[face], along), owners[face])
