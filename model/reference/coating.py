"""What a gallon is and how far it spreads. Applied in model.takeoff.materials."""

from model.reference.sourced import Sourced, Standing

GALLON_FILM = Sourced(
    1604.0, "sq ft x mil per gal", Standing.PUBLISHED, "coatings handbooks: 1604 x solids / film in mils"
)
"""231 cu in. spread a thousandth of an inch thick, in square feet."""
OUNCES_PER_GALLON = Sourced(128.0, "fl oz", Standing.PUBLISHED, "NIST Handbook 44, appendix C")
OUNCE_VOLUME = Sourced(
    231 / 128, "cu in", Standing.PUBLISHED, "NIST Handbook 44, appendix C: 231 cu in. a gallon"
)
