"""What one step up or down makes of a value. Which keys and wheels step is the window's business."""

from __future__ import annotations

from math import ceil, floor

from model.parameters import Kind, Parameter, Value
from model.units import MILLIMETRES_ONLY, MM_PER_INCH, LengthStyle

_NEAR = 1e-6
"""Of a step: a value this near to a step counts as standing on it."""


def step_value(row: Parameter, value: Value, count: int, style: LengthStyle) -> Value:
    """`value` moved by `count` steps of `row`, onto whole steps and within the row's bounds.

    Only lengths, counts and numbers step; any other value comes back as it is. A length shown in millimetres
    steps by whole millimetres. A reading that is missing (`None`) starts from the row's
    lowest, or from nothing where it goes below.

    >>> from model.parameters import find_parameter
    >>> from model.units import INCHES_16
    >>> step_value(find_parameter("opening.width"), 36.1, 1, INCHES_16)
    36.125
    """
    if row.kind not in (Kind.LENGTH, Kind.COUNT, Kind.NUMBER) or isinstance(value, bool | str | tuple):
        return value
    low, high = row.lowest or 0.0, row.highest or 0.0
    if value is None:
        return max(low, 0.0) if count > 0 else None
    in_millimetres = row.kind is Kind.LENGTH and style.units == MILLIMETRES_ONLY
    moved = _move(float(value), count, 1 / MM_PER_INCH if in_millimetres else row.step)
    moved = min(max(moved, low), high)
    return round(moved) if row.kind is Kind.COUNT else moved


def _move(value: float, count: int, step: float) -> float:
    """The `count`-th whole step from `value`, a step not yet reached being the first."""
    place = value / step
    start = floor(place + _NEAR) if count > 0 else ceil(place - _NEAR)
    return (start + count) * step
