"""What holds boards together: for each place where two lie on each other, glue, nails, brads or screws.

Anchors into masonry are not here. How far glue goes stands in model.takeoff.materials.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import ceil

import numpy as np

from model.board import AXES, Board, StockKind
from model.build.access_panel import ACCESS_PANEL
from model.build.groove import is_floating
from model.build.nailers import PACKING, SHELF_NAILER
from model.build.shelf import SHELF
from model.reference.nails import (
    BRADS,
    BRADS_TO_A_MITRE,
    FROM_END,
    MOST_THROUGH,
    NAILS,
    NARROW,
    NARROWEST_SCREWED,
    PAIRED_FROM,
    SCREW_SPACING,
    SCREW_THREAD,
    SCREWS,
    SHORT_OF_FACE,
    THIN,
    THREADED,
    WOOD_SCREWS,
    Nail,
)
from model.shop import Rates
from model.takeoff.contacts import TOUCHING, Contact
from model.takeoff.faces import Face, Floats
from model.takeoff.surfaces import Surfaces

SMALLEST = 1.0
"""Square inches of contact under which nothing is driven. Shop choice."""
SHORTEST = 0.75
"""Length of contact under which nothing is driven, in. Shop choice."""
ACROSS_GRAIN = 0.5
"""Cosine between a face's normal and the grain from which the face is end grain."""
INSIDE = 1e-4
"""How far in from its face a board's depth is measured from, in."""
BESIDE = (1.5e-6, 0.0)
"""How far from the middle of a contact, in. in its plane: edges of other faces often run right through it."""
EXACT = 6
"""Decimals of an inch that depths are told to: what is alike is nailed alike, whatever is only rounding."""


class Means(StrEnum):
    """What is driven."""

    NAIL = "finish nail"
    BRAD = "18 gauge brad"
    SCREW = "pocket screw"
    LEDGER_SCREW = "no. 8 wood screw"
    NONE = "glue alone"


@dataclass(frozen=True, slots=True)
class Fixing:
    """One place where two boards are held together.

    `through` and `into` are places in the list of boards; `length` of what is driven in inches, `count`
    how many, `shows` whether their heads lie on a face that can be seen. `glue` is the square inches that
    are spread with glue, 0 where the joint stays dry.
    """

    means: Means
    through: int
    into: int
    length: float
    count: int
    shows: bool
    glue: float


def list_fixings(surfaces: Surfaces, rates: Rates) -> tuple[Fixing, ...]:
    """A fixing for each contact between boards that is large enough to hold; loose panels have none.

    A solid panel has a pin in the middle of each end and nothing else: the rest of it has to move.
    """
    driver = _Driver(surfaces, rates)
    loose = {i for i, board in enumerate(surfaces.boards) if board.role == ACCESS_PANEL}
    floating = {i for i, board in enumerate(surfaces.boards) if is_floating(board)}
    fixings: list[Fixing] = []
    for contact in surfaces.glued:
        owners = {surfaces.faces[i].owner for i in contact.pair}
        if owners & floating:
            fixings += driver.pin(contact, floating)
        elif contact.area >= SMALLEST and not owners & loose:
            fixings.append(driver.fix(contact))
    return tuple(fixings)


def count_fixings(fixings: Sequence[Fixing]) -> tuple[tuple[Means, float, int, int], ...]:
    """For each kind and length: how many there are, and how many of them show. Longest first of each kind."""
    totals: dict[tuple[Means, float], tuple[int, int]] = {}
    for fixing in fixings:
        if fixing.count:
            all_of, shown = totals.get((fixing.means, fixing.length), (0, 0))
            more = fixing.count if fixing.shows else 0
            totals[fixing.means, fixing.length] = (all_of + fixing.count, shown + more)
    order = list(Means)
    keys = sorted(totals, key=lambda key: (order.index(key[0]), -key[1]))
    return tuple((means, length, *totals[means, length]) for means, length in keys)


@dataclass(frozen=True, eq=False)
class _Half:
    """One board's side of a contact: its depth behind it, in inches, and whether the face is end grain.

    `exit` is the face that it ends at, None where there is none, and `out` the place there.
    """

    board: int
    depth: float
    is_end: bool
    shows: bool
    exit: int | None
    out: Floats


