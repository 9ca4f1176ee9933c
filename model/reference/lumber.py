"""Sizes lumber and panels are sold in, inches, with their sources. What a surround needs is model.takeoff's.

The shipped stock list is made of these; what a yard really has stands in the user's own.
"""

PS_20 = "American Softwood Lumber Standard PS 20, dry dressed, as given in size charts"

DRESSED_WIDTHS = {2: 1.5, 3: 2.5, 4: 3.5, 5: 4.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25}
"""Nominal to dressed width of softwood, in. PS 20. Nominal 7 is left out: charts disagree."""
DRESSED_THICKNESSES = {"1": 0.75, "5/4": 1.0, "6/4": 1.25, "2": 1.5}
"""Nominal to dressed thickness of softwood, in. PS 20."""

WIDEST_BOARD = max(DRESSED_WIDTHS.values())
"""Widest board commonly stocked, in."""

HARDWOOD_CHART = "dealer's chart of hardwood sizes, 4/4 surfaced four sides"
HARDWOOD_WIDTHS = {4: 3.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25}
"""Nominal to surfaced width of 4/4 hardwood sold in fixed widths, 3/4 in. thick. HARDWOOD_CHART; where it
prints 7 1/2 for nominal 8, the 7 1/4 of PS 20 is taken."""

FRAMING_LENGTHS = (96.0, 120.0, 144.0, 168.0, 192.0)
"""Southern Forest Products Association, specification guidelines: 8 to 20 ft by 2 ft; up to 16 ft here."""
BOARD_LENGTHS = (48.0, 72.0, 96.0, 120.0, 144.0, 192.0)
"""Common practice: boards at retail, 4, 6, 8, 10, 12 and 16 ft. Hardwood is graded in 4 to 16 ft by 1 ft,
hardwood lumber reference table."""
STRIP_LENGTHS = (72.0, 96.0, 120.0, 144.0)
"""Common practice: furring and strips."""
MOULDING_LENGTHS = (96.0, 120.0, 144.0, 168.0, 192.0)
"""Common practice: mouldings run to order."""

SHEETS = ((48.0, 24.0), (48.0, 48.0), (96.0, 48.0))
"""Length along the grain by width, in.: whole sheets 4 by 8 ft (US PS 1), part sheets by common practice."""
PANEL_THICKNESSES = {"1/4": 0.25, "3/8": 0.375, "1/2": 0.5}
"""Performance categories of US PS 1, in.; a sheet may measure 1/32 in. more or less."""
