"""How heavy woods are, and how much a person is advised to lift. Applied in model.takeoff.weight."""

from model.reference.sourced import Sourced, Standing

HANDBOOK = "Wood Handbook, ovendry weight and volume at 12 %"
WATER = Sourced(
    62.4, "lb per cu ft", Standing.PUBLISHED, "Wood Handbook, ch. 4: density = 62.4 G (1 + MC/100)"
)


def _gravity(value: float, source: str, standing: Standing = Standing.PUBLISHED) -> Sourced:
    return Sourced(value, "specific gravity", standing, source)


SPECIFIC_GRAVITIES = {
    "poplar": _gravity(0.42, f"{HANDBOOK}, table 5-3b"),
    "white_pine": _gravity(0.35, "eastern white pine, air-dry; the handbook's figure", Standing.FROM_MEMORY),
    "ponderosa": _gravity(0.40, f"{HANDBOOK}, table 5-3a"),
    "maple": _gravity(0.63, f"{HANDBOOK}, as data sheets quote it"),
    "red_oak": _gravity(0.63, f"{HANDBOOK}, as dealers quote it"),
    "white_oak": _gravity(0.68, f"{HANDBOOK}, table 5-3b"),
    "cherry": _gravity(0.50, f"{HANDBOOK}, as tables quote it"),
    "walnut": _gravity(0.55, f"{HANDBOOK}, table 5-3b"),
    "alder": _gravity(0.41, f"{HANDBOOK}, as tables quote it"),
    "basswood": _gravity(0.37, f"{HANDBOOK}, as tables quote it"),
    "framing": _gravity(0.42, "NDS 2018 table 12.3.3A, spruce-pine-fir"),
}
"""By the word that boards carry for their wood."""
PLYWOOD = Sourced(
    36.0,
    "lb per cu ft",
    Standing.PUBLISHED,
    "softwood plywood, 3 lb to the sq ft and inch, as panel pages quote it",
)
"""As it lies in the rack: no moisture is added to it."""
SHEETS = {"plywood": PLYWOOD}

NIOSH = "NIOSH 94-110, revised lifting equation"
LOAD_CONSTANT = Sourced(51.0, "lb", Standing.PUBLISHED, NIOSH)
NEAREST_HANDS = Sourced(10.0, "in", Standing.FROM_MEMORY, f"{NIOSH}: hands no nearer to the ankles")
FURTHEST_HANDS = Sourced(25.0, "in", Standing.FROM_MEMORY, f"{NIOSH}: beyond it nothing is advised")
HIGHEST_HANDS = Sourced(70.0, "in", Standing.PUBLISHED, f"{NIOSH}: beyond it nothing is advised")
LEAST_TRAVEL = Sourced(10.0, "in", Standing.FROM_MEMORY, f"{NIOSH}: least travel that counts")
POOR_GRIP = Sourced(0.90, "", Standing.PUBLISHED, f"{NIOSH}: coupling without handles")
BODY = Sourced(
    8.0, "in", Standing.FROM_MEMORY, f"{NIOSH} manual: ankles to the near side of a load held close"
)
BENCH = Sourced(30.0, "in", Standing.SHOP_CHOICE, "height of the horses that it is lifted off")
LONG = Sourced(72.0, "in", Standing.COMMON_PRACTICE, "what is longer is not steadied by one person")
