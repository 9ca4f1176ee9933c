"""Names of things in a view: where each finds room, joined to its thing where it must stand further off.

What is named, and what it is called, is decided where the thing is drawn.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist

import numpy as np

from render.drawing import Fill, Hatch, Lines, Mark, Pen, Point, Region, Segment
from render.extent import Box, box_of, box_ring
from render.number_places import (
    Floats,
    Paper,
    box_round,
    join_number,
    list_around,
    list_strokes,
    list_words,
    number_height,
    number_size,
    place_numbers,
    write_number,
)

FURTHEST = 60
"""How many distances are tried for a name: names are long, and views are full. Shop choice."""
LAST_RESORT = 240
"""How many distances are tried for a name that has no clear place. Shop choice."""
CLOSE = 0.4
"""Free between what is named and its name at least, in capitals. Shop choice."""
DARK = frozenset({Fill.OPENING})
"""Areas that no name stands on."""


@dataclass(frozen=True, slots=True)
class Name:
    """What something is called, the point of it that its name is joined to, and how far off that it stands.

    `clear` in model inches; `stands_for` is the parameter it comes from.
    """

    words: str
    spot: Point
    clear: float
    stands_for: str


def place_names(
    names: Sequence[Name], under: Sequence[Mark], ratio: float, furthest: int = FURTHEST
) -> list[Mark]:
    """Each name clear of the lines and words of `under`, in the order they are given.

    Over a hatch it gets a ground of paper. Where there is no clear place it stands on such a ground as near
    as no other words are covered.
    """
    if not names:
        return []
    height = number_height(ratio)
    written = list_words(under)
    lines = list_strokes([mark for mark in under if not isinstance(mark, Hatch)], ratio)
    paper, given = Paper(lines, list_dark(under), written), Paper(words=written)
    placed = [_place(name, height, paper, given, furthest) for name in names]
    crowded = any(one.is_forced for one in placed)
    hatches = Paper(list_strokes([mark for mark in under if isinstance(mark, Hatch)], ratio))
    bare = hatches.is_free(np.array([one.box for one in placed])).tolist()
    joins: list[Mark] = []
    words: list[Mark] = []
    for one, is_bare in zip(placed, bare, strict=True):
        name = one.name
        if dist(one.join[:2], one.join[2:]) > (1 + CLOSE) * height:
            joins.append(Lines(Pen.TEXT, (one.join,), name.stands_for))
        if crowded or not is_bare:
            words.append(_draw_ground(one.box, name.stands_for))
        words.append(write_number(name.words, one.place, height, name.stands_for))
    return [*joins, *words]


def list_dark(marks: Sequence[Mark]) -> tuple[Box, ...]:
    """Boxes round the areas that are too dark to write on."""
    rings = (ring for mark in marks if isinstance(mark, Region) and mark.fill in DARK for ring in mark.rings)
    return tuple(box_of(ring) for ring in rings)


@dataclass(frozen=True, slots=True)
class _Placed:
    """A name with the middle of its box, its join, and whether it stands where no place is clear."""

    name: Name
    place: Point
    size: tuple[float, float]
    join: Segment
    is_forced: bool

    @property
    def box(self) -> Box:
        """What it covers."""
        return box_round(self.place, *self.size)


def _place(name: Name, height: float, paper: Paper, given: Paper, furthest: int) -> _Placed:
    size, clear = number_size(name.words, height), name.clear + CLOSE * height
    (found,) = place_numbers((name.spot,), (size,), clear, paper, furthest)
    place = found or _least_bad(name.spot, size, clear, paper, given)
    join = join_number(name.spot, place, size, name.clear)
    if found is None:
        paper.write(box_round(place, *size), join)
    return _Placed(name, place, size, join, found is None)


def _draw_ground(box: Box, stands_for: str) -> Region:
    return Region(Fill.PAPER, (box_ring(box),), stands_for)


def _least_bad(spot: Point, size: tuple[float, float], clear: float, paper: Paper, given: Paper) -> Point:
    """The nearest place that covers lines but no words, on an open way if there is one.

    A way that is not open goes at least through no words that were `given`: other names have grounds then.
    """
    tried = list_around(spot, *size, clear, LAST_RESORT)
    half: Floats = np.array(size) / 2
    joins = np.hstack([np.broadcast_to(spot, tried.shape), tried])
    bare = paper.has_no_words(np.hstack([tried - half, tried + half]))
    for good in (bare & paper.is_open(joins), bare & given.is_open(joins), bare):
        if good.any():
            x, y = tried[good][0].tolist()
            return x, y
    x, y = tried[0].tolist()
    return x, y
