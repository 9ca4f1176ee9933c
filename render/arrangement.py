"""What is seen of a set of flat faces from one side: an exact visible-surface grid.

All corners lie on the lines of one grid, and every sloping edge runs along diagonals of its cells; so
each cell falls into four triangles that a face covers whole or not at all. The nearest face wins in
each triangle, as render.laying finds. Boards and views are not known here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

import numpy as np

from render.laying import GRAIN as GRAIN
from render.laying import NOTHING as NOTHING
from render.laying import Face as Face
from render.laying import Floats as Floats
from render.laying import Ints as Ints
from render.laying import Mask as Mask
from render.laying import Point, lay_flat, lay_others
from render.laying_windows import lay_windows
from render.outlines import KEPT_CELLS, Outlines, lay_ground, list_spots, span_faces

SOUTH, EAST, NORTH, WEST = range(4)
BEND = 0.01
"""Pieces of line that turn by more than this, radians, do not run on straight, however short they are."""
SLOW_BEND = 1e-6
"""Pieces that turn by more than this may be of a curve that leaves its chord bit by bit, radians."""
STRAY = 10 * GRAIN
"""What lies further off a line than this is no part of it, in."""
MOST_LINES = 600
"""The grid is refined until sloping edges meet its corners, two or three times as a rule, but never beyond
this many lines; past it an edge may be off by less than one cell."""


@dataclass(frozen=True, slots=True)
class Grid:
    """The arrangement: line positions, and the face (or NOTHING) seen in each triangle.

    `seen` has shape (rows, columns, 4), rows upward, triangles south, east, north, west. `exact` is false
    where the lines were too many for every sloping edge to meet their corners.
    """

    h: Floats
    v: Floats
    seen: Ints
    exact: bool = True

    def triangle_at(self, column: int, row: int, point: Point) -> int:
        """Which of a cell's four triangles a point in it lies in."""
        across = (point[0] - self.h[column]) / (self.h[column + 1] - self.h[column])
        up = (point[1] - self.v[row]) / (self.v[row + 1] - self.v[row])
        if up < across:
            return SOUTH if up < 1 - across else EAST
        return WEST if up < 1 - across else NORTH


@dataclass(frozen=True, slots=True, eq=False)
class Borders:
    """Straight pieces between triangles that see different faces.

    `segments` (n, 4) h0, v0, h1, v1; `left` and `right` are the faces on either hand of the way from
    the first point to the second.
    """

    segments: Floats
    left: Ints
    right: Ints


def arrange(faces: list[Face]) -> Grid:
    """Lay `faces` over each other and keep the nearest everywhere."""
    kept = _list_unhidden(faces) if faces else []
    if not kept:
        return Grid(np.zeros(1), np.zeros(1), np.full((0, 0, 4), NOTHING, dtype=np.intp))
    shown = [faces[i] for i in kept]
    outlines = Outlines.of(shown)
    ground = lay_ground(outlines, MOST_LINES)
    seen, depth = lay_flat(shown, outlines.plain, ground.windows, (*ground.shape, 4))
    if seen.size > 4 * KEPT_CELLS:
        lay_windows(shown, ground.windows, ground.centres, ground.on_edge, seen, depth)
    elif (spots := list_spots(outlines, ground)) is not None:
        lay_others(shown, spots, seen, depth)
    return Grid(ground.h, ground.v, np.array([*kept, NOTHING])[seen], ground.exact)


def _list_unhidden(faces: list[Face]) -> list[int]:
    """Faces that no nearer upright rectangles hide whole; fewer faces make a coarser grid."""
    outlines = Outlines.of(faces)
    windows, shape = span_faces(outlines)
    seen, depth = lay_flat(faces, outlines.plain, windows, shape)
    visible = (np.bincount(seen.ravel() + 1, minlength=len(faces) + 1)[1:] > 0).tolist()
    nearest = _list_nearest(outlines)
    # What is narrower than a grain spans no cell, and nothing of it shows.
    return [
        i
        for i, is_plain in enumerate(outlines.plain)
        if visible[i] or (not is_plain and depth[windows[i]].min(initial=np.inf) < nearest[i])
    ]


def _list_nearest(outlines: Outlines) -> list[float]:
    """How near the nearest corner of each face is."""
    planes = np.array([face.plane for face in outlines.faces])
    of_corners = np.repeat(planes[:, :2], outlines.counts, axis=0)
    rises = outlines.corners[:, 0] * of_corners[:, 0] + outlines.corners[:, 1] * of_corners[:, 1]
    nearest: list[float] = (np.maximum.reduceat(rises, outlines.starts) + planes[:, 2]).tolist()
    return nearest


