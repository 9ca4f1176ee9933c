"""Solids as a photo sees them: what of each face shows, exactly, and what of that the light reaches.

A photo's rays meet in one point. Dividing by how far away a point is makes them parallel and leaves flat what
is flat, so what hides what is found by render.axonometric as for any picture in parallel projection.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import asin, degrees, sqrt
from typing import TYPE_CHECKING

import numpy as np

from model.board import Board
from model.errors import Refused
from model.photo.camera import Camera
from model.takeoff.faces import Face, Floats, list_faces
from render.axonometric import Scene, Stand
from render.screens import GRID, only_areas

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

STRAIGHT = Stand(0.0, 0.0, "as the photo sees it")
LIGHT = Stand(-45.0, degrees(asin(1 / sqrt(3))), "with the light over the left shoulder")
"""The conventional light, along the diagonal of a cube: Gwilt, Encyclopaedia of Architecture, art. 2460."""
NEAREST = 6.0
"""Nothing is drawn nearer to the camera than this, in. Shop choice."""
AWAY, LIT, DARK = "away", "lit", "dark"


@dataclass(frozen=True, eq=False)
class Seen:
    """What shows of one face of a solid, in pixels; the parts of it in shade, lit and in shadow.

    `owner` is the solid's place in its list; faces of one curve have the same `patch`.
    """

    owner: int
    patch: int
    whole: BaseGeometry
    tone: str
    shadow: BaseGeometry | None


class Lens:
    """Takes points of the room to where the photo's rays are parallel, and on to pixels.

    There, as in the room, x is to the right, y up and z towards the viewer, in inches true to size as far
    away as `about`, a point of the room.
    """

    def __init__(self, camera: Camera, about: Sequence[float]) -> None:
        self.camera = camera
        self.away = float(camera.place([about])[0, 2])
        if self.away < NEAREST:
            raise Refused("corners", "those of a camera within the fireplace", "set them anew")

    def bend(self, points: Floats) -> Floats:
        """Points of the room (n, 3) moved so that the photo's rays are parallel; Refused if too near."""
        right, down, away = self.camera.place(points).T
        if away.min() < NEAREST:
            raise Refused(
                "photo", "taken from within the surround", "take one from further off, or check the corners"
            )
        share = self.away / away
        return np.column_stack([right * share, -down * share, self.away * share])

    def to_pixels(self, shape: BaseGeometry) -> BaseGeometry:
        """A shape there as it lies in the photo, y down."""
        from shapely.affinity import affine_transform

        scale = self.camera.focal / self.away
        across, down = self.camera.centre
        return affine_transform(shape, [scale, 0, 0, -scale, float(across), float(down)])


def see_solids(solids: Sequence[Board], camera: Camera, about: Sequence[float]) -> Iterator[Seen]:
    """What shows of every face, lit by the conventional light. `about` is where in the room sizes are true.

    Raises Refused where the camera stands within them.
    """
    lens = Lens(camera, about)
    every = frozenset(range(len(solids)))
    faces = list_faces(solids)
    room = {(face.owner, face.side): face for face in faces}
    scene = Scene(solids, STRAIGHT, [_bend(lens, face) for face in faces])
    lit = _Lit(solids, lens)
    for face, patch, shown in scene.see_faces(every):
        shape = only_areas(shown)
        if shape.is_empty:
            continue
        tone, dark = lit.part(room[face.owner, face.side], shape)
        yield Seen(
            face.owner,
            patch,
            lens.to_pixels(shape),
            tone,
            None if dark is None or dark.is_empty else lens.to_pixels(dark),
        )


def _bend(lens: Lens, face: Face) -> Face:
    """The face as the lens has it; flat as it was."""
    ring = lens.bend(face.ring)
    normal = _normal_of(ring)
    return replace(face, ring=ring, normal=normal, holes=tuple(lens.bend(hole) for hole in face.holes))


def _normal_of(ring: Floats) -> Floats:
    from_first = ring - ring[0]
    total = np.cross(from_first[1:-1], from_first[2:]).sum(axis=0)
    return np.asarray(total / max(float(np.linalg.norm(total)), 1e-12))


class _Lit:
    """What of each face the light reaches: what a viewer who stands where it comes from would see."""

    def __init__(self, solids: Sequence[Board], lens: Lens) -> None:
        scene = Scene(solids, LIGHT)
        every = frozenset(range(len(solids)))
        self._lens = lens
        self._basis = LIGHT.basis
        self._reached = {(face.owner, face.side): shape for face, _, shape in scene.see_faces(every)}

    def part(self, face: Face, shown: BaseGeometry) -> tuple[str, BaseGeometry | None]:
        """How a face is lit, and what is dark of what is `shown` of it though it is turned to the light."""
        import shapely

        reached = self._reached.get((face.owner, face.side))
        if reached is None:
            return AWAY, None
        if reached.is_empty:
            return DARK, shown
        lit = shapely.set_precision(shapely.make_valid(self._bend(face, reached)), GRID)
        return LIT, only_areas(shapely.difference(shown, lit, grid_size=GRID))

    def _bend(self, face: Face, reached: BaseGeometry) -> BaseGeometry:
        """What the light reaches of a face, as the lens has it."""
        import shapely

        normal = self._basis @ face.normal

        def move(points: Floats) -> Floats:
            near = (face.offset - points @ normal[:2]) / normal[2]
            room = np.column_stack([points, near]) @ self._basis
            return self._lens.bend(room)[:, :2]

        return shapely.transform(reached, move)