class _Driver:
    """Chooses for each contact what is driven through which board into which."""

    def __init__(self, surfaces: Surfaces, rates: Rates) -> None:
        self._surfaces = surfaces
        self._rates = rates
        self._faces_of: dict[int, list[int]] = {}
        for i, face in enumerate(surfaces.faces):
            self._faces_of.setdefault(face.owner, []).append(i)
        self._planes: dict[int, tuple[list[int], Floats, Floats]] = {}
        self._contacts_of: dict[int, list[Contact]] = {}
        for contact in surfaces.glued:
            for i in contact.pair:
                self._contacts_of.setdefault(i, []).append(contact)

    def fix(self, contact: Contact) -> Fixing:
        """What holds the two boards of `contact`."""
        faces = self._surfaces.faces
        first, second = faces[contact.first], faces[contact.second]
        at = first.lift(np.array(contact.shape.representative_point().coords) + BESIDE)[0]
        through, into = sorted((self._half(first, at), self._half(second, at)), key=_preference)
        boards = self._surfaces.boards
        if _carries_shelf(boards[through.board], boards[into.board]):
            through, into = into, through
        one, other = boards[through.board], boards[into.board]
        if _is_sheet_edge(one, through) or _is_sheet_edge(other, into):
            return Fixing(Means.NONE, through.board, into.board, 0.0, 0, False, 0.0)
        glue = contact.area if _is_glued(one, other) else 0.0
        means, length, count = self._choose(contact, through, into)
        shows = through.shows and means not in (Means.SCREW, Means.LEDGER_SCREW)
        return Fixing(means, through.board, into.board, length, count, shows, glue)

    def pin(self, contact: Contact, floating: set[int]) -> Iterator[Fixing]:
        """One brad from behind where a solid panel's end lies in its groove; nothing along its sides."""
        faces, boards = self._surfaces.faces, self._surfaces.boards
        panel, member = sorted((faces[i] for i in contact.pair), key=lambda f: f.owner not in floating)
        one, other = boards[panel.owner], boards[member.owner]
        behind = float(panel.normal[AXES.index("z")]) < -ACROSS_GRAIN
        if behind and one.length_axis != other.length_axis:
            length = _fit_brad(other.thickness - SHORT_OF_FACE.value)
            yield Fixing(Means.BRAD, member.owner, panel.owner, length, 1, False, 0.0)

    def _choose(self, contact: Contact, through: _Half, into: _Half) -> tuple[Means, float, int]:
        boards = self._surfaces.boards
        one, other = boards[through.board], boards[into.board]
        long, wide = _sides(contact)
        if _carries_shelf(other, one) and min(long, wide) >= NARROWEST_SCREWED.value:
            packed = into.depth if other.role == PACKING else 0.0
            length = choose_screw(through.depth, into.depth, packed)
            spacing = min(SCREW_SPACING.value, self._rates.nail_spacing)
            return Means.LEDGER_SCREW, length, count_along(long, spacing)
        if long < SHORTEST or not _is_fixed(one, other, through, into):
            return Means.NONE, 0.0, 0
        if through.is_end and into.is_end:
            length = _fit_brad(self._rates.nail_factor * min(one.thickness, other.thickness) / 2)
            return Means.BRAD, length, round(BRADS_TO_A_MITRE.value)
        if through.depth > MOST_THROUGH.value:
            return self._through_edge(one, other, through, into, long)
        return self._through_face(one, through, into, long, wide)

    def _through_edge(
        self, one: Board, other: Board, through: _Half, into: _Half, long: float
    ) -> tuple[Means, float, int]:
        """Too deep for a nail: a frame joint takes screws from its back, edges glued together nothing."""
        if not (through.is_end or into.is_end):
            return Means.NONE, 0.0, 0
        thickness = min(one.thickness, other.thickness)
        fitting = [length for thickest, length in SCREWS.items() if thickness <= thickest]
        count = min(1, self._rates.frame_screws) if long < NARROW.value else self._rates.frame_screws
        return Means.SCREW, fitting[0] if fitting else max(SCREWS.values()), count

    def _through_face(
        self, one: Board, through: _Half, into: _Half, long: float, wide: float
    ) -> tuple[Means, float, int]:
        wanted = self._rates.nail_factor * through.depth
        room = through.depth + into.depth - SHORT_OF_FACE.value
        if one.stock.kind is StockKind.PANEL:
            return Means.BRAD, _fit_brad(min(wanted, room)), count_along(long, self._rates.brad_spacing)
        if one.stock.kind is StockKind.MOULDING or min(through.depth, into.depth) <= THIN.value:
            return Means.BRAD, _fit_brad(min(wanted, room)), count_along(long, self._rates.nail_spacing)
        rows = 2 if wide >= PAIRED_FROM.value else 1
        count = rows * count_along(long, self._rates.nail_spacing)
        nail = choose_nail(wanted, room)
        if nail < 2 * through.depth:  # less of it in the second piece than in the first: on into the third
            nail = choose_nail(wanted, room + self._wood_behind(one, into))
        return (Means.NAIL, nail, count) if nail else (Means.BRAD, _fit_brad(room), count)

    def _wood_behind(self, one: Board, into: _Half) -> float:
        """How much wood a nail through `one` may reach behind `into`: of the same sub-assembly, such as the
        shelf's upper layer over a rib."""
        from shapely import Point

        boards, faces = self._surfaces.boards, self._surfaces.faces
        for contact in self._contacts_of.get(-1 if into.exit is None else into.exit, ()):
            first = faces[contact.first]
            behind = faces[sum(contact.pair) - (into.exit or 0)]
            alike = boards[behind.owner].assembly == boards[into.board].assembly == one.assembly
            if alike and contact.shape.distance(Point(*(into.out @ first.basis.T))) < INSIDE:
                return self._depth(behind, into.out)[0]
        return 0.0

    def _half(self, face: Face, at: Floats) -> _Half:
        board = self._surfaces.boards[face.owner]
        depth, exit_face = self._depth(face, at)
        is_end = abs(float(face.normal[AXES.index(board.length_axis)])) > ACROSS_GRAIN
        out = at - depth * face.normal
        shows = exit_face is not None and self._is_seen(exit_face, out)
        return _Half(face.owner, round(depth, EXACT), is_end, shows, exit_face, out)

    def _depth(self, face: Face, at: Floats) -> tuple[float, int | None]:
        """How much wood lies behind a place on a face, and the face that it ends at."""
        from shapely import Point

        numbers, normals, offsets = self._planes_of(face.owner)
        steep = normals @ -face.normal
        facing = np.flatnonzero(steep > ACROSS_GRAIN / 10)
        depths = (offsets[facing] - normals[facing] @ at) / steep[facing]
        for k in np.argsort(depths, kind="stable"):
            depth, i = float(depths[k]), numbers[facing[k]]
            other = self._surfaces.faces[i]
            out = (at - depth * face.normal) @ other.basis.T
            if depth > INSIDE and other.polygon.distance(Point(*out)) < INSIDE:
                return depth, i
        return 0.0, None

    def _planes_of(self, owner: int) -> tuple[list[int], Floats, Floats]:
        """The faces of a board, with their normals (n, 3) and offsets (n,)."""
        if owner not in self._planes:
            numbers = self._faces_of[owner]
            faces = [self._surfaces.faces[i] for i in numbers]
            planes = np.array([face.normal for face in faces]), np.array([face.offset for face in faces])
            self._planes[owner] = numbers, *planes
        return self._planes[owner]

    def _is_seen(self, face: int, at: Floats) -> bool:
        from shapely import Point

        seen = self._surfaces.seen[face]
        return not seen.is_empty and bool(seen.contains(Point(*(at @ self._surfaces.faces[face].basis.T))))


