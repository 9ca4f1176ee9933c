"""How much nearer to the eye one flat face is than another, from planes and corners alone.

No shapes are cut with each other here: model.takeoff.sight and render.axonometric do that for those pairs
that this leaves open.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from model.takeoff.faces import Face, Floats

Numbers = NDArray[np.intp]


class Outlines:
    """Planes and corners of `faces`, which are meant by their numbers, for looks at them from anywhere."""

    def __init__(self, faces: Sequence[Face]) -> None:
        self.normals = np.array([face.normal for face in faces]).reshape(-1, 3)
        self.offsets = np.array([face.offset for face in faces])
        self.corners = np.concatenate([np.zeros((0, 3)), *(face.ring for face in faces)])
        self.counts = np.array([len(face.ring) for face in faces], dtype=np.intp)
        self.starts = np.cumsum(self.counts) - self.counts


class Nearness:
    """Faces looked at along the third row of `basis`, (3, 3) unit vectors to the right, up and to the eye.

    `grid` is how far, in inches, corners of pictures may lie from where they are seen. Faces that are seen
    edge on must not be asked about.
    """

    def __init__(self, outlines: Outlines, basis: Floats, grid: float) -> None:
        self._starts, self._counts, self._grid = outlines.starts, outlines.counts, grid
        self._corners = outlines.corners @ basis.T
        normals = outlines.normals @ basis.T
        with np.errstate(divide="ignore", invalid="ignore"):
            self.planes = np.column_stack([-normals[:, 0], -normals[:, 1], outlines.offsets]) / normals[:, 2:]
        """(n, 3) a, b, c of each face: nearness = a*h + b*v + c."""
        flat = self._corners[:, :2]
        self._lows = np.minimum.reduceat(flat, self._starts) if len(flat) else flat
        self._highs = np.maximum.reduceat(flat, self._starts) if len(flat) else flat

    def bound_ahead(self, fars: Numbers, nears: Numbers) -> tuple[Floats, Floats]:
        """Between what numbers of inches each of `nears` is nearer than its one of `fars`, where both show.

        Of two flat faces one can be no more ahead than at a corner of either, nor than at a corner of the
        box in which both have their pictures.
        """
        if not len(fars):
            return np.zeros(0), np.zeros(0)
        low_near, high_near = self._bound_at_corners(nears, fars)
        low_far, high_far = self._bound_at_corners(fars, nears)
        low_box, high_box = self._bound_in_box(fars, nears)
        low: Floats = np.maximum(np.maximum(low_near, -high_far), low_box)
        high: Floats = np.minimum(np.minimum(high_near, -low_far), high_box)
        return low, high

    def _bound_at_corners(self, own: Numbers, others: Numbers) -> tuple[Floats, Floats]:
        """How much nearer the corners of each face are than the plane of its other one."""
        counts = self._counts[own]
        starts = np.cumsum(counts) - counts
        corners = self._corners[np.arange(counts.sum()) + np.repeat(self._starts[own] - starts, counts)]
        planes = np.repeat(self.planes[others], counts, axis=0)
        ahead = corners[:, 2] - (planes[:, :2] * corners[:, :2]).sum(axis=1) - planes[:, 2]
        return np.minimum.reduceat(ahead, starts), np.maximum.reduceat(ahead, starts)

    def _bound_in_box(self, fars: Numbers, nears: Numbers) -> tuple[Floats, Floats]:
        start = np.maximum(self._lows[nears], self._lows[fars])
        size = np.minimum(self._highs[nears], self._highs[fars]) - start
        slope = self.planes[nears] - self.planes[fars]
        middle = (slope[:, :2] * (start + size / 2)).sum(axis=1) + slope[:, 2]
        reach = (np.abs(slope[:, :2]) * (np.maximum(size, 0.0) / 2 + self._grid)).sum(axis=1)
        return middle - reach, middle + reach
