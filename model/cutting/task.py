"""What a cutting planner is asked and what it answers, in whole numbers: no job, no wood, no drawing here.

Lengths are whole sixty-fourths of an inch, so that nothing is decided by rounding; whoever asks rounds
pieces, kerf and trim up and stock down, and a plan is then never too short. Money is whole hundredths of
the price list's currency.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil, floor

UNITS = 64
"""To the inch."""
GRAIN = 1e-6
"""Units by which a length may miss a whole number and still be taken for it: the noise of sums of floats."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """`count` like pieces, `length` along the grain by `width`, in units; `key` is unique in its task.

    `mitre_low` and `mitre_high` are how far, at each end, the cut runs back across the width from the long
    point that `length` is measured to; 0 is square. Pieces with the same `batch`, not "", come out of one
    lane of one board, for matching grain; boards only. `may_turn` lets a piece lie across the grain of a
    sheet; sheets only.
    """

    key: str
    length: int
    width: int
    count: int = 1
    mitre_low: int = 0
    mitre_high: int = 0
    batch: str = ""
    may_turn: bool = False


@dataclass(frozen=True, slots=True)
class Stock:
    """Boards or sheets of one size that are sold, or lie there already, in units; `price` for one of them.

    `supply` is how many there are, None for any number. `trim_ends` comes off each end and `trim_edges` off
    each edge before anything is cut, each with its own saw cut in it. What lies there already mostly costs 0.
    """

    key: str
    length: int
    width: int
    price: int
    supply: int | None = None
    trim_ends: int = 0
    trim_edges: int = 0


@dataclass(frozen=True, slots=True)
class Task:
    """Pieces to be had out of stock of one thickness and wood. `keep` is the least length worth keeping."""

    wanted: tuple[Wanted, ...]
    stock: tuple[Stock, ...]
    kerf: int
    keep: int = 0


@dataclass(frozen=True, slots=True)
class Refusal:
    """Pieces that no stock holds: the key, how many of them, why, and the least size that would hold one."""

    key: str
    count: int
    why: str
    wants_length: int
    wants_width: int


@dataclass(frozen=True, slots=True)
class Proof:
    """How good a plan is: what it costs, and what no plan can cost less than.

    `duals` maps a piece's key to its worth in 2**-20 hundredths; with the stock's prices they show the bound
    to anyone who can add up, without a solver. Empty where the bound rests on something else.
    """

    cost: int
    bound: int
    duals: tuple[tuple[str, int], ...] = ()

    @property
    def is_proven(self) -> bool:
        """Whether nothing cheaper exists."""
        return self.cost == self.bound


@dataclass(frozen=True, slots=True)
class Lane:
    """A strip ripped from a board, or the whole board's width: pieces by key, from the low end on.

    `turned` says for each piece whether it lies the other way round, its high end first, to share a mitre's
    cut; empty where none does.
    """

    width: int
    pieces: tuple[str, ...]
    turned: tuple[bool, ...] = ()


@dataclass(frozen=True, slots=True)
class SawnBoard:
    """One board of stock and the lanes ripped from it, from one edge to the other."""

    stock: str
    lanes: tuple[Lane, ...]


@dataclass(frozen=True, slots=True)
class BoardPlan:
    """Every board to be bought or taken, what comes out of each, what could not be had, and the proof."""

    boards: tuple[SawnBoard, ...]
    refused: tuple[Refusal, ...]
    proof: Proof


@dataclass(frozen=True, slots=True)
class Placed:
    """A piece on a sheet: its near corner from the trimmed sheet's corner, its size as it lies, in units.

    x runs along the sheet's length, y along its width.
    """

    key: str
    x: int
    y: int
    length: int
    width: int


@dataclass(frozen=True, slots=True)
class ThroughCut:
    """A cut right through the part of a sheet that lies from (x0, y0) to (x1, y1), the kerf from `at` on.

    `axis` is the one the cut's place is measured along: "x" for a crosscut at x = `at`, "y" for a rip.
    """

    axis: str
    at: int
    x0: int
    y0: int
    x1: int
    y1: int


@dataclass(frozen=True, slots=True)
class SawnSheet:
    """One sheet, its pieces, and its cuts in the order they are made. `left` are parts worth keeping."""

    stock: str
    pieces: tuple[Placed, ...]
    cuts: tuple[ThroughCut, ...]
    left: tuple[Placed, ...] = ()


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """Every sheet to be bought or taken, what comes out of each, what could not be had, and the proof."""

    sheets: tuple[SawnSheet, ...]
    refused: tuple[Refusal, ...]
    proof: Proof


class Effort:
    """How long to look: to the end of a planner's own count of steps, the same on every machine, or shorter.

    `should_stop` is asked often; once it says yes, the best plan so far is the answer, with its bound. `tell`
    is given every better plan on the way.
    """

    def __init__(
        self,
        should_stop: Callable[[], bool] = lambda: False,
        tell: Callable[[BoardPlan | SheetPlan], None] = lambda plan: None,
    ) -> None:
        self.should_stop, self.tell = should_stop, tell


class Steps:
    """Counts how often an effort asks whether to stop: an end that is the same on every machine."""

    def __init__(self, most: int) -> None:
        self._most, self._taken = most, 0

    def begin(self) -> None:
        """Count from nothing again, as for the next group of an order."""
        self._taken = 0

    def are_over(self) -> bool:
        """Count one more; whether there were enough."""
        self._taken += 1
        return self._taken > self._most


def round_up(inches: float) -> int:
    """Units that hold a length: for pieces, kerf and trim."""
    return ceil(inches * UNITS - GRAIN)


def round_down(inches: float) -> int:
    """Units that a length holds: for stock."""
    return floor(inches * UNITS + GRAIN)


def to_inches(units: int) -> float:
    """Inches of a number of units."""
    return units / UNITS
