"""What swells and shrinks where it is fixed: a solid shelf, a wide plain frieze. Panels are sheets and stay.

The air of the room through the year says how moist wood becomes; a fire in use dries it further.
"""

from __future__ import annotations

from collections.abc import Iterator

from model.check.finding import Bound, Finding, Status
from model.check.part import FRIEZE
from model.check.plain import FIT, build_plain
from model.check.wording import Wording
from model.design import FRAMED
from model.reference.moisture import FIRE_SIDE, moisture_in_air, swell
from model.surround import Surround

SLOT = 0.25
"""Play that a slotted screw hole leaves, in. Shop choice."""
NAILED = 0.125
"""What a board nailed along both edges gives before it splits or bows, in. Shop choice."""


def check_movement(surround: Surround) -> Iterator[Finding]:
    """How much wide solid boards move through the year, and how they have to be fixed."""
    layout, design = surround.layout, surround.job.design
    if layout.shelf_is_plank:
        yield _check_plank(surround, layout.shelf_foremost - layout.shelf_back)
    if design.frieze.kind != FRAMED:
        yield _check_frieze(surround, layout.shelf_bottom - layout.frieze_bottom)


def _list_moistures(surround: Surround) -> tuple[float, float, float]:
    """Driest and dampest by the room's air, and what a fire dries wood down to; %."""
    room = surround.job.site.room
    dry, damp = sorted(moisture_in_air(humidity) for humidity in (room.driest, room.dampest))
    burns = surround.job.site.fireplace != "not_in_use"
    return dry, damp, min(dry, FIRE_SIDE.value) if burns else dry


def _moves(surround: Surround, width: float) -> tuple[float, str]:
    """How far `width` moves at most, the fire's warmth included; and a sentence of it."""
    dry, damp, fire = _list_moistures(surround)
    species, wording = surround.job.design.board.species, Wording(surround.job.about.length_style)
    by_air, by_fire = (swell(species, width, low, damp) for low in (dry, fire))
    said = (
        f"moves {wording.at_least(by_air)} across its grain between {dry:.1f} and {damp:.1f} % moisture, "
        f"{wording.at_least(by_fire)} where a fire dries it to {fire:.1f} %."
    )
    return by_fire, said


def _check_plank(surround: Surround, depth: float) -> Finding:
    wording = Wording(surround.job.about.length_style)
    most, said = _moves(surround, depth)
    fits = most <= SLOT
    message = (
        f"The plank is {wording.distance(depth)} deep and {said} Fix it along the front and leave the screws "
        "behind in slots that run from front to back, without glue."
    )
    cure = "" if fits else "Build the shelf up, or make it less deep: slotted holes do not give that much."
    status = Status.PASS if fits else Status.WARN
    return build_plain(FIT, status, "shelf", message, "shelf.kind", cure, most, SLOT, bound=Bound.MOST)


def _check_frieze(surround: Surround, height: float) -> Finding:
    wording = Wording(surround.job.about.length_style)
    most, said = _moves(surround, height)
    fits = most <= NAILED
    message = f"The plain frieze is {wording.distance(height)} high and {said}"
    cure = "" if fits else (
        "Nail it along its upper edge only and let the lower one slide behind a cleat, or frame it."
    )  # fmt: skip
    status = Status.PASS if fits else Status.WARN
    return build_plain(FIT, status, FRIEZE, message, "frieze.kind", cure, most, NAILED, bound=Bound.MOST)
