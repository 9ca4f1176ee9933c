"""Sizes lumber is sold in. American Softwood Lumber Standard PS 20, dry dressed."""

DRESSED_WIDTHS = {2: 1.5, 3: 2.5, 4: 3.5, 5: 4.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25}
"""Nominal width to dressed width, in."""

WIDEST_BOARD = max(DRESSED_WIDTHS.values())
"""Widest board commonly stocked, in."""
