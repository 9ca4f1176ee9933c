"""How long work and drying take: the figures a job starts from, each with its source. All in hours.

A job may set every one of them to its own; see model.parameters. What they add up to is worked out in
model.steps and model.days.
"""

from model.reference.sourced import Sourced, Standing

_PUBLISHED, _PRACTICE, _MEMORY, _OURS = (
    Standing.PUBLISHED,
    Standing.COMMON_PRACTICE,
    Standing.FROM_MEMORY,
    Standing.SHOP_CHOICE,
)
OWN_JOBS = "to be corrected by your own jobs"
GLUE_PAGES = "two woodworking articles on clamping"

CUT = Sourced(2.0, "h", _PRACTICE, f"mill and cut one surround; {OWN_JOBS}")
COLUMN = Sourced(2.5, "h", _PRACTICE, f"one boxed column; {OWN_JOBS}")
FRIEZE = Sourced(1.5, "h", _PRACTICE, f"one frieze; {OWN_JOBS}")
SHELF = Sourced(2.0, "h", _PRACTICE, f"shelf with its core; {OWN_JOBS}")
PANEL = Sourced(0.75, "h", _PRACTICE, f"each framed panel; {OWN_JOBS}")
PIECE = Sourced(0.25, "h", _OURS, f"any other piece put on at the bench; {OWN_JOBS}")
MOULDING = Sourced(
    0.1, "h/ft", _PRACTICE, f"mouldings; a cost book has 0.05 to 0.06 for small crown; {OWN_JOBS}"
)
MITRE = Sourced(0.15, "h", _PRACTICE, f"each mitre; {OWN_JOBS}")
ANCHOR = Sourced(0.125, "h", _PRACTICE, f"0.25 for a pair in masonry; {OWN_JOBS}")
INSTALL = Sourced(4.0, "h", _PRACTICE, f"install and scribe; {OWN_JOBS}")
FINISH = Sourced(2.5, "h", _PRACTICE, f"fill, sand and caulk; {OWN_JOBS}")
COAT = Sourced(1.0, "h", _PRACTICE, f"each coat of primer, paint, stain or clear finish; {OWN_JOBS}")

GLUE_CLAMP = Sourced(1.0, "h", _PUBLISHED, f"{GLUE_PAGES}: 1/2 to 1 h unstressed, 1 h or more for good fits")
GLUE_CURE = Sourced(24.0, "h", _PUBLISHED, f"{GLUE_PAGES}: 24 h before the joint is stressed")
GLUE_OPEN = Sourced(5.0, "min", _PUBLISHED, "woodworking article on clamping: 5 to 15 min")
"""Least open time."""
FILLER_DRY = Sourced(2.0, "h", _OURS, "follow the tub; deep holes take longer")
CAULK_DRY = Sourced(2.0, "h", _OURS, "until it takes paint; follow the cartridge")
PRIMER_DRY = Sourced(3.0, "h", _PUBLISHED, "latex primer sheet: top coat after up to 3 h; oil primer 24 h")
TOP_DRY = Sourced(8.0, "h", _PUBLISHED, "latex trim paint sheet: recoat after 8 h; 4 h is common practice")
HARD = Sourced(24.0, "h", _PUBLISHED, "latex trim paint sheet: hard after 24 h")
STAIN_DRY = Sourced(24.0, "h", _MEMORY, "oil stain overnight to 24 h, water-borne less; follow the can")
CLEAR_DRY = Sourced(24.0, "h", _MEMORY, "oil varnish 12 to 24 h, water-borne 2 to 4 h; follow the can")
CLEAR_HARD = Sourced(72.0, "h", _MEMORY, "light use after about 3 days; follow the can")

CREW = Sourced(2, "", _OURS, "one carpenter and a helper")
DAY = Sourced(8.0, "h", _PRACTICE, "a working day without its breaks")
