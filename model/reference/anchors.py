"""What an anchor in old masonry may be planned to hold, how far it keeps from edges, and where that is read.

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
