"""Which parts of faces can be seen from the room: a straight line of sight reaches them from somewhere in it.

Lines of sight run in LINES, a set of directions close enough that nothing but slits and undercuts is
missed. What is covered by contact is taken off before, in model.takeoff.contacts.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from model.takeoff.faces import Face, Floats
from model.takeoff.nearness import Nearness, Numbers, Outlines
from model.takeoff.overlay import GRID, Shapes, share, take_away
from model.takeoff.slivers import without_slivers

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

Flags = NDArray[np.bool_]
EDGE_ON = 1e-6
"""Cosine between a face's normal and a line of sight under which the face is seen edge on."""
CLOSE = 1 / 512
"""What is no further in front of a face than this does not hide it, in."""
NOTHING = 1e-4
"""Square inches too small to be looked for any more."""

CRUMB = NOTHING / 10
"""Square inches by which two shapes may overlap that only touch."""


def _list_lines() -> Floats:
    """Unit vectors from the wood to the eye: in each of the three planes of the axes, round to the wall."""
    quarters = [(0, 1), (1, 2), (1, 1), (2, 1), (1, 0)]
    steps = {(0, 0, 1): None}
    for a, b in quarters:
        for s in (1, -1):
            steps[(s * a, 0, b)] = steps[(0, -s * a, b)] = None
    for a, b in quarters:
        for s in (1, -1):
            steps[(s * a, b, 0)] = steps[(s * a, -b, 0)] = None
    lines = np.array(list(steps), dtype=float)
    unit: Floats = lines / np.linalg.norm(lines, axis=1)[:, None]
    return unit


LINES = _list_lines()


def list_seen(
    faces: Sequence[Face],
    bare: Sequence[BaseGeometry],
    standing: Sequence[Face] = (),
    ways: Flags | None = None,
) -> tuple[BaseGeometry, ...]:
    """The parts of `bare`, which lie in the planes of `faces`, that can be seen past `faces` and `standing`.

    Exact for each line of sight: a face is hidden where another one that turns to the eye lies before it.
    `ways` (faces, lines) say which faces may be seen along which of LINES at all, every one if not given; of
    what hides a face, the nearest to the eye is always among them.
    """
    import shapely

    unseen: Shapes = np.array(bare, dtype=object)
    around = _Around((*faces, *standing))
    shown = np.ones((len(faces) + len(standing), len(LINES)), dtype=bool)
    if ways is not None:
        shown[: len(faces)] = ways
    for line, may in zip(LINES, shown.T, strict=True):
        turned = (around.normals @ line > EDGE_ON) & may
        at = np.flatnonzero(turned[: len(faces)] & (shapely.area(unseen) > NOTHING))
        if len(at):
            unseen[at] = around.hide(unseen[at], at, line, np.flatnonzero(turned))
    seen = take_away(np.array(bare, dtype=object), unseen)
    return tuple(without_slivers(_areas_of(seen)))