def _preference(half: _Half) -> tuple[float, bool, bool]:
    """Which board is nailed through: the thinner, then the one whose heads are hidden, never end grain."""
    return round(half.depth * 64), half.shows, half.is_end


def _is_glued(one: Board, other: Board) -> bool:
    """Whether a joint is made on the bench: sub-assemblies come apart again, and framing stays dry."""
    framing = StockKind.FRAMING in (one.stock.kind, other.stock.kind)
    return one.assembly == other.assembly and not framing


def _is_fixed(one: Board, other: Board, through: _Half, into: _Half) -> bool:
    """Whether anything is driven: not between framing alone, nor where two sub-assemblies' ends only meet."""
    if {one.stock.kind, other.stock.kind} in ({StockKind.FRAMING}, {StockKind.FRAMING, StockKind.PANEL}):
        return False
    if one.assembly == other.assembly or StockKind.MOULDING in (one.stock.kind, other.stock.kind):
        return True
    return _lies_on(one, other) or _lies_on(other, one) or not (through.is_end or into.is_end)


def _carries_shelf(ledger: Board, board: Board) -> bool:
    """Whether the shelf rests on it and is screwed down to it: the ledger, or what packs an old one up."""
    return ledger.role in (SHELF_NAILER, PACKING) and board.assembly == SHELF and _lies_on(board, ledger)


