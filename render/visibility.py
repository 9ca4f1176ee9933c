"""Boards and site solids seen from one side: visible lines by class, and the areas they show.

Flattening into faces, back faces, mitre joints and line classes are here; which face is nearest where
is render.arrangement's, what a view shows and how it is drawn is render.views'.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import IntEnum
from functools import cached_property, lru_cache
from itertools import accumulate
from typing import NamedTuple

import numpy as np

from model.board import Board, Point3
from model.bore import SIDES
from model.corners import Corners, list_corners
from render.arrangement import (
    NOTHING,
    Borders,
    Face,
    Floats,
    Grid,
    Ints,
    Mask,
    arrange,
    join_collinear,
    list_borders,
    trace_areas,
    trace_rings,
)
from render.drawing import Ring, Segment
from render.holes import WALL, part_faces, stack_rings
from render.outlines import KEPT_CELLS

CELL = 2.0**27
"""Model coordinates are rounded to a 2**27th of an inch so that faces which should meet do, and yet so finely
that parts of one sloping edge still run on within the arrangement's grain."""
EDGE_ON = 1e-9
"""Faces whose picture is smaller than this, in square inches, are seen edge on."""
FLUSH = 2e-3
"""Faces of two boards closer in depth than this, in inches, are flush."""


class Cap(NamedTuple):
    """A face with other than four corners, or with holes: corner numbers, its solid and its side.

    `starts` are where in `corners` those of its holes begin.
    """

    corners: Ints
    owner: int
    side: int
    starts: tuple[int, ...] = ()


class Line(IntEnum):
    """What a visible line parts."""

    OUTLINE = 0
    EDGE = 1
    ARRIS = 2
    JOINT = 3
    SITE = 4
    CUT = 5
    SITE_CUT = 6
    NONE = 7


@dataclass(frozen=True, slots=True)
class Look:
    """A direction to look in: which room axis runs right, up and towards the viewer, and which way.

    Right-handed, so that right x up points at the viewer.
    """

    axes: tuple[int, int, int]
    signs: tuple[float, float, float]

    def place(self, points: Floats) -> Floats:
        """Room points (n, 3) as (right, up, towards the viewer)."""
        return points[:, self.axes] * self.signs

    def point(self, room: Point3) -> tuple[float, float]:
        """One room point in the picture."""
        return (room[self.axes[0]] * self.signs[0], room[self.axes[1]] * self.signs[1])


FROM_FRONT = Look((0, 1, 2), (1.0, 1.0, 1.0))
FROM_RIGHT = Look((2, 1, 0), (-1.0, 1.0, 1.0))
FROM_ABOVE = Look((0, 2, 1), (1.0, -1.0, 1.0))


@dataclass(frozen=True, slots=True)
class Solids:
    """Boards, then site solids, as one heap of corners with the faces that use them.

    `corners` (n, 3) room inches. `quads` (m, 4) corner numbers, counter-clockwise from outside;
    `quad_owner`, `quad_side` the solid and its side. `caps` are ends with other than four corners, and
    faces with holes. Side numbers: 0.. along the section, then the low and the high end; walls of holes as
    in render.holes. Ends that lie against each other in a mitre are left out, since nothing can be seen
    between them. Solids from number `site_start` on are the site's.
    """

    corners: Floats
    quads: Ints
    quad_owner: Ints
    quad_side: Ints
    caps: tuple[Cap, ...]
    boards: tuple[Board, ...]
    site_start: int

    def beside(self, site: Sequence[Board]) -> Solids:
        """The same boards with what stands round them."""
        other = _flatten_site(tuple(site))
        shift, owners = len(self.corners), len(self.boards)
        return Solids(
            np.concatenate([self.corners, other.corners]),
            np.concatenate([self.quads, other.quads + shift]),
            np.concatenate([self.quad_owner, other.quad_owner + owners]),
            np.concatenate([self.quad_side, other.quad_side]),
            self.caps + tuple(Cap(c.corners + shift, c.owner + owners, c.side, c.starts) for c in other.caps),
            self.boards + other.boards,
            owners,
        )


