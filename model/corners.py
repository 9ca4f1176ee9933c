"""All corners of a list of boards at once, for whoever looks at many of them on every edit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from model.board import AXES, Board
from model.build.facing import Lean
from model.build.lines import Layout

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Corners:
    """Section corners of every board in turn, n in all.

    `low`, `high` (n, 3) room inches at the low and at the high end. `owner` (n,) is the board's place in
    the list, `onward` (n,) the row of the next corner round the same section. `counts` and `starts` are
    for each board how many corners its section has and its first row.
    """

    low: Floats
    high: Floats
    owner: Ints
    onward: Ints
    counts: Ints
    starts: Ints

    def of(self, boards: Ints) -> Corners:
        """Those of some of the boards, given by their places in the list in rising order; `owner` is as
        before."""
        chosen = np.zeros(len(self.counts), dtype=bool)
        chosen[boards] = True
        rows = np.flatnonzero(chosen[self.owner])
        counts = self.counts[boards]
        starts = np.cumsum(counts) - counts
        moved = np.repeat(starts - self.starts[boards], counts)
        return Corners(
            self.low[rows], self.high[rows], self.owner[rows], self.onward[rows] + moved, counts, starts
        )


def list_corners(boards: Sequence[Board]) -> Corners:
    """The corners of `boards`, in their order."""
    counts, starts, owner, onward = _number_corners(tuple([len(board.section) for board in boards]))
    values = [value for board in boards for point in board.section for value in point]
    section = np.array(values, dtype=float).reshape(-1, 2)
    axis = np.array([AXES.index(board.axis) for board in boards], dtype=np.intp)[owner]
    low, high = (
        _place(
            section,
            axis,
            np.array([(cut.at, cut.slope_u, cut.slope_v) for cut in cuts], dtype=float).reshape(-1, 3)[owner],
        )
        for cuts in ([board.low for board in boards], [board.high for board in boards])
    )
    return Corners(low, high, owner, onward, counts, starts)


@lru_cache(maxsize=8)
def _number_corners(sizes: tuple[int, ...]) -> tuple[Ints, Ints, Ints, Ints]:
    """Counts, starts, owner and onward of boards whose sections have so many corners; not to be changed.

    The same for most edits, which move corners alone.
    """
    counts = np.array(sizes, dtype=np.intp)
    starts = np.cumsum(counts) - counts
    owner = np.repeat(np.arange(len(sizes)), counts)
    onward = np.arange(1, len(owner) + 1)
    onward[starts + counts - 1] = starts
    return counts, starts, owner, onward


def off_masonry(corners: Corners, layout: Layout) -> Corners:
    """`corners` with z taken from the masonry behind them, where that is out of plumb; else the same."""
    if not layout.leans:
        return corners

    def moved(points: Floats) -> Floats:
        back = _set_back(layout, points[:, 0], points[:, 1])
        return points + back[:, None] * (0.0, 0.0, 1.0)

    return replace(corners, low=moved(corners.low), high=moved(corners.high))


def _set_back(layout: Layout, x: Floats, y: Floats) -> Floats:
    """`Layout.set_back` of many places at once."""
    left, right = (_fall_back(side.lean, y) for side in layout.sides)
    part = (x + layout.left.outer) / (layout.left.outer + layout.right.outer)
    return left + (right - left) * np.clip(part, 0.0, 1.0)


def _fall_back(lean: Lean | None, y: Floats) -> Floats:
    """`Lean.set_back` of many levels at once; nothing where it is plumb."""
    if lean is None:
        return np.zeros(len(y))
    furthest_out = lean.top if lean.amount > 0 else lean.base
    return lean.slope * (furthest_out - np.clip(y, lean.base, lean.top))


def _place(section: Floats, axis: Ints, cut: Floats) -> Floats:
    """Room coordinates of section corners at cuts (n, 3): position and slopes."""
    rows = np.arange(len(axis))
    corners = np.empty((len(axis), 3))
    # Across the grain come the next two axes in turn, as in model.board.CROSS.
    corners[rows, (axis + 1) % 3], corners[rows, (axis + 2) % 3] = section[:, 0], section[:, 1]
    corners[rows, axis] = cut[:, 0] + (cut[:, 1] * section[:, 0] + cut[:, 2] * section[:, 1])
    return corners
