"""Proportions of a surround of which only a picture is known: read off in its opening's own measure.

The opening's corners undo the perspective of the wall's plane, whatever lens it was; widths are then told in
widths of the opening and heights in heights of it. What stands out from that plane looks a little too large.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray

from model.errors import Refused
from model.photo.aspect import find_aspect
from model.photo.homography import apply_homography, check_corners, find_homography

Real = NDArray[np.float64]
UNIT = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
"""The opening in its own measure: lower left, lower right, upper right, upper left."""
OUTER_LEFT, INNER_LEFT = "left column, outer edge", "left column, inner edge"
INNER_RIGHT, OUTER_RIGHT = "right column, inner edge", "right column, outer edge"
END_LEFT, END_RIGHT = "shelf, left end", "shelf, right end"
FOOT, UNDERSIDE, TOP = "frieze, lower edge", "shelf, underside", "shelf, top"
ACROSS = (END_LEFT, OUTER_LEFT, INNER_LEFT, INNER_RIGHT, OUTER_RIGHT, END_RIGHT)
"""Upright lines, of which a point's place across counts."""
UP = (FOOT, UNDERSIDE, TOP)
"""Level lines, of which a point's height counts."""
FIRST: Mapping[str, float] = {
    END_LEFT: -0.75,
    OUTER_LEFT: -0.62,
    INNER_LEFT: -0.35,
    INNER_RIGHT: 1.35,
    OUTER_RIGHT: 1.62,
    END_RIGHT: 1.75,
    FOOT: 1.35,
    UNDERSIDE: 1.65,
    TOP: 1.75,
}
"""Where lines stand before they are set."""
STANDS_OUT = 0.04
"""Share by which a part that stands out may look too large: 4 1/2 in. at 9 ft. One standard deviation; shop
choice."""
SURELY = 1.96
"""Standard deviations within which 19 of 20 lie."""
STEP = 0.25
"""Pixels that a mark is moved by to see what changes."""
COLUMN, MARGIN, FRIEZE = "column.width", "column.margin", "frieze.height"
SHELF, THICK, OVERHANG = "shelf.height", "shelf.thickness", "shelf.overhang_end"

