"""How far wood bends under a load and how much more in time; what a shelf may sag. Formulas and figures."""

from __future__ import annotations

from model.reference.sourced import Sourced, Standing

HANDBOOK = "Wood Handbook table 5-3, clear wood at 12 %"
STIFFNESS = {
    species: Sourced(value * 1e6, "psi", standing, source)
    for species, value, standing, source in (
        ("poplar", 1.58, Standing.PUBLISHED, f"{HANDBOOK}, as a textbook repeats it"),
        ("white_pine", 1.24, Standing.PUBLISHED, f"{HANDBOOK}, as a dealer quotes it"),
        ("ponderosa", 1.29, Standing.PUBLISHED, HANDBOOK),
        ("maple", 1.83, Standing.PUBLISHED, f"{HANDBOOK}, as data sheets quote it"),
        ("red_oak", 1.82, Standing.PUBLISHED, HANDBOOK),
        ("white_oak", 1.78, Standing.PUBLISHED, f"{HANDBOOK}, as a textbook repeats it"),
        ("cherry", 1.49, Standing.PUBLISHED, f"{HANDBOOK}, as tables quote it"),
        ("walnut", 1.68, Standing.PUBLISHED, f"{HANDBOOK}, as a textbook repeats it"),
        ("alder", 1.38, Standing.PUBLISHED, f"{HANDBOOK}, as tables quote it"),
        ("basswood", 1.46, Standing.PUBLISHED, f"{HANDBOOK}, as tables quote it"),
    )
}
"""Modulus of elasticity in bending, by the words for species."""
CREEP = Sourced(
    1.5, "", Standing.PUBLISHED, "NDS 3.5.2 (AWC): long-term total of seasoned lumber, times the first sag"
)
SAG_PER_FOOT = Sourced(
    0.02, "in per ft", Standing.PUBLISHED, "shelf tables: what a shelf may sag at first; the eye sees 1/32"
)
EYE_PER_FOOT = Sourced(1 / 32, "in per ft", Standing.PUBLISHED, "shelf tables: what the eye notices")
MANTEL_LOAD = Sourced(
    20.0, "lb per ft", Standing.COMMON_PRACTICE, "planning load of a mantel: books, clock, candlesticks"
)
LEANING = Sourced(
    50.0, "lb", Standing.COMMON_PRACTICE, "planning load of somebody who leans on the front edge"
)
HEAVY = Sourced(
    50.0, "lb", Standing.COMMON_PRACTICE, "planning load at the middle of a mantel: a heavy thing, or a hand"
)
FULL_LOAD = Sourced(
    1 / 144,
    "of the span",
    Standing.PUBLISHED,
    "Architectural Woodwork Standards 2009, section 10, 1.2.21: what a shelf may sag under its full load",
)
NDS_SCREW = Sourced(
    2850.0,
    "",
    Standing.PUBLISHED,
    "NDS: allowable withdrawal of a wood screw, 2850 G\N{SUPERSCRIPT TWO} D lb per in.",
)


def sag_between(load: float, span: float, stiffness: float, inertia: float) -> float:
    """Midspan, in., of a beam on two supports: `load` lb per in., `span` in., psi, in. to the fourth."""
    return 5 * load * span**4 / (384 * stiffness * inertia)


def sag_under(weight: float, span: float, stiffness: float, inertia: float) -> float:
    """Midspan, in., of a beam on two supports under `weight` lb at its middle; span in., psi, in.⁴."""
    return weight * span**3 / (48 * stiffness * inertia)


def screw_holds(gravity: float, diameter: float, thread: float) -> float:
    """Allowable withdrawal, lb, of a wood screw with `thread` in. in side grain of specific `gravity`."""
    return NDS_SCREW.value * gravity**2 * diameter * thread
