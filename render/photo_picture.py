"""The surround as it would stand in a photo of the wall: in perspective, painted, shaded; how surely it does.

What hides what is render.perspective's, which camera took the photo model.photo's. Masonry is the photo's
own: of it only the shadow that wood would throw is drawn. No picture is read here.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from model.board import Board, block
from model.build.lines import Layout
from model.look import wood_colour
from model.photo.camera import Camera
from model.photo.recover import Found, spread_of
from model.surround import Surround
from render.axonometric import rings_of
from render.drawing import Ring
from render.painted import mix_paint
from render.perspective import AWAY, DARK, Seen, see_solids
from render.site_solids import MASONRY_DEPTH, STANDING, site_in_room

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

WALL_BESIDE = 40.0
"""Wall past the surround that may take its shadow, in. Shop choice."""
SLIVER = 0.35
"""Pixels; shadows narrower than this come of rounding."""
SEAM = 0.4
"""Pixels by which neighbours overlap, so that no light shows between them."""
DOUBTFUL = 1.0
"""Inches that the outline may be off before a fit is called doubtful. Shop choice."""
ROUND = 6
"""Points of a quarter circle in the band's corners."""


@dataclass(frozen=True, slots=True)
class Patch:
    """A filled area in pixels, y down, for the even-odd rule."""

    rings: tuple[Ring, ...]
    tint: str


@dataclass(frozen=True, slots=True)
class PhotoPicture:
    """What is laid over a photo, in its pixels.

    `shadows` darken the photo itself. `patches` and then `lines`, in one `ink`, are the wood. `band` is where
    the wood's outline may lie in 95 of 100 photos marked so; `off` is half its greatest breadth in pixels and
    `off_inches` the same at the masonry's face.
    """

    shadows: tuple[Ring, ...]
    patches: tuple[Patch, ...]
    lines: tuple[Ring, ...]
    ink: str
    outline: tuple[Ring, ...]
    band: tuple[Ring, ...]
    off: float
    off_inches: float

    @property
    def is_doubtful(self) -> bool:
        """Whether it may stand so far off that it misleads."""
        return self.off_inches > DOUBTFUL


def draw_on_photo(surround: Surround, found: Found) -> PhotoPicture:
    """The surround as the camera sees it. Raises Refused where the camera stands within it."""
    about = (0.0, surround.layout.opening_top / 2, 0.0)
    wood = len(surround.boards)
    solids = (*surround.boards, *_list_masonry(surround.layout))
    seen = list(see_solids(solids, found.camera, about))
    boards = [face for face in seen if face.owner < wood]
    whole = _unite([face.whole for face in boards])
    colour = wood_colour(surround.job.design.look, surround.job.design.board.species)
    paint = mix_paint(colour)
    tones = {AWAY: paint.shade, DARK: paint.shadow}
    patches = [Patch(rings_of(whole), paint.lit)] if not whole.is_empty else []
    for face in boards:
        patches += _tint(face, tones.get(face.tone, paint.lit), paint.shadow)
    band, off = _spread(surround, found, whole)
    scale = found.camera.focal / float(found.camera.place([about])[0, 2])
    return PhotoPicture(
        _shadow_rings([face for face in seen if face.owner >= wood]),
        tuple(patches),
        tuple(_list_lines(boards)),
        paint.ink,
        rings_of(whole),
        band,
        off,
        off / scale,
    )


def project_outline(surround: Surround, camera: Camera) -> tuple[Ring, ...]:
    """A box round each sub-assembly, its twelve edges in pixels: there at once while a corner is dragged."""
    boxes: dict[str, tuple[Any, Any]] = {}
    for board in surround.boards:
        low, high = (np.array(end) for end in board.bounds)
        old = boxes.get(board.assembly)
        boxes[board.assembly] = (
            (low, high) if old is None else (np.minimum(old[0], low), np.maximum(old[1], high))
        )
    return tuple(edge for low, high in boxes.values() for edge in _edges(camera, low, high))


