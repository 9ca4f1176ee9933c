"""Sizes lumber is sold in, and board measure. What a surround needs of them is model.takeoff's."""

from model.reference.sourced import Sourced, Standing

PS_20 = "American Softwood Lumber Standard PS 20, dry dressed, as given in size charts"
HARDWOOD_RULES = "hardwood grading thickness, surfaced two sides, as given in size charts"

DRESSED_WIDTHS = {2: 1.5, 3: 2.5, 4: 3.5, 5: 4.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25}
"""Nominal to dressed width of softwood, in. PS 20. Nominal 7 is left out: charts disagree."""
DRESSED_THICKNESSES = {1.0: 0.75, 1.25: 1.0, 1.5: 1.25, 2.0: 1.5}
"""Nominal to dressed thickness of softwood, in. PS 20."""
SURFACED_THICKNESSES = {4: 13 / 16, 5: 17 / 16, 6: 21 / 16, 8: 7 / 4, 12: 11 / 4}
"""Rough quarters of an inch to hardwood surfaced two sides, in. HARDWOOD_RULES; planed stock varies."""

WIDEST_BOARD = max(DRESSED_WIDTHS.values())
"""Widest board commonly stocked, in."""

BOARD_FOOT = Sourced(144.0, "cu in", Standing.PUBLISHED, "definition of the board foot, in yard handbooks")
THINNEST_COUNTED = Sourced(1.0, "in", Standing.PUBLISHED, "board measure: thinner stock counts as 1 in.")


def dressed_size(thickness: float, width: int) -> tuple[float, float]:
    """Dressed thickness and width, in., of softwood by its nominal size. Raises KeyError if not made."""
    return DRESSED_THICKNESSES[thickness], DRESSED_WIDTHS[width]


def board_feet(thickness: float, width: float, length: float) -> float:
    """Board feet of a piece by its nominal thickness and width and its length, all in inches."""
    return max(thickness, THINNEST_COUNTED.value) * width * length / BOARD_FOOT.value
