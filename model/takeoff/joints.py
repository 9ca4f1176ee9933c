"""Joints that show: lines where faces of two boards meet, and lines where wood meets what stands there.

What is done about them, caulk or filler, stands in model.takeoff.materials.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby
from operator import itemgetter

import numpy as np

from model.board import AXES, Board, Point3
from model.build.access_panel import ACCESS_PANEL
from model.build.groove import is_floating
from model.takeoff.contacts import TOUCHING
from model.takeoff.faces import Face, Floats
from model.takeoff.overlay import share
from model.takeoff.seen_edges import Edges, list_edges
from model.takeoff.spans import Numbers, list_meeting
from model.takeoff.surfaces import Surfaces

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


KINDS = (JointKind.CORNER, JointKind.MITRE, JointKind.FLUSH)
NO_JOINT = -1
"""Stands for no place in KINDS."""


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


def list_joints(surfaces: Surfaces) -> tuple[Joint, ...]:
    """Every joint that shows, wood to wood first."""
    edges = list_edges(surfaces.faces, surfaces.seen, SHORTEST / 8)
    return (*_between_boards(surfaces.boards, edges), *_against_site(surfaces, edges))


def joint_length(joints: Sequence[Joint], kind: JointKind, sites: Sequence[str] = ()) -> float:
    """Inches of one kind, of those against `sites` where they are given."""
    return sum(j.length for j in joints if j.kind is kind and (not sites or j.site in sites))


def _between_boards(boards: Sequence[Board], edges: Edges) -> Iterator[Joint]:
    i, j = list_meeting(edges.low - TOUCHING / 2, edges.high + TOUCHING / 2)
    apart = edges.owner[i] != edges.owner[j]
    i, j = _longer_first(edges, i[apart], j[apart])
    first, last = _overlaps(edges, i, j)
    kinds = _kinds_of(edges, i, j)
    real = np.flatnonzero((last - first >= SHORTEST) & (kinds != NO_JOINT))
    i, j, along = i[real], j[real], _along(edges, i[real])
    starts, stops = (edges.start[i] + place[real, None] * along for place in (first, last))
    owners = np.sort(np.stack([edges.owner[i], edges.owner[j]], axis=1), axis=1).tolist()
    for (one, other), kind, span in zip(owners, kinds[real], zip(starts, stops, strict=True), strict=True):
        finer = _finer(KINDS[kind], boards[one], boards[other], span)
        yield Joint(finer, (one, other), _point(span[0]), _point(span[1]))


def _longer_first(edges: Edges, i: Numbers, j: Numbers) -> tuple[Numbers, Numbers]:
    """The same pairs; a joint is measured along the longer edge, whichever comes first in the list."""
    longer = edges.size[j] > edges.size[i]
    return np.where(longer, j, i), np.where(longer, i, j)


def _overlaps(edges: Edges, i: Numbers, j: Numbers) -> tuple[Floats, Floats]:
    """From where to where, in inches along edge i, edge j runs along it; none where it leaves its line."""
    along, size = _along(edges, i), edges.size[i]
    ends = np.stack([edges.start[j], edges.stop[j]], axis=1) - edges.start[i][:, None]
    places = np.einsum("nkx,nx->nk", ends, along)
    off = np.linalg.norm(ends - places[:, :, None] * along[:, None], axis=2).max(axis=1)
    first, last = np.maximum(places.min(axis=1), 0.0), np.minimum(places.max(axis=1), size)
    return first, np.where(off > TOUCHING, -np.inf, last)


def _along(edges: Edges, i: Numbers) -> Floats:
    """Unit vectors."""
    way = edges.stop[i] - edges.start[i]
    along: Floats = way / np.linalg.norm(way, axis=-1, keepdims=True)
    return along


def _kinds_of(edges: Edges, i: Numbers, j: Numbers) -> Numbers:
    """How faces meet over the free space between them, as places in KINDS; where there is wood, NO_JOINT."""
    inward, normal = edges.inward[i], edges.normal[i]
    rise = np.einsum("nx,nx->n", edges.inward[j], normal)
    run = np.einsum("nx,nx->n", edges.inward[j], inward)
    # From face i to face j the free space turns by the angle whose sine is `rise`; there j must look back.
    looks_back = rise[:, None] * inward - run[:, None] * normal
    level = np.abs(rise) < ALIKE
    kinds = np.where(level, KINDS.index(JointKind.FLUSH), np.where(rise > 0, 0, 1))
    none = (np.einsum("nx,nx->n", edges.normal[j], looks_back) < 1 - ALIKE) | (level & (run >= 0))
    return np.where(none, NO_JOINT, kinds)


def _finer(kind: JointKind, one: Board, other: Board, span: tuple[Floats, Floats]) -> JointKind:
    """What a joint is for the boards that make it."""
    if ACCESS_PANEL in (one.role, other.role):
        return JointKind.LOOSE
    if is_floating(one) or is_floating(other):
        return JointKind.FLOATING
    return JointKind.GLUE_LINE if kind is JointKind.FLUSH and _is_glue_line(one, other, span) else kind


def _is_glue_line(one: Board, other: Board, span: tuple[Floats, Floats]) -> bool:
    """Whether two like boards lie edge to edge along their grain."""
    way = int(np.argmax(np.abs(span[1] - span[0])))
    return (one.role, one.stock) == (other.role, other.stock) and (
        one.length_axis == other.length_axis == AXES[way]
    )


def _against_site(surfaces: Surfaces, edges: Edges) -> Iterator[Joint]:
    sites = surfaces.standing_faces
    taken: dict[int, list[tuple[float, float]]] = {}
    for i, k, spans in _list_spans(sites, edges):
        free = [part for span in spans for part in _without(span, taken.get(i, ()))]
        way = edges.stop[i] - edges.start[i]
        for first, last in free:
            if (last - first) * np.linalg.norm(way) >= SHORTEST:
                taken.setdefault(i, []).append((first, last))
                ends = edges.start[i] + first * way, edges.start[i] + last * way
                role = surfaces.standing[sites[k].owner].role
                yield Joint(JointKind.SITE, (int(edges.owner[i]),), _point(ends[0]), _point(ends[1]), role)


def _list_spans(sites: Sequence[Face], edges: Edges) -> Iterator[tuple[int, int, list[tuple[float, float]]]]:
    """Edge by edge the sites that parts of it, from 0 at its start to 1, lie along."""
    import shapely

    i, k = _near_sites(sites, edges)
    meant = np.unique(k)
    wide = np.array([sites[face].polygon for face in meant], dtype=object)
    with np.errstate(invalid="ignore", divide="ignore"):
        wide = shapely.buffer(wide, TOUCHING, join_style="mitre")
    basis = np.array([face.basis for face in sites]).reshape(-1, 2, 3)[k]
    flat = np.einsum("nex,nbx->neb", np.stack([edges.start[i], edges.stop[i]], axis=1), basis)
    lines = share(shapely.linestrings(flat), wide[np.searchsorted(meant, k)])
    parts, of_line = shapely.get_parts(lines, return_index=True)
    real = shapely.length(lines)[of_line] > 0
    places, of_part = shapely.get_coordinates(parts[real], return_index=True)
    of_line = of_line[real]
    begin, size = flat[:, 0], np.linalg.norm(flat[:, 1] - flat[:, 0], axis=1)
    along = np.linalg.norm(places - begin[of_line[of_part]], axis=1) / size[of_line[of_part]]
    starts = np.searchsorted(of_part, np.arange(len(of_line)))
    if len(starts):
        ends = zip(np.minimum.reduceat(along, starts), np.maximum.reduceat(along, starts), strict=True)
        for n, spans in groupby(zip(of_line.tolist(), ends, strict=True), key=itemgetter(0)):
            yield int(i[n]), int(k[n]), [(float(low), float(high)) for _, (low, high) in spans]


def _near_sites(sites: Sequence[Face], edges: Edges) -> tuple[Numbers, Numbers]:
    """Pairs of an edge and a site's face that it lies along or near, where its own face rises from that."""
    normals = np.array([face.normal for face in sites]).reshape(-1, 3)
    offsets = np.array([face.offset for face in sites])
    i, k = np.nonzero(edges.inward @ normals.T >= RISES)
    heights = [np.einsum("nx,nx->n", ends[i], normals[k]) - offsets[k] for ends in (edges.start, edges.stop)]
    near = (np.minimum(*heights) >= -TOUCHING) & (np.maximum(*heights) <= BRIDGED)
    i, k = i[near], k[near]
    low = np.array([face.ring.min(axis=0) for face in sites]).reshape(-1, 3)[k] - BRIDGED
    high = np.array([face.ring.max(axis=0) for face in sites]).reshape(-1, 3)[k] + BRIDGED
    meet = ((edges.low[i] <= high) & (low <= edges.high[i])).all(axis=1)
    return i[meet], k[meet]


def _without(span: tuple[float, float], taken: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """What is left of a span when others are cut out of it."""
    left = [span]
    for low, high in taken:
        left = [part for a, b in left for part in ((a, min(b, low)), (max(a, high), b)) if part[1] > part[0]]
    return left


def _point(at: Floats) -> Point3:
    return float(at[0]), float(at[1]), float(at[2])
