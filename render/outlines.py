"""Faces as they lie in a picture, however deep: the grid that their corners make, and what of it each takes.

Remembered, since an edit leaves most views alone, or moves wood in them only nearer or further off. Which
face is seen where is render.laying's.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import accumulate

import numpy as np

from render.laying import GRAIN, Face, Floats, Ints, Spots, Window, in_polygon

CENTROIDS = np.array([(0.5, 1 / 6), (5 / 6, 0.5), (0.5, 5 / 6), (1 / 6, 0.5)])
"""Where the four triangles' centres lie in a cell, as parts of its width and height."""


KEPT_CELLS = 10_000
"""What follows from grids of more cells than this is not remembered: it would take up megabytes."""


@dataclass(frozen=True, slots=True)
class Outlines:
    """Faces, equal to others where all their corners are the same and the same ones are plain.

    `corners` (n, 2) are those of all `faces`, one after the other, `counts` how many each has. Those that are
    `plain` are upright rectangles parallel to the picture.
    """

    faces: list[Face] = field(compare=False)
    corners: Floats = field(compare=False)
    key: bytes
    counts: tuple[int, ...]
    holes: tuple[tuple[int, ...], ...]
    upright: tuple[bool, ...]
    plain: tuple[bool, ...]

    @classmethod
    def of(cls, faces: list[Face]) -> Outlines:
        """Those of some faces."""
        corners = np.concatenate([face.corners for face in faces])
        return cls(
            faces,
            corners,
            corners.tobytes(),
            tuple([len(face.corners) for face in faces]),
            tuple([face.starts for face in faces]),
            tuple([face.upright for face in faces]),
            tuple([face.upright and face.flat for face in faces]),
        )

    @property
    def starts(self) -> list[int]:
        """Which of the corners is each face's first."""
        return [0, *accumulate(self.counts[:-1])]


@dataclass(frozen=True, slots=True, eq=False)
class Ground:
    """A grid for some faces: its lines, and the rows and columns that each face spans.

    `exact` is false where the lines were too many for every sloping edge to meet their corners.
    """

    h: Floats
    v: Floats
    exact: bool
    windows: list[Window]

    @property
    def shape(self) -> tuple[int, int]:
        """How many rows and columns there are."""
        return len(self.v) - 1, len(self.h) - 1

    @property
    def centres(self) -> tuple[Floats, Floats]:
        """Where the middles of the four triangles of cells are: (columns, 4) across and (rows, 4) up."""
        return _list_centres(self.h), _list_centres(self.v, 1)

    @property
    def on_edge(self) -> float:
        """How near to a sloping edge a triangle's middle is in the faces on both its hands."""
        return 0.0 if self.exact else GRAIN


@lru_cache(maxsize=8)
def span_faces(outlines: Outlines) -> tuple[list[Window], tuple[int, int]]:
    """Rows and columns of the grid of all corners that each face spans, and how many there are of each."""
    h, v = _distinct(outlines.corners[:, 0]), _distinct(outlines.corners[:, 1])
    return _list_windows(outlines, h, v), (len(v) - 1, len(h) - 1)


@lru_cache(maxsize=8)
def lay_ground(outlines: Outlines, most: int) -> Ground:
    """The grid on which every face's edges run along lines or diagonals, as far as `most` lines make one."""
    h, v, exact = _grid_lines(outlines, most)
    return Ground(h, v, exact, _list_windows(outlines, h, v))


def _list_windows(outlines: Outlines, h: Floats, v: Floats) -> list[Window]:
    """Rows and columns of the grid that each face spans."""
    corners, starts = outlines.corners, outlines.starts
    low = np.minimum.reduceat(corners, starts) - GRAIN
    high = np.maximum.reduceat(corners, starts) - GRAIN
    i0, i1 = np.searchsorted(h, low[:, 0]).tolist(), np.searchsorted(h, high[:, 0]).tolist()
    j0, j1 = np.searchsorted(v, low[:, 1]).tolist(), np.searchsorted(v, high[:, 1]).tolist()
    ends = zip(j0, j1, i0, i1, strict=True)
    return [(slice(bottom, top), slice(left, right)) for bottom, top, left, right in ends]


def _grid_lines(outlines: Outlines, most: int) -> tuple[Floats, Floats, bool]:
    """Positions of the lines, and whether sloping edges meet all their corners."""
    h, v = _distinct(outlines.corners[:, 0]), _distinct(outlines.corners[:, 1])
    edges = _sloping_edges(outlines.faces)
    while len(edges):
        more_v = _crossings(edges, h)
        more_h = _crossings(edges[:, [1, 0, 3, 2]], v)
        refined = _refine(h, more_h), _refine(v, more_v)
        lines = len(refined[0]) + len(refined[1])
        if lines == len(h) + len(v):
            break
        if lines > most:
            return h, v, False
        h, v = refined
    return h, v, True