class _Around:
    """Everything that may hide: faces, with what is needed to look at them in any direction."""

    def __init__(self, faces: Sequence[Face]) -> None:
        self._outlines = Outlines(faces)
        self.normals = self._outlines.normals
        self._basis = np.array([face.basis for face in faces])
        self._owners = np.repeat(np.arange(len(faces)), self._outlines.counts)

    def hide(self, shapes: Shapes, at: Numbers, line: Floats, turned: Numbers) -> Shapes:
        """The parts of `shapes`, in planes of the faces `at`, that are hidden from along `line` (3,) by the
        faces `turned` towards that."""
        right, up = _picture(line)
        matrices, shifts = self._laid(at, np.stack([right, up]))
        pictures = _snap(_moved(shapes, matrices, shifts))
        hidden = self._hide_pictures(pictures, at, np.stack([right, up, line]), turned)
        inverse = np.asarray(np.linalg.inv(matrices), dtype=np.float64)
        return _moved(hidden, inverse, -(inverse @ shifts[:, :, None])[:, :, 0])

    def _hide_pictures(self, pictures: Shapes, at: Numbers, look: Floats, turned: Numbers) -> Shapes:
        """The hidden parts of `pictures` of faces `at`; `look` is right, up and towards the eye."""
        import shapely

        drawn = self._draw(turned, look[:2])
        shapely.prepare(drawn)
        mine, other = shapely.STRtree(drawn).query(pictures, predicate="intersects")
        lapped = _boxes_lap(pictures[mine], drawn[other])
        mine, other = mine[lapped], other[lapped]
        low, high = Nearness(self._outlines, look, GRID).bound_ahead(at[mine], turned[other])
        may = (at[mine] != turned[other]) & (high > CLOSE)
        mine, other, sure = mine[may], other[may], low[may] > CLOSE
        hidden = _empty(len(at))
        whole = mine[sure][shapely.covers(drawn[other[sure]], pictures[mine[sure]])]
        hidden[whole] = pictures[whole]
        left = ~np.isin(mine, whole)
        mine, other, sure = mine[left], other[left], sure[left]
        screens, doubtful = drawn[other], np.flatnonzero(~sure)
        sure[doubtful], screens[doubtful] = self._find_before(
            turned[other[doubtful]],
            screens[doubtful],
            at[mine[doubtful]],
            pictures[mine[doubtful]],
            look,
        )
        groups, over = _unite(screens[sure], mine[sure])
        hidden[groups] = _without_crumbs(_areas_of(share(pictures[groups], over)))
        return hidden

    def _find_before(
        self, nears: Numbers, drawn: Shapes, fars: Numbers, pictures: Shapes, look: Floats
    ) -> tuple[Flags, Shapes]:
        """Which of the faces `nears` lie before their ones of `fars`, told where both can be seen, and the
        part of each that does: less than all of it where two solids run through each other."""
        import shapely

        overlaps = _areas_of(share(pictures, drawn))
        before, parts = shapely.area(overlaps) > CRUMB, drawn.copy()
        corners, which = shapely.get_coordinates(overlaps[before], return_index=True)
        spots = shapely.get_coordinates(shapely.point_on_surface(overlaps[before]))
        near, far = nears[before], fars[before]
        ahead = self._depth(near, spots, look) - self._depth(far, spots, look)
        of_corners = self._depth(near[which], corners, look) - self._depth(far[which], corners, look)
        least, most = ahead.copy(), ahead.copy()
        np.minimum.at(least, which, of_corners)
        np.maximum.at(most, which, of_corners)
        for k in np.flatnonzero((least < -CLOSE) & (most > CLOSE)):
            own = which == k
            parts[np.flatnonzero(before)[k]] = _cut(overlaps[before][k], corners[own], of_corners[own])
            ahead[k] = most[k]
        before[before] = ahead > CLOSE
        return np.asarray(before), parts

    def _draw(self, which: Numbers, axes: Floats) -> Shapes:
        import shapely

        flat = _on_grid(self._outlines.corners @ axes.T)
        chosen = np.zeros(len(self.normals), dtype=bool)
        chosen[which] = True
        use = chosen[self._owners]
        _, owners = np.unique(self._owners[use], return_inverse=True)
        drawn: Shapes = shapely.polygons(shapely.linearrings(flat[use], indices=owners))
        return drawn

    def _laid(self, at: Numbers, axes: Floats) -> tuple[Floats, Floats]:
        """How places in the planes of faces `at` become places in the picture: matrices and shifts."""
        matrices = np.einsum("pk,nbk->npb", axes, self._basis[at])
        shifts = (self._outlines.offsets[at, None] * self.normals[at]) @ axes.T
        return matrices, shifts

    def _depth(self, which: Numbers, spots: Floats, look: Floats) -> Floats:
        """How far towards the eye each face lies at its spot in the picture."""
        normals = self.normals[which]
        across = spots @ look[:2]
        depth: Floats = (self._outlines.offsets[which] - (normals * across).sum(axis=1)) / (normals @ look[2])
        return depth


