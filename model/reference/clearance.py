"""Figures of the clearance rules for wood round a masonry fireplace. Applied in model.check."""

from model.reference.sourced import Sourced, Standing

IRC_MANTEL = "IRC 2018 R1001.11 exception 4 (same text in IRC 2009)"
IRC_FRONT = "IRC 2012 R1001.11"
NFPA_MANTEL = "NFPA 211 2016 11.2.5.4, as quoted in appliance manuals; the standard itself was not read"
NFPA_SIDE = "NFPA 211 sides: the sentence as quoted second-hand, its 6 in. base from memory"
NBC_MANTEL = (
    "Ontario Building Code 9.22.9.1.(1), the text of the National Building Code; that the NBC has the same "
    "number is from memory"
)

IRC_NONE_WITHIN = Sourced(6.0, "in", Standing.PUBLISHED, IRC_MANTEL)
"""No combustible trim closer to the opening than this."""
IRC_ZONE = Sourced(12.0, "in", Standing.PUBLISHED, IRC_MANTEL)
"""Closer than this the projection is bounded; from here on it is not."""
IRC_PROJECTION_PER_INCH = Sourced(1 / 8, "in per in", Standing.PUBLISHED, IRC_MANTEL)
"""Projection allowed for each inch of distance inside the zone."""
IRC_FRONT_SPACE = Sourced(2.0, "in", Standing.PUBLISHED, IRC_FRONT)
"""General air space in front of masonry, from which exposed trim is excepted."""

NFPA_NONE_WITHIN = Sourced(6.0, "in", Standing.PUBLISHED, NFPA_MANTEL)
NFPA_PROJECTION = Sourced(1.5, "in", Standing.PUBLISHED, NFPA_MANTEL)
"""Up to this projection only the 6 in. count."""
NFPA_ABOVE = Sourced(12.0, "in", Standing.PUBLISHED, NFPA_MANTEL)
"""Least height above the opening of what projects more."""
NFPA_BESIDE = Sourced(6.0, "in", Standing.FROM_MEMORY, NFPA_SIDE)
"""What projects more needs this and its own projection beside the opening."""

NBC_NONE_WITHIN = Sourced(150.0, "mm", Standing.PUBLISHED, NBC_MANTEL)
NBC_PROJECTION = Sourced(38.0, "mm", Standing.PUBLISHED, NBC_MANTEL)
"""Up to this projection only the 150 mm count."""
NBC_ABOVE = Sourced(300.0, "mm", Standing.PUBLISHED, NBC_MANTEL)
"""Least height above the opening of what projects more; at the sides there is no further limit."""

BUILD_TOLERANCE = Sourced(1 / 8, "in", Standing.COMMON_PRACTICE, "what a surround may shift when it is fixed")
"""A limit met with less than this to spare may be missed on the day."""
