"""How far an edge may go before a part is over its clearance, and from where on one that is over is within.

Sought on the real model, in strides that double and then halve: a limit beyond which a part is within again
before the next stride is not seen.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import floor

from model.check.finding import Status
from model.check.in_force import read_statuses
from model.errors import Refused
from model.job import Job
from model.parameters import find_parameter
from model.shaping.grip import Grip, move_edge
from model.shaping.snap import SAME, Mark, step_along_tape
from model.surround import plan_surround
from model.units import LengthStyle, format_length

Over = frozenset[str]
"""Parts that are over their clearance."""
Asks = Callable[[Over], Over]
"""What of it is looked for."""


def find_limits(job: Job, grip: Grip) -> Iterator[Mark | None]:
    """The limits above and below the value as it is; None after each trial that found none."""
    trial = _Trial(job, grip)
    before = trial.over_at(0, 1) or frozenset()
    yield None
    for way in (1, -1):
        yield from _find(trial, way, lambda over: over - before, _mark_last, 1)
        if before:
            yield from _find(trial, way, lambda over: before - over, _mark_first, 0)


def _mark_last(value: float, part: str, way: int, style: LengthStyle) -> Mark:
    """Where a part that is clear is so for the last time."""
    past = f"past the clearance limit of the {part}, {format_length(value, style)}"
    return Mark(value, f"clearance limit of the {part}", way, past)


def _mark_first(value: float, part: str, way: int, _style: LengthStyle) -> Mark:
    """Where a part that is over is clear for the first time."""
    return Mark(value, f"first that clears the {part}", -way)


Marks = Callable[[float, str, int, LengthStyle], Mark]
"""What becomes of a value, a part, a way and how lengths are written."""


class _Trial:
    """Tries values on the tape, counted from the one that holds; what was tried is not tried again."""

    def __init__(self, job: Job, grip: Grip) -> None:
        self._job, self._grip = job, grip
        self.style = job.about.length_style
        self._known: dict[float, Over | None] = {}

    def value_at(self, count: int, way: int) -> float:
        """The value `count` fractions away."""
        return step_along_tape(self._grip.value, way * count, self.style) if count else self._grip.value

    def most(self, way: int) -> int:
        """How many fractions there are up to the row's bound."""
        row, step = find_parameter(self._grip.path), abs(self.value_at(2, 1) - self.value_at(1, 1))
        bound = row.highest if way > 0 else row.lowest
        if bound is None:
            return 0
        return max(floor((bound - self._grip.value) * way / step + SAME), 0)

    def over_at(self, count: int, way: int) -> Over | None:
        """The parts that are over there; None where the value is refused."""
        value = self.value_at(count, way)
        if value not in self._known:
            self._known[value] = self._try(value)
        return self._known[value]

    def _try(self, value: float) -> Over | None:
        try:
            surround = plan_surround(move_edge(self._job, self._grip, value))
        except Refused:
            return None
        statuses = read_statuses(surround)
        return frozenset(part for part, status in statuses.items() if status is Status.FAIL)


def _find(trial: _Trial, way: int, asks: Asks, mark: Marks, back: int) -> Iterator[Mark | None]:
    """The first value at which there is something of what is asked for, or the one `back` before it."""
    low, high, most = 0, 0, trial.most(way)
    while low < most:
        high = min(2 * low + 1, most)
        over = trial.over_at(high, way)
        yield None
        if over is None:
            return
        if asks(over):
            break
        low = high
    else:
        return
    while high - low > 1:
        middle = (low + high) // 2
        over = trial.over_at(middle, way)
        yield None
        low, high = (low, middle) if over is not None and asks(over) else (middle, high)
    part = min(asks(trial.over_at(high, way) or frozenset()))
    yield mark(trial.value_at(high - back, way), part, way, trial.style)
