"""Which hollows are shut off from the room: a coarse search through the spaces between boards.

It only ever errs towards open; what can really be seen is decided in model.takeoff.sight.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from model.board import AXES, CROSS, Board
from model.takeoff.faces import Face, Floats

Mask = NDArray[np.bool_]
SAME = 1 / 512
"""Planes nearer to each other than this are one, in."""
LEVEL = 1e-9
"""Edges that rise less than this are level, in.; no place that is tried lies between their ends."""
AROUND = 6.0
"""How much of the room is searched round the boards, in."""
SPOTS = ((0.02, 0.47, 0.97), (0.04, 0.52, 0.98), (0.03, 0.56, 0.99))
"""Where a cell is tried, as parts of its x, y and z: near its corners, off the diagonals of mitres."""
TRIES = len(SPOTS[0])


class Air:
    """The cells between the planes that bound the boards, and which of them the room's air reaches."""

    def __init__(self, boards: Sequence[Board], standing: Sequence[Board]) -> None:
        corners = np.array([board.bounds for board in boards])
        low, high = corners[:, 0].min(axis=0) - AROUND, corners[:, 1].max(axis=0) + AROUND
        self._bounds = corners
        solids = (*boards, *standing)
        spans = np.array([solid.bounds for solid in solids]).reshape(-1, 3)
        self.planes = [_distinct(np.clip(spans[:, i], low[i], high[i]), low[i], high[i]) for i in range(3)]
        tried = [
            (planes[:-1, None] + np.diff(planes)[:, None] * spots).ravel()
            for planes, spots in zip(self.planes, SPOTS, strict=True)
        ]
        full = np.zeros([len(places) for places in tried], dtype=bool)
        for solid in solids:
            _fill(full, solid, tried)
        shape = [len(planes) - 1 for planes in self.planes]
        tries = [n for size in shape for n in (size, TRIES)]
        free = ~np.asarray(full.reshape(tries).all(axis=(1, 3, 5)))
        self.open = _flood(free)

    def reaches(self, face: Face) -> bool:
        """Whether the room's air may reach `face`, of one of the boards, anywhere.

        A groove is narrower than a cell may be and then goes for wood, so that one of its faces is asked for
        as far as its board's own bounds before it.
        """
        least, most = self._bounds[face.owner]
        low = np.where(face.normal < -LEVEL, least, face.ring.min(axis=0)) - SAME
        high = np.where(face.normal > LEVEL, most, face.ring.max(axis=0)) + SAME
        window = tuple(
            slice(max(int(np.searchsorted(p, a, "right")) - 1, 0), int(np.searchsorted(p, b, "left")))
            for p, a, b in zip(self.planes, low, high, strict=True)
        )
        return bool(self.open[window].any())


def _distinct(values: Floats, low: float, high: float) -> Floats:
    ordered = np.sort(np.concatenate([values, [low, high]]))
    kept: Floats = ordered[np.r_[True, np.diff(ordered) > 2 * SAME]]
    return kept


def _fill(full: Mask, solid: Board, tried: Sequence[Floats]) -> None:
    """Mark the tried places that lie in `solid`."""
    window = tuple(
        slice(int(np.searchsorted(places, low)), int(np.searchsorted(places, high)))
        for places, low, high in zip(tried, *solid.bounds, strict=True)
    )
    if len(solid.section) == 4 and solid.low.is_square and solid.high.is_square and _fills_its_box(solid):
        full[window] = True
        return
    along = AXES.index(solid.axis)
    iu, iv = CROSS[solid.axis]
    u, v = np.meshgrid(tried[iu][window[iu]], tried[iv][window[iv]], indexing="ij")
    t = tried[along][window[along]]
    inside = _covers(np.array(solid.section), u, v)[..., None]
    ends = [end.at + end.slope_u * u + end.slope_v * v for end in (solid.low, solid.high)]
    inside = inside & (t > ends[0][..., None]) & (t < ends[1][..., None])
    full[window] |= np.moveaxis(inside, (0, 1, 2), (iu, iv, along))


def _fills_its_box(solid: Board) -> bool:
    iu, iv = CROSS[solid.axis]
    low, high = solid.bounds
    return abs(solid.section_area - (high[iu] - low[iu]) * (high[iv] - low[iv])) < SAME**2


def _covers(section: Floats, u: Floats, v: Floats) -> Mask:
    """Which points lie in a polygon, by counting the edges to one side of them."""
    inside = np.zeros(u.shape, dtype=bool)
    for (u0, v0), (u1, v1) in zip(section, np.roll(section, -1, axis=0), strict=True):
        if abs(v1 - v0) > LEVEL:
            inside ^= ((v > v0) != (v > v1)) & (u < u0 + (v - v0) * ((u1 - u0) / (v1 - v0)))
    return inside


def _flood(free: Mask) -> Mask:
    """The free cells joined side by side to the outermost ones."""
    reached = np.zeros(free.shape, dtype=bool)
    for axis in range(3):
        for edge in (0, -1):
            np.moveaxis(reached, axis, 0)[edge] = np.moveaxis(free, axis, 0)[edge]
    count = -1
    while count != (count := int(reached.sum())):
        for axis in range(3):
            reached = _run_on(reached, free, axis)
    return reached


def _run_on(reached: Mask, free: Mask, axis: int) -> Mask:
    """Reached cells spread along one axis through free cells, both ways."""
    places = np.arange(free.shape[axis], dtype=np.int32).reshape([-1 if i == axis else 1 for i in range(3)])
    for way in (slice(None), slice(None, None, -1)):
        turned = tuple(way if i == axis else slice(None) for i in range(3))
        here, clear = reached[turned], free[turned]
        last_wall = np.maximum.accumulate(np.where(clear, -1, places), axis=axis)
        last_reached = np.maximum.accumulate(np.where(here, places, -1), axis=axis)
        reached = (clear & (last_reached > last_wall))[turned]
    return reached
