"""Lines without those parts of them that run close along or across other lines.

Exact: a part is taken off where its distance from any of the others is too small. Drawing units throughout.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

Floats = NDArray[np.float64]
SHORTEST = 1e-9
"""Parts of a segment, its length being 1, that are left over by rounding are no longer than this."""


def keep_apart(lines: BaseGeometry, others: BaseGeometry, gap: float) -> BaseGeometry:
    """The parts of `lines` that lie at least `gap` from all `others`, as lines of two points each."""
    import shapely

    own, other = _list_segments(lines), _list_segments(others)
    tree = shapely.STRtree(shapely.linestrings(other))
    near, to = tree.query(shapely.linestrings(own), predicate="dwithin", distance=gap)
    low, high = _spans_near(own[near], other[to], gap)
    kept = np.ones(len(own), dtype=bool)
    kept[near] = False
    parts = [own[kept]]
    for i in np.unique(near):
        parts.append(_cut(own[i], low[near == i], high[near == i]))
    return shapely.multilinestrings(shapely.linestrings(np.concatenate(parts)))


def _list_segments(lines: BaseGeometry) -> Floats:
    """(n, 2, 2) start and end of every straight piece."""
    import shapely

    points, which = shapely.get_coordinates(shapely.get_parts(lines), return_index=True)
    pieces: Floats = np.stack([points[:-1], points[1:]], axis=1)[which[:-1] == which[1:]]
    return pieces


def _spans_near(own: Floats, other: Floats, gap: float) -> tuple[Floats, Floats]:
    """From where to where along each of `own`, its length being 1, it is within `gap` of its `other`.

    What is that near to a segment is a strip with two round ends, so it is one stretch; from 1 to 0 for none.
    """
    start, way = own[:, 0], own[:, 1] - own[:, 0]
    spans = [_span_in_disc(start, way, other[:, end], gap) for end in (0, 1)]
    spans.append(_span_in_strip(start, way, other, gap))
    lows, highs = zip(*spans, strict=True)
    return np.clip(np.min(lows, axis=0), 0.0, 1.0), np.clip(np.max(highs, axis=0), 0.0, 1.0)


def _span_in_disc(start: Floats, way: Floats, centre: Floats, radius: float) -> tuple[Floats, Floats]:
    size = (way**2).sum(axis=1)
    foot = ((centre - start) * way).sum(axis=1) / size
    off = ((start + foot[:, None] * way - centre) ** 2).sum(axis=1)
    half = np.sqrt(np.maximum(radius**2 - off, 0.0) / size)
    return _where(off <= radius**2, foot - half, foot + half)


def _span_in_strip(start: Floats, way: Floats, other: Floats, gap: float) -> tuple[Floats, Floats]:
    """Where a line runs beside the segment, between the squares to its ends."""
    along = other[:, 1] - other[:, 0]
    length = np.hypot(along[:, 0], along[:, 1])
    along = along / length[:, None]
    across = np.stack([-along[:, 1], along[:, 0]], axis=1)
    off = start - other[:, 0]
    low, high = np.full(len(start), -np.inf), np.full(len(start), np.inf)
    for axis, least, most in ((along, 0.0, length), (across, -gap, gap)):
        place, speed = (off * axis).sum(axis=1), (way * axis).sum(axis=1)
        with np.errstate(divide="ignore", invalid="ignore"):
            ends = np.sort(np.stack([(least - place) / speed, (most - place) / speed]), axis=0)
        runs = speed != 0
        inside = runs | ((place >= least) & (place <= most))
        low = np.maximum(low, np.where(runs, ends[0], np.where(inside, -np.inf, np.inf)))
        high = np.minimum(high, np.where(runs, ends[1], np.where(inside, np.inf, -np.inf)))
    return _where(low <= high, low, high)


def _where(there: NDArray[np.bool_], low: Floats, high: Floats) -> tuple[Floats, Floats]:
    return np.where(there, low, 1.0), np.where(there, high, 0.0)


def _cut(segment: Floats, lows: Floats, highs: Floats) -> Floats:
    """(n, 2, 2) what is left of a segment without the stretches from `lows` to `highs`."""
    left, at = [], 0.0
    for low, high in sorted(zip(lows.tolist(), highs.tolist(), strict=True)):
        if low > at + SHORTEST:
            left.append((at, low))
        at = max(at, high)
    if at < 1.0 - SHORTEST:
        left.append((at, 1.0))
    start, way = segment[0], segment[1] - segment[0]
    ends = [[start + t * way if 0.0 < t < 1.0 else segment[int(t)] for t in span] for span in left]
    return np.array(ends).reshape(-1, 2, 2)
