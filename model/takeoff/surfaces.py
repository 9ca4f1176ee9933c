"""The whole surface of a surround, parted: what touches wood or masonry, what shows and what is hidden.

Worked out once and handed to whoever lists paint, glue, nails or joints; how each part is found stands in
the files it is put together from.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from model.board import Board
from model.takeoff.air import Air
from model.takeoff.contacts import Contact, list_contacts, shapes_on, uncover
from model.takeoff.faces import Face, list_faces
from model.takeoff.sight import LINES, list_seen
from model.takeoff.standing import list_standing

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

    from model.surround import Surround


@dataclass(frozen=True, eq=False)
class Surfaces:
    """Faces of `boards`, and for each face, in its own plane, the parts of it.

    `glued` are contacts between boards, `against` contacts with `standing` solids, whose faces are
    `standing_faces`. `bare` is what neither covers, `seen` what of that can be seen from the room.
    """

    boards: tuple[Board, ...]
    faces: tuple[Face, ...]
    glued: tuple[Contact, ...]
    standing: tuple[Board, ...]
    standing_faces: tuple[Face, ...]
    against: tuple[Contact, ...]
    bare: tuple[BaseGeometry, ...]
    seen: tuple[BaseGeometry, ...]

    @cached_property
    def primed_area(self) -> float:
        """Square inches of all faces, and of the walls of holes: their wood is bare as well."""
        walls = sum(bore.wall_area for board in self.boards for bore in board.bores)
        return sum(face.area for face in self.faces) + walls

    @cached_property
    def painted_area(self) -> float:
        """Square inches that can be seen; not what is seen through holes, and not the walls of those."""
        return float(sum(shape.area for shape in self.seen))

    @cached_property
    def glued_area(self) -> float:
        """Square inches of wood on wood, each place once."""
        return sum(contact.area for contact in self.glued)


def list_surfaces(surround: Surround) -> Surfaces:
    """The surfaces of a surround before its masonry. Takes a few tenths of a second; nothing is kept."""
    return part_surfaces(surround.boards, list_standing(surround.boards, surround.layout))


def part_surfaces(boards: tuple[Board, ...], standing: tuple[Board, ...] = ()) -> Surfaces:
    """The surfaces of any boards, beside whatever solids stand there already."""
    faces, standing_faces = list_faces(boards), list_faces(standing)
    glued = list_contacts(faces)
    against = list_contacts(faces, standing_faces) if standing_faces else ()
    covered = shapes_on(faces, glued)
    for contact in against:
        covered[contact.first].append(contact.shape)
    bare = uncover(faces, covered)
    seen = _list_seen(boards, standing, faces, standing_faces, bare)
    return Surfaces(boards, faces, glued, standing, standing_faces, against, bare, seen)


def _list_seen(
    boards: Sequence[Board],
    standing: Sequence[Board],
    faces: Sequence[Face],
    standing_faces: Sequence[Face],
    bare: Sequence[BaseGeometry],
) -> tuple[BaseGeometry, ...]:
    """Looked for only where a line may lead out: what is shut in neither shows nor hides anything."""
    from shapely import Polygon

    air = Air(boards, standing, LINES)
    ways = {i: air.list_ways(face) for i, face in enumerate(faces) if bare[i].area > 0}
    may = [i for i, own in ways.items() if own.any()]
    shown = [faces[i] for i in may], [bare[i] for i in may], standing_faces
    found = list_seen(*shown, np.array([ways[i] for i in may]).reshape(-1, len(LINES)))
    seen: list[BaseGeometry] = [Polygon()] * len(faces)
    for i, shape in zip(may, found, strict=True):
        seen[i] = shape
    return tuple(seen)
