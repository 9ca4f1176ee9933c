"""Where flat faces lie on each other: board on board, and board on what stands there already.

Which faces there are stands in model.takeoff.faces; what is done about it (glue, nails) elsewhere.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from model.takeoff.faces import Face, Floats
from model.takeoff.nearness import Outlines
from model.takeoff.overlay import share, take_away
from model.takeoff.slivers import without_slivers
from model.takeoff.spans import list_within

if TYPE_CHECKING:
    from shapely import Polygon
    from shapely.geometry.base import BaseGeometry

TOUCHING = 1 / 512
"""Faces no further apart than this lie on each other, in.: two steps of the grid that drawings keep."""
OPPOSITE = 1e-6
"""How far from -1 the cosine of two normals may be."""
LEAST_CONTACT = 1e-3
"""Square inches that count as a contact; less is an edge."""


@dataclass(frozen=True, eq=False)
class Contact:
    """Two faces on each other. `first` and `second` are places in the list of faces, first the lower.

    `shape` is where they lie on each other, in places of the first face's plane.
    """

    first: int
    second: int
    shape: BaseGeometry

    @property
    def pair(self) -> tuple[int, int]:
        """Both places in the list of faces, for contacts among boards."""
        return self.first, self.second

    @cached_property
    def area(self) -> float:
        """Square inches."""
        return float(self.shape.area)


def list_contacts(faces: Sequence[Face], others: Sequence[Face] = ()) -> tuple[Contact, ...]:
    """Contacts of `faces` with each other, or with `others` where those are given.

    Faces of one owner never touch each other. With `others`, `second` is a place in that list.
    """
    import shapely

    among = others or faces
    pairs = _candidates(faces, among, same=not others)
    if not pairs:
        return ()
    mine = np.array([faces[i].polygon for i, _ in pairs], dtype=object)
    laid = np.array([_laid_in(faces[i], among[j]) for i, j in pairs], dtype=object)
    shapes = share(mine, laid)
    lasting = np.flatnonzero(shapely.area(shapes) > LEAST_CONTACT)
    return tuple(Contact(*pairs[k], shapes[k]) for k in lasting)


def _candidates(faces: Sequence[Face], among: Sequence[Face], same: bool) -> list[tuple[int, int]]:
    """Pairs that face each other in one plane and whose boxes meet."""
    if not faces or not among:
        return []
    (normals, offsets, low, high), other = _table(faces), _table(among)
    i, j = list_within(-TOUCHING - offsets, TOUCHING - offsets, other[1])
    pairs = np.column_stack([i, j])
    pairs = pairs[np.einsum("nx,nx->n", normals[i], other[0][j]) < OPPOSITE - 1]
    i, j = pairs.T
    meet = ((low[i] <= other[3][j] + TOUCHING) & (other[2][j] <= high[i] + TOUCHING)).all(axis=1)
    pairs = pairs[meet]
    if same:
        owners = np.array([face.owner for face in faces])
        pairs = pairs[(pairs[:, 0] < pairs[:, 1]) & (owners[pairs[:, 0]] != owners[pairs[:, 1]])]
    return [(int(i), int(j)) for i, j in pairs]


def _table(faces: Sequence[Face]) -> tuple[Floats, Floats, Floats, Floats]:
    """Normals, offsets, and the boxes' low and high corners."""
    outlines = Outlines(faces)
    ways = (np.minimum, np.maximum)
    low, high = (way.reduceat(outlines.corners, outlines.starts) for way in ways)
    return outlines.normals, outlines.offsets, low, high


def _laid_in(face: Face, other: Face) -> Polygon:
    """The other face's shape in places of this one's plane."""
    return other.laid_in(face.basis)


def uncover(faces: Sequence[Face], shapes: Sequence[Sequence[BaseGeometry]]) -> tuple[BaseGeometry, ...]:
    """What is left of each face when the shapes in its plane are taken off it."""
    from shapely import union_all

    left = np.array([face.polygon for face in faces], dtype=object)
    covered = [i for i, over in enumerate(shapes) if over]
    if covered:
        with np.errstate(invalid="ignore", divide="ignore"):
            over = np.array([union_all(shapes[i]) for i in covered], dtype=object)
        left[covered] = without_slivers(take_away(left[covered], over))
    return tuple(left)


def shapes_on(faces: Sequence[Face], contacts: Sequence[Contact]) -> list[list[BaseGeometry]]:
    """For each face the shapes of its contacts with other faces of the list, in its own plane."""
    lists: list[list[BaseGeometry]] = [[] for _ in faces]
    for contact in contacts:
        first, second = faces[contact.first], faces[contact.second]
        lists[contact.first].append(contact.shape)
        lists[contact.second].append(turn_over(contact.shape, first, second))
    return lists


def turn_over(shape: BaseGeometry, face: Face, other: Face) -> BaseGeometry:
    """A shape in one face's plane as a shape in the plane of the face that lies on it."""
    from shapely import transform

    centre = face.offset * face.normal
    return transform(shape, lambda flat: (flat @ face.basis + centre) @ other.basis.T)
