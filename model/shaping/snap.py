"""Where a value settles that a pointer asks for: on a mark near it, or on the tape's next fraction.

What marks there are stands in marks beside this.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from model.build.layout import lay_out
from model.errors import Refused
from model.job import Job
from model.parameters import find_parameter
from model.shaping.grip import Grip, move_edge
from model.units import MILLIMETRES_ONLY, MM_PER_INCH, LengthStyle, format_length, round_length

WHOLE_MM = (1, 2, 5, 10)
"""Steps in which millimetres are pointed at."""
SAME = 1e-6
"""Values nearer to each other than this, in inches, are one."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A value worth stopping at, inches, and why, in words that stand by themselves.

    `over` is on which side of it something is over a limit: 1 above, -1 below, 0 where it is no limit. From
    that side it pulls from further off. `past` is what to say there, "" for nothing.
    """

    value: float
    reason: str
    over: int = 0
    past: str = ""

    def is_past(self, value: float) -> bool:
        """Whether a value lies on the side on which something is over."""
        return (value - self.value) * self.over > SAME


@dataclass(frozen=True, slots=True)
class Pointer:
    """How exactly a value is pointed at, inches of the value.

    Marks pull it from `pull` away; limits, once it is past them, from `hold`. No fraction finer than `grain`
    is meant.
    """

    pull: float = 0.0
    hold: float = 0.0
    grain: float = 0.0

    def reaches(self, mark: Mark, wanted: float) -> bool:
        """Whether the mark pulls a value that is asked for."""
        return abs(mark.value - wanted) <= (self.hold if mark.is_past(wanted) else self.pull)


EXACT = Pointer()


@dataclass(frozen=True, slots=True)
class Settled:
    """The value that holds, and why it is not simply the one asked for; "" where it is the next fraction.

    `is_over` says that the reason tells of something that is over its limit.
    """

    value: float
    reason: str = ""
    is_over: bool = False


def settle(
    job: Job, grip: Grip, wanted: float, marks: Sequence[Mark] = (), pointer: Pointer = EXACT
) -> Settled:
    """What becomes of `wanted`, inches: the nearest of `marks` that pulls it, else the next fraction.

    Never outside the row's bounds, and never more than can be built in `job`.
    """
    style = job.about.length_style
    settled = _bound(grip, _settle(wanted, marks, pointer, style), style)
    return _warn(_hold_to_room(job, grip, settled, style), marks)


def is_built(job: Job, grip: Grip, value: float) -> bool:
    """Whether a value can be entered and built as it is."""
    return _shortfall(job, grip, value) is None


def step_along_tape(value: float, count: int, style: LengthStyle) -> float:
    """`value` moved by `count` fractions of the tape; one that lies between two goes to the next first."""
    per_inch = _per_inch(style)
    place = value * per_inch
    start = floor(place + SAME) if count > 0 else ceil(place - SAME)
    return (start + count) / per_inch


def next_mark(value: float, way: int, marks: Sequence[Mark]) -> Mark | None:
    """The nearest mark above (`way` 1) or below (-1) a value, None where there is none."""
    beyond = [mark for mark in marks if (mark.value - value) * way > SAME]
    return min(beyond, key=lambda mark: abs(mark.value - value), default=None)


def explain(value: float, marks: Sequence[Mark]) -> str:
    """Why a value is worth stopping at: what every mark at it says, "" where there is none."""
    return "; ".join(dict.fromkeys(mark.reason for mark in marks if abs(mark.value - value) <= SAME))


def explain_value(value: float, marks: Sequence[Mark]) -> Settled:
    """The value as it is, with all that is to be said of it."""
    return _warn(Settled(value, explain(value, marks)), marks)


def _warn(settled: Settled, marks: Sequence[Mark]) -> Settled:
    """With what is over its limit there, where nothing else is to be said."""
    past = [mark for mark in marks if mark.past and mark.is_past(settled.value)]
    if settled.reason or not past:
        return settled
    nearest = min(past, key=lambda mark: abs(mark.value - settled.value))
    return Settled(settled.value, nearest.past, is_over=True)


def _settle(wanted: float, marks: Sequence[Mark], pointer: Pointer, style: LengthStyle) -> Settled:
    """A limit goes before what is merely near."""
    pulling = [mark for mark in marks if pointer.reaches(mark, wanted)]
    near = min(pulling, key=lambda mark: (not mark.over, abs(mark.value - wanted)), default=None)
    value = round_coarsely(wanted, pointer.grain, style) if near is None else near.value
    return Settled(value, explain(value, marks))


def round_coarsely(value: float, grain: float, style: LengthStyle) -> float:
    """`value` to the finest division of the tape that is no finer than `grain` inches, one inch at the most.

    Millimetres are rounded to 1, 2, 5 or 10.
    """
    if style.units == MILLIMETRES_ONLY:
        step = next((mm for mm in WHOLE_MM if mm / MM_PER_INCH >= grain), WHOLE_MM[-1])
        return round(value * MM_PER_INCH / step) * step / MM_PER_INCH
    denominator = style.denominator
    while denominator > 1 and denominator * grain > 1:
        denominator //= 2
    return round_length(value, LengthStyle(style.units, denominator))


def _bound(grip: Grip, settled: Settled, style: LengthStyle) -> Settled:
    """Within the bounds of the grip's row."""
    row = find_parameter(grip.path)
    if row.highest is not None and settled.value > row.highest + SAME:
        return Settled(row.highest, f"no more than {format_length(row.highest, style)} can be entered")
    if row.lowest is not None and settled.value < row.lowest - SAME:
        return Settled(row.lowest, f"no less than {format_length(row.lowest, style)} can be entered")
    return settled


def _hold_to_room(job: Job, grip: Grip, settled: Settled, style: LengthStyle) -> Settled:
    """What of it can be built: where the layout falls short, the last fraction before it does."""
    short = _shortfall(job, grip, settled.value)
    if short is None:
        return settled
    built, reason = short
    per_inch = _per_inch(style)
    inwards = floor if built < settled.value else ceil
    within = inwards(built * per_inch + (SAME if built < settled.value else -SAME)) / per_inch
    if abs(within - built) > SAME and _shortfall(job, grip, within) is not None:
        within = built
    return Settled(within, reason)


def _shortfall(job: Job, grip: Grip, value: float) -> tuple[float, str] | None:
    """What is built in place of a value, and why; None where it is built as it is."""
    try:
        moved = move_edge(job, grip, value)
    except Refused as refusal:
        return grip.value, refusal.wanted
    for short in lay_out(moved.site, moved.design, moved.shop.rates.moisture).shortfalls:
        if short.path == grip.path and isinstance(short.built, int | float):
            return float(short.built), short.reason
    return None


def _per_inch(style: LengthStyle) -> float:
    return MM_PER_INCH if style.units == MILLIMETRES_ONLY else float(style.denominator)
