"""From which side a fastener can be driven in its step: its head on wood that is open, with room before it.

Looked for along straight lines from where two boards lie on each other. What stands by then, boards and site,
stops a line; what comes later does not. How it is told is model.steps.notes'.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass
from enum import StrEnum
from math import ceil, cos, radians, sin
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from model.board import AXES, Point3
from model.reference.nails import MOST_THROUGH, SHORT_OF_FACE
from model.takeoff.contacts import Contact
from model.takeoff.faces import Face, Floats
from model.takeoff.fasteners import SMALLEST, Fixing, Means
from model.takeoff.sight import LINES
from model.takeoff.surfaces import Surfaces

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

ROOM = 8.0
"""Clear before a head for whatever drives it, in. *From memory*: how long a nailer is, or a hammer swings."""
ENOUGH = 0.3
"""Part of the places along a joint that must be in reach; nails go where it is open. Shop choice."""
SLANTS = (radians(45.0), radians(30.0), radians(60.0))
"""How far off straight a slanting nail is driven, the first where all will do. *From memory*."""
POCKET = (radians(15.0), *SLANTS)
"""The same for a screw: its pocket first. 15 degrees are *common practice*."""
OFF_EDGE = 3 / 8
"""How far inside a joint's edge a slanting nail crosses it, in. Shop choice."""
MOST_SLANTING = 1.5
"""The most wood that a slanting nail goes through before the joint, in. Shop choice."""
BITE = 0.5
"""The least of a nail that lies in the second board, in. Shop choice."""
ALONG = (0.08, 0.29, 0.5, 0.71, 0.92)
"""Where along a joint it is looked, as parts of its length."""
HAIR = 1e-4
Places = NDArray[np.bool_] | NDArray[np.int_]
"""Which faces are meant."""
OUTWARD = np.array(sorted([*LINES.tolist(), *(-LINES).tolist()], key=lambda way: -way[2]))
"""Lines of sight, those towards the viewer first, and the same from behind."""
ASIDE = np.array((1.7e-4, 2.3e-4))
"""How far off a joint's middle it is looked, in.: edges of other faces often run right through it."""


class How(StrEnum):
    """How a fastener gets in."""

    STRAIGHT = "straight"
    TURNED = "turned"
    SLANTING = "slanting"


@dataclass(frozen=True, slots=True)
class Way:
    """Through which board, straight or slanting, and from which side of the room: ``the front``, ``above``.

    `head` is where one of the fasteners begins, in the room, `out` the direction it is driven from.
    """

    how: How
    through: int
    side: str
    head: Point3
    out: Point3


@dataclass(frozen=True, eq=False)
class _Line:
    """From a place in a joint through `through`, out of its wood and on."""

    at: Floats
    way: Floats
    through: int
    into: int


@dataclass(frozen=True, eq=False)
class _Slant:
    """Lines that cross one edge of a joint at one angle, and how long that edge is, in."""

    angle: float
    length: float
    lines: list[_Line]


