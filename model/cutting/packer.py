"""Pieces laid one after the other, each into a corner of a free rectangle that is then parted in two.

Whatever comes out can be sawn apart by cuts right through. How good it is depends on the order and on the
rules by which a rectangle is chosen and parted, so that many of both are tried.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from model.cutting.sheet_cuts import Lying
from model.cutting.sheet_problem import Item, SheetProblem, Sides, fits

PLACES = ("first", "area", "short", "long")
"""Into which free rectangle a piece goes: the first, or where least is left of its area or its sides."""
SPLITS = ("shorter", "longer", "larger", "along", "across")
"""Which way a rectangle is parted: where less or more is left, for the largest part, or one way always."""
NOISE = 0.6
"""Up to which part sizes are made uncertain before they are sorted."""

Free = tuple[int, int, int, int, int]
"""A free rectangle: its sides, its near corner, the number of its sheet."""


@dataclass(frozen=True, slots=True)
class Layout:
    """One sheet of the stock `sold` and what lies on it."""

    sold: int
    pieces: tuple[Lying, ...]


@dataclass(frozen=True, slots=True)
class Rules:
    """How pieces are laid: see `PLACES` and `SPLITS`."""

    place: str = "first"
    split: str = "longer"


def draw_rules(random: Random) -> Rules:
    """Rules drawn by lot."""
    return Rules(PLACES[int(random.random() * 4)], SPLITS[int(random.random() * 5)])


def lay(
    items: Sequence[Item], order: Sequence[int], rooms: Sequence[Sides], rules: Rules
) -> tuple[list[list[Lying]], list[int]]:
    """What comes to lie in each room, and what found no place."""
    free: list[Free] = [(*room, 0, 0, n) for n, room in enumerate(rooms)]
    laid: list[list[Lying]] = [[] for _ in rooms]
    over: list[int] = []
    for item in order:
        found = find_place(free, items[item].ways, rules.place)
        if found is None:
            over.append(item)
            continue
        n, sides = found
        room = free.pop(n)
        laid[room[4]].append(Lying(item, room[2], room[3], sides))
        split(free, n, room, sides, rules.split)
    return laid, over


def find_place(free: Sequence[Free], ways: Sequence[Sides], place: str) -> tuple[int, Sides] | None:
    """The number of the free rectangle a piece goes into, and how it lies there; None for no place."""
    best, found = -1, None
    for n, room in enumerate(free):
        along, across = room[0], room[1]
        for sides in ways:
            over, above = along - sides[0], across - sides[1]
            if over < 0 or above < 0:
                continue
            if place == "first":
                return n, sides
            if place == "area":
                loss = along * across
            elif place == "short":
                loss = over if over < above else above
            else:
                loss = over if over > above else above
            if best < 0 or loss < best:
                best, found = loss, (n, sides)
    return found


def split(free: list[Free], n: int, room: Free, sides: Sides, rule: str) -> None:
    """Put what is left of a rectangle with a piece in its near corner back in its place in the list."""
    along, across, x, y, sheet = room
    over, above = along - sides[0], across - sides[1]
    if rule == "shorter":
        across_first = over < above
    elif rule == "longer":
        across_first = over >= above
    elif rule == "larger":
        across_first = max(over * across, sides[0] * above) >= max(along * above, over * sides[1])
    else:
        across_first = rule == "across"
    if over:
        free.insert(n, (over, across if across_first else sides[1], x + sides[0], y, sheet))
    if above:
        free.insert(n, (sides[0] if across_first else along, above, x, y + sides[1], sheet))


class Shuffler:
    """Puts pieces in an order by one of several sizes, larger first, made uncertain by lot."""

    def __init__(self, problem: SheetProblem, random: Random) -> None:
        self._random = random
        ways = [item.ways[0] for item in problem.items]
        self._sizes: list[list[float]] = [
            [float(a * b) for a, b in ways],
            [float(max(way)) for way in ways],
            [float(min(way)) for way in ways],
            [float(a + b) for a, b in ways],
            [float(a) for a, _ in ways],
            [float(b) for _, b in ways],
        ]

    def shuffle(self, pieces: Sequence[int]) -> list[int]:
        """A new order of pieces."""
        lot = self._random.random
        sizes = self._sizes[int(lot() * 6)]
        noise = max(0.0, lot() - 0.3) * NOISE / 0.7
        keyed = sorted((-sizes[piece] * (1 - noise * lot()), piece) for piece in pieces)
        return [piece for _, piece in keyed]


def pieces_of(layout: Layout) -> list[int]:
    """The items on a sheet, one for each piece."""
    return [piece.item for piece in layout.pieces]


def extent(pieces: Sequence[Lying]) -> Sides:
    """How far pieces reach, cuts included."""
    return max(piece.high(0) for piece in pieces), max(piece.high(1) for piece in pieces)


def downsize(problem: SheetProblem, plan: Sequence[Layout], supply: Sequence[int | None]) -> list[Layout]:
    """The plan with each sheet the cheapest that holds what lies on it as it lies; the dearest first."""
    left = list(supply)
    for layout in plan:
        left[layout.sold] = add(left[layout.sold], -1)
    smaller = []
    for layout in sorted(plan, key=lambda each: -problem.sold[each.sold].price):
        reach = extent(layout.pieces)
        left[layout.sold] = add(left[layout.sold], 1)
        fit = [k for k, room in enumerate(problem.rooms) if left[k] != 0 and fits(reach, room)]
        sold = min(fit, key=lambda k: (problem.sold[k].price, k))
        if problem.sold[sold].price == problem.sold[layout.sold].price:
            sold = layout.sold
        left[sold] = add(left[sold], -1)
        smaller.append(Layout(sold, layout.pieces))
    return smaller


def add(supply: int | None, count: int) -> int | None:
    """A supply changed by a number; None stays any number."""
    return None if supply is None else supply + count


def cost_of(problem: SheetProblem, plan: Sequence[Layout]) -> int:
    """What the sheets of a plan cost, hundredths."""
    return sum(problem.sold[layout.sold].price for layout in plan)


def first_fit(
    problem: SheetProblem, order: Sequence[int], supply: Sequence[int | None], main: int, rules: Rules
) -> tuple[list[Layout], list[int]]:
    """Each piece where it fits, else onto a new sheet, of stock `main` where that holds it; and the rest."""
    left = list(supply)
    free: list[Free] = []
    solds: list[int] = []
    laid: list[list[Lying]] = []
    over = []
    for item in order:
        ways = problem.items[item].ways
        found = find_place(free, ways, rules.place)
        if found is None:
            sold = _open(problem, ways, left, main)
            if sold is None:
                over.append(item)
                continue
            left[sold] = add(left[sold], -1)
            free.append((*problem.rooms[sold], 0, 0, len(laid)))
            solds.append(sold)
            laid.append([])
            found = len(free) - 1, next(way for way in ways if fits(way, problem.rooms[sold]))
        n, sides = found
        room = free.pop(n)
        laid[room[4]].append(Lying(item, room[2], room[3], sides))
        split(free, n, room, sides, rules.split)
    plan = [Layout(sold, tuple(pieces)) for sold, pieces in zip(solds, laid, strict=True)]
    return downsize(problem, plan, supply), over


def _open(problem: SheetProblem, ways: Sequence[Sides], left: Sequence[int | None], main: int) -> int | None:
    fit = [k for k, room in enumerate(problem.rooms) if left[k] != 0 and any(fits(way, room) for way in ways)]
    return min(fit, key=lambda k: (k != main, problem.sold[k].price, k), default=None)
