"""Which straight pieces run through which boxes, and which of them cross, for many at once.

Only plain arrays: what is drawn and what gives way is decided elsewhere.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from render.drawing import Segment
from render.extent import Box

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]
Mask = NDArray[np.bool_]


def to_rows(fours: Sequence[Segment] | Sequence[Box]) -> Floats:
    """Segments or boxes as rows (n, 4), also where there are none."""
    return np.array(fours, dtype=float).reshape(-1, 4)


def find_hits(boxes: Floats, lines: Floats) -> tuple[Ints, Ints]:
    """Pairs of a box and a line that touches it, by their places in `boxes` (n, 4) and `lines` (m, 4)."""
    box, line = _list_near(boxes, lines)
    askew = np.flatnonzero((lines[line, :2] != lines[line, 2:]).all(axis=1))
    if not len(askew):
        return box, line
    keep = np.ones(len(box), dtype=bool)
    keep[askew] = ~_passes(boxes[box[askew]], lines[line[askew]])
    return box[keep], line[keep]


def _list_near(boxes: Floats, lines: Floats) -> tuple[Ints, Ints]:
    """Pairs of a box and a line of which the upright box round it touches that one."""
    if not (len(boxes) and len(lines)):
        none = np.zeros(0, dtype=np.intp)
        return none, none
    x0, x1 = np.minimum(lines[:, 0], lines[:, 2]), np.maximum(lines[:, 0], lines[:, 2])
    y0, y1 = np.minimum(lines[:, 1], lines[:, 3]), np.maximum(lines[:, 1], lines[:, 3])
    left, low, right, high = boxes.T
    near = np.flatnonzero((x0 <= right.max()) & (x1 >= left.min()) & (y0 <= high.max()) & (y1 >= low.min()))
    left, low, right, high = boxes.T[:, :, None]
    meets = (x0[near] <= right) & (x1[near] >= left) & (y0[near] <= high) & (y1[near] >= low)
    box, at = np.nonzero(meets)
    return box, near[at]


def _passes(boxes: Floats, lines: Floats) -> Mask:
    """Row by row whether all of a box lies on one hand of a line."""
    (x0, y0, x1, y1), (left, low, right, high) = lines.T, boxes.T
    run, rise = x1 - x0, y1 - y0
    hands = [run * (y - y0) - rise * (x - x0) for x in (left, right) for y in (low, high)]
    passes: Mask = (np.minimum.reduce(hands) > 0) | (np.maximum.reduce(hands) < 0)
    return passes


def are_crossed(lines: Floats, others: Floats) -> Mask:
    """Which of `lines` (n, 4) run through any of `others` (m, 4) between the ends of both."""
    if not len(others):
        return np.zeros(len(lines), dtype=bool)
    starts, stops = lines[:, None, :2], lines[:, None, 2:]
    parted = _hand(starts, stops, others[:, :2]) * _hand(starts, stops, others[:, 2:]) < 0
    split = _hand(others[:, :2], others[:, 2:], starts) * _hand(others[:, :2], others[:, 2:], stops) < 0
    crossed: Mask = np.any(parted & split, axis=1)
    return crossed


def _hand(starts: Floats, stops: Floats, points: Floats) -> Floats:
    """Above nothing where points lie to the left of the way from start to stop."""
    run, off = stops - starts, points - starts
    hand: Floats = run[..., 0] * off[..., 1] - run[..., 1] * off[..., 0]
    return hand
