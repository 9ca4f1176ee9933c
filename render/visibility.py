"""Boards and site solids seen from one side: visible lines by class, and the areas they show.

Flattening into faces, back faces, mitre joints and line classes are here; which face is nearest where
is render.arrangement's, what a view shows and how it is drawn is render.views'.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import IntEnum
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from model.board import Board, Point3
from render.arrangement import NOTHING, Face, Floats, Grid, Ints, Mask, arrange, join_collinear, list_borders, trace_rings
from render.drawing import Ring, Segment

CELL = 1024.0
"""Model coordinates are rounded to 1/1024 in. so that faces which should meet do."""
EDGE_ON = 1e-9
"""Faces whose picture is smaller than this, in square inches, are seen edge on."""
FLUSH = 2e-3
"""Faces of two boards closer in depth than this, in inches, are flush."""


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


@dataclass(frozen=True)
class Solids:
    """Boards, then site solids, as one heap of corners with the faces that use them.

    `corners` (n, 3) room inches. `quads` (m, 4) corner numbers, counter-clockwise from outside;
    `quad_owner`, `quad_side` the solid and its side. `caps` are end faces with other than four corners.
    Side numbers: 0.. along the section, then the low and the high end. Solids from number `site_start`
    on are the site's.
    """

    corners: Floats
    quads: Ints
    quad_owner: Ints
    quad_side: Ints
    caps: tuple[tuple[Ints, int, int], ...]
    boards: tuple[Board, ...]
    site_start: int

    @cached_property
    def mitre_joints(self) -> frozenset[tuple[int, int]]:
        """(owner, side) of ends that lie against each other: nothing can be seen between them."""
        found: dict[frozenset[tuple[float, ...]], list[tuple[int, int]]] = {}
        for owner, board in enumerate(self.boards):
            count = len(board.section)
            for side, end in ((count, board.low), (count + 1, board.high)):
                if not end.is_square:
                    start = 0 if side == count else count
                    corners = board.vertices[start : start + count]
                    key = frozenset(tuple(round(c * CELL) for c in corner) for corner in corners)
                    found.setdefault(key, []).append((owner, side))
        return frozenset(face for faces in found.values() if len(faces) > 1 for face in faces)


def _sides(count: int) -> list[tuple[int, int, int, int]]:
    return [(k, (k + 1) % count, (k + 1) % count + count, k + count) for k in range(count)]


def flatten_boards(boards: Sequence[Board], site: Sequence[Board] = ()) -> Solids:
    """The heap of corners and faces of `boards` and of the `site`'s solids behind and around them."""
    corners: list[Point3] = []
    quads: list[tuple[int, int, int, int]] = []
    owners: list[int] = []
    sides: list[int] = []
    caps = []
    everything = (*boards, *site)
    for owner, board in enumerate(everything):
        start, count = len(corners), len(board.section)
        corners.extend(board.vertices)
        own = [(a + start, b + start, c + start, d + start) for a, b, c, d in _sides(count)]
        if count == 4:
            own += [(start + 3, start + 2, start + 1, start), (start + 4, start + 5, start + 6, start + 7)]
        else:
            low = np.arange(start + count - 1, start - 1, -1)
            high = np.arange(start + count, start + 2 * count)
            caps += [(low, owner, count), (high, owner, count + 1)]
        quads.extend(own)
        owners.extend([owner] * len(own))
        sides.extend(range(len(own)))
    heap = np.round(np.array(corners, dtype=float).reshape(-1, 3) * CELL) / CELL
    return Solids(
        heap,
        np.array(quads, dtype=np.intp).reshape(-1, 4),
        np.array(owners, dtype=np.intp),
        np.array(sides, dtype=np.intp),
        tuple(caps),
        everything,
        len(boards),
    )


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

    def lines(self) -> dict[Line, tuple[Segment, ...]]:
        """Visible segments by class, joined where they run on."""
        borders = list_borders(self.grid)
        kinds = self._classify(borders.segments, borders.left, borders.right)
        shown = kinds != Line.NONE
        segments, kinds = join_collinear(borders.segments[shown], kinds[shown])
        return {
            kind: tuple(map(tuple, segments[kinds == kind].tolist())) for kind in Line if (kinds == kind).any()
        }

    def rings_of(self, owner: int) -> tuple[Ring, ...]:
        """Outlines of all that is seen of one solid."""
        return trace_rings(self.grid, self.owner[self.grid.seen] == owner)

    def cut_rings_of(self, owner: int) -> tuple[Ring, ...]:
        """Outlines of one solid's cut faces."""
        return trace_rings(self.grid, (self.owner[self.grid.seen] == owner) & self.cut[self.grid.seen])

    def wood_rings(self) -> tuple[Ring, ...]:
        """Outlines of all that is seen of the boards together."""
        owner = self.owner[self.grid.seen]
        return trace_rings(self.grid, (owner >= 0) & (owner < self.solids.site_start))

    def cut_owners(self) -> list[int]:
        """Solids that show a cut face."""
        faces = np.unique(self.grid.seen)
        return sorted(set(self.owner[faces[self.cut[faces]]].tolist()))

    def seen_owners(self) -> list[int]:
        """Solids of which anything is seen."""
        return sorted(set(self.owner[np.unique(self.grid.seen)].tolist()) - {NOTHING})

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
        kinds[(cut_one & ~wood_one & ~(cut_other & wood_other)) | (cut_other & ~wood_other & ~(cut_one & wood_one))] = (
            Line.SITE_CUT
        )
        kinds[self._unseen(left, right, same & flush)] = Line.NONE
        kinds[same & cut_one & cut_other] = Line.NONE
        return kinds

    def _is_wood(self, owner: Ints) -> Mask:
        wood: Mask = (owner >= 0) & (owner < self.solids.site_start)
        return wood

    def _flush(self, segments: Floats, left: Ints, right: Ints) -> Mask:
        """Whether the faces on both hands lie at one depth at the segment's middle."""
        planes = np.array([face.plane for face in self.faces] + [(0.0, 0.0, -np.inf)])
        h, v = (segments[:, 0] + segments[:, 2]) / 2, (segments[:, 1] + segments[:, 3]) / 2
        one, other = (planes[f, 0] * h + planes[f, 1] * v + planes[f, 2] for f in (left, right))
        with np.errstate(invalid="ignore"):
            flush: Mask = np.abs(one - other) < FLUSH
        return flush

    def _unseen(self, left: Ints, right: Ints, candidates: Mask) -> Mask:
        """Lines between two facets of one curve, where the wood shows no edge."""
        unseen = np.zeros(len(left), dtype=bool)
        for i in np.flatnonzero(candidates).tolist():
            board = self.solids.boards[self.owner[left[i]]]
            if board.curved:
                first, second = sorted((int(self.side[left[i]]), int(self.side[right[i]])))
                unseen[i] = second - first == 1 and second in board.curved
        return unseen


