"""What an anchor in old masonry may be planned to hold, how far it keeps from edges, and where that is read;
how long one is.

A job may set its own, from a pull test on the spot; see model.parameters.
"""

from model.reference.sourced import Sourced, Standing

SOFT_TENSION = Sourced(
    50.0, "lb", Standing.COMMON_PRACTICE, "planning cap for soft old mortar, until a pull test says more"
)
SOFT_SHEAR = Sourced(
    100.0, "lb", Standing.COMMON_PRACTICE, "planning cap for soft old mortar, until a pull test says more"
)
EDGE = Sourced(
    4.0, "in", Standing.PUBLISHED, "a maker's 2021 guide to 1/4 in. masonry screws: full load from 3 3/4 in."
)
FULL_EDGE = Sourced(
    3.75, "in", Standing.PUBLISHED, "a maker's 2021 guide to 1/4 in. masonry screws: full load from there on"
)
SPACING = Sourced(
    16.0, "in", Standing.PUBLISHED, "furring strips at 12 to 16 in., as remodelling pages have it"
)
LINTEL = Sourced(4.0, "in", Standing.SHOP_CHOICE, "height over the opening left to what carries the masonry")
LEAST_APART = Sourced(
    4.0, "in", Standing.PUBLISHED, "a maker's 2021 guide to 1/4 in. masonry screws: full-load spacing"
)
SAFETY_FACTOR = Sourced(
    5.0, "", Standing.PUBLISHED, "TEK 12-03C (2013): allowable up to 20 % of the average tested strength"
)
WOOD_EDGE = Sourced(
    0.5,
    "in",
    Standing.SHOP_CHOICE,
    "twice a 1/4 in. anchor from a nailer's long edge, so that it does not split",
)
OFF_FACING = Sourced(
    0.75, "in", Standing.SHOP_CHOICE, "half of a 1 1/2 in. stud that stands right beside or over the facing"
)
MOST_FREE = Sourced(
    1.5, "", Standing.SHOP_CHOICE, "bays of a nailer without an anchor: one that is moved lies half a bay off"
)
ANCHOR_DIAMETER = Sourced(0.25, "in", Standing.SHOP_CHOICE, "masonry screws and screws into framing alike")
EMBEDMENT = Sourced(
    1.625,
    "in",
    Standing.PUBLISHED,
    "a maker's 2021 guide to 1/4 in. masonry screws: least depth in solid brick",
)
SCREW_INTO_FRAMING = Sourced(
    1.5, "in", Standing.PUBLISHED, "NDS 2018 12.1.5.6: a wood screw goes in by 6 diameters at least"
)
WALL_SKIN = Sourced(
    0.5,
    "in",
    Standing.COMMON_PRACTICE,
    "1/2 in. gypsum board over the framing; plaster is thicker, so measure",
)
MASONRY_SCREWS = (1.25, 1.75, 2.25, 2.75, 3.25, 3.75, 4.0, 5.0, 6.0)
"""Lengths of 1/4 in. masonry screws, in. Common practice."""
FRAMING_SCREWS = (2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0)
"""Lengths of 1/4 in. structural wood screws, in. Common practice."""
