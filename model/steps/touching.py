"""Which boards touch, which rest on which, what stands there already that they touch, and what hides a nail.

Taken from the faces that lie on each other; in what order boards go on follows in the files beside this one.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

import numpy as np

from model.board import AXES, Board
from model.once import once
from model.reference.nails import MOST_THROUGH
from model.takeoff.contacts import Contact
from model.takeoff.faces import Floats
from model.takeoff.fasteners import Fixing
from model.takeoff.surfaces import Surfaces

if TYPE_CHECKING:
    from model.surround import Surround
    from model.takeoff.takeoff import Takeoff

LEVEL = 0.7
"""Cosine between a face's normal and plumb from which what lies on it rests on it."""
FACES_AWAY = -0.5
"""Cosine of two faces' normals under which a nail through one comes out of the other."""
COVERED = 2.0
"""What hides less of a contact than this, in., and less than half of it, leaves room to nail. Shop choice."""
DEEPEST = MOST_THROUGH.value + 1e-6
Pair = tuple[int, int]
Box = tuple[Floats, Floats]


@dataclass(frozen=True)
class Touching:
    """How the boards of a list lie to each other; all numbers are places in that list.

    `areas` has the square inches of wood on wood for each pair, the lower place first. `rests` are pairs
    (upper, lower) whose contact is level, `covers` pairs (front, behind) whose contact faces the room.
    `site` names what each board touches that stands there already. `hiding` has, for a board that is nailed
    through and the one behind it, how much of their contact, as a part of 1, each board covers that lies
    over the heads. Where the first of the two is too deep to be nailed through there, it is not among them.
    `seen` is how many square inches of each board can be seen from the room.
    """

    areas: Mapping[Pair, float]
    rests: frozenset[Pair]
    covers: frozenset[Pair]
    site: Mapping[int, frozenset[str]]
    hiding: Mapping[Pair, Mapping[int, float]]
    seen: tuple[float, ...]

    def area(self, one: int, other: int) -> float:
        """Square inches in which two boards touch."""
        return self.areas.get((min(one, other), max(one, other)), 0.0)

    def is_open(self, through: int, into: int, there: Set[int], most: float = 0.0) -> bool:
        """Whether one board can be nailed through into the other where the boards `there` are in place.

        They may cover `most` of the contact, as a part of 1.
        """
        heads = self.hiding.get((through, into))
        if heads is None:
            return False
        return not heads or sum(part for i, part in heads.items() if i in there) <= most

    def can_nail(self, one: int, other: int, there: Set[int]) -> bool:
        """Whether two boards can be nailed together from either side with nothing in the way."""
        return self.is_open(one, other, there) or self.is_open(other, one, there)

    def between(self, some: Sequence[int], others: Sequence[int]) -> float:
        """Square inches in which boards of one group touch those of another."""
        return sum(self.area(i, j) for i in some for j in others)


def touching_of(surround: Surround, takeoff: Takeoff) -> Touching:
    """How all boards of `surround` touch, found once: steps and days ask for it one after the other."""
    return once(surround, (find_touching, takeoff), lambda: find_touching(takeoff.surfaces, takeoff.fixings))


def find_touching(surfaces: Surfaces, fixings: Sequence[Fixing]) -> Touching:
    """How all boards touch. A board that touches no other and nothing there is taken to touch its nearest."""
    areas: dict[Pair, float] = {}
    rests: set[Pair] = set()
    covers: set[Pair] = set()
    for contact in surfaces.glued:
        first, second = (surfaces.faces[face] for face in contact.pair)
        pair = (min(first.owner, second.owner), max(first.owner, second.owner))
        areas[pair] = areas.get(pair, 0.0) + contact.area
        if abs(first.normal[1]) > LEVEL:
            lower, upper = (first, second) if first.normal[1] > 0 else (second, first)
            rests.add((upper.owner, lower.owner))
        if abs(first.normal[2]) > LEVEL:
            behind, front = (first, second) if first.normal[2] > 0 else (second, first)
            covers.add((front.owner, behind.owner))
    site: dict[int, set[str]] = {}
    for contact in surfaces.against:
        owner = surfaces.faces[contact.first].owner
        role = surfaces.standing[surfaces.standing_faces[contact.second].owner].role
        site.setdefault(owner, set()).add(role)
    for pair in _list_nearest(surfaces.boards, areas, site):
        areas[pair] = 0.0
    return Touching(
        areas,
        frozenset(rests),
        frozenset(covers),
        {owner: frozenset(roles) for owner, roles in site.items()},
        _find_hiding(surfaces, fixings),
        _list_seen(surfaces),
    )