def _distinct(values: Floats) -> Floats:
    """Rising, each further than a grain from the one before; every value has one no further below it."""
    ordered = np.sort(values)
    steps = ordered[1:] - ordered[:-1]
    keep = np.ones(len(ordered), dtype=bool)
    keep[1:] = steps > GRAIN
    distinct: Floats = ordered[keep]
    if np.count_nonzero(steps) == len(distinct) - 1:
        return distinct
    kept = distinct[:1].tolist()
    for value in ordered.tolist():
        if value - kept[-1] > GRAIN:
            kept.append(value)
    return np.array(kept)


def _refine(lines: Floats, more: Floats) -> Floats:
    """`lines` and what of `more` is further than a grain from all of them.

    Lines stay where they are: each time round, what is found lies a little beside what was there, and a line
    that gave way to it would in the end be a grain off the corners that it stands for.
    """
    if not len(more):
        return lines
    found = _distinct(more)
    at = np.searchsorted(lines, found)
    below, above = lines[np.maximum(at - 1, 0)], lines[np.minimum(at, len(lines) - 1)]
    apart = (np.abs(found - below) > GRAIN) & (np.abs(found - above) > GRAIN)
    return np.sort(np.concatenate([lines, found[apart]])) if apart.any() else lines


def _sloping_edges(faces: list[Face]) -> Floats:
    """(n, 4) of every distinct edge that is neither level nor plumb."""
    askew = [face for face in faces if not face.upright]
    if not askew:
        return np.zeros((0, 4))
    corners = np.concatenate([face.corners for face in askew])
    sizes = [size for face in askew for size in face.sizes]
    starts, onward = np.array([0, *accumulate(sizes[:-1])]), np.arange(1, len(corners) + 1)
    onward[starts + sizes - 1] = starts
    edges = np.hstack([corners, corners[onward]])
    slopes = (np.abs(edges[:, :2] - edges[:, 2:]) > GRAIN).all(axis=1)
    rising = {min((h0, v0, h1, v1), (h1, v1, h0, v0)) for h0, v0, h1, v1 in edges[slopes].tolist()}
    return np.array(sorted(rising)).reshape(-1, 4)


def _crossings(edges: Floats, lines: Floats) -> Floats:
    """Second coordinates at which `edges` pass the `lines` of the first coordinate."""
    a0, b0, a1, b1 = edges.T[:, :, None]
    inside = (lines > np.minimum(a0, a1) + GRAIN) & (lines < np.maximum(a0, a1) - GRAIN)
    crossings: Floats = (b0 + (lines - a0) * ((b1 - b0) / (a1 - a0)))[inside]
    return crossings


@lru_cache(maxsize=8)
def list_spots(outlines: Outlines, ground: Ground) -> Spots | None:
    """The triangles of faces that are not plain, None where all are.

    By where the triangles' middles are. Where sloping edges do not meet all corners of the grid, a middle
    may lie on an edge, and is then in the faces on both its hands.
    """
    on_edge = ground.on_edge
    others = [i for i, is_plain in enumerate(outlines.plain) if not is_plain]
    if not others:
        return None
    laid = [outlines.faces[i] for i in others]
    which, rows, columns = _list_cells([ground.windows[i] for i in others])
    centre_h, centre_v = ground.centres
    at_h, at_v = centre_h[columns], centre_v[rows]
    inside = np.ones(at_h.shape, dtype=bool)
    for slope in _list_slopes(laid, on_edge):
        rise, run, reach = slope[:, which, None]
        inside &= at_h * rise < at_v * run + reach
    for own, place in _list_odd(laid, which):
        row, column = ground.windows[others[place]]
        odd = in_polygon(laid[place].edges, centre_h[column], centre_v[row], on_edge)
        inside[own] &= odd.reshape(-1, 4)
    at = cell, triangle = np.nonzero(inside)
    places = (rows[cell] * ground.shape[1] + columns[cell]) * 4 + triangle
    return Spots(np.array(others)[which[cell]], places, at_h[at], at_v[at])


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


def _list_odd(faces: list[Face], which: Ints) -> Iterator[tuple[slice, int]]:
    """Places of faces with other than four corners, and where in `which` their numbers stand."""
    for place, face in enumerate(faces):
        if len(face.corners) != 4 and not face.upright:
            start, stop = np.searchsorted(which, (place, place + 1)).tolist()
            yield slice(start, stop), place