def flatten_boards(boards: Sequence[Board], corners: Corners | None = None) -> Solids:
    """The heap of corners and faces of `boards`, rounded so that faces which should meet do.

    `corners` are theirs, where they are already worked out.
    """
    bored = [i for i, board in enumerate(boards) if board.bores]
    if any(bore.breaks for i in bored for bore in boards[i].bores):
        boards, corners = [board.carved for board in boards], None
    corners = corners or list_corners(boards)
    counts = corners.counts[corners.owner]
    # A board's corners lie together in the heap: those of its low end, then those of its high end.
    first = np.arange(len(corners.owner)) + corners.starts[corners.owner]
    heap = np.empty((2 * len(first), 3))
    heap[first], heap[first + counts] = corners.low, corners.high
    heap = np.round(heap * CELL) / CELL
    hidden = _list_hidden(boards, heap, corners)
    solids = Solids(heap, *_number_faces(tuple(corners.counts.tolist()), hidden), tuple(boards), len(boards))
    for i in bored:
        solids = _pierced(solids, i)
    return solids


@lru_cache(maxsize=8)
def _flatten_site(site: tuple[Board, ...]) -> Solids:
    """What stands there is the same for most edits, which are to the wood."""
    return flatten_boards(site)


def _pierced(solids: Solids, owner: int) -> Solids:
    """`solids` with the holes of one of its boards in the faces of that, and the walls of those holes."""
    faces = {int(solids.quad_side[q]): solids.quads[q] for q in np.flatnonzero(solids.quad_owner == owner)}
    faces |= {cap.side: cap.corners for cap in solids.caps if cap.owner == owner}
    count = len(solids.boards[owner].section) + 2
    rings = [tuple(map(tuple, solids.corners[faces[k]].tolist())) if k in faces else () for k in range(count)]
    gone, parts = part_faces(solids.boards[owner], rings)
    heap, quads, caps = [solids.corners], [], []
    size = len(solids.corners)
    for part in parts:
        points, starts = stack_rings(part)
        numbers = np.arange(size, size + len(points))
        heap.append(np.round(points * CELL) / CELL)
        size += len(points)
        if len(points) == 4:
            quads.append((numbers, part.side))
        else:
            caps.append(Cap(numbers, owner, part.side, starts))
    keep = ~((solids.quad_owner == owner) & np.isin(solids.quad_side, list(gone)))
    added = np.array([numbers for numbers, _ in quads], dtype=np.intp).reshape(-1, 4)
    return replace(
        solids,
        corners=np.concatenate(heap),
        quads=np.concatenate([solids.quads[keep], added]),
        quad_owner=np.append(solids.quad_owner[keep], np.full(len(quads), owner)),
        quad_side=np.append(solids.quad_side[keep], np.array([side for _, side in quads], dtype=np.intp)),
        caps=(*(c for c in solids.caps if c.owner != owner or c.side not in gone), *caps),
    )


