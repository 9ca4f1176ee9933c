"""What is seen of a set of flat faces from one side: an exact visible-surface grid.

All corners lie on the lines of one grid, and every sloping edge runs along diagonals of its cells; so
each cell falls into four triangles that a face covers whole or not at all. The nearest face wins in
each triangle, as render.laying finds. Boards and views are not known here.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate

import numpy as np

from render.laying import GRAIN as GRAIN
from render.laying import NOTHING as NOTHING
from render.laying import Face as Face
from render.laying import Floats as Floats
from render.laying import Ints as Ints
from render.laying import Mask as Mask
from render.laying import Point, Window, lay_flat, lay_others

SOUTH, EAST, NORTH, WEST = range(4)
BEND = 0.01
"""Pieces of line that turn by more than this, radians, do not run on straight, however short they are."""
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


@dataclass(frozen=True, slots=True)
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
    h, v, exact = _grid_lines(shown)
    windows = _list_windows(shown, h, v)
    seen, depth = lay_flat(shown, windows, (len(v) - 1, len(h) - 1, 4))
    lay_others(shown, windows, (h, v, exact), seen, depth)
    return Grid(h, v, np.array([*kept, NOTHING])[seen], exact)


def _list_unhidden(faces: list[Face]) -> list[int]:
    """Faces that no nearer upright rectangles hide whole; fewer faces make a coarser grid."""
    corners = np.concatenate([face.corners for face in faces])
    h, v = _distinct(corners[:, 0]), _distinct(corners[:, 1])
    windows = _list_windows(faces, h, v)
    seen, depth = lay_flat(faces, windows, (len(v) - 1, len(h) - 1))
    visible = (np.bincount(seen.ravel() + 1, minlength=len(faces) + 1)[1:] > 0).tolist()
    nearest = _list_nearest(faces, corners)
    # What is narrower than a grain spans no cell, and nothing of it shows.
    return [
        i
        for i, face in enumerate(faces)
        if visible[i]
        or (not (face.upright and face.flat) and depth[windows[i]].min(initial=np.inf) < nearest[i])
    ]


def _list_nearest(faces: list[Face], corners: Floats) -> list[float]:
    """How near the nearest of each face's `corners` is, all of which are given one after the other."""
    counts = [len(face.corners) for face in faces]
    planes = np.array([face.plane for face in faces])
    of_corners = np.repeat(planes[:, :2], counts, axis=0)
    rises = corners[:, 0] * of_corners[:, 0] + corners[:, 1] * of_corners[:, 1]
    nearest: list[float] = (np.maximum.reduceat(rises, _list_starts(counts)) + planes[:, 2]).tolist()
    return nearest


def _list_starts(counts: list[int]) -> list[int]:
    """Where each of several runs of so many begins."""
    return [0, *accumulate(counts[:-1])]


def _list_windows(faces: list[Face], h: Floats, v: Floats) -> list[Window]:
    """Rows and columns of the grid that each face spans."""
    starts = _list_starts([len(face.corners) for face in faces])
    corners = np.concatenate([face.corners for face in faces])
    low = np.minimum.reduceat(corners, starts) - GRAIN
    high = np.maximum.reduceat(corners, starts) - GRAIN
    i0, i1 = np.searchsorted(h, low[:, 0]).tolist(), np.searchsorted(h, high[:, 0]).tolist()
    j0, j1 = np.searchsorted(v, low[:, 1]).tolist(), np.searchsorted(v, high[:, 1]).tolist()
    ends = zip(j0, j1, i0, i1, strict=True)
    return [(slice(bottom, top), slice(left, right)) for bottom, top, left, right in ends]


def _grid_lines(faces: list[Face]) -> tuple[Floats, Floats, bool]:
    """Positions of the lines, and whether sloping edges meet all their corners."""
    corners = np.concatenate([face.corners for face in faces])
    h, v = _distinct(corners[:, 0]), _distinct(corners[:, 1])
    edges = _sloping_edges(faces)
    while len(edges):
        more_v = _crossings(edges, h)
        more_h = _crossings(edges[:, [1, 0, 3, 2]], v)
        refined = _refine(h, more_h), _refine(v, more_v)
        lines = len(refined[0]) + len(refined[1])
        if lines == len(h) + len(v):
            break
        if lines > MOST_LINES:
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
    starts, onward = np.array(_list_starts(sizes)), np.arange(1, len(corners) + 1)
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


def list_borders(grid: Grid) -> Borders:
    """Every piece of line between triangles that see different faces, plumb, level, then sloping."""
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
    rows, columns = np.nonzero((grid.seen[:, :, 1:] != grid.seen[:, :, :1]).any(axis=2))
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
    straight, short = _run_straight(direction[at], direction[at + 1])
    goes_on[at] = straight
    for area in set(areas[at[straight & short]].tolist()):
        first, last = np.searchsorted(areas, (area, area + 1)).tolist()
        _part_at_corners(segments[first:last], goes_on[first : last - 1])
    first, last = _list_runs(goes_on)
    return np.concatenate([segments[first, :2], segments[last, 2:]], axis=1), kinds[first]


def _list_runs(goes_on: Mask) -> tuple[Ints, Ints]:
    """The first and the last piece of each run of pieces that go on in each other."""
    last = np.append(np.flatnonzero(~goes_on), len(goes_on))
    return np.append(0, last[:-1] + 1), last


def _run_straight(before: Floats, after: Floats) -> tuple[Mask, Mask]:
    """Whether pieces go on in one direction, and whether one of them is too short to have one."""
    turn = np.abs(after[:, 0] * before[:, 1] - after[:, 1] * before[:, 0])
    one, other = np.hypot(before[:, 0], before[:, 1]), np.hypot(after[:, 0], after[:, 1])
    short: Mask = np.minimum(one, other) < 10 * GRAIN
    straight: Mask = (turn < GRAIN) & ((turn < BEND * one * other) | short)
    return straight, short


def _part_at_corners(segments: Floats, goes_on: Mask) -> None:
    """End runs where they are furthest off their chord, until none is off it: short pieces may be corners."""
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


def trace_areas(borders: Borders, insides: Mask) -> list[tuple[tuple[Point, ...], ...]]:
    """The same of several areas, a row of `insides` (areas, faces + 1) for each; together is faster."""
    left, right = insides[:, borders.left], insides[:, borders.right]
    areas, pieces = np.nonzero(left != right)
    # An area and a hand in one number, so that each joined piece still tells both.
    hands = 2 * areas + right[areas, pieces]
    segments, joined = _join_each(borders.segments[pieces], hands, areas)
    ways: list[list[tuple[Point, Point]]] = [[] for _ in insides]
    for (h0, v0, h1, v1), hand in zip(segments.tolist(), joined.tolist(), strict=True):
        ways[hand // 2].append(((h1, v1), (h0, v0)) if hand % 2 else ((h0, v0), (h1, v1)))
    return [tuple(_chain(own)) for own in ways]


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