def _cut(shape: BaseGeometry, places: Floats, ahead: Floats) -> BaseGeometry:
    """The part of `shape` where a plane that is so much `ahead` at `places` is ahead at all."""
    import shapely

    middle = places.mean(axis=0)
    rise, *_ = np.linalg.lstsq(np.column_stack([places - middle, np.ones(len(places))]), ahead, rcond=None)
    steep = np.hypot(*rise[:2])
    up = rise[:2] / steep
    along = np.array([-up[1], up[0]])
    start, far = middle - rise[2] / steep * up, 2 * float(np.ptp(places, axis=0).sum())
    half = [start - far * along, start + far * along, start + far * (along + up), start + far * (up - along)]
    return shapely.intersection(shape, shapely.Polygon(half))


def _picture(line: Floats) -> tuple[Floats, Floats]:
    """Two unit vectors across a line of sight."""
    aside = np.eye(3)[int(np.argmin(np.abs(line)))]
    right = np.cross(aside, line)
    right /= np.linalg.norm(right)
    return right, np.cross(line, right)


def _moved(shapes: Shapes, matrices: Floats, shifts: Floats) -> Shapes:
    """Each shape by its own matrix and shift."""
    import shapely

    flat, which = shapely.get_coordinates(shapes, return_index=True)
    moved: Shapes = shapely.set_coordinates(
        shapes.copy(), np.einsum("nij,nj->ni", matrices[which], flat) + shifts[which]
    )
    return moved


def _boxes_lap(shapes: Shapes, others: Shapes) -> Flags:
    """Whether the boxes of each shape and its other share more than rounding does where they only touch."""
    import shapely

    one, other = shapely.bounds(shapes), shapely.bounds(others)
    shared = np.minimum(one[:, 2:], other[:, 2:]) - np.maximum(one[:, :2], other[:, :2])
    laps = shared > 2 * GRID
    return np.asarray(laps[:, 0] & laps[:, 1])


def _empty(count: int) -> Shapes:
    import shapely

    return np.full(count, shapely.Polygon(), dtype=object)


def _unite(shapes: Shapes, groups: Numbers) -> tuple[Numbers, Shapes]:
    """The groups there are, and one shape for each."""
    import shapely

    named = np.unique(groups)
    united = _empty(len(named))
    with np.errstate(invalid="ignore", divide="ignore"):
        for i, group in enumerate(named):
            own = shapes[groups == group]
            united[i] = own[0] if len(own) == 1 else shapely.union_all(own)
    return named, united


def _areas_of(shapes: Shapes) -> Shapes:
    """The same without the lines and points that touching leaves beside areas."""
    import shapely

    for i in np.flatnonzero(shapely.get_type_id(shapes) == shapely.GeometryType.GEOMETRYCOLLECTION):
        parts = shapely.get_parts(shapes[i])
        shapes[i] = shapely.union_all(parts[shapely.get_dimensions(parts) == 2])
    return shapes


def _without_crumbs(shapes: Shapes) -> Shapes:
    """The same without parts so small that they come of rounding where shapes touch."""
    import shapely

    for i in np.flatnonzero(shapely.get_type_id(shapes) == shapely.GeometryType.MULTIPOLYGON):
        parts = shapely.get_parts(shapes[i])
        shapes[i] = shapely.multipolygons(parts[shapely.area(parts) > CRUMB])
    shapes[shapely.area(shapes) <= CRUMB] = shapely.Polygon()
    return shapes


def _snap(shapes: Shapes) -> Shapes:
    """Shapes with their corners on the grid; put right where that folds one over itself.

    No grid is tied to them: the library would lay them over each other at a third of the pace.
    """
    import shapely

    snapped: Shapes = shapely.set_coordinates(shapes, _on_grid(shapely.get_coordinates(shapes)))
    folded = np.flatnonzero(~shapely.is_valid(snapped))
    snapped[folded] = _areas_of(shapely.make_valid(snapped[folded]))
    return snapped


def _on_grid(places: Floats) -> Floats:
    return np.asarray(np.round(places / GRID) * GRID)
