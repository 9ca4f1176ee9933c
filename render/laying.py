"""Faces laid over each other on a grid: which is nearest in each of its triangles.

Where the grid's lines lie, and which triangles are in which face, is render.outlines'. Boards and views are
not known here.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]
Mask = NDArray[np.bool_]
Point = tuple[float, float]
Window = tuple[slice, slice]
"""Rows and columns of a grid that a face spans."""

NOTHING = -1
GRAIN = 1e-6
"""Lines nearer to each other than this, in inches, are one line."""


class Face(NamedTuple):
    """A flat polygon seen from its front: corners (n, 2) counter-clockwise, depth a*h + b*v + c.

    With holes in it the corners of each hole follow its own; `starts` are the first of each.
    """

    corners: Floats
    plane: tuple[float, float, float]
    upright: bool
    """Whether it is a rectangle with level and plumb sides."""
    starts: tuple[int, ...] = ()

    @property
    def edges(self) -> list[tuple[Point, Point]]:
        """From corner to corner round its outline, then round each hole."""
        points: list[Point] = self.corners.tolist()
        if not self.starts:
            return list(zip(points, points[1:] + points[:1], strict=True))
        parts = [points[a:b] for a, b in pairwise((0, *self.starts, len(points)))]
        return [edge for part in parts for edge in zip(part, part[1:] + part[:1], strict=True)]

    @property
    def sizes(self) -> list[int]:
        """How many corners its outline has, then each hole."""
        return [b - a for a, b in pairwise((0, *self.starts, len(self.corners)))]

    @property
    def flat(self) -> bool:
        """Whether it lies parallel to the picture."""
        return self.plane[0] == 0 and self.plane[1] == 0


@dataclass(frozen=True, slots=True)
class Spots:
    """Triangles of a grid that lie in faces: the number of the face, the triangle's place in the grid, and
    where its middle is. All are (n,), in the order of the faces.
    """

    face: Ints
    place: Ints
    h: Floats
    v: Floats


def lay_flat(
    faces: list[Face], plain: Sequence[bool], windows: list[Window], shape: tuple[int, ...]
) -> tuple[Ints, Floats]:
    """The face seen, or NOTHING, and its depth in each triangle of a grid, `shape` (rows, columns, 4).

    Only of those that are `plain`, upright rectangles parallel to the picture: laid from far to near, no
    comparing needed.
    """
    seen = np.full(shape, NOTHING, dtype=np.intp)
    depths = [face.plane[2] for face in faces]
    flat = [i for i, is_plain in enumerate(plain) if is_plain]
    for index in sorted(flat, key=depths.__getitem__):
        seen[windows[index]] = index
    return seen, np.array([*depths, -np.inf])[seen]


def lay_others(faces: list[Face], spots: Spots, seen: Ints, depth: Floats) -> None:
    """Lay all other faces into `seen` and `depth`, compared triangle by triangle at the `spots` in them."""
    a, b, c = np.array([face.plane for face in faces])[spots.face].T
    near = a * spots.h + b * spots.v + c
    seen, depth = seen.reshape(-1), depth.reshape(-1)
    wins = near > depth[spots.place] + GRAIN
    _lay_in_turn(spots.place[wins], near[wins], spots.face[wins], seen, depth)


def _lay_in_turn(places: Ints, near: Floats, shown: Ints, seen: Ints, depth: Floats) -> None:
    """Put faces, so near at triangles `places`, before what is seen there: all are nearer by a grain, and of
    several at one triangle the first stays unless a later one is nearer by as much again."""
    first = np.empty(len(seen), dtype=np.intp)
    while len(places):
        turn = np.arange(len(places))
        first[places] = len(places)
        np.minimum.at(first, places, turn)
        due = first[places] == turn
        seen[places[due]], depth[places[due]] = shown[due], near[due]
        later = near > depth[places] + GRAIN
        places, near, shown = places[later], near[later], shown[later]


def in_polygon(edges: list[tuple[Point, Point]], h: Floats, v: Floats, on_edge: float) -> Mask:
    """Whether triangles' middles lie in a polygon, with holes or not, or within `on_edge` of an edge.

    (rows, columns, 4) of columns `h` (n, 4) and rows `v`; each edge is asked about the rows it runs beside.
    """
    h, v = h[None], v[:, None]
    inside = np.zeros((len(v), h.shape[1], 4), dtype=bool)
    near = inside.copy()
    for (h0, v0), (h1, v1) in edges:
        level = (v > v0) != (v > v1)
        beside = np.flatnonzero(level.any(axis=(1, 2)))
        if len(beside):
            own = slice(beside[0], beside[-1] + 1)
            level, edge = level[own], h0 + (v[own] - v0) * ((h1 - h0) / (v1 - v0))
            inside[own] ^= level & (h < edge)
            if on_edge:
                near[own] |= level & (np.abs(h - edge) < on_edge)
    return inside | near if on_edge else inside
