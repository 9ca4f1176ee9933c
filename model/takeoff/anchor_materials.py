"""The anchors as they are bought: what they go into, how long, how many.

Where they go is model.takeoff.anchor_places'. How deep each must go is for its maker to say in the end.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.cutting.supplies import ANCHORS
from model.measures import BARE
from model.reference.anchors import (
    EMBEDMENT,
    FRAMING_SCREWS,
    MASONRY_SCREWS,
    SCREW_INTO_FRAMING,
    WALL_SKIN,
)
from model.takeoff.anchor_places import MASONRY, WALL
from model.takeoff.anchors import plan_anchors
from model.takeoff.materials import Basis, Material, find_rate

if TYPE_CHECKING:
    from model.surround import Surround

HAIR = 1e-9
KINDS = {MASONRY: "1/4 in. masonry screws", WALL: "1/4 in. structural wood screws into framing"}
"""What is bought, by what it goes into. Their diameter is ANCHOR_DIAMETER."""


@dataclass(frozen=True, slots=True)
class Bought:
    """One size: `into` MASONRY or WALL, `length` in inches and how many; `through` is the thickest nailer."""

    into: str
    length: float
    count: int
    through: float


def list_bought(surround: Surround) -> tuple[Bought, ...]:
    """Every size of anchor there is, masonry first, the longest first of each."""
    counts: Counter[tuple[str, float]] = Counter()
    through: dict[tuple[str, float], float] = {}
    for anchor in plan_anchors(surround).anchors:
        thick = surround.boards[anchor.board].extent("z")
        key = anchor.into, choose_length(anchor.into, thick)
        counts[key] += 1
        through[key] = max(thick, through.get(key, 0.0))
    order = sorted(counts, key=lambda key: (list(KINDS).index(key[0]), -key[1]))
    return tuple(Bought(*key, counts[key], through[key]) for key in order)


def choose_length(into: str, thickness: float) -> float:
    """The shortest length sold that goes through a nailer and deep enough behind it, in.; the longest where
    none does.

    >>> choose_length(MASONRY, 1.5), choose_length(MASONRY, 0.75), choose_length(WALL, 1.5)
    (3.25, 2.75, 3.5)
    """
    sizes: Sequence[float] = MASONRY_SCREWS if into == MASONRY else FRAMING_SCREWS
    behind = EMBEDMENT.value if into == MASONRY else WALL_SKIN.value + SCREW_INTO_FRAMING.value
    return next((size for size in sizes if size >= thickness + behind - HAIR), sizes[-1])


def list_anchor_materials(surround: Surround) -> tuple[Material, ...]:
    """A line of the materials for each size."""
    rates = (find_rate(surround.job, "anchor.spacing"),)
    return tuple(
        Material(
            ANCHORS,
            bought.count,
            BARE,
            Basis(KINDS[bought.into], length=bought.length, count=bought.count),
            rates,
            "anchor",
        )
        for bought in list_bought(surround)
    )
