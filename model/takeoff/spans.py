"""Which of many numbers and boxes lie in which others, without trying all pairs."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from model.takeoff.faces import Floats

Numbers = NDArray[np.intp]


def list_within(low: Floats, high: Floats, places: Floats) -> tuple[Numbers, Numbers]:
    """Pairs (i, j) with low[i] <= places[j] <= high[i], by i."""
    order = np.argsort(places, kind="stable")
    first, last = _runs(low, high, places[order])
    counts = np.maximum(last - first, 0)
    spans = np.repeat(np.arange(len(low)), counts)
    behind = np.arange(counts.sum()) - np.repeat(np.cumsum(counts) - counts, counts)
    return spans, order[np.repeat(first, counts) + behind]


def list_meeting(low: Floats, high: Floats) -> tuple[Numbers, Numbers]:
    """Pairs (i, j), i < j, of boxes (n, 3) that meet, in order."""
    if not len(low):
        return np.zeros(0, dtype=np.intp), np.zeros(0, dtype=np.intp)
    axis = min(range(low.shape[1]), key=lambda k: _count(low[:, k], high[:, k]))
    one, other = list_within(low[:, axis], high[:, axis], low[:, axis])
    meet = (one != other) & ((low[one] <= high[other]) & (low[other] <= high[one])).all(axis=1)
    one, other = one[meet], other[meet]
    named = np.unique(np.minimum(one, other) * len(low) + np.maximum(one, other))
    return named // len(low), named % len(low)


def _count(low: Floats, high: Floats) -> int:
    first, last = _runs(low, high, np.sort(low))
    return int((last - first).sum())


def _runs(low: Floats, high: Floats, ordered: Floats) -> tuple[Numbers, Numbers]:
    return np.searchsorted(ordered, low, "left"), np.searchsorted(ordered, high, "right")
