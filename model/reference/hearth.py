"""Figures for the noncombustible hearth in front of a masonry fireplace. Applied in model.check.hearth."""

from model.reference.sourced import Sourced, Standing

IRC_EXTENSION = "IRC 2006 R1001.10; IRC 2015 table R1001.1"
IRC_THICKNESS = "IRC R1001.9.2, as quoted second-hand"
IRC_THIN = "IRC R1001.9.2 exception, in the wording of IBC 2012 2111.9.2"
NFPA_EXTENSION = "NFPA 211 11.3.3 and 11.3.4 (edition in force in 2015)"
IRC_LISTED = "IRC 2012 R1004.2"

LARGE_OPENING = Sourced(864.0, "sq in", Standing.PUBLISHED, IRC_EXTENSION)
"""6 sq ft. An opening of just this area belongs to the larger class."""
SMALL_FRONT = Sourced(16.0, "in", Standing.PUBLISHED, IRC_EXTENSION)
SMALL_SIDE = Sourced(8.0, "in", Standing.PUBLISHED, IRC_EXTENSION)
LARGE_FRONT = Sourced(20.0, "in", Standing.PUBLISHED, IRC_EXTENSION)
LARGE_SIDE = Sourced(12.0, "in", Standing.PUBLISHED, IRC_EXTENSION)

LEAST_THICKNESS = Sourced(2.0, "in", Standing.PUBLISHED, IRC_THICKNESS)
THIN_THICKNESS = Sourced(3 / 8, "in", Standing.PUBLISHED, IRC_THIN)
"""Enough where the firebox's floor stands THIN_RISE or more above the extension's top."""
THIN_RISE = Sourced(8.0, "in", Standing.PUBLISHED, IRC_THIN)