class Reach:
    """Finds ways for the fixings of one surround."""

    def __init__(self, surfaces: Surfaces) -> None:
        self._surfaces = surfaces
        self._rays = _Rays([*surfaces.faces, *surfaces.standing_faces], len(surfaces.faces))
        self._joints: dict[frozenset[int], list[Contact]] = {}
        for contact in surfaces.glued:
            pair = frozenset(surfaces.faces[i].owner for i in contact.pair)
            self._joints.setdefault(pair, []).append(contact)
        self._known: dict[tuple[int, int, float, frozenset[int], bool], Way | None] = {}

    def find(self, fixing: Fixing, there: Set[int], on_site: bool) -> Way | None:
        """The first way that is open with the boards `there` in place, before the masonry where `on_site`.

        Straight through the board that is nailed through as planned, else through the other one, else
        slanting beside the joint; None where no way is open.
        """
        key = (fixing.through, fixing.into, fixing.length, frozenset(there), on_site)
        if key not in self._known:
            self._known[key] = self._find(fixing, there, on_site)
        return self._known[key]

    def _find(self, fixing: Fixing, there: Set[int], on_site: bool) -> Way | None:
        present = self._rays.mask(there, on_site)
        if found := self._find_straight(fixing, present):
            return found
        one, other = fixing.through, fixing.into
        joints = self._list_joints(one, other)
        angles = POCKET if fixing.means is Means.SCREW else SLANTS
        slants = [*self._slanting(joints, one, other, angles), *self._slanting(joints, other, one, angles)]
        for slant in sorted(slants, key=lambda slant: (angles.index(slant.angle), -round(slant.length))):
            if found := self._open(slant.lines, fixing, How.SLANTING, present):
                return found
        return None

    def goes_straight(self, fixing: Fixing, there: Set[int]) -> bool:
        """Whether it can be driven straight on site through either board, the boards `there` in place."""
        return self._find_straight(fixing, self._rays.mask(there, on_site=True)) is not None

    def _find_straight(self, fixing: Fixing, present: Places) -> Way | None:
        """Screws have pockets and go slanting."""
        if fixing.means is Means.SCREW:
            return None
        one, other = fixing.through, fixing.into
        joints = self._list_joints(one, other)
        for how, through, into in ((How.STRAIGHT, one, other), (How.TURNED, other, one)):
            lines = [line for joint in joints for line in self._straight(joint, through, into)]
            if found := self._open(lines, fixing, how, present):
                return found
        return None

    def _list_joints(self, one: int, other: int) -> list[Contact]:
        joints = self._joints.get(frozenset((one, other)), [])
        return [joint for joint in joints if joint.area >= SMALLEST] or joints

    def _faces_of(self, joint: Contact, through: int) -> tuple[Face, Face]:
        first, second = (self._surfaces.faces[i] for i in joint.pair)
        return (first, second) if first.owner == through else (second, first)

    def _straight(self, joint: Contact, through: int, into: int) -> Iterator[_Line]:
        face, _ = self._faces_of(joint, through)
        plane = self._surfaces.faces[joint.first]
        for at in plane.lift(_spots(joint.shape)):
            yield _Line(at, -face.normal, through, into)

    def _slanting(
        self, joints: Sequence[Contact], through: int, into: int, angles: Sequence[float]
    ) -> Iterator[_Slant]:
        """For each edge of each joint the lines that cross it a little inside that edge."""
        for joint in joints:
            face, _ = self._faces_of(joint, through)
            plane = self._surfaces.faces[joint.first]
            for spots, out, long in _edges(joint.shape):
                for angle in angles:
                    way = sin(angle) * (out @ plane.basis) - cos(angle) * face.normal
                    yield _Slant(angle, long, [_Line(at, way, through, into) for at in plane.lift(spots)])

    def _open(self, lines: Sequence[_Line], fixing: Fixing, how: How, present: Places) -> Way | None:
        """The way along the first open line where enough of them are open."""
        wanted = max(1, ceil(ENOUGH * len(lines)))
        good: list[Way] = []
        for left, line in zip(range(len(lines), 0, -1), lines, strict=True):
            if len(good) + left < wanted:
                return None
            if way := self._way(line, fixing, how, present):
                good.append(way)
            if len(good) == wanted:
                return good[0]
        return None

    def _way(self, line: _Line, fixing: Fixing, how: How, present: Places) -> Way | None:
        wood, face = self._rays.leave(line.at, line.way, line.through)
        if face is None or not self._fits(line, fixing, how, wood):
            return None
        if not self._rays.is_clear(line.at, line.way, wood, present):
            return None
        if not self._rays.leads_out(line.at + (wood + ROOM / 2) * line.way, present):
            return None
        side, head = _name_side(self._surfaces.faces[face].normal), line.at + wood * line.way
        return Way(how, line.through, side, _point(head), _point(line.way))

    def _fits(self, line: _Line, fixing: Fixing, how: How, wood: float) -> bool:
        """Whether there is as much wood as the fastener wants: straight it was chosen for that."""
        if how is How.STRAIGHT:
            return True
        most = MOST_THROUGH.value + HAIR if how is How.TURNED else MOST_SLANTING
        if wood > most or fixing.length < wood + BITE:
            return False
        behind, exit_face = self._rays.leave(line.at, -line.way, line.into)
        if exit_face is None or fixing.length - wood <= behind - SHORT_OF_FACE.value + HAIR:
            return True
        return not self._shows(exit_face, line.at - behind * line.way)

    def _shows(self, face: int, at: Floats) -> bool:
        from shapely import Point

        seen = self._surfaces.seen[face]
        return not seen.is_empty and seen.distance(Point(*(at @ self._surfaces.faces[face].basis.T))) < HAIR


