"""Sizes of what is passed through a hole: plugs and connectors, each with its source.

How large a hole follows stands in model.build.cord_way; what the codes say of cords stands here too.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from model.reference.sourced import Sourced, Standing
from model.units import MM_PER_INCH


@dataclass(frozen=True, slots=True)
class Connector:
    """What must pass: its largest section in millimetres, and whether it carries mains current."""

    name: str
    width: float
    height: float
    mains: bool
    standing: Standing
    source: str

    @property
    def across(self) -> tuple[float, float]:
        """Width and height of its section, in."""
        return self.width / MM_PER_INCH, self.height / MM_PER_INCH


HDMI_PAGE = "connector sizes on a knowledge page that cites HDMI 1.0"
NO_STANDARD = "no standard read; measure the plug"

CONNECTORS: dict[str, Connector] = {
    "mains_plug": Connector(
        "Grounded mains plug, moulded", 28.0, 26.0, True, Standing.FROM_MEMORY, NO_STANDARD
    ),
    "hdmi_body": Connector("HDMI type A, moulded body", 21.0, 13.0, False, Standing.FROM_MEMORY, NO_STANDARD),
    "hdmi_shell": Connector("HDMI type A, bare shell", 13.9, 4.45, False, Standing.PUBLISHED, HDMI_PAGE),
    "hdmi_mini": Connector("HDMI type C, bare shell", 10.42, 2.42, False, Standing.PUBLISHED, HDMI_PAGE),
    "hdmi_micro": Connector("HDMI type D, bare shell", 6.4, 2.8, False, Standing.PUBLISHED, HDMI_PAGE),
}
"""The largest of the sizes in circulation where they differ."""

HOLE_CLEARANCE = Sourced(0.125, "in", Standing.SHOP_CHOICE, "room to push a plug through a round hole")
PANEL_CLEARANCE = Sourced(1 / 16, "in", Standing.SHOP_CHOICE, "paint and movement round a loose panel")

CORDS_HIDDEN = Sourced(0.0, "", Standing.PUBLISHED, "NFPA 70 (NEC) 2020, 400.12; 400.8 until 2014")
"""Flexible cords are no wiring: not through holes in walls, not concealed by walls, floors or ceilings."""
CABLES_RATED = Sourced(
    0.0, "", Standing.PUBLISHED, "NFPA 70 (NEC) Article 725, as an in-wall rating guide gives it"
)
"""Low-voltage cable in a dwelling's walls is rated CL2 or CL3, or better."""


def diagonal(width: float, height: float) -> float:
    """The least round hole that a section passes: its diagonal, in the unit of its sides.

    >>> round(diagonal(26, 25), 2)
    36.07
    """
    return hypot(width, height)
