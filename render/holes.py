"""Holes in the faces of solids that are to be looked at: what a pierced face is parted into, and the walls.

Which face is nearest where is not known here, nor what a hole is for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

import numpy as np

from model.board import CROSS, Board, Point2, Point3
from model.bore import SIDES, Bore
from model.carving import find_sides

CELL = 1024.0
"""A hole's middle and its corners off it are rounded to 1/1024 in., so that it stays the same all round."""
WALL = 10_000
"""Sides from this number on are walls of holes; from twice that on walls of square ones."""

Ring = tuple[Point3, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """A flat face: its outline in the room, counter-clockwise from outside, its side and its holes."""

    ring: Ring
    side: int
    holes: tuple[Ring, ...] = ()


def part_faces(board: Board, rings: Sequence[Ring]) -> tuple[set[int], tuple[Part, ...]]:
    """The numbers of a bored board's pierced faces, and the faces that take their place.

    `rings` are the outlines of all its faces by number.
    """
    by_side: dict[int, list[tuple[Bore, float]]] = {}
    through = [(bore, sides) for bore in board.bores if (sides := find_sides(board, bore)) is not None]
    for bore, sides in through:
        for side, along in zip(sides, bore.span, strict=True):
            by_side.setdefault(side, []).append((bore, along))
    parts = [part for side, found in by_side.items() for part in _pierce(rings[side], side, found)]
    walls = [part for n, (bore, _) in enumerate(through) for part in _list_walls(bore, n)]
    return set(by_side), (*parts, *walls)


def outline_of(bore: Bore) -> tuple[Point2, ...]:
    """A hole's outline across its axis as it is drawn."""
    u, v = (round(value * CELL) / CELL for value in bore.at)
    return tuple((u + round(du * CELL) / CELL, v + round(dv * CELL) / CELL) for du, dv in bore.offsets)


def _pierce(ring: Ring, side: int, found: Sequence[tuple[Bore, float]]) -> Iterator[Part]:
    """A rectangle with one hole as what lies round the hole's box, and that box; else the face as it is.

    Rectangles hide what is behind them, which makes less work of a view.
    """
    bore, along = found[0]
    iu, iv = CROSS[bore.axis]
    box = {p[iu] for p in ring}, {p[iv] for p in ring}
    if len(found) > 1 or len(ring) != 4 or any(len(side) != 2 for side in box):
        holes = tuple(tuple(b.place(p, at) for p in outline_of(b)) for b, at in found)
        yield Part(ring, side, holes)
        return
    hole = outline_of(bore)
    us, vs = zip(*hole, strict=True)
    u, v = (min(box[0]), min(us), max(us), max(box[0])), (min(box[1]), min(vs), max(vs), max(box[1]))
    ahead = _looks_along(ring, bore.axis)

    def place(points: Sequence[Point2]) -> Ring:
        placed = tuple(bore.place(point, along) for point in points)
        return placed if ahead else placed[::-1]

    spans = ((0, 3, 0, 1), (0, 3, 2, 3), (0, 1, 1, 2), (2, 3, 1, 2))
    for a, b, c, d in spans:
        if u[a] < u[b] and v[c] < v[d]:
            yield Part(place(((u[a], v[c]), (u[b], v[c]), (u[b], v[d]), (u[a], v[d]))), side)
    if bore.is_round:
        around = ((u[1], v[1]), (u[2], v[1]), (u[2], v[2]), (u[1], v[2]))
        yield Part(place(around), side, (place(hole),))


def _looks_along(ring: Ring, axis: str) -> bool:
    iu, iv = CROSS[axis]
    turns = (a[iu] * b[iv] - b[iu] * a[iv] for a, b in zip(ring, ring[1:] + ring[:1], strict=True))
    return sum(turns) > 0


def _list_walls(bore: Bore, number: int) -> Iterator[Part]:
    outline = outline_of(bore)
    low, high = ([bore.place(point, along) for point in outline] for along in bore.span)
    first = WALL + number * SIDES if bore.is_round else 2 * WALL + number * len(outline)
    for k in range(len(outline)):
        j = (k + 1) % len(outline)
        yield Part((low[j], low[k], high[k], high[j]), first + k)


def stack_rings(part: Part) -> tuple[np.ndarray[tuple[int, int], np.dtype[np.float64]], tuple[int, ...]]:
    """All corners (n, 3) of a face, its outline's first, and where each hole's begin."""
    rings = (part.ring, *part.holes)
    starts = tuple(accumulate(len(ring) for ring in rings[:-1]))
    return np.array([point for ring in rings for point in ring], dtype=float), starts