@lru_cache(maxsize=8)
def _number_faces(
    counts: tuple[int, ...], hidden: frozenset[int]
) -> tuple[Ints, Ints, Ints, tuple[Cap, ...]]:
    """Quads, their owners and sides, and the caps of `Solids`, whose corners lie in the heap board by board.

    `counts` are how many corners each board's section has, `hidden` the ends that are left out: twice the
    board's number for its low end, and one more for its high end. The same for most edits, which move corners
    alone; the arrays must not be changed.
    """
    starts = [0, *accumulate(counts)]
    quads: list[tuple[Sequence[int], int, int]] = []
    caps: list[tuple[Sequence[int], int, int]] = []
    for owner, (count, start) in enumerate(zip(counts, starts, strict=False)):
        low, high = 2 * start, 2 * start + count
        for side in range(count):
            onward = (side + 1) % count
            quads.append(((low + side, low + onward, high + onward, high + side), owner, side))
        if 2 * owner not in hidden:
            caps.append((range(high - 1, low - 1, -1), owner, count))
        if 2 * owner + 1 not in hidden:
            caps.append((range(high, high + count), owner, count + 1))
    quads += [cap for cap in caps if len(cap[0]) == 4]
    rings, owners, sides = (np.array([quad[i] for quad in quads], dtype=np.intp) for i in range(3))
    odd = tuple(
        Cap(np.array(ring, dtype=np.intp), whose, side) for ring, whose, side in caps if len(ring) != 4
    )
    return rings.reshape(-1, 4), owners, sides, odd


