"""What is used up beside wood, as it is sold: how much is in a pack, and what a pack costs its buyer.

How much a job needs of each is model.takeoff.materials' business; the names are those of its lines.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from model.measures import (
    BARE,
    FLUID_OUNCE,
    FOOT,
    GALLON,
    POUND,
    Measure,
    format_measure,
    parse_measure,
)
from model.units import LengthStyle

ANCHORS = "Anchors and screws into the wall"
"""One for each place of the anchor plan, whatever it goes into."""
PRIMER, STAIN, SEALER = "Primer", "Stain", "Sealer"
TOP_COAT, CLEAR_COAT = "Top coat", "Clear coat"
HAIR = 1e-9
PLACES = 6
"""Significant figures of what is in a pack."""


@dataclass(frozen=True, slots=True)
class Supply:
    """One thing that is sold by the pack: `pack` of its measure in each, `price` hundredths for one.

    `price` is None where it is not known. `whole` packs are paid for, or else only what is used.
    """

    name: str
    pack: float
    price: int | None = None
    whole: bool = True

    def cost(self, amount: float) -> int | None:
        """What so much of it costs in hundredths, None where the price is not known."""
        if self.price is None:
            return None
        packs = self.count_packs(amount)
        return round(self.price * packs)

    def count_packs(self, amount: float) -> float:
        """How many packs are paid for."""
        packs = amount / self.pack
        return ceil(packs - HAIR) if self.whole else packs


@dataclass(frozen=True, slots=True)
class Sort:
    """What a supply is measured in, what one of it is called where it is counted, and what it counts as."""

    measure: Measure
    unit: str
    finish: bool

    def format_pack(self, amount: float, style: LengthStyle) -> str:
        """How much is in a pack, with its unit: ``16 fl oz``, ``25 anchors``."""
        return f"{format_measure(amount, self.measure, style, PLACES)} {self.unit}".rstrip()

    def parse_pack(self, text: str, field: str, style: LengthStyle) -> float:
        """What `text` means, its unit said or not: ``25``, ``25 anchors``, ``1 anchor``. Raises Refused."""
        bare = text.strip().removesuffix(self.unit).removesuffix(self.unit.removesuffix("s"))
        return parse_measure(bare, field, self.measure, style)


SORTS = {
    "Wood glue": Sort(FLUID_OUNCE, "", False),
    "Finish nails": Sort(POUND, "", False),
    "Brads": Sort(BARE, "brads", False),
    "Pocket screws": Sort(BARE, "screws", False),
    "Wood screws": Sort(BARE, "screws", False),
    ANCHORS: Sort(BARE, "anchors", False),
    "Hook-and-loop tape": Sort(FOOT, "", False),
    "Wood filler": Sort(FLUID_OUNCE, "", True),
    "Abrasive": Sort(BARE, "discs", True),
    PRIMER: Sort(GALLON, "", True),
    STAIN: Sort(GALLON, "", True),
    SEALER: Sort(GALLON, "", True),
    "Caulk": Sort(BARE, "cartridges", True),
    TOP_COAT: Sort(GALLON, "", True),
    CLEAR_COAT: Sort(GALLON, "", True),
}
"""Every supply by its name, in the order of its use."""
USUAL_SUPPLIES = (
    Supply("Wood glue", 16.0),
    Supply("Finish nails", 1.0),
    Supply("Brads", 1000.0),
    Supply("Pocket screws", 100.0),
    Supply("Wood screws", 100.0),
    Supply(ANCHORS, 10.0),
    Supply("Hook-and-loop tape", 15.0),
    Supply("Wood filler", 16.0),
    Supply("Abrasive", 10.0),
    Supply(PRIMER, 0.25),
    Supply(STAIN, 0.25),
    Supply(SEALER, 0.25),
    Supply("Caulk", 1.0),
    Supply(TOP_COAT, 0.25),
    Supply(CLEAR_COAT, 0.25),
)
"""Packs as they are commonly sold, common practice; nobody knows their prices but who buys them."""
