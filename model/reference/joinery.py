"""Figures for joints of frames and for mitres, each with its source. Held against in model.check.joinery."""

from model.reference.sourced import Sourced, Standing

MITRE_GAP = Sourced(
    1 / 16,
    "in",
    Standing.PUBLISHED,
    "a list of performance standards for remodelers, as quoted second-hand: gaps at mitres in trim",
)
"""Most that a mitre may stand open."""
FRAME_THICKNESS = Sourced(
    0.75,
    "in",
    Standing.PUBLISHED,
    "Architectural Woodwork Standards 2009, section 10, 4.4.6.10: stiles and rails, 1/32 in. more or less",
)
FRAME_PLAY = Sourced(1 / 32, "in", Standing.PUBLISHED, FRAME_THICKNESS.source)
LEFT_BESIDE_REBATE = Sourced(
    0.75, "in", Standing.SHOP_CHOICE, "a pocket screw's point wants as much wood beside a panel's rebate"
)
OVER_BASEBOARD = Sourced(
    0.0, "in", Standing.COMMON_PRACTICE, "a plinth stops the baseboard, and is no lower than it"
)
"""How much higher than the baseboard that ends against it a plinth is at least."""