def _list_nearest(
    boards: Sequence[Board], areas: Mapping[Pair, float], site: Mapping[int, set[str]]
) -> Iterator[Pair]:
    """For each board that touches nothing the pair it makes with the board nearest to it."""
    touched = {i for pair in areas for i in pair} | set(site)
    boxes = [tuple(map(np.array, board.bounds)) for board in boards]
    for i in sorted(set(range(len(boards))) - touched):
        others = [j for j in range(len(boards)) if j != i]
        if others:
            nearest = min(others, key=lambda j: (_gap(boxes[i], boxes[j]), j))
            yield min(i, nearest), max(i, nearest)


def _gap(one: Sequence[Floats], other: Sequence[Floats]) -> float:
    return float(np.linalg.norm(np.maximum(0.0, np.maximum(one[0] - other[1], other[0] - one[1]))))


def _list_seen(surfaces: Surfaces) -> tuple[float, ...]:
    seen = [0.0] * len(surfaces.boards)
    for face, shape in zip(surfaces.faces, surfaces.seen, strict=True):
        seen[face.owner] += float(shape.area)
    return tuple(seen)


def _find_hiding(surfaces: Surfaces, fixings: Sequence[Fixing]) -> dict[Pair, dict[int, float]]:
    """For each (through, into) of what is nailed, and the other way round, what covers the heads.

    Contacts that lie too deep in the board nailed through are no place to nail; the other way round a pair
    without another place is left out.
    """
    nailed = {(f.through, f.into) for f in fixings if f.count}
    on = _list_by_owner(surfaces)
    found: dict[Pair, dict[int, float]] = {}
    for through, into in sorted({*nailed, *((b, a) for a, b in nailed)}):
        shallow = [
            (normal, box)
            for normal, box, other in on.get(through, ())
            if other == into and _depth(surfaces.boards[through], normal) <= DEEPEST
        ]
        if not shallow and (through, into) not in nailed:
            continue
        covering: dict[int, float] = {}
        for normal, box in shallow:
            for away, area, third in on[through]:
                part = _overlap(box, area, normal) if third != into and away @ normal < FACES_AWAY else 0.0
                if part:
                    covering[third] = max(covering.get(third, 0.0), part)
        found[through, into] = covering
    return found


def _depth(board: Board, normal: Floats) -> float:
    """How much of a board lies along a direction."""
    return sum(abs(float(part)) * board.extent(axis) for part, axis in zip(normal, AXES, strict=True))


def _list_by_owner(surfaces: Surfaces) -> dict[int, list[tuple[Floats, Box, int]]]:
    """For each board its contacts: which way it faces there, the contact's box, and the other board."""
    on: dict[int, list[tuple[Floats, Box, int]]] = {}
    for contact in surfaces.glued:
        box = _box_of(surfaces, contact)
        for mine, its in (contact.pair, contact.pair[::-1]):
            face, other = surfaces.faces[mine], surfaces.faces[its]
            on.setdefault(face.owner, []).append((face.normal, box, other.owner))
    return on


def _box_of(surfaces: Surfaces, contact: Contact) -> Box:
    from shapely import get_coordinates

    points = surfaces.faces[contact.first].lift(get_coordinates(contact.shape))
    return points.min(axis=0), points.max(axis=0)


def _overlap(one: Box, other: Box, normal: Floats) -> float:
    """How much of a contact another one lies behind, as a part of 1, looked at along its normal."""
    across = np.abs(normal) < LEVEL
    reach = (np.minimum(one[1], other[1]) - np.maximum(one[0], other[0]))[across]
    size = (one[1] - one[0])[across]
    if not (reach > np.minimum(COVERED, size / 2)).all():
        return 0.0
    return float(np.prod(reach / size))


def group_touching(members: Sequence[int], pairs: Sequence[Pair]) -> tuple[tuple[int, ...], ...]:
    """`members` in groups that hang together by `pairs`, each in order, the groups by their first member."""
    group = {i: {i} for i in members}
    for one, other in pairs:
        if one in group and other in group and group[one] is not group[other]:
            joined = group[one] | group[other]
            for i in joined:
                group[i] = joined
    found = {id(own): tuple(sorted(own)) for own in group.values()}
    return tuple(sorted(found.values()))


def list_pairs(members: Sequence[int]) -> Iterator[Pair]:
    """Every two of `members`."""
    return combinations(sorted(members), 2)
