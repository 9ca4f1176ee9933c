"""What swells and shrinks where it is fixed: a solid shelf, a wide plain frieze. Not panels.

The air of the room through the year says how moist wood becomes; a fire in use dries it further.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.check.finding import Bound, Finding, Status
from model.check.part import FRIEZE, SHELF
from model.check.plain import FIT, build_plain
from model.check.wording import Wording
from model.design import FRAMED
from model.reference.moisture import SHRINKS_ACROSS, swell
from model.seasons import list_moistures
from model.surround import Surround

SLOT = 0.25
"""Play that a slotted screw hole leaves, in. Shop choice."""
NAILED = 0.125
"""What a board nailed along both edges gives before it splits or bows, in. Shop choice."""


@dataclass(frozen=True, slots=True)
class Movement:
    """How a solid board moves across its grain: inches `width` of a species that shrinks `shrinkage` % from
    green to ovendry; moisture in % in the room's driest and dampest air, and dried by a fire."""

    width: float
    species: str
    shrinkage: float
    dry: float
    damp: float
    fire: float

    def moves(self, dry: float) -> float:
        """From `dry` % to the dampest, in."""
        return swell(self.species, self.width, dry, self.damp)


def work_out_movement(surround: Surround, path: str) -> Movement | None:
    """Of what the row at `path` decides on, "shelf.kind" or "frieze.kind"; None where that is not solid."""
    layout, design = surround.layout, surround.job.design
    if path == "shelf.kind" and layout.shelf_is_plank:
        width = layout.shelf_foremost - layout.shelf_back
    elif path == "frieze.kind" and design.frieze.kind != FRAMED:
        width = layout.shelf_bottom - layout.frieze_bottom
    else:
        return None
    species = design.board.species
    return Movement(width, species, SHRINKS_ACROSS[species].value, *list_moistures(surround.job.site))


def check_movement(surround: Surround) -> Iterator[Finding]:
    """How much wide solid boards move through the year, and how they have to be fixed."""
    for path, report in (("shelf.kind", _report_plank), ("frieze.kind", _report_frieze)):
        moved = work_out_movement(surround, path)
        if moved is not None:
            yield report(moved, Wording(surround.job.about.length_style))


def _say(moved: Movement, wording: Wording) -> str:
    by_air, by_fire = (wording.at_least(moved.moves(low)) for low in (moved.dry, moved.fire))
    return (
        f"moves {by_air} across its grain between {moved.dry:.1f} and {moved.damp:.1f} % moisture, "
        f"{by_fire} where a fire dries it to {moved.fire:.1f} %."
    )


def _report_plank(moved: Movement, wording: Wording) -> Finding:
    most = moved.moves(moved.fire)
    fits = most <= SLOT
    message = (
        f"The plank is {wording.distance(moved.width)} deep and {_say(moved, wording)} Fix it along the "
        "front and leave the screws behind in slots that run from front to back, without glue."
    )
    cure = "" if fits else "Build the shelf up, or make it less deep: slotted holes do not give that much."
    status = Status.PASS if fits else Status.WARN
    return build_plain(FIT, status, SHELF, message, "shelf.kind", cure, most, SLOT, bound=Bound.MOST)


def _report_frieze(moved: Movement, wording: Wording) -> Finding:
    most = moved.moves(moved.fire)
    fits = most <= NAILED
    message = f"The plain frieze is {wording.distance(moved.width)} high and {_say(moved, wording)}"
    cure = "" if fits else (
        "Nail it along its upper edge only and let the lower one slide behind a cleat, or frame it."
    )  # fmt: skip
    status = Status.PASS if fits else Status.WARN
    return build_plain(FIT, status, FRIEZE, message, "frieze.kind", cure, most, NAILED, bound=Bound.MOST)