def list_borders(grid: Grid) -> Borders:
    """Every piece of line between triangles that see different faces, plumb, level, then sloping.

    Remembered, since an edit leaves many views as they are; the same borders are the same thing.
    """
    if grid.seen.size > 4 * KEPT_CELLS:
        return _find_borders(grid)
    return _known_borders(_Seen(grid, (grid.h.tobytes(), grid.v.tobytes(), grid.seen.tobytes())))


@dataclass(frozen=True, slots=True)
class _Seen:
    """A grid, equal to others where the same faces are seen between the same lines."""

    grid: Grid = field(compare=False)
    key: tuple[bytes, bytes, bytes]


@lru_cache(maxsize=8)
def _known_borders(seen: _Seen) -> Borders:
    return _find_borders(seen.grid)


def _find_borders(grid: Grid) -> Borders:
    if not grid.seen.size:
        return Borders(np.zeros((0, 4)), np.zeros(0, dtype=np.intp), np.zeros(0, dtype=np.intp))
    rows, columns, _ = grid.seen.shape
    seen = np.full((rows + 2, columns + 2, 4), NOTHING, dtype=np.intp)
    seen[1:-1, 1:-1] = grid.seen
    parts = [_plumb_borders(grid, seen), _level_borders(grid, seen), *_diagonal_borders(grid)]
    return Borders(
        np.concatenate([p.segments for p in parts]),
        np.concatenate([p.left for p in parts]),
        np.concatenate([p.right for p in parts]),
    )


def _plumb_borders(grid: Grid, seen: Ints) -> Borders:
    """Upward pieces; found line by line from left to right, each from the bottom up."""
    left, right = seen[1:-1, :-1, EAST].T, seen[1:-1, 1:, WEST].T
    i, j = np.nonzero(left != right)
    h, low, high = grid.h[i], grid.v[j], grid.v[j + 1]
    return Borders(np.stack([h, low, h, high], axis=1), left[i, j], right[i, j])


def _level_borders(grid: Grid, seen: Ints) -> Borders:
    """Rightward pieces: the left hand is above."""
    below, above = seen[:-1, 1:-1, NORTH], seen[1:, 1:-1, SOUTH]
    j, i = np.nonzero(below != above)
    v, low, high = grid.v[j], grid.h[i], grid.h[i + 1]
    return Borders(np.stack([low, v, high, v], axis=1), above[j, i], below[j, i])


def _diagonal_borders(grid: Grid) -> Iterator[Borders]:
    """Rising and falling half diagonals, corner to centre and on to the far corner, cell by cell."""
    h, v = grid.h, grid.v
    south, east, north, west = (grid.seen[:, :, triangle] for triangle in (SOUTH, EAST, NORTH, WEST))
    rows, columns = np.nonzero((east != south) | (north != south) | (west != south))
    parted = grid.seen[rows, columns]
    for corner_v, far_v, hands in (
        (0, 1, ((WEST, SOUTH), (NORTH, EAST))),
        (1, 0, ((NORTH, WEST), (EAST, SOUTH))),
    ):
        left, right = (parted[:, [hand[side] for hand in hands]] for side in (0, 1))
        cell, half = np.nonzero(left != right)
        j, i = rows[cell], columns[cell]
        ends = np.stack([h[i], v[j + corner_v], h[i + 1], v[j + far_v]], axis=1)
        centre = (ends[:, :2] + ends[:, 2:]) / 2
        first = (half == 0)[:, None]
        segments = np.hstack([np.where(first, ends[:, :2], centre), np.where(first, centre, ends[:, 2:])])
        yield Borders(segments, left[cell, half], right[cell, half])


def join_collinear(segments: Floats, kinds: Ints) -> tuple[Floats, Ints]:
    """Join pieces (n, 4) that follow each other in a straight line and are of one kind.

    Pieces must come in the order `list_borders` gives them; `kinds` is one number for each.
    """
    return _join_each(segments, kinds, np.zeros(len(kinds), dtype=np.intp))


def _join_each(segments: Floats, kinds: Ints, areas: Ints) -> tuple[Floats, Ints]:
    """The same for pieces of several areas, one area's after the other's; `areas` says which each is of."""
    if len(segments) < 2:
        return segments, kinds
    # Exactly: in the least of cells corner and centre are nearer than a grain, and yet two points.
    follows = (segments[1:, 0] == segments[:-1, 2]) & (segments[1:, 1] == segments[:-1, 3])
    goes_on = follows & (kinds[1:] == kinds[:-1]) & (areas[1:] == areas[:-1])
    at = np.flatnonzero(goes_on)
    direction = segments[:, 2:] - segments[:, :2]
    straight, unsure = _run_straight(direction[at], direction[at + 1])
    goes_on[at] = straight
    for area in set(areas[at[straight & unsure]].tolist()):
        first, last = np.searchsorted(areas, (area, area + 1)).tolist()
        _part_at_corners(segments[first:last], goes_on[first : last - 1])
    first, last = _list_runs(goes_on)
    return np.concatenate([segments[first, :2], segments[last, 2:]], axis=1), kinds[first]


