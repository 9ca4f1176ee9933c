"""Which view in model space a drawing on a sheet shows, and how much of it: that is what a viewport shows.

A drawing is known by its lines: they must be the view's, and within their window all of the view's.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray

from export.dxf_layers import find_text_layer
from render.drawing import Drawing, Lines, Mark, Placed, Polyline, Segment
from render.extent import Box

NEAR = 1e-4
"""Lines this near to each other are one, model inches."""
ALIKE = 0.9
"""How much of a drawing's lines must be the view's, and the other way round: a sheet may draw some more."""
LIKELY, _FEW = 0.5, 40
"""A drawing of which less than that lies on the view, as far as so many strokes tell, is none of it."""
_TRIED = (0.003, 0.21, 0.5, 0.77, 0.997)
"""Where along a stroke it is compared, as parts of its length."""

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Window:
    """The view that a drawing shows, its box in the view's own coordinates, and what it draws besides.

    `is_whole` says that nothing of the view lies beyond the box.
    """

    view: Placed
    box: Box
    rest: tuple[Mark, ...]
    is_whole: bool


class Strokes:
    """The lines of a drawing that show in viewports, ready to be compared with those of another."""

    def __init__(self, segments: Floats) -> None:
        self.segments = segments

    @staticmethod
    def of(marks: Iterable[Mark]) -> Strokes:
        """Those of `marks`."""
        shown = [mark for mark in marks if isinstance(mark, Lines | Polyline) and shows_in_viewports(mark)]
        found = [stroke for mark in shown for stroke in _strokes_of(mark)]
        return Strokes(np.array(found, dtype=float).reshape(-1, 4))

    def thinned(self, count: int) -> Strokes:
        """About as many of them as `count`, from all over."""
        return Strokes(self.segments[:: max(1, len(self.segments) // count)])

    def only_on(self, other: Strokes) -> Strokes:
        """Those that lie on the other's from end to end."""
        return Strokes(self.segments[self.find_near(other).min(axis=1)])

    @cached_property
    def tree(self) -> shapely.STRtree:
        """For finding those near a point."""
        return shapely.STRtree(shapely.linestrings(self.segments.reshape(-1, 2, 2)))

    @cached_property
    def box(self) -> Box:
        """What they take up."""
        xs, ys = self.segments[:, [0, 2]], self.segments[:, [1, 3]]
        return float(xs.min()), float(ys.min()), float(xs.max()), float(ys.max())

    @cached_property
    def points(self) -> Floats:
        """(n, 5, 2) where along each it is compared."""
        parts = np.array(_TRIED)[None, :, None]
        points: Floats = self.segments[:, None, :2] * (1 - parts) + self.segments[:, None, 2:] * parts
        return points

    @cached_property
    def lengths(self) -> Floats:
        """(n,) how long they are."""
        found: Floats = np.hypot(*(self.segments[:, 2:] - self.segments[:, :2]).T)
        return found

    def find_near(self, other: Strokes) -> Flags:
        """Which of their points (n, 5) lie on the other's."""
        near = self._within(other.box, NEAR)
        tried = np.argwhere(near)
        if len(tried):
            near[:] = False
            places = shapely.points(self.points[tried[:, 0], tried[:, 1]])
            found = tried[other.tree.query(places, "dwithin", NEAR)[0]]
            near[found[:, 0], found[:, 1]] = True
        return near

    def share_on(self, other: Strokes, box: Box | None = None) -> float:
        """How much of their length, within `box` if given, lies on the other's."""
        near = self.find_near(other)
        counted = np.ones(near.shape) if box is None else self._within(box, NEAR)
        weights = self.lengths[:, None] * counted
        total = float(weights.sum())
        return float((weights * near).sum()) / total if total else 0.0

    def may_lie_on(self, other: Strokes, share: float) -> bool:
        """Whether as much of their length as that lies where the other's are at all."""
        there = (self.lengths[:, None] * self._within(other.box, NEAR)).sum()
        return bool(there >= share * len(_TRIED) * self.lengths.sum())

    def _within(self, box: Box, out: float) -> Flags:
        """Which of their points (n, 5) lie in a box, or `out` of it."""
        low, high = np.array(box[:2]) - out, np.array(box[2:]) + out
        return np.asarray(((self.points >= low) & (self.points <= high)).all(axis=2), dtype=bool)


class ModelView:
    """A view in model space, and its lines."""

    def __init__(self, placed: Placed) -> None:
        self.placed = placed
        self.strokes = Strokes.of(placed.drawing.marks)


def find_window(drawing: Drawing, views: Sequence[ModelView]) -> Window | None:
    """The view among `views` that `drawing` shows; None where it shows none of them as they are."""
    own = Strokes.of(drawing.marks)
    if not len(own.segments):
        return None
    few = own.thinned(_FEW)
    for view in views:
        if not len(view.strokes.segments) or not few.may_lie_on(view.strokes, LIKELY):
            continue
        if few.share_on(view.strokes) < LIKELY or own.share_on(view.strokes) < ALIKE:
            continue
        shared = own.only_on(view.strokes)
        if view.strokes.share_on(own, shared.box) >= ALIKE:
            whole = _lies_in(view.strokes.box, shared.box)
            return Window(view.placed, shared.box, _list_rest(drawing.marks, view.strokes), whole)
    return None


def _lies_in(inner: Box, outer: Box) -> bool:
    return all(a > b - NEAR for a, b in zip(inner[:2], outer[:2], strict=True)) and all(
        a < b + NEAR for a, b in zip(inner[2:], outer[2:], strict=True)
    )


def shows_in_viewports(mark: Lines | Polyline) -> bool:
    """Whether it is a line of what is there, right at any scale."""
    return find_text_layer("", mark.pen, mark.stands_for).is_for_all_scales


def _strokes_of(mark: Lines | Polyline) -> tuple[Segment, ...]:
    if isinstance(mark, Lines):
        return mark.segments
    points = mark.points + mark.points[:1] if mark.closed else mark.points
    return tuple((*a, *b) for a, b in pairwise(points))


def _list_rest(marks: Iterable[Mark], model: Strokes) -> tuple[Mark, ...]:
    """The marks without those strokes that the view has too."""
    rest: list[Mark] = []
    for mark in marks:
        if not isinstance(mark, Lines | Polyline) or not shows_in_viewports(mark) or not _strokes_of(mark):
            rest.append(mark)
            continue
        own = Strokes.of((mark,))
        found = own.find_near(model).min(axis=1).tolist()
        if isinstance(mark, Lines):
            kept = tuple(
                stroke for stroke, is_there in zip(mark.segments, found, strict=True) if not is_there
            )
            rest += [Lines(mark.pen, kept, mark.stands_for)] if kept else []
        elif not all(found):
            rest.append(mark)
    return tuple(rest)