def _lies_on(upper: Board, lower: Board) -> bool:
    return upper.bounds[0][1] >= lower.bounds[1][1] - TOUCHING


def _is_sheet_edge(board: Board, half: _Half) -> bool:
    """Whether the contact is on a thin sheet's edge, which holds neither nail nor glue."""
    return board.stock.kind is StockKind.PANEL and half.depth > 2 * board.thickness


def _sides(contact: Contact) -> tuple[float, float]:
    """Length and width of a contact's outline, whichever way it lies."""
    box = contact.shape.minimum_rotated_rectangle
    corners = np.array(box.exterior.coords)[:3]
    sides = sorted(float(side) for side in np.linalg.norm(np.diff(corners, axis=0), axis=1))
    return sides[1], sides[0]


def count_along(length: float, spacing: float) -> int:
    """Nails in a row: one from each end and none further apart than `spacing`; one on a very short piece.

    >>> count_along(2.0, 16), count_along(12.0, 16), count_along(53.0, 16)
    (1, 2, 4)
    """
    if length < FROM_END.value:
        return 1
    between = max(length - 2 * FROM_END.value, 0.0)
    return max(ceil(between / spacing - 1e-9), 1) + 1


def choose_nail(wanted: float, room: float) -> float:
    """Length of the nail nearest to the one wanted from above, or the longest that ends within `room`.

    0 where even the shortest is too long.
    """
    fitting = [nail.length for nail in NAILS if nail.length <= room + 1e-9]
    longer = [length for length in fitting if length >= wanted - 1e-9]
    return longer[0] if longer else fitting[-1] if fitting else 0.0


def choose_screw(through: float, into: float, packed: float = 0.0) -> float:
    """Length of a no. 8 screw through a shelf `through` in. thick, and `packed` in. of packing, into a ledger
    `into` in. high: the shortest that has SCREW_THREAD in it, or all of a lower one.

    A shelf too thick to be screwed through is bored from above until MOST_THROUGH is left under the head.

    >>> choose_screw(0.75, 3.5), choose_screw(2.25, 3.5), choose_screw(0.75, 0.5, 0.5)
    (1.75, 2.0, 2.25)
    """
    wood = min(through, MOST_THROUGH.value) + packed
    thread = SCREW_THREAD.value if packed else min(SCREW_THREAD.value, into)
    fitting = [n for n in WOOD_SCREWS if n >= wood + thread - 1e-9 and n * THREADED.value >= thread - 1e-9]
    return fitting[0] if fitting else WOOD_SCREWS[-1]


def _fit_brad(wanted: float) -> float:
    """The longest brad that is no longer than wanted, or the shortest there is."""
    fitting = [length for length in BRADS if length <= wanted + 1e-9]
    return fitting[-1] if fitting else BRADS[0]


def nails_weight(fixings: Sequence[Fixing]) -> Iterator[tuple[Nail, int, float]]:
    """For each size of finish nail: how many, and pounds of them."""
    by_length = {nail.length: nail for nail in NAILS}
    for means, length, count, _ in count_fixings(fixings):
        if means is Means.NAIL:
            yield by_length[length], count, count / by_length[length].per_pound
