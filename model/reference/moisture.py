"""How moist wood becomes in a room's air, and how much it then swells across its grain. Formulas, figures.

Which boards that matters to is model.check's business.
"""

from __future__ import annotations

from model.reference.sourced import Sourced, Standing

EMC = "Wood Handbook ch. 4 (Hailwood and Horrobin, two hydrates), coefficients of FPL-RN-0268 in degrees F"
WIDE_RANGE = (
    "Wood Handbook equation 13-3; its form is from memory and gives back Table 13-5 to all printed decimals"
)
SHRINKAGE = "Wood Handbook FPL-GTR-190 table 4-3, tangential, green to ovendry"

INDOORS_DRY, INDOORS_DAMP = (
    Sourced(
        humidity, "%", Standing.PUBLISHED, "AWI 200 Care and Storage: 30 to 55 % relative humidity indoors"
    )
    for humidity in (30.0, 55.0)
)
ROOM_WARMTH = Sourced(70.0, "degrees F", Standing.COMMON_PRACTICE, "a heated room")
FIRE_SIDE = Sourced(
    4.0, "% moisture", Standing.COMMON_PRACTICE, "wood over a fire in use: 3 to 5 % in winter is realistic"
)
SATURATION = 30.0
"""Moisture in % from which wood swells no further."""


def _shrinks(value: float, standing: Standing = Standing.PUBLISHED, source: str = SHRINKAGE) -> Sourced:
    return Sourced(value, "%", standing, source)


SHRINKS_ACROSS = {
    "poplar": _shrinks(8.2),
    "white_pine": _shrinks(6.1, source=f"{SHRINKAGE}, as a dealer quotes it"),
    "ponderosa": _shrinks(6.2, Standing.FROM_MEMORY),
    "maple": _shrinks(9.9),
    "red_oak": _shrinks(8.6, source=f"{SHRINKAGE}, northern red oak, as a mill quotes it"),
    "white_oak": _shrinks(10.5),
    "cherry": _shrinks(7.1),
    "walnut": _shrinks(7.8),
    "alder": _shrinks(7.3),
    "basswood": _shrinks(9.3),
}
"""Green to ovendry, flat-sawn, by the words for species."""


def moisture_in_air(humidity: float, warmth: float = ROOM_WARMTH.value) -> float:
    """Moisture in % that wood takes on in air of `humidity` % and `warmth` degrees F. EMC."""
    w = 330 + 0.452 * warmth + 0.00415 * warmth**2
    k = 0.791 + 0.000463 * warmth - 0.000000844 * warmth**2
    one = 6.34 + 0.000775 * warmth - 0.0000935 * warmth**2
    two = 1.09 + 0.0284 * warmth - 0.0000904 * warmth**2
    kh = k * humidity / 100
    both = one * kh + 2 * one * two * kh**2
    return 1800 / w * (kh / (1 - kh) + both / (1 + one * kh + one * two * kh**2))


def swell(species: str, width: float, start: float, end: float) -> float:
    """By how much `width` grows from `start` to `end` % moisture, in its own unit. WIDE_RANGE."""
    return swell_by(SHRINKS_ACROSS[species].value, width, start, end)


def swell_by(shrinkage: float, width: float, start: float, end: float) -> float:
    """The same for wood that shrinks `shrinkage` % from green to ovendry."""
    return width * (end - start) / (SATURATION * 100 / shrinkage - SATURATION + start)
