"""Joints that show: lines where faces of two boards meet, and lines where wood meets what stands there.

What is done about them, caulk or filler, stands in model.takeoff.materials.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

import numpy as np

from model.board import AXES, Board, Point3
from model.build.access_panel import ACCESS_PANEL
from model.build.groove import is_floating
from model.takeoff.contacts import TOUCHING
from model.takeoff.faces import Face, Floats
from model.takeoff.surfaces import Surfaces

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

SHORTEST = 1 / 32
"""Lengths under this are no joint, in."""
ALIKE = 1e-3
"""How far directions that should agree may be apart."""
BRIDGED = 1 / 8
"""Wood no further than this from masonry makes a joint with it, in.: a bead bridges the gap. Shop choice."""
RISES = 0.3
"""Least sine of the angle at which a face that shows leaves the masonry."""


class JointKind(StrEnum):
    """How two faces that show meet."""

    CORNER = "inside corner"
    FLUSH = "flush"
    MITRE = "outside corner"
    GLUE_LINE = "glue line"
    """Flush, along the grain of two boards glued edge to edge; planed, not filled."""
    LOOSE = "round a loose panel"
    """Left open, so that the panel comes out."""
    FLOATING = "round a solid panel"
    """Left open, so that the panel moves."""
    SITE = "against the site"


@dataclass(frozen=True, slots=True)
class Joint:
    """A straight line in the room where what shows of two things meets.

    `boards` are places in the list of boards, one only against the site; `site` then says what is there.
    """

    kind: JointKind
    boards: tuple[int, ...]
    start: Point3
    stop: Point3
    site: str = ""

    @property
    def length(self) -> float:
        """Inches."""
        return float(np.linalg.norm(np.array(self.stop) - np.array(self.start)))


@dataclass(frozen=True, eq=False)
class _Edges:
    """Edges of what is seen: ends (n, 3), the faces' normals and the way into each face, and whose it is."""

    start: Floats
    stop: Floats
    normal: Floats
    inward: Floats
    owner: Sequence[int]


def list_joints(surfaces: Surfaces) -> tuple[Joint, ...]:
    """Every joint that shows, wood to wood first."""
    edges = _list_edges(surfaces.faces, surfaces.seen)
    return (*_between_boards(surfaces.boards, edges), *_against_site(surfaces, edges))


def joint_length(joints: Sequence[Joint], kind: JointKind, sites: Sequence[str] = ()) -> float:
    """Inches of one kind, of those against `sites` where they are given."""
    return sum(j.length for j in joints if j.kind is kind and (not sites or j.site in sites))


def _list_edges(faces: Sequence[Face], seen: Sequence[BaseGeometry]) -> _Edges:
    from shapely import orient_polygons

    parts: list[tuple[Floats, Floats, Floats, Floats]] = []
    owner: list[int] = []
    for face, shape in zip(faces, seen, strict=True):
        for ring in face.place(orient_polygons(shape)):
            start, stop = ring[:-1], ring[1:]
            real = np.linalg.norm(stop - start, axis=1) > SHORTEST / 8
            start, stop = start[real], stop[real]
            along = (stop - start) / np.linalg.norm(stop - start, axis=1)[:, None]
            normals = np.broadcast_to(face.normal, start.shape)
            parts.append((start, stop, normals, np.cross(normals, along)))
            owner += [face.owner] * len(start)
    nothing = np.zeros((0, 3))
    start, stop, normal, inward = (np.concatenate([nothing, *(part[i] for part in parts)]) for i in range(4))
    return _Edges(start, stop, normal, inward, owner)


def _between_boards(boards: Sequence[Board], edges: _Edges) -> Iterator[Joint]:
    for i, j in _near_pairs(edges):
        span = _overlap(edges, i, j)
        if span is None:
            continue
        kind = _kind_of(edges, i, j)
        if kind is not None:
            owners = tuple(sorted((edges.owner[i], edges.owner[j])))
            if ACCESS_PANEL in (boards[owners[0]].role, boards[owners[1]].role):
                kind = JointKind.LOOSE
            elif is_floating(boards[owners[0]]) or is_floating(boards[owners[1]]):
                kind = JointKind.FLOATING
            elif kind is JointKind.FLUSH and _is_glue_line(boards[owners[0]], boards[owners[1]], span):
                kind = JointKind.GLUE_LINE
            yield Joint(kind, owners, _point(span[0]), _point(span[1]))


