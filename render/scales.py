"""The standard scales a view may be drawn at, and the choice among them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from model.units import MILLIMETRES_ONLY


@dataclass(frozen=True, slots=True)
class Scale:
    """`ratio` is real inches to one inch on paper; `name` is how the trade writes it."""

    name: str
    ratio: float


ARCHITECTURAL: tuple[Scale, ...] = (
    Scale("Full size", 1),
    Scale('6" = 1\'-0"', 2),
    Scale('3" = 1\'-0"', 4),
    Scale('1 1/2" = 1\'-0"', 8),
    Scale('1" = 1\'-0"', 12),
    Scale('3/4" = 1\'-0"', 16),
    Scale('1/2" = 1\'-0"', 24),
    Scale('3/8" = 1\'-0"', 32),
    Scale('1/4" = 1\'-0"', 48),
    Scale('3/16" = 1\'-0"', 64),
    Scale('1/8" = 1\'-0"', 96),
    Scale('1/16" = 1\'-0"', 192),
)
"""The scales on a US architect's rule, largest first; the last is from memory."""

METRIC: tuple[Scale, ...] = (
    Scale("1:1", 1),
    Scale("1:2", 2),
    Scale("1:5", 5),
    Scale("1:10", 10),
    Scale("1:20", 20),
    Scale("1:50", 50),
    Scale("1:100", 100),
    Scale("1:200", 200),
)
"""Full size and the reductions of ISO 5455:1979 (EN ISO 5455:1994), clause 4, largest first."""


def list_scales(units: str) -> tuple[Scale, ...]:
    """The scales for a job whose lengths are shown in `units`, largest first."""
    return METRIC if units == MILLIMETRES_ONLY else ARCHITECTURAL


def choose_scale(scales: Sequence[Scale], fits: Callable[[float], bool]) -> Scale:
    """The largest of `scales` (largest first) whose ratio fits; the smallest when none does."""
    for scale in scales[:-1]:
        if fits(scale.ratio):
            return scale
    return scales[-1]


def scale_caption(scale: Scale) -> str:
    """What stands beside a view's title: the scale, after ISO 5455 with its word when it is a bare ratio."""
    return f"SCALE {scale.name}" if ":" in scale.name else scale.name