def _list_runs(goes_on: Mask) -> tuple[Ints, Ints]:
    """The first and the last piece of each run of pieces that go on in each other."""
    last = np.append(np.flatnonzero(~goes_on), len(goes_on))
    return np.append(0, last[:-1] + 1), last


def _run_straight(before: Floats, after: Floats) -> tuple[Mask, Mask]:
    """Whether pieces go on in one direction, and whether that is unsure: short, or a piece of a slow bend."""
    turn = np.abs(after[:, 0] * before[:, 1] - after[:, 1] * before[:, 0])
    one, other = np.hypot(before[:, 0], before[:, 1]), np.hypot(after[:, 0], after[:, 1])
    short: Mask = np.minimum(one, other) < 10 * GRAIN
    straight: Mask = (turn < GRAIN) & ((turn < BEND * one * other) | short)
    return straight, short | (turn > SLOW_BEND * one * other)


def _part_at_corners(segments: Floats, goes_on: Mask) -> None:
    """End runs where they are furthest off their chord, until none is off it: short pieces may be corners,
    and many that hardly turn a curve."""
    while True:
        first, last = _list_runs(goes_on)
        run = np.repeat(np.arange(len(first)), last - first + 1)
        start, way = segments[first, :2], segments[last, 2:] - segments[first, :2]
        size = np.maximum(np.hypot(way[:, 0], way[:, 1]), GRAIN)
        to_end = segments[:, 2:] - start[run]
        off = np.abs(to_end[:, 0] * way[run, 1] - to_end[:, 1] * way[run, 0]) / size[run]
        furthest = np.lexsort((-off, run))[first]
        strayed = furthest[off[furthest] > STRAY]
        if not len(strayed):
            return
        goes_on[strayed] = False


def trace_rings(borders: Borders, inside: Mask) -> tuple[tuple[Point, ...], ...]:
    """Outlines of the faces for which `inside` is true; it has one value for each face, the last for NOTHING.

    That area is always on the left: outer rings run counter-clockwise and holes clockwise, and filled by
    the even-odd rule they give it.
    """
    return trace_areas(borders, inside[None])[0]


def trace_areas(borders: Borders, insides: Mask) -> Sequence[tuple[tuple[Point, ...], ...]]:
    """The same of several areas, a row of `insides` (areas, faces + 1) for each; together is faster.

    Remembered as borders are.
    """
    if len(borders.segments) > KEPT_CELLS:
        return _trace(borders, insides)
    return _known_rings(borders, insides.tobytes(), len(insides))


@lru_cache(maxsize=32)
def _known_rings(borders: Borders, insides: bytes, areas: int) -> Sequence[tuple[tuple[Point, ...], ...]]:
    return _trace(borders, np.frombuffer(insides, dtype=bool).reshape(areas, -1))


def _trace(borders: Borders, insides: Mask) -> Sequence[tuple[tuple[Point, ...], ...]]:
    left, right = insides[:, borders.left], insides[:, borders.right]
    areas, pieces = np.nonzero(left != right)
    # An area and a hand in one number, so that each joined piece still tells both.
    hands = 2 * areas + right[areas, pieces]
    segments, joined = _join_each(borders.segments[pieces], hands, areas)
    ways: list[list[tuple[Point, Point]]] = [[] for _ in insides]
    for (h0, v0, h1, v1), hand in zip(segments.tolist(), joined.tolist(), strict=True):
        ways[hand // 2].append(((h1, v1), (h0, v0)) if hand % 2 else ((h0, v0), (h1, v1)))
    return tuple(tuple(_chain(own)) for own in ways)


def _chain(ways: list[tuple[Point, Point]]) -> Iterator[tuple[Point, ...]]:
    """Closed rings from directed pieces; where rings touch either way on is right, by the even-odd rule."""
    onward: dict[Point, list[Point]] = {}
    for start, end in ways:
        onward.setdefault(start, []).append(end)
    while onward:
        start = next(iter(onward))
        ring, point = [start], _step(onward, start)
        while point != start:
            ring.append(point)
            point = _step(onward, point)
        yield tuple(ring)


def _step(onward: dict[Point, list[Point]], point: Point) -> Point:
    ends = onward[point]
    end = ends.pop()
    if not ends:
        del onward[point]
    return end
