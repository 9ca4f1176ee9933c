"""The clearance rules for masonry fireplaces, as functions of where a point of wood lies.

A point is given by its projection from the masonry and its distances beside and above the opening;
these are negative within the opening's width and below its top. Arrays have an entry (n,) for each point,
inches.
Finding those points on boards is model.check.nearest's; saying what they mean is model.check.mantel's.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

import numpy as np
from numpy.typing import NDArray

from model.reference.clearance import (
    IRC_NONE_WITHIN,
    IRC_PROJECTION_PER_INCH,
    IRC_ZONE,
    NBC_ABOVE,
    NBC_NONE_WITHIN,
    NBC_PROJECTION,
    NFPA_ABOVE,
    NFPA_BESIDE,
    NFPA_NONE_WITHIN,
    NFPA_PROJECTION,
)

Lengths = NDArray[np.float64]

HAIR = 1e-6
"""Differences up to this, in inches, are arithmetic and not wood."""


@dataclass(frozen=True, slots=True)
class Held:
    """Points held against a rule, one entry each, inches: the distance that counts, and what it must be.

    `upward` says that it is the height above the opening. `needed` is infinite where no distance is
    enough, `measured` and `needed` are NaN where nothing is known.
    """

    measured: Lengths
    needed: Lengths
    upward: NDArray[np.bool_]

    @property
    def spare(self) -> Lengths:
        """What is left over; below nothing where the rule is broken."""
        return self.measured - self.needed


def straight_distance(beside: Lengths, above: Lengths) -> Lengths:
    """Distance from the opening's nearest point, straight to its corner where that is nearest."""
    return np.hypot(np.maximum(beside, 0.0), np.maximum(above, 0.0))


def square_distance(beside: Lengths, above: Lengths) -> Lengths:
    """The larger of the level and the plumb distance: never more than the straight one."""
    return np.maximum(np.maximum(beside, above), 0.0)


def irc_least_distance(projection: Lengths) -> Lengths:
    """Least distance from the opening, IRC R1001.11 exception 4: 6, then 8 to 1, then 12 in."""
    low, high = IRC_NONE_WITHIN.value, IRC_ZONE.value
    return np.minimum(np.maximum(projection / IRC_PROJECTION_PER_INCH.value, low), high)


def irc_greatest_projection(distance: float) -> float | None:
    """Greatest projection at `distance`: None where no wood may be, infinite from 12 in. on."""
    if distance < IRC_NONE_WITHIN.value - HAIR:
        return None
    return inf if distance >= IRC_ZONE.value - HAIR else distance * IRC_PROJECTION_PER_INCH.value


def hold_irc(projection: Lengths, beside: Lengths, above: Lengths, distance: Lengths) -> Held:
    """IRC R1001.11 exception 4, at top and sides alike; `distance` is straight or square."""
    return Held(distance, irc_least_distance(projection), above >= beside - HAIR)


def is_upward(
    beside: Lengths, above: Lengths, spare_above: Lengths, spare_beside: Lengths
) -> NDArray[np.bool_]:
    """Whether a point is held by its height: only above, or off the corner with more to spare there.

    A point right on the line of the opening's side or top is off that corner. As much both ways, but for
    rounding, is held by its height.
    """
    return (beside < -HAIR) | ((above >= -HAIR) & ~(spare_beside > spare_above + HAIR))


def hold_nfpa211(projection: Lengths, beside: Lengths, above: Lengths, distance: Lengths) -> Held:
    """NFPA 211: 6 in. for what projects up to 1 1/2 in.; more needs 12 in. above, or 6 and itself beside.

    A point off the corner that projects more is clear when it is clear in either direction.
    """
    bold = projection > NFPA_PROJECTION.value + HAIR
    least_beside = NFPA_BESIDE.value + projection
    upward = is_upward(beside, above, above - NFPA_ABOVE.value, beside - least_beside)
    measured = np.maximum(np.where(upward, above, beside), 0.0)
    needed = np.where(upward, NFPA_ABOVE.value, least_beside)
    return Held(np.where(bold, measured, distance), np.where(bold, needed, NFPA_NONE_WITHIN.value), upward)


def hold_nbc(projection: Lengths, beside: Lengths, above: Lengths, distance: Lengths) -> Held:
    """NBC 9.22.9.1: 150 mm; what projects more than 38 mm above the opening needs 300 mm there.

    Beside the opening 150 mm are enough however far a part stands out. Off the corner a point that projects
    more is clear when it is clear in either direction.
    """
    bold = projection > NBC_PROJECTION.inches + HAIR
    none_within, high = NBC_NONE_WITHIN.inches, NBC_ABOVE.inches
    upward = is_upward(beside, above, above - high, beside - none_within)
    measured = np.maximum(np.where(upward, above, beside), 0.0)
    needed = np.where(upward, high, none_within)
    return Held(np.where(bold, measured, distance), np.where(bold, needed, none_within), upward)
