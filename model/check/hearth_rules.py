"""What each rule set asks of the hearth before a masonry fireplace. Holding a site to it is hearth's."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil

from model.check.clearance import HAIR
from model.check.regime import AUSTRALIA, CANADA, ENGLAND, IRC, NFPA211, STRICTEST
from model.reference.hearth import (
    ABCB_BELOW,
    ABCB_FRONT,
    ABCB_SIDE,
    ADJ_FRONT,
    ADJ_LEAST_THICKNESS,
    ADJ_SIDE,
    LARGE_FRONT,
    LARGE_OPENING,
    LARGE_SIDE,
    LEAST_THICKNESS,
    NBC_FRONT,
    NBC_HIGH_RISE,
    NBC_LEAST_THICKNESS,
    NBC_LOW_RISE,
    NBC_MORE,
    NBC_SIDE,
    NBC_STEP,
    NBC_STEP_MORE,
    NFPA_LARGE_FRONT,
    NFPA_LARGE_SIDE,
    NFPA_LEAST_THICKNESS,
    NFPA_SMALL_FRONT,
    NFPA_SMALL_SIDE,
    SMALL_FRONT,
    SMALL_SIDE,
    THIN_RISE,
    THIN_THICKNESS,
)
from model.reference.sourced import Sourced
from model.site import Opening

Asks = Callable[[Opening], Sourced]


@dataclass(frozen=True, slots=True)
class HearthRule:
    """One rule set: its clauses, and what it asks in front, beyond each side and of the slab.

    `from_facing` says that the front counts from the face that is finished and not from the opening,
    `by_area` that the reach goes by the opening's size, `may_be_thin` that a high firebox floor lets the
    slab be thin. `remark` is what else is to be said of the slab.
    """

    short: str
    clause: str
    thick_clause: str
    front: Asks
    side: Asks
    thickness: Asks
    from_facing: bool = False
    by_area: bool = False
    may_be_thin: bool = False
    remark: str = ""


@dataclass(frozen=True, slots=True)
class Extension:
    """Least reach of the hearth in front and beyond each side of the opening."""

    front: Sourced
    side: Sourced


def least_extension(opening: Opening) -> Extension:
    """By the opening's area in square inches; one on the boundary is a large one. IRC R1001.10."""
    large = is_large(opening)
    return Extension(LARGE_FRONT if large else SMALL_FRONT, LARGE_SIDE if large else SMALL_SIDE)


def is_large(opening: Opening) -> bool:
    """Whether the opening is in the larger class of the IRC and of NFPA 211."""
    return opening.area >= LARGE_OPENING.value - HAIR


def least_thickness(rise: float) -> Sourced:
    """IRC R1001.9.2: least thickness where the firebox's floor stands `rise` in. over the extension's top."""
    return THIN_THICKNESS if rise >= THIN_RISE.value - HAIR else LEAST_THICKNESS


def nbc_front(rise: float) -> Sourced:
    """NBC 9.22.5.1: least front where the fire's floor stands `rise` in. above the hearth's top."""
    if rise <= NBC_LOW_RISE.inches + HAIR:
        return NBC_FRONT
    steps = max(ceil((rise - NBC_HIGH_RISE.inches) / NBC_STEP.inches - HAIR), 0)
    front = NBC_FRONT.value + NBC_MORE.value + steps * NBC_STEP_MORE.value
    told = NBC_STEP if steps else NBC_MORE
    return Sourced(front, "mm", told.standing, told.source)


def _always(figure: Sourced) -> Asks:
    return lambda opening: figure


IRC_HEARTH = HearthRule(
    "the IRC",
    "IRC R1001.10",
    "IRC R1001.9.2",
    lambda opening: least_extension(opening).front,
    lambda opening: least_extension(opening).side,
    lambda opening: least_thickness(opening.sill),
    by_area=True,
    may_be_thin=True,
)
NFPA_HEARTH = HearthRule(
    "NFPA 211",
    "NFPA 211 11.3",
    "NFPA 211 11.3",
    lambda opening: NFPA_LARGE_FRONT if is_large(opening) else NFPA_SMALL_FRONT,
    lambda opening: NFPA_LARGE_SIDE if is_large(opening) else NFPA_SMALL_SIDE,
    _always(NFPA_LEAST_THICKNESS),
    from_facing=True,
    by_area=True,
)
NBC_HEARTH = HearthRule(
    "the NBC",
    "NBC 9.22.5.1",
    "NBC 9.22.5.2",
    lambda opening: nbc_front(opening.sill),
    _always(NBC_SIDE),
    _always(NBC_LEAST_THICKNESS),
    from_facing=True,
    remark="That is for a cantilevered slab's edge; at its supports it is twice that.",
)
ABCB_HEARTH_RULE = HearthRule(
    "the Housing Provisions",
    "ABCB 12.4.2",
    "ABCB 12.4.2",
    _always(ABCB_FRONT),
    _always(ABCB_SIDE),
    _always(ABCB_BELOW),
    remark="So far below its top no combustible floor or framing may lie.",
)
ADJ_HEARTH_RULE = HearthRule(
    "Approved Document J",
    "AD J Diagrams 24 and 25",
    "AD J constructional hearth",
    _always(ADJ_FRONT),
    _always(ADJ_SIDE),
    _always(ADJ_LEAST_THICKNESS),
    remark="That is for an open fire.",
)
HEARTH_RULES = {
    IRC: (IRC_HEARTH,),
    NFPA211: (NFPA_HEARTH,),
    STRICTEST: (IRC_HEARTH, NFPA_HEARTH),
    CANADA: (NBC_HEARTH,),
    AUSTRALIA: (ABCB_HEARTH_RULE,),
    ENGLAND: (ADJ_HEARTH_RULE,),
}
"""By the word for the rules that a site is held against."""
