"""How moist wood becomes at a site through the year: in the room's air, and beside a fire in use.

The formula and its figures stand in model.reference.moisture.
"""

from __future__ import annotations

from model.reference.moisture import FIRE_SIDE, moisture_in_air
from model.site import Site


def list_moistures(site: Site) -> tuple[float, float, float]:
    """Driest and dampest by the room's air, and what a fire dries wood down to; %."""
    room = site.room
    dry, damp = sorted(moisture_in_air(humidity) for humidity in (room.driest, room.dampest))
    burns = site.fireplace != "not_in_use"
    return dry, damp, min(dry, FIRE_SIDE.value) if burns else dry