def _near_pairs(edges: _Edges) -> Iterator[tuple[int, int]]:
    """Pairs of edges of different boards whose boxes meet."""
    low = np.minimum(edges.start, edges.stop) - TOUCHING
    high = np.maximum(edges.start, edges.stop) + TOUCHING
    owner = np.array(edges.owner)
    for i in range(len(owner)):
        after = slice(i + 1, None)
        meet = (low[after] <= high[i]).all(axis=1) & (low[i] <= high[after]).all(axis=1)
        for j in np.flatnonzero(meet & (owner[after] != owner[i])):
            yield i, i + 1 + int(j)


def _overlap(edges: _Edges, i: int, j: int) -> tuple[Floats, Floats] | None:
    """The part of edge i that edge j runs along; None where they only cross or run apart."""
    start, whole = edges.start[i], edges.stop[i] - edges.start[i]
    size = float(np.linalg.norm(whole))
    along = whole / size
    others = np.array([edges.start[j], edges.stop[j]]) - start
    places = others @ along
    if np.abs(others - places[:, None] * along).max() > TOUCHING:
        return None
    first, last = max(0.0, float(places.min())), min(size, float(places.max()))
    return None if last - first < SHORTEST else (start + first * along, start + last * along)


def _kind_of(edges: _Edges, i: int, j: int) -> JointKind | None:
    """How two faces meet over the free space between them; None where there is wood in between."""
    inward, normal = edges.inward[i], edges.normal[i]
    rise, run = float(edges.inward[j] @ normal), float(edges.inward[j] @ inward)
    # From face i to face j the free space turns by the angle whose sine is `rise`; there j must look back.
    looks_back = rise * inward - run * normal
    if float(edges.normal[j] @ looks_back) < 1 - ALIKE:
        return None
    if abs(rise) < ALIKE:
        return JointKind.FLUSH if run < 0 else None
    return JointKind.CORNER if rise > 0 else JointKind.MITRE


def _is_glue_line(one: Board, other: Board, span: tuple[Floats, Floats]) -> bool:
    """Whether two like boards lie edge to edge along their grain."""
    way = int(np.argmax(np.abs(span[1] - span[0])))
    return (one.role, one.stock) == (other.role, other.stock) and (
        one.length_axis == other.length_axis == AXES[way]
    )


def _against_site(surfaces: Surfaces, edges: _Edges) -> Iterator[Joint]:
    sites = [(surfaces.standing[face.owner].role, face) for face in surfaces.standing_faces]
    for i, owner in enumerate(edges.owner):
        taken: list[tuple[float, float]] = []
        for role, face in sites:
            if float(edges.inward[i] @ face.normal) < RISES:
                continue
            for first, last in _spans_on(face, edges.start[i], edges.stop[i], taken):
                taken.append((first, last))
                way = edges.stop[i] - edges.start[i]
                ends = (edges.start[i] + first * way, edges.start[i] + last * way)
                yield Joint(JointKind.SITE, (owner,), _point(ends[0]), _point(ends[1]), role)


def _spans_on(
    face: Face, start: Floats, stop: Floats, taken: Sequence[tuple[float, float]]
) -> list[tuple[float, float]]:
    """Parts of an edge, from 0 at its start to 1, that lie along `face` and are not taken yet."""
    import shapely

    heights = np.array([start, stop]) @ face.normal - face.offset
    if heights.min() < -TOUCHING or heights.max() > BRIDGED:
        return []
    size = float(np.linalg.norm(stop - start))
    flat = np.array([start, stop]) @ face.basis.T
    line = shapely.LineString(flat).intersection(face.polygon.buffer(TOUCHING, join_style="mitre"))
    spans = []
    for part in shapely.get_parts(line):
        if part.length == 0:
            continue
        places = np.linalg.norm(shapely.get_coordinates(part) - flat[0], axis=1) / size
        spans += _without((float(places.min()), float(places.max())), taken)
    return [(a, b) for a, b in spans if (b - a) * size >= SHORTEST]


def _without(span: tuple[float, float], taken: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """What is left of a span when others are cut out of it."""
    left = [span]
    for low, high in taken:
        left = [part for a, b in left for part in ((a, min(b, low)), (max(a, high), b)) if part[1] > part[0]]
    return left


def _point(at: Floats) -> Point3:
    return float(at[0]), float(at[1]), float(at[2])