def _edges(camera: Camera, low: Any, high: Any) -> Iterator[Ring]:
    corners = [(x, y, z) for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])]
    flat = camera.project(corners)
    for i in range(8):
        for bit in (1, 2, 4):
            if not i & bit and np.isfinite(flat[[i, i | bit]]).all():
                yield tuple((float(x), float(y)) for x, y in flat[[i, i | bit]])


def _list_masonry(layout: Layout) -> tuple[Board, ...]:
    """What may hide wood and take its shadow: facing, hearth, and the wall round them."""
    reach = max(layout.shelf_reach, layout.facing_side) + WALL_BESIDE
    top = max(layout.ceiling, layout.shelf_top + 1.0)
    behind = (layout.wall - MASONRY_DEPTH, layout.wall)
    wall = block("wall", "site", STANDING, "x", (-reach, reach), (layout.floor, top), behind)
    return (wall, *(solid for solid in site_in_room(layout) if solid.role in ("facing", "hearth")))


def _tint(face: Seen, tint: str, dark: str) -> Iterator[Patch]:
    yield Patch(rings_of(face.whole), tint)
    if face.shadow is not None and face.tone != DARK:
        shadow = _without_slivers(face.shadow)
        if not shadow.is_empty:
            yield Patch(rings_of(shadow), dark)


def _without_slivers(shape: BaseGeometry) -> BaseGeometry:
    opened = shape.buffer(-SLIVER, join_style="mitre").buffer(SLIVER, join_style="mitre")
    return opened.intersection(shape.buffer(SEAM, join_style="mitre"))


def _shadow_rings(site: list[Seen]) -> tuple[Ring, ...]:
    """Where wood keeps the light from masonry; what turns from the light is dark already."""
    return rings_of(_without_slivers(_unite([face.shadow for face in site if face.shadow is not None])))


def _unite(shapes: list[BaseGeometry]) -> BaseGeometry:
    import shapely

    grown = [shape.buffer(SEAM, join_style="mitre") for shape in shapes]
    return shapely.union_all(grown).buffer(-SEAM, join_style="mitre")


def _list_lines(boards: list[Seen]) -> Iterator[Ring]:
    """The outlines of what shows of each board's sides; none between the facets of a curve."""
    import shapely

    sides: dict[tuple[int, int], list[BaseGeometry]] = {}
    for face in boards:
        sides.setdefault((face.owner, face.patch), []).append(face.whole)
    for shapes in sides.values():
        whole = shapes[0] if len(shapes) == 1 else _unite(shapes)
        for ring in rings_of(shapely.simplify(whole, SLIVER)):
            yield (*ring, ring[0])


def _spread(surround: Surround, found: Found, whole: BaseGeometry) -> tuple[tuple[Ring, ...], float]:
    """The band round the outline, and half its greatest breadth in pixels."""
    import shapely

    corners = np.concatenate([np.array(board.vertices) for board in surround.boards])
    flat, radii = found.camera.project(corners), spread_of(found, corners)
    parts = []
    for ring in rings_of(shapely.simplify(whole, SLIVER)):
        rounds = [_disc(flat, radii, point) for point in ring]
        for one, other in zip(rounds, (*rounds[1:], rounds[0]), strict=True):
            parts.append(shapely.union_all([one, other]).convex_hull)
    off = max((_radius(flat, radii, point) for ring in rings_of(whole) for point in ring), default=0.0)
    return rings_of(shapely.union_all(parts)), off


def _radius(flat: Any, radii: Any, point: tuple[float, float]) -> float:
    """How far off a point of the outline may be: as far as the corner of wood that lies nearest to it."""
    return float(radii[int(np.argmin(np.hypot(*(flat - point).T)))])


def _disc(flat: Any, radii: Any, point: tuple[float, float]) -> BaseGeometry:
    from shapely import Point

    return Point(point).buffer(_radius(flat, radii, point), quad_segs=ROUND)