def project(solids: Solids, look: Look, cut_at: float | None = None) -> Projection:
    """What is seen of `solids` in the direction of `look`.

    `cut_at` is the depth of a cutting plane that the boards end at: faces lying in it are cut faces.
    """
    placed = look.place(solids.corners)
    quads = placed[solids.quads]
    keep = _area(quads) > EDGE_ON
    faces = _quad_faces(quads[keep])
    owner, side = solids.quad_owner[keep].tolist(), solids.quad_side[keep].tolist()
    for corners, whose, which in solids.caps:
        cap = placed[corners]
        if _area(cap[None])[0] > EDGE_ON:
            faces.append(_face(cap, upright=False))
            owner.append(whose)
            side.append(which)
    hidden = solids.mitre_joints
    kept = [i for i in range(len(faces)) if (owner[i], side[i]) not in hidden]
    faces = [faces[i] for i in kept]
    in_plane = [cut_at is not None and _lies_at(face, cut_at) for face in faces]
    return Projection(
        solids,
        faces,
        arrange(faces),
        np.array([owner[i] for i in kept] + [NOTHING], dtype=np.intp),
        np.array([side[i] for i in kept] + [NOTHING], dtype=np.intp),
        np.array([*in_plane, False]),
    )


def _lies_at(face: Face, depth: float) -> bool:
    a, b, c = face.plane
    return a == 0 and b == 0 and abs(c - depth) < FLUSH


def _area(polygons: Floats) -> NDArray[np.float64]:
    """Signed areas in the picture, positive when seen from the front."""
    h, v = polygons[:, :, 0], polygons[:, :, 1]
    area: Floats = ((h * np.roll(v, -1, axis=1)) - (np.roll(h, -1, axis=1) * v)).sum(axis=1) / 2
    return area


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
    normal = np.cross(q - p, r - p)
    a, b = -normal[:, 0] / normal[:, 2], -normal[:, 1] / normal[:, 2]
    return np.stack([a, b, p[:, 2] - a * p[:, 0] - b * p[:, 1]], axis=1)


def _face(cap: Floats, upright: bool) -> Face:
    if np.ptp(cap[:, 2]) == 0:
        return Face(cap[:, :2], (0.0, 0.0, float(cap[0, 2])), upright)
    a, b, c = _planes(_widest_triangle(cap)[None])[0].tolist()
    return Face(cap[:, :2], (a, b, c), upright)


def _widest_triangle(cap: Floats) -> Floats:
    """Three corners far apart, so that the plane through them is well found."""
    base = cap[0]
    far = cap[np.argmax(((cap[:, :2] - base[:2]) ** 2).sum(axis=1))]
    reach = far[:2] - base[:2]
    off = np.abs((cap[:, 0] - base[0]) * reach[1] - (cap[:, 1] - base[1]) * reach[0])
    return np.stack([base, far, cap[np.argmax(off)]])
