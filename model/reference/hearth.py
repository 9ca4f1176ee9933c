"""Figures for the noncombustible hearth in front of a masonry fireplace. Applied in model.check.hearth."""

from model.reference.sourced import Sourced, Standing

IRC_EXTENSION = "IRC 2006 R1001.10; IRC 2015 table R1001.1"
IRC_THICKNESS = "IRC R1001.9.2, as quoted second-hand"
IRC_THIN = "IRC R1001.9.2 exception, in the wording of IBC 2012 2111.9.2"
NFPA_EXTENSION = "NFPA 211 11.3.3 and 11.3.4 (edition in force in 2015)"
IRC_LISTED = "IRC 2012 R1004.2"
NFPA_THICKNESS = "NFPA 211 11.3.2 (edition in force in 2015)"
NBC_EXTENSION = "Ontario Building Code 9.22.5.1, the text of the National Building Code"
NBC_SUPPORT = "Ontario Building Code 9.22.5.2: at least 50 mm at a cantilevered edge, 100 mm at its supports"
ABCB_HEARTH = "ABCB Housing Provisions 2025 12.4.2, as quoted in a public file"
ADJ_HEARTH = "Approved Document J 2010 (England), Diagrams 24 and 25, as quoted second-hand"
ADJ_THICKNESS = "Approved Document J 2010 (England), constructional hearth, as quoted second-hand"

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

NFPA_LEAST_THICKNESS = Sourced(2.0, "in", Standing.PUBLISHED, NFPA_THICKNESS)
NFPA_SMALL_FRONT = Sourced(16.0, "in", Standing.PUBLISHED, NFPA_EXTENSION)
NFPA_SMALL_SIDE = Sourced(8.0, "in", Standing.PUBLISHED, NFPA_EXTENSION)
NFPA_LARGE_FRONT = Sourced(20.0, "in", Standing.PUBLISHED, NFPA_EXTENSION)
NFPA_LARGE_SIDE = Sourced(12.0, "in", Standing.PUBLISHED, NFPA_EXTENSION)
"""In front of the facing, where the IRC measures from the opening."""

NBC_FRONT = Sourced(400.0, "mm", Standing.PUBLISHED, NBC_EXTENSION)
NBC_SIDE = Sourced(200.0, "mm", Standing.PUBLISHED, NBC_EXTENSION)
NBC_LOW_RISE = Sourced(150.0, "mm", Standing.PUBLISHED, NBC_EXTENSION)
"""A fire floor that stands higher over the hearth needs more in front: NBC_MORE up to NBC_HIGH_RISE, and
NBC_STEP_MORE for each NBC_STEP beyond."""
NBC_HIGH_RISE = Sourced(300.0, "mm", Standing.PUBLISHED, NBC_EXTENSION)
NBC_MORE = Sourced(50.0, "mm", Standing.PUBLISHED, NBC_EXTENSION)
NBC_STEP = Sourced(
    50.0, "mm", Standing.FROM_MEMORY, f"{NBC_EXTENSION}; that a part of a step counts whole is from memory"
)
NBC_STEP_MORE = Sourced(25.0, "mm", Standing.PUBLISHED, NBC_EXTENSION)
NBC_LEAST_THICKNESS = Sourced(50.0, "mm", Standing.PUBLISHED, NBC_SUPPORT)

ABCB_FRONT = Sourced(300.0, "mm", Standing.PUBLISHED, ABCB_HEARTH)
ABCB_SIDE = Sourced(150.0, "mm", Standing.PUBLISHED, ABCB_HEARTH)
ABCB_BELOW = Sourced(150.0, "mm", Standing.PUBLISHED, ABCB_HEARTH)
"""From the hearth's top down to a combustible floor or framing."""

ADJ_FRONT = Sourced(500.0, "mm", Standing.PUBLISHED, ADJ_HEARTH)
ADJ_SIDE = Sourced(150.0, "mm", Standing.PUBLISHED, ADJ_HEARTH)
ADJ_LEAST_THICKNESS = Sourced(125.0, "mm", Standing.PUBLISHED, ADJ_THICKNESS)
"""Of a constructional hearth, under an open fire."""
