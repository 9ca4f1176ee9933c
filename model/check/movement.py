"""Whether a solid shelf can swell and shrink where it is fixed. Built-up shelves are held by their ribs."""

from __future__ import annotations

from collections.abc import Iterator

from model.check.finding import Bound, Finding, Status
from model.check.plain import FIT, build_plain
from model.check.wording import Wording
from model.reference.movement import DAMPEST, DRIEST, change_of_width
from model.surround import Surround

SLOT = 0.25
"""Play that a slotted screw hole leaves, in. Shop choice."""


def check_movement(surround: Surround) -> Iterator[Finding]:
    """How much a plank moves between winter and summer, and how it has to be fixed."""
    layout = surround.layout
    if not layout.shelf_is_plank:
        return
    wording = Wording(surround.job.about.length_style)
    depth = layout.shelf_foremost - layout.shelf_back
    moves = change_of_width(surround.job.design.board.species, depth, DRIEST.value, DAMPEST.value)
    message = (
        f"The plank is {wording.distance(depth)} deep and moves {wording.at_least(moves)} across its grain "
        f"between {DRIEST.value:g} and {DAMPEST.value:g} % moisture. Fix it along the front and leave the "
        "screws behind in slots that run from front to back, without glue."
    )
    fits = moves <= SLOT
    cure = "" if fits else "Build the shelf up, or make it less deep: slotted holes do not give that much."
    status = Status.PASS if fits else Status.WARN
    yield build_plain(FIT, status, "shelf", message, "shelf.kind", cure, moves, SLOT, bound=Bound.MOST)
