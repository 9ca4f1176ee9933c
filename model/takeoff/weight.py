"""What each sub-assembly weighs, where its weight acts, and how many people lift it.

Specific gravities and the lifting equation's figures stand in model.reference.weights.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING

from model.board import Board, Point3, StockKind
from model.measures import CUBIC_INCHES
from model.reference.weights import (
    BENCH,
    BODY,
    FURTHEST_HANDS,
    HIGHEST_HANDS,
    LEAST_TRAVEL,
    LOAD_CONSTANT,
    LONG,
    NEAREST_HANDS,
    POOR_GRIP,
    SHEETS,
    SPECIFIC_GRAVITIES,
    WATER,
)
from model.solid import fill_space

if TYPE_CHECKING:
    from model.surround import Surround

ONE_BY_ONE = (StockKind.FRAMING, StockKind.MOULDING)
"""Framing and mouldings go up a piece at a time, not as one sub-assembly."""
MOST_PEOPLE = 4
"""More than this do not get round a surround; what is heavier goes up in parts. Shop choice."""


@dataclass(frozen=True, slots=True)
class Load:
    """A sub-assembly: pounds, and the centre of gravity in the room.

    `lifted` is what is lifted at once: all of it, or the heaviest piece of what goes up piece by piece.
    `size` is its reach along x, y, z; `advised` the pounds one person is advised to lift into its place,
    `people` how many share it evenly so that none has more, None where too many would be needed.
    """

    name: str
    pieces: int
    weight: float
    centre: Point3
    size: Point3
    lifted: float
    advised: float
    people: int | None


def list_loads(surround: Surround) -> tuple[Load, ...]:
    """A load for each sub-assembly in the order they go up."""
    moisture = surround.job.shop.rates.moisture
    groups: dict[str, list[Board]] = {}
    for board in surround.boards:
        groups.setdefault(board.assembly, []).append(board)
    floor = surround.layout.floor
    return tuple(_load(name, boards, moisture, floor) for name, boards in groups.items())


def total_weight(loads: Sequence[Load]) -> float:
    """Pounds of all loads."""
    return sum(load.weight for load in loads)


def centre_of(loads: Sequence[Load]) -> Point3:
    """Where the weight of all loads acts together."""
    return _mean([(load.weight, load.centre) for load in loads])


def density_of(wood: str, moisture: float) -> float:
    """Pounds to the cubic foot of the wood a board is named by, at a moisture content in percent.

    >>> round(density_of("poplar", 12), 1), density_of("plywood", 12)
    (29.4, 36.0)
    """
    if wood in SHEETS:
        return SHEETS[wood].value
    return WATER.value * SPECIFIC_GRAVITIES[wood].value * (1 + moisture / 100)


def weigh_board(board: Board, moisture: float) -> tuple[float, Point3]:
    """Pounds, and the centre of gravity in the room."""
    volume, centre = fill_space(board)
    return volume / CUBIC_INCHES * density_of(board.stock.wood, moisture), centre


def _load(name: str, boards: Sequence[Board], moisture: float, floor: float) -> Load:
    parts = [weigh_board(board, moisture) for board in boards]
    weight, centre, size = sum(part for part, _ in parts), _mean(parts), _size(boards)
    one_by_one = all(board.stock.kind in ONE_BY_ONE for board in boards)
    lifted = max(part for part, _ in parts) if one_by_one else weight
    longest = max(board.length for board in boards) if one_by_one else max(size)
    deep = max(max(board.width, board.thickness) for board in boards) if one_by_one else size[2]
    advised = advised_weight(BODY.value + deep / 2, BENCH.value, centre[1] - floor)
    people = _people(lifted, advised, longest)
    return Load(name, len(boards), weight, centre, size, lifted, advised, people)


def _size(boards: Sequence[Board]) -> Point3:
    low = [min(places) for places in zip(*(board.bounds[0] for board in boards), strict=True)]
    high = [max(places) for places in zip(*(board.bounds[1] for board in boards), strict=True)]
    return high[0] - low[0], high[1] - low[1], high[2] - low[2]


def _mean(parts: Sequence[tuple[float, Point3]]) -> Point3:
    total = sum(weight for weight, _ in parts)
    x, y, z = (sum(weight * at[i] for weight, at in parts) / total for i in range(3))
    return x, y, z


def advised_weight(reach: float, start: float, stop: float) -> float:
    """Pounds one person is advised to lift with both hands, once, without turning, on a poor grip.

    The revised lifting equation, at whichever end of the lift allows less. `reach` is from the ankles to
    the hands, `start` and `stop` are the hands' heights over the floor, inches. 0 beyond its limits.
    """
    if reach > FURTHEST_HANDS.value or max(start, stop) > HIGHEST_HANDS.value:
        return 0.0
    across = NEAREST_HANDS.value / max(reach, NEAREST_HANDS.value)
    travel = max(abs(stop - start), LEAST_TRAVEL.value)
    height = min(1 - 0.0075 * abs(hands - 30) for hands in (start, stop))
    return LOAD_CONSTANT.value * across * height * (0.82 + 1.8 / travel) * POOR_GRIP.value


def _people(weight: float, advised: float, longest: float) -> int | None:
    """How many share a load evenly; two for whatever is long; None where too many would be needed."""
    if advised <= 0:
        return None
    needed = max(ceil(weight / advised - 1e-9), 2 if longest > LONG.value else 1)
    return needed if needed <= MOST_PEOPLE else None


def describe_lift(load: Load) -> str:
    """Who lifts it, in a few words."""
    if load.advised <= 0:
        return "from a platform: no lift is advised with the hands over 70 in. or so far out"
    if load.people is None:
        return f"in parts or with props: more than {MOST_PEOPLE} would have to share it"
    many = {1: "one person", 2: "two people", 3: "three people"}.get(load.people, f"{load.people} people")
    long = load.people == 2 and load.lifted <= load.advised
    return f"{many}, to steady its length" if long else many