class _Rays:
    """Lines against flat faces, those of boards before those of the site, whose owners are told apart."""

    def __init__(self, faces: Sequence[Face], boards: int) -> None:
        self._faces = faces
        self._own = np.arange(len(faces)) < boards
        self._owners = np.array([face.owner for face in faces])
        self._normals = np.array([face.normal for face in faces])
        self._offsets = np.array([face.offset for face in faces])
        self._bases = np.array([face.basis for face in faces])
        self._low = np.array([face.ring.min(axis=0) for face in faces]) - HAIR
        self._high = np.array([face.ring.max(axis=0) for face in faces]) + HAIR
        self._shapes = np.array([face.polygon for face in faces], dtype=object)

    def mask(self, there: Set[int], on_site: bool) -> Places:
        """Which faces are present."""
        boards = self._own & np.isin(self._owners, list(there))
        return boards | ~self._own if on_site else boards

    def leave(self, at: Floats, way: Floats, owner: int) -> tuple[float, int | None]:
        """How far a line goes in a board's wood, and the face it comes out of; None where it is in none."""
        slope = self._normals @ way
        own = np.flatnonzero(self._own & (self._owners == owner) & (slope > HAIR))
        hits = self._hit(own, at, way, slope, HAIR, np.inf)
        return min(hits, default=(0.0, None), key=lambda hit: hit[0])

    def is_clear(self, at: Floats, way: Floats, wood: float, present: Places) -> bool:
        """Whether nothing that is present lies within ROOM of where the line leaves its board."""
        slope = self._normals @ way
        on = np.flatnonzero(present & (slope < -HAIR))
        if self._hit(on, at, way, slope, wood - 10 * HAIR, wood + 10 * HAIR):
            return False
        return not self._hit(self._met(present, slope), at, way, slope, wood + 10 * HAIR, wood + ROOM)

    def leads_out(self, at: Floats, present: Places) -> bool:
        """Whether any straight line leads from there past everything that is present."""
        return any(self._is_free(at, way, present) for way in OUTWARD)

    def _is_free(self, at: Floats, way: Floats, present: Places) -> bool:
        slope = self._normals @ way
        return not self._hit(self._met(present, slope), at, way, slope, 0.0, np.inf)

    def _met(self, present: Places, slope: Floats) -> Places:
        """Faces that a line may meet from either side: what a head lies in stops it as well."""
        return np.flatnonzero(present & (np.abs(slope) > HAIR))

    def _hit(
        self, some: Places, at: Floats, way: Floats, slope: Floats, least: float, most: float
    ) -> list[tuple[float, int]]:
        """How far on a line meets each of `some` faces that it meets between `least` and `most`."""
        import shapely

        far = (self._offsets[some] - self._normals[some] @ at) / slope[some]
        near = (far > least) & (far < most)
        some, far = some[near], far[near]
        points = at + far[:, None] * way
        inside = ((points >= self._low[some]) & (points <= self._high[some])).all(axis=1)
        some, far, points = some[inside], far[inside], points[inside]
        flat = np.einsum("nij,nj->ni", self._bases[some], points)
        met = shapely.intersects_xy(self._shapes[some], flat[:, 0], flat[:, 1]) if len(some) else some
        return [(float(f), int(i)) for f, i, is_met in zip(far, some, met, strict=True) if is_met]


def _frame(shape: BaseGeometry) -> tuple[Floats, Floats, Floats]:
    """A corner of a shape's narrowest rectangle, its longer side and its shorter one, as vectors."""
    corners = np.array(shape.minimum_rotated_rectangle.exterior.coords)[:4]
    one, other = corners[1] - corners[0], corners[3] - corners[0]
    if np.linalg.norm(one) >= np.linalg.norm(other):
        return corners[0], one, other
    return corners[0], other, one


def _inside(shape: BaseGeometry, spots: Floats) -> Floats:
    import shapely

    kept: Floats = spots[shapely.contains_xy(shape, spots[:, 0], spots[:, 1])]
    return kept


def _spots(shape: BaseGeometry) -> Floats:
    """Places along the middle of a joint, in its plane."""
    corner, long, short = _frame(shape)
    spots = _inside(shape, np.array([corner + part * long + short / 2 for part in ALONG]) + ASIDE)
    return spots if len(spots) else np.array(shape.representative_point().coords)


def _edges(shape: BaseGeometry) -> Iterator[tuple[Floats, Floats, float]]:
    """For each side of a joint places a little inside it, which way is out over it, and its length."""
    corner, long, short = _frame(shape)
    for side, across, begin in (
        (long, -short, corner),
        (long, short, corner + short),
        (short, -long, corner),
        (short, long, corner + long),
    ):
        deep = float(np.linalg.norm(across))
        if deep < HAIR:
            continue
        out = across / deep
        at = begin - min(OFF_EDGE, deep / 2) * out
        spots = _inside(shape, np.array([at + part * side for part in ALONG]) + ASIDE)
        if len(spots):
            yield spots, out, float(np.linalg.norm(side))


def _point(place: Floats) -> Point3:
    x, y, z = place.tolist()
    return x, y, z


def _name_side(normal: Floats) -> str:
    """The side of the room that a face looks to."""
    axis = int(np.argmax(np.abs(normal)))
    names = {"x": ("the left", "the right"), "y": ("below", "above"), "z": ("behind", "the front")}
    return names[AXES[axis]][int(normal[axis] > 0)]