def _list_hidden(boards: Sequence[Board], heap: Floats, corners: Corners) -> frozenset[int]:
    """The ends that lie against another board's end in a mitre: their corners' sums agree."""
    askew = [
        2 * owner + end
        for owner, board in enumerate(boards)
        for end, cut in enumerate((board.low, board.high))
        if not cut.is_square
    ]
    if not askew:
        return frozenset()
    firsts = np.stack([2 * corners.starts, 2 * corners.starts + corners.counts], axis=1).ravel()
    totals = np.round(np.add.reduceat(heap, firsts, axis=0)[askew] * (CELL / 8)).astype(int).tolist()
    mitred: dict[tuple[int, ...], list[int]] = {}
    for end, total in zip(askew, totals, strict=True):
        mitred.setdefault((int(corners.counts[end // 2]), *total), []).append(end)
    return frozenset(end for found in mitred.values() if len(found) > 1 for end in found)


@dataclass(frozen=True)
class Projection:
    """What is seen of `solids`: the arrangement and whose each face is.

    `owner` and `side` by face number, with a last row for NOTHING. `cut` marks faces in the plane that
    the solids were cut by.
    """

    solids: Solids
    faces: list[Face]
    grid: Grid
    owner: Ints
    side: Ints
    cut: Mask

    @cached_property
    def borders(self) -> Borders:
        """All pieces of line between faces that are seen."""
        return list_borders(self.grid)

    @cached_property
    def lines(self) -> dict[Line, tuple[Segment, ...]]:
        """Visible segments by class, joined where they run on."""
        borders = self.borders
        kinds = self._classify(borders.segments, borders.left, borders.right)
        if len(kinds) > KEPT_CELLS:
            return _join_kinds(borders.segments, kinds)
        return dict(_known_lines(borders, kinds.tobytes()))

    def lines_by_owner(self) -> dict[int, dict[Line, tuple[Segment, ...]]]:
        """The same by the solid they are edges of: of two at different depths the nearer one.

        Where two boards lie flush the line is an edge of both; where a board is flush with the site, its own.
        """
        borders = self.borders
        kinds = self._classify(borders.segments, borders.left, borders.right)
        one, other = self.owner[borders.left], self.owner[borders.right]
        depth_one, depth_other = self._depths(borders.segments, borders.left, borders.right)
        with np.errstate(invalid="ignore"):
            ahead = depth_one - depth_other
        wood_one, wood_other = self._is_wood(one), self._is_wood(other)
        owns_one = np.where(np.abs(ahead) < FLUSH, wood_one | ~wood_other, ahead > 0)
        owns_other = np.where(np.abs(ahead) < FLUSH, wood_other, ahead < 0)
        parted = {}
        for owner in np.union1d(one[owns_one], other[owns_other]).tolist():
            its = (owns_one & (one == owner)) | (owns_other & (other == owner))
            parted[owner] = _join_kinds(borders.segments[its], kinds[its])
        return {owner: lines for owner, lines in parted.items() if lines}

    def owner_at(self, point: tuple[float, float]) -> int:
        """The solid that is seen at a point off all lines; NOTHING where none is."""
        lines = zip((self.grid.h, self.grid.v), point, strict=True)
        i, j = (int(np.searchsorted(places, at)) - 1 for places, at in lines)
        rows, columns, _ = self.grid.seen.shape
        if not (0 <= j < rows and 0 <= i < columns):
            return NOTHING
        return int(self.owner[self.grid.seen[j, i, self.grid.triangle_at(i, j, point)]])

    def rings_of(self, owner: int) -> tuple[Ring, ...]:
        """Outlines of all that is seen of one solid."""
        return self.rings_of_each((owner,))[0]

    def rings_of_each(self, owners: Sequence[int]) -> list[tuple[Ring, ...]]:
        """The same of several solids, in their order."""
        new = [owner for owner in owners if owner not in self._rings]
        if new:
            insides = self.owner == np.array(new)[:, None]
            self._rings.update(zip(new, trace_areas(self.borders, insides), strict=True))
        return [self._rings[owner] for owner in owners]

    def cut_rings_of(self, owner: int) -> tuple[Ring, ...]:
        """Outlines of one solid's cut faces."""
        if owner not in self._cut_rings:
            self._cut_rings[owner] = trace_rings(self.borders, (self.owner == owner) & self.cut)
        return self._cut_rings[owner]

    @cached_property
    def _rings(self) -> dict[int, tuple[Ring, ...]]:
        return {}

    @cached_property
    def _cut_rings(self) -> dict[int, tuple[Ring, ...]]:
        return {}

    @cached_property
    def wood_rings(self) -> tuple[Ring, ...]:
        """Outlines of all that is seen of the boards together."""
        return trace_rings(self.borders, self._is_wood(self.owner))

    @cached_property
    def _seen_faces(self) -> Ints:
        return np.flatnonzero(np.bincount(self.grid.seen.ravel() + 1)[1:])

    def cut_owners(self) -> list[int]:
        """Solids that show a cut face."""
        return sorted(set(self.owner[self._seen_faces[self.cut[self._seen_faces]]].tolist()))

    def seen_faces(self) -> list[int]:
        """Faces of which anything is seen."""
        return [int(face) for face in self._seen_faces]

    def seen_owners(self) -> list[int]:
        """Solids of which anything is seen."""
        return sorted(set(self.owner[self._seen_faces].tolist()))

    def _classify(self, segments: Floats, left: Ints, right: Ints) -> Ints:
        one, other = self.owner[left], self.owner[right]
        wood_one, wood_other = self._is_wood(one), self._is_wood(other)
        flush = self._flush(segments, left, right)
        same = one == other
        both = wood_one & wood_other
        kinds = np.full(len(left), Line.SITE, dtype=np.intp)
        kinds[wood_one ^ wood_other] = Line.OUTLINE
        kinds[both & ~same] = np.where(flush, Line.JOINT, Line.EDGE)[both & ~same]
        kinds[same] = np.where(flush, Line.ARRIS, Line.EDGE)[same]
        kinds[same & ~wood_one] = Line.SITE
        cut_one, cut_other = self.cut[left], self.cut[right]
        kinds[cut_one | cut_other] = Line.CUT
        kinds[cut_one & cut_other & both] = Line.EDGE
        kinds[
            (cut_one & ~wood_one & ~(cut_other & wood_other))
            | (cut_other & ~wood_other & ~(cut_one & wood_one))
        ] = Line.SITE_CUT
        kinds[self._unseen(left, right, same & flush)] = Line.NONE
        kinds[same & cut_one & cut_other] = Line.NONE
        return kinds

    def _is_wood(self, owner: Ints) -> Mask:
        wood: Mask = (owner >= 0) & (owner < self.solids.site_start)
        return wood

    def _flush(self, segments: Floats, left: Ints, right: Ints) -> Mask:
        """Whether the faces on both hands lie at one depth at the segment's middle."""
        one, other = self._depths(segments, left, right)
        with np.errstate(invalid="ignore"):
            flush: Mask = np.abs(one - other) < FLUSH
        return flush

    def _depths(self, segments: Floats, left: Ints, right: Ints) -> tuple[Floats, Floats]:
        """How near the faces on both hands lie at the segment's middle."""
        planes = self._planes
        h, v = (segments[:, 0] + segments[:, 2]) / 2, (segments[:, 1] + segments[:, 3]) / 2
        one, other = (planes[f, 0] * h + planes[f, 1] * v + planes[f, 2] for f in (left, right))
        return one, other

    @cached_property
    def _planes(self) -> Floats:
        """a, b and c of each face, and of NOTHING, which lies behind all."""
        return np.array([*(face.plane for face in self.faces), (0.0, 0.0, -np.inf)])

    def _unseen(self, left: Ints, right: Ints, candidates: Mask) -> Mask:
        """Lines between two facets of one curve or two parts of one face, where the wood shows no edge."""
        first = np.minimum(self.side[left], self.side[right])
        second = np.maximum(self.side[left], self.side[right])
        # Side k begins at vertex k, so neighbouring sides meet at the higher one's first vertex.
        later = np.where(self.side[left] == second, left, right)
        facets = (second - first == 1) & self._begins_in_curve[later]
        if self._has_holes:
            facets |= (first == second) | _of_one_wall(first, second)
        unseen: Mask = candidates & facets
        return unseen

    @cached_property
    def _has_holes(self) -> bool:
        return any(board.bores for board in self.solids.boards)

    @cached_property
    def _begins_in_curve(self) -> Mask:
        """For each face, whether the section's vertex it begins at lies within a curve."""
        boards = self.solids.boards
        faces = zip(self.owner[:-1].tolist(), self.side[:-1].tolist(), strict=True)
        return np.array([*(side in boards[owner].curved for owner, side in faces), False])


def _join_kinds(segments: Floats, kinds: Ints) -> dict[Line, tuple[Segment, ...]]:
    """Pieces of line by their class, joined where they run on; those of class NONE are left out."""
    shown = kinds != Line.NONE
    segments, kinds = join_collinear(segments[shown], kinds[shown])
    parts: dict[int, list[Segment]] = {}
    for (h0, v0, h1, v1), kind in zip(segments.tolist(), kinds.tolist(), strict=True):
        parts.setdefault(kind, []).append((h0, v0, h1, v1))
    return {kind: tuple(parts[kind]) for kind in Line if kind in parts}


@lru_cache(maxsize=8)
def _known_lines(borders: Borders, kinds: bytes) -> dict[Line, tuple[Segment, ...]]:
    """The same of all that is seen, remembered as borders are; `kinds` are the numbers' bytes."""
    return _join_kinds(borders.segments, np.frombuffer(kinds, dtype=np.intp))


def _of_one_wall(first: Ints, second: Ints) -> Mask:
    """Whether two sides are facets of the wall of one round hole."""
    same: Mask = (first >= WALL) & (second < 2 * WALL) & ((first - WALL) // SIDES == (second - WALL) // SIDES)
    return same


def project(solids: Solids, look: Look, cut_at: float | None = None) -> Projection:
    """What is seen of `solids` in the direction of `look`.

    `cut_at` is the depth of a cutting plane that the boards end at: faces lying in it are cut faces.
    """
    faces, owner, side = list_faces(solids, look.place(solids.corners))
    in_plane = [cut_at is not None and _lies_at(face, cut_at) for face in faces]
    return Projection(
        solids,
        faces,
        arrange(faces),
        np.array([*owner, NOTHING], dtype=np.intp),
        np.array([*side, NOTHING], dtype=np.intp),
        np.array([*in_plane, False]),
    )


def list_faces(solids: Solids, placed: Floats) -> tuple[list[Face], list[int], list[int]]:
    """The faces that show their front in a picture, with their solids and sides.

    `placed` (n, 3) are the solids' corners as the picture has them: right, up, towards the viewer.
    """
    quads = placed[solids.quads]
    keep = _quad_areas(quads) > EDGE_ON
    faces = _quad_faces(quads[keep])
    owner, side = solids.quad_owner[keep].tolist(), solids.quad_side[keep].tolist()
    for cap in solids.caps:
        corners = placed[cap.corners]
        if _area(corners[: cap.starts[0]] if cap.starts else corners) > EDGE_ON:
            faces.append(_cap_face(corners, cap.starts))
            owner.append(cap.owner)
            side.append(cap.side)
    return faces, owner, side


def _lies_at(face: Face, depth: float) -> bool:
    return face.flat and abs(face.plane[2] - depth) < FLUSH


def _quad_areas(quads: Floats) -> Floats:
    """Signed areas in the picture, positive when seen from the front: half the diagonals' cross product."""
    across, other = quads[:, 2] - quads[:, 0], quads[:, 3] - quads[:, 1]
    areas: Floats = (across[:, 0] * other[:, 1] - across[:, 1] * other[:, 0]) / 2
    return areas


def _area(polygon: Floats) -> float:
    """The same for one polygon of any number of corners."""
    points = polygon[:, :2].tolist()
    turns = [a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1], strict=True)]
    return float(sum(turns)) / 2


def _quad_faces(quads: Floats) -> list[Face]:
    h, v = quads[:, :, 0], quads[:, :, 1]
    level_first = (h[:, 1] == h[:, 2]) & (h[:, 3] == h[:, 0]) & (v[:, 0] == v[:, 1]) & (v[:, 2] == v[:, 3])
    plumb_first = (h[:, 0] == h[:, 1]) & (h[:, 2] == h[:, 3]) & (v[:, 1] == v[:, 2]) & (v[:, 3] == v[:, 0])
    planes = _planes(quads)
    flat = np.ptp(quads[:, :, 2], axis=1) == 0
    planes[flat, :2] = 0.0
    planes[flat, 2] = quads[flat, 0, 2]
    upright = (level_first | plumb_first).tolist()
    return [
        Face(corners, (plane[0], plane[1], plane[2]), is_upright)
        for corners, plane, is_upright in zip(quads[:, :, :2], planes.tolist(), upright, strict=True)
    ]


def _planes(polygons: Floats) -> Floats:
    """(n, 3) of a, b, c with depth = a*h + b*v + c, from each polygon's first, second and last corner."""
    p, q, r = polygons[:, 0], polygons[:, 1], polygons[:, -1]
    (h1, v1, d1), (h2, v2, d2) = (q - p).T, (r - p).T
    across = h1 * v2 - v1 * h2
    a, b = (d1 * v2 - v1 * d2) / across, (h1 * d2 - d1 * h2) / across
    return np.stack([a, b, p[:, 2] - a * p[:, 0] - b * p[:, 1]], axis=1)


def _cap_face(cap: Floats, starts: tuple[int, ...]) -> Face:
    if np.ptp(cap[:, 2]) == 0:
        return Face(cap[:, :2], (0.0, 0.0, float(cap[0, 2])), upright=False, starts=starts)
    a, b, c = _planes(_widest_triangle(cap)[None])[0].tolist()
    return Face(cap[:, :2], (a, b, c), upright=False, starts=starts)


def _widest_triangle(cap: Floats) -> Floats:
    """Three corners far apart, so that the plane through them is well found."""
    base = cap[0]
    far = cap[np.argmax(((cap[:, :2] - base[:2]) ** 2).sum(axis=1))]
    reach = far[:2] - base[:2]
    off = np.abs((cap[:, 0] - base[0]) * reach[1] - (cap[:, 1] - base[1]) * reach[0])
    return np.stack([base, far, cap[np.argmax(off)]])