Marks = Mapping[str, tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Proportion:
    """A size in widths of the opening, or in heights where `is_high`, and how far it may be off.

    `path` is the row it would set. 19 of 20 lie within `spread`.
    """

    path: str
    words: str
    value: float
    spread: float
    is_high: bool


@dataclass(frozen=True, slots=True)
class Likeness:
    """What a picture tells. `shape` is the opening's width over its height, None where it does not tell."""

    proportions: tuple[Proportion, ...]
    shape: float | None
    shape_spread: float


def first_marks(corners: ArrayLike) -> dict[str, tuple[float, float]]:
    """Where handles of lines lie before they are set: of upright ones half way up, of level ones midway.

    In pixels, by the line's name; `corners` (4, 2) as for `read_likeness`, refused alike.
    """
    out_of = find_homography(UNIT, corners)
    places = [(FIRST[name], 0.5) for name in ACROSS] + [(0.5, FIRST[name]) for name in UP]
    pixels = apply_homography(out_of, places)
    return {name: (float(x), float(y)) for name, (x, y) in zip((*ACROSS, *UP), pixels, strict=True)}


def line_through(corners: ArrayLike, name: str, mark: tuple[float, float]) -> tuple[tuple[float, float], ...]:
    """The two ends in pixels of the line that a mark stands for, as long as the surround is high or wide.

    `corners` (4, 2) as for `read_likeness`, refused alike.
    """
    into, out_of = find_homography(corners, UNIT), find_homography(UNIT, corners)
    across, up = apply_homography(into, [mark])[0]
    ends = ((across, 0.0), (across, 2.0)) if name in ACROSS else ((-0.8, up), (1.8, up))
    return tuple((float(x), float(y)) for x, y in apply_homography(out_of, ends))


def read_likeness(
    corners: ArrayLike, marks: Marks, size: tuple[int, int], focal: float | None = None, noise: float = 1.5
) -> Likeness:
    """Proportions by their `marks`, pixels; `corners` (4, 2) are the opening's in a picture of `size`.

    `noise` is how far off a mark is, in pixels, one standard deviation. Raises Refused for corners that are
    none, and for lines in an order that no surround has.
    """
    pixels = np.asarray(corners, dtype=np.float64)
    check_corners(pixels)
    _check_order(_place(pixels, marks))
    names = list(marks)
    start = np.concatenate([pixels, np.array([marks[name] for name in names]).reshape(-1, 2)])

    def read(all_pixels: Real) -> Real:
        moved = dict(zip(names, all_pixels[4:], strict=True))
        return np.array([value for _, _, value, _, _ in _list_sizes(_place(all_pixels[:4], moved))])

    spreads = _spread_of(read, start, noise)
    found = [
        Proportion(path, words, value, SURELY * float(np.hypot(spread, STANDS_OUT * reach)), is_high)
        for (path, words, value, is_high, reach), spread in zip(
            _list_sizes(_place(pixels, marks)), spreads, strict=True
        )
    ]
    return Likeness(tuple(found), *_read_shape(pixels, size, focal, noise))


def _place(corners: Real, marks: Mapping[str, ArrayLike]) -> dict[str, float]:
    """Each line's place in the opening's own measure."""
    if not marks:
        return {}
    places = apply_homography(find_homography(corners, UNIT), np.array([marks[name] for name in marks]))
    return {
        name: float(place[0] if name in ACROSS else place[1])
        for name, place in zip(marks, places, strict=True)
    }


def _check_order(places: Mapping[str, float]) -> None:
    """Raise Refused unless lines stand from left to right and one over the other, outside of the opening."""
    for names, inside in ((ACROSS, (INNER_LEFT, INNER_RIGHT)), (UP, ())):
        there = [name for name in names if name in places]
        for one, other in pairwise(there):
            if places[one] >= places[other]:
                raise Refused(one, "past the " + other, "set it where it is in the picture")
        for name in inside:
            if name in places and 0 < places[name] < 1:
                raise Refused(name, "within the opening", "set it beside the opening")
    if FOOT in places and places[FOOT] <= 1:
        raise Refused(FOOT, "within the opening", "set it over the opening")


def _list_sizes(at: Mapping[str, float]) -> list[tuple[str, str, float, bool, float]]:
    """Row, words, size in the opening's measure, and whether it is a height, of what the lines tell.

    With it, what looks too large where they stand out: the size itself, or where one of its ends lies in the
    wall's plane, how far the other is from the opening's middle.
    """
    found: list[tuple[str, str, float, bool, float]] = []

    def add(path: str, words: str, is_high: bool, *pairs: tuple[str, str | float]) -> None:
        ends = [(at.get(one), at.get(other) if isinstance(other, str) else other) for one, other in pairs]
        sizes = [abs(a - b) for a, b in ends if a is not None and b is not None]
        if sizes:
            size = sum(sizes) / len(sizes)
            reach = size + 0.5 if isinstance(pairs[0][1], float) and not is_high else size
            found.append((path, words, size, is_high, reach))

    add(COLUMN, "Columns, width", False, (OUTER_LEFT, INNER_LEFT), (OUTER_RIGHT, INNER_RIGHT))
    add(MARGIN, "Columns, from the opening", False, (INNER_LEFT, 0.0), (INNER_RIGHT, 1.0))
    add(FRIEZE, "Frieze, height", True, (UNDERSIDE, FOOT))
    add(SHELF, "Shelf, height", True, (TOP, 0.0))
    add(THICK, "Shelf, thickness", True, (TOP, UNDERSIDE))
    add(OVERHANG, "Shelf, past the columns", False, (END_LEFT, OUTER_LEFT), (END_RIGHT, OUTER_RIGHT))
    return found


def _spread_of(read: Callable[[Real], Real], start: Real, noise: float) -> Real:
    """One standard deviation of what is read, from each mark's being off by `noise`, in small steps."""
    squares = np.zeros(len(read(start)))
    for i in range(len(start)):
        for axis in (0, 1):
            more, less = start.copy(), start.copy()
            more[i, axis] += STEP
            less[i, axis] -= STEP
            squares += ((read(more) - read(less)) / (2 * STEP) * noise) ** 2
    return np.asarray(np.sqrt(squares))


def _read_shape(
    corners: Real, size: tuple[int, int], focal: float | None, noise: float
) -> tuple[float | None, float]:
    """The opening's width over its height, and its spread; None where the picture does not tell it."""
    centre = (size[0] / 2, size[1] / 2)
    found = find_aspect(corners, centre, focal)
    if found is None:
        return None, 0.0
    ratios = []
    for i in range(4):
        for axis in (0, 1):
            for way in (-1, 1):
                moved = corners.copy()
                moved[i, axis] += way * noise
                other = find_aspect(moved, centre, focal)
                if other is None:
                    return None, 0.0
                ratios.append((other.ratio - found.ratio) ** 2 / 2)
    return found.ratio, SURELY * float(np.sqrt(sum(ratios)))
