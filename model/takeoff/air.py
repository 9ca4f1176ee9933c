"""Which faces may be seen along which lines: a coarse search through the spaces between boards.

A line of sight goes from cell to cell and never turns back. Errs towards open as a rule; what can really be
seen is decided in model.takeoff.sight.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from model.board import AXES, CROSS, Board, Point3
from model.bore import Bore
from model.takeoff.faces import Face, Floats

Mask = NDArray[np.bool_]
Ways = tuple[int, ...]
SAME = 1 / 256
"""A plane no further past another than this is one with it, in."""
LEVEL = 1e-9
"""Edges that rise less than this are level, in.; no place that is tried lies between their ends."""
AROUND = 6.0
"""How much of the room is searched round the boards, in."""
SPOTS = ((0.02, 0.47, 0.97), (0.04, 0.52, 0.98), (0.03, 0.56, 0.99))
"""Where a cell is tried, as parts of its x, y and z: near its corners, off the diagonals of mitres."""
TRIES = len(SPOTS[0])


class Air:
    """The cells between the planes that bound the boards, and from which of them straight lines lead out.

    Lines go through holes as well, the air, without which nothing is looked for, does not.
    """

    def __init__(self, boards: Sequence[Board], standing: Sequence[Board], lines: Floats) -> None:
        """`lines` (n, 3), along the planes of the axes, are those that may be asked about."""
        corners = np.array([board.bounds for board in boards])
        low, high = corners[:, 0].min(axis=0) - AROUND, corners[:, 1].max(axis=0) + AROUND
        self._bounds = corners
        solids = (*boards, *standing)
        bores = [_box_round(bore) for board in boards for bore in board.bores]
        spans = np.array([*(solid.bounds for solid in solids), *bores]).reshape(-1, 3)
        self.planes = [_distinct(np.clip(spans[:, i], low[i], high[i]), low[i], high[i]) for i in range(3)]
        tried = [
            (planes[:-1, None] + np.diff(planes)[:, None] * spots).ravel()
            for planes, spots in zip(self.planes, SPOTS, strict=True)
        ]
        full = np.zeros([len(places) for places in tried], dtype=bool)
        for solid in solids:
            _fill(full, solid, tried)
        self._airy = _flood(~_all_tries(full))
        for box in bores:
            full[_window(tried, *box)] = False
        free = ~_all_tries(full)
        ways, self._way_of = np.unique(np.sign(lines).astype(int), axis=0, return_inverse=True)
        self._reached = np.stack([_reach(free, tuple(way)) for way in ways.tolist()])

    def list_ways(self, face: Face) -> Mask:
        """Along which of the lines `face`, of one of the boards, may be seen anywhere.

        A groove is narrower than a cell may be and then goes for wood, so that one of its faces is asked for
        as far as its board's own bounds before it.
        """
        least, most = self._bounds[face.owner]
        low = np.where(face.normal < -LEVEL, least, face.ring.min(axis=0)) - (SAME + LEVEL)
        high = np.where(face.normal > LEVEL, most, face.ring.max(axis=0)) + (SAME + LEVEL)
        window = tuple(
            slice(max(int(np.searchsorted(p, a, "right")) - 1, 0), int(np.searchsorted(p, b, "left")))
            for p, a, b in zip(self.planes, low, high, strict=True)
        )
        if not self._airy[window].any():
            return np.zeros(len(self._way_of), dtype=bool)
        reached = np.asarray(self._reached[(slice(None), *window)].any(axis=(1, 2, 3)))
        return np.asarray(reached[self._way_of])


def _distinct(values: Floats, low: float, high: float) -> Floats:
    """The values with both bounds, rising, those left out that lie no further than SAME past one kept."""
    kept = [low]
    for value in np.unique(np.append(values, high)).tolist():
        if value > kept[-1] + SAME:
            kept.append(value)
    return np.array(kept)


def _all_tries(full: Mask) -> Mask:
    """The cells all of whose tried places are."""
    for axis in range(full.ndim):
        places = np.moveaxis(full, axis, 0)
        tried = np.logical_and.reduce([places[k::TRIES] for k in range(TRIES)])
        full = np.moveaxis(tried, 0, axis)
    return full


def _box_round(bore: Bore) -> tuple[Point3, Point3]:
    """The low and the high corner of the box round a hole."""
    x, y, z = zip(*(bore.place(point, along) for point in bore.ring for along in bore.span), strict=True)
    return (min(x), min(y), min(z)), (max(x), max(y), max(z))


def _window(tried: Sequence[Floats], low: Point3, high: Point3) -> tuple[slice, ...]:
    """Where the tried places in a box are."""
    return tuple(
        slice(int(np.searchsorted(places, a)), int(np.searchsorted(places, b)))
        for places, a, b in zip(tried, low, high, strict=True)
    )


def _fill(full: Mask, solid: Board, tried: Sequence[Floats]) -> None:
    """Mark the tried places that lie in `solid`, holes in it not left out."""
    window = _window(tried, *solid.bounds)
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
            reached = _spread(reached, free, axis)
    return reached


def _spread(reached: Mask, free: Mask, axis: int) -> Mask:
    """Reached cells spread along one axis through free cells, both ways."""
    places = np.arange(free.shape[axis], dtype=np.int32).reshape([-1 if i == axis else 1 for i in range(3)])
    for way in (slice(None), slice(None, None, -1)):
        turned = tuple(way if i == axis else slice(None) for i in range(3))
        here, clear = reached[turned], free[turned]
        last_wall = np.maximum.accumulate(np.where(clear, -1, places), axis=axis)
        last_reached = np.maximum.accumulate(np.where(here, places, -1), axis=axis)
        reached = (clear & (last_reached > last_wall))[turned]
    return reached


def _reach(free: Mask, way: Ways) -> Mask:
    """The free cells from which steps along `way`, -1, 0 or 1 for each axis and two of them at most, lead out
    through free cells."""
    turned = tuple(slice(None, None, -1 if step < 0 else 1) for step in way)
    axes = sorted((axis for axis in range(3) if way[axis]), key=lambda axis: free.shape[axis])
    onward = np.moveaxis(free[turned], axes, range(len(axes)))
    reached = np.empty_like(onward)
    if len(axes) == 1:
        reached[::-1] = np.logical_and.accumulate(onward[::-1])
    else:
        before = np.ones(onward.shape[1:], dtype=bool)
        for i in reversed(range(len(onward))):
            reached[i] = before = _run_on(onward[i], before)
    return np.moveaxis(reached, range(len(axes)), axes)[turned]


def _run_on(free: Mask, begun: Mask) -> Mask:
    """The free cells of a layer from which free ones lead on along its first axis to one that is `begun`, or
    out of it."""
    here, last = free[::-1], (free & begun)[::-1]
    last[0] |= here[0]
    places = np.arange(len(here))[:, None]
    last_wall = np.maximum.accumulate(np.where(here, -1, places))
    last_begun = np.maximum.accumulate(np.where(last, places, -1))
    run: Mask = (here & (last_begun > last_wall))[::-1]
    return run
