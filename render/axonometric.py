"""Boards seen from beside and above in parallel projection: what of each face shows, exactly, for any subset.

What lies before a face is found in render.screens. What pens are used is render.step_picture's; the
axis-parallel views are render.views'.
"""

from __future__ import annotations

import itertools
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, sin
from typing import TYPE_CHECKING

import numpy as np

from model.board import Board
from model.takeoff.faces import Face, Floats, list_faces
from render.drawing import Ring
from render.extent import Box
from render.screens import GRID, LEAST, Screens, Shapes

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

EDGE_ON = 1e-3
"""Faces turned to the viewer by a smaller cosine than this are seen edge on."""
SLIVER = 4e-3
"""What shows of a face is no narrower than this as a rule, in inches; narrower gaps come of rounding."""


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


class Scene:
    """Solids looked at from one place. Numbers are places in the list of solids.

    What hides a face is found once, when first asked for; then any of the solids may be taken away.
    """

    def __init__(self, solids: Sequence[Board], stand: Stand, faces: Sequence[Face] | None = None) -> None:
        """`faces` are the solids' own where they are known already, or as a photo has them."""
        import shapely

        self.solids = tuple(solids)
        self.stand = stand
        self._basis = stand.basis
        every = list_faces(self.solids) if faces is None else faces
        turned = [face for face in every if float(face.normal @ self._basis[2]) > EDGE_ON]
        pictures = _draw_faces(turned, self._basis[:2])
        kept = shapely.area(pictures) > LEAST
        self._faces = [face for face, is_kept in zip(turned, kept.tolist(), strict=True) if is_kept]
        self._pictures = pictures[kept]
        self._of: dict[int, list[int]] = {}
        for i, face in enumerate(self._faces):
            self._of.setdefault(face.owner, []).append(i)
        self._screens = Screens(self._faces, self._pictures, self._basis)
        self._known: list[dict[frozenset[int], BaseGeometry]] = [{frozenset(): p} for p in self._pictures]

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

    def see_faces(self, present: Collection[int]) -> Iterator[tuple[Face, int, BaseGeometry]]:
        """What shows of each face turned to the viewer, with the number of its patch."""
        for i, face in enumerate(self._faces):
            if face.owner in present:
                patch = self._patches[face.owner].get(face.side, -1)
                yield face, patch, self._see_face(i, present)

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
        """What shows of a face; what is found for some solids is gone on from when there are more."""
        import shapely

        before = self._screens.find(face)
        there = [owner in present for owner in before.owners]
        if any(all_of_it and is_there for all_of_it, is_there in zip(before.hides_all, there, strict=True)):
            return shapely.Polygon()
        known, key = self._known[face], frozenset(itertools.compress(before.owners, there))
        if key not in known:
            start = max((own for own in known if own <= key), key=len)
            new = [
                is_there and owner not in start for owner, is_there in zip(before.owners, there, strict=True)
            ]
            over = before.shapes[new]
            over = over[0] if len(over) == 1 else shapely.union_all(over)
            known[key] = _without_slivers(shapely.difference(known[start], over, grid_size=GRID))
        return known[key]

    @cached_property
    def _patches(self) -> list[dict[int, int]]:
        """For each solid the patch of each of its sides."""
        return [_patch_sides(solid.carved) for solid in self.solids]


def _draw_faces(faces: Sequence[Face], axes: Floats) -> Shapes:
    """The picture of each face, on the grid; `axes` (2, 3) lead to its right and up."""
    import shapely

    rings = [[ring @ axes.T for ring in (face.ring, *face.holes)] for face in faces]
    shapes: Shapes = np.empty(len(faces), dtype=object)
    shapes[:] = [shapely.Polygon(outer, holes) for outer, *holes in rings]
    drawn: Shapes = shapely.set_precision(shapely.make_valid(shapes), GRID)
    return drawn


def _without_slivers(shape: BaseGeometry) -> BaseGeometry:
    """The parts of a shape that are wider than rounding makes gaps between two faces before it."""
    import shapely

    parts = shapely.get_parts(shape)
    wide = [part for part in parts if 2 * part.area > SLIVER * part.length]
    return shape if len(wide) == len(parts) else shapely.MultiPolygon(wide)


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
