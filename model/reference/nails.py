"""Finishing nails, brads and screws: sizes that are sold and rules for choosing one.

What a surround takes of them is worked out in model.takeoff.fasteners.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.reference.sourced import Sourced, Standing


@dataclass(frozen=True, slots=True)
class Nail:
    """A finishing nail: its penny size, length in inches and how many make a pound."""

    penny: int
    length: float
    per_pound: float


NAIL_TABLE = "tables of finishing nails by penny size"
NAILS = (
    Nail(2, 1.0, 1351),
    Nail(3, 1.25, 807),
    Nail(4, 1.5, 584),
    Nail(5, 1.75, 500),
    Nail(6, 2.0, 309),
    Nail(7, 2.25, 238),
    Nail(8, 2.5, 189),
    Nail(9, 2.75, 172),
    Nail(10, 3.0, 121),
)
"""NAIL_TABLE, published."""
BRADS = (0.5, 0.625, 0.75, 1.0, 1.25, 1.5, 2.0)
"""Lengths of 18 gauge brads, in. Common practice."""
SCREWS = {0.625: 1.0, 0.875: 1.25, 1.125: 1.5, 1.5: 2.5}
"""Pocket screw length by the thickest stock it is for, in. Common practice."""

WOOD_SCREWS = (1.25, 1.5, 1.75, 2.0, 2.25, 2.5, 3.0, 3.5)
"""Lengths of no. 8 wood screws, in. Common practice."""
SCREW_DIAMETER = Sourced(
    0.164, "in", Standing.PUBLISHED, "screw charts: 0.060 in. and 0.013 in. for each number"
)
SCREW_THREAD = Sourced(1.0, "in", Standing.SHOP_CHOICE, "thread of a shelf's screws in the ledger")
SCREW_SPACING = Sourced(16.0, "in", Standing.SHOP_CHOICE, "a shelf's screws along the ledger, at most")
THREADED = Sourced(2 / 3, "", Standing.COMMON_PRACTICE, "part of a wood screw that is threaded")
NARROWEST_SCREWED = Sourced(0.5, "in", Standing.SHOP_CHOICE, "a strip under this takes no no. 8 screw")

FROM_END = Sourced(2.5, "in", Standing.COMMON_PRACTICE, "first nail 2 to 3 in. from an end")
PAIRED_FROM = Sourced(
    3.0, "in", Standing.PUBLISHED, "construction cost book of 2018, trim: casings are nailed in pairs"
)
"""The width from which is a shop choice."""
NARROW = Sourced(1.5, "in", Standing.SHOP_CHOICE, "a frame joint under this takes one screw")
BRADS_TO_A_MITRE = Sourced(2, "", Standing.COMMON_PRACTICE, "one from each side")
MOST_THROUGH = Sourced(1.0, "in", Standing.SHOP_CHOICE, "thickest piece that a finish nail goes through")
SHORT_OF_FACE = Sourced(1 / 8, "in", Standing.SHOP_CHOICE, "wood left before a nail's point")
THIN = Sourced(3 / 8, "in", Standing.SHOP_CHOICE, "pieces up to this are bradded")
