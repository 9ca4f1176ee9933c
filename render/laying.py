"""Faces laid over each other on a grid: which is nearest in each of its triangles.

Where the grid's lines lie is render.arrangement's. Boards and views are not known here.
"""

from __future__ import annotations

from collections.abc import Iterator
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
CENTROIDS = np.array([(0.5, 1 / 6), (5 / 6, 0.5), (0.5, 5 / 6), (1 / 6, 0.5)])
"""Where the four triangles' centres lie in a cell, as parts of its width and height."""


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


def lay_flat(faces: list[Face], windows: list[Window], shape: tuple[int, ...]) -> tuple[Ints, Floats]:
    """The face seen, or NOTHING, and its depth in each triangle of a grid, `shape` (rows, columns, 4).

    Only of upright rectangles parallel to the picture: laid from far to near, no comparing needed.
    """
    seen = np.full(shape, NOTHING, dtype=np.intp)
    depths = [face.plane[2] for face in faces]
    flat = [i for i, face in enumerate(faces) if face.upright and face.flat]
    for index in sorted(flat, key=depths.__getitem__):
        seen[windows[index]] = index
    return seen, np.array([*depths, -np.inf])[seen]


def lay_others(
    faces: list[Face],
    windows: list[Window],
    lines: tuple[Floats, Floats, bool],
    seen: Ints,
    depth: Floats,
) -> None:
    """Lay all other faces into `seen` and `depth`, each compared in the triangles of its own window.

    `lines` are the grid's, both ways, and whether sloping edges meet all their corners: where they do not,
    a triangle's centre may lie on an edge, and is then in the faces on both its hands.
    """
    others = [i for i, face in enumerate(faces) if not (face.upright and face.flat)]
    if not others:
        return
    h, v, exact = lines
    on_edge = 0.0 if exact else GRAIN
    laid = [faces[i] for i in others]
    which, rows, columns = _list_cells([windows[i] for i in others])
    at_h, at_v = _list_centres(h)[columns], _list_centres(v, 1)[rows]
    a, b, c = np.array([face.plane for face in laid])[which].T[:, :, None]
    near = a * at_h + b * at_v + c
    wins = near > depth[rows, columns] + GRAIN
    for slope in _list_slopes(laid, on_edge):
        rise, run, reach = slope[:, which, None]
        wins &= at_h * rise < at_v * run + reach
    for own, face in _list_odd(laid, which):
        wins[own] &= _even_odd(face.edges, at_h[own], at_v[own], on_edge)
    at = cell, triangle = np.nonzero(wins)
    places = (rows[cell] * (len(h) - 1) + columns[cell]) * 4 + triangle
    _lay_in_turn(places, near[at], np.array(others)[which[cell]], seen.reshape(-1), depth.reshape(-1))


def _list_cells(windows: list[Window]) -> tuple[Ints, Ints, Ints]:
    """The cells of all windows, one after the other: the number of the window, row and column of each."""
    left, wide, low, tall = np.array(
        [(c.start, c.stop - c.start, r.start, r.stop - r.start) for r, c in windows], dtype=np.intp
    ).T
    counts = wide * tall
    which = np.repeat(np.arange(len(windows)), counts)
    number = np.arange(len(which)) - (np.cumsum(counts) - counts)[which]
    row, column = np.divmod(number, wide[which])
    return which, low[which] + row, left[which] + column


def _list_centres(lines: Floats, way: int = 0) -> Floats:
    """(n, 4) positions of the centres of the four triangles of each cell between `lines`."""
    centres: Floats = lines[:-1, None] + (lines[1:] - lines[:-1])[:, None] * CENTROIDS[:, way]
    return centres


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


def _list_slopes(faces: list[Face], on_edge: float) -> Iterator[Floats]:
    """Of four-sided faces first, second, third and fourth edges as far as any slope: (3, faces) of rise, run
    and reach. A point h, v lies left of an edge, or within `on_edge` of it, where h * rise < v * run + reach.

    Such faces are convex, so what is left of every sloping edge is in them; the window that the points are of
    keeps the other edges. Those, and other faces' edges, have every point on their left.
    """
    corners = np.zeros((len(faces), 4, 2))
    for place, face in enumerate(faces):
        if len(face.corners) == 4 and not face.upright:
            corners[place] = face.corners
    run, rise = (corners[:, (1, 2, 3, 0)] - corners).T
    h, v = corners.T
    reach = h * rise - v * run + on_edge * np.abs(rise)
    slopes = (run != 0) & (rise != 0)
    edges = np.where(slopes, (rise, run, reach), np.array((0.0, 0.0, 1.0))[:, None, None])
    for side in np.flatnonzero(slopes.any(axis=1)).tolist():
        yield edges[:, side]


def _list_odd(faces: list[Face], which: Ints) -> Iterator[tuple[slice, Face]]:
    """Faces with other than four corners, and where in `which` their numbers stand."""
    for place, face in enumerate(faces):
        if len(face.corners) != 4 and not face.upright:
            start, stop = np.searchsorted(which, (place, place + 1)).tolist()
            yield slice(start, stop), face


def _even_odd(edges: list[tuple[Point, Point]], h: Floats, v: Floats, on_edge: float) -> Mask:
    """Whether points lie in a polygon, with holes or not, or within `on_edge` of an edge."""
    inside = np.zeros(h.shape, dtype=bool)
    near = inside.copy()
    for (h0, v0), (h1, v1) in edges:
        if v0 != v1:
            level, edge = (v > v0) != (v > v1), h0 + (v - v0) * ((h1 - h0) / (v1 - v0))
            inside ^= level & (h < edge)
            if on_edge:
                near |= level & (np.abs(h - edge) < on_edge)
    return inside | near if on_edge else inside
