"""Sizes lumber is sold in. What a surround needs of them is model.takeoff's."""

PS_20 = "American Softwood Lumber Standard PS 20, dry dressed, as given in size charts"

DRESSED_WIDTHS = {2: 1.5, 3: 2.5, 4: 3.5, 5: 4.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25}
"""Nominal to dressed width of softwood, in. PS 20. Nominal 7 is left out: charts disagree."""

WIDEST_BOARD = max(DRESSED_WIDTHS.values())
"""Widest board commonly stocked, in."""
