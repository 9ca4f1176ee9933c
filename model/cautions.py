"""Which cautions concern a job, and why. What each says and rests on stands in model.reference.cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from model.look import is_painted
from model.parameters import FIREPLACES
from model.reference.cautions import (
    ASBESTOS,
    CARBON_MONOXIDE,
    CORDS,
    FIRE_LISTED,
    FIRE_MASONRY,
    FIRE_UNUSED,
    LEAD,
    LIFTING,
    RAGS,
    SILICA,
    Caution,
)
from model.rows.look import FINISHES
from model.site import CUT_BACK, REMOVE
from model.surround import Surround
from model.takeoff.anchor_places import MASONRY
from model.takeoff.anchors import plan_anchors
from model.takeoff.weight import Load, describe_lift, list_loads

_FIRE = {"masonry": FIRE_MASONRY, "not_in_use": FIRE_UNUSED}
BURNS = frozenset({"masonry", "factory_built", "gas"})
"""Kinds of fireplace that burn something."""


@dataclass(frozen=True, slots=True)
class Concern:
    """A caution, and what about the job calls for it, as a whole sentence."""

    caution: Caution
    why: str


def list_cautions(surround: Surround, loads: Sequence[Load] | None = None) -> tuple[Concern, ...]:
    """The cautions that concern this job, each with its reason; `loads` where they are worked out already."""
    return tuple(_list(surround, list_loads(surround) if loads is None else loads))


def _list(surround: Surround, loads: Sequence[Load]) -> Iterator[Concern]:
    kind, design = surround.job.site.fireplace, surround.job.design
    name = FIREPLACES[kind].lower()
    yield Concern(_FIRE.get(kind, FIRE_LISTED), f"The fireplace is entered as {name}.")
    if kind in BURNS:
        yield Concern(CARBON_MONOXIDE, f"It burns fuel: {name}.")
    yield Concern(LEAD, _say_old_paint(surround))
    yield Concern(ASBESTOS, _say_old_board(surround))
    drilled = sum(anchor.into == MASONRY for anchor in plan_anchors(surround).anchors)
    if drilled:
        holes = "hole is" if drilled == 1 else "holes are"
        yield Concern(SILICA, f"{drilled} {holes} drilled into masonry.")
    if not is_painted(design.look):
        yield Concern(RAGS, f"The wood is entered as {FINISHES[design.look.finish].lower()}.")
    if design.cord.on:
        yield Concern(CORDS, "The surround has a way for cords.")
    if loads:
        heaviest = max(loads, key=lambda load: load.lifted)
        who = describe_lift(heaviest)
        yield Concern(
            LIFTING, f"The heaviest lift is {heaviest.lifted:.0f} lb, of the {heaviest.name}: {who}."
        )


def _say_old_paint(surround: Surround) -> str:
    """The year of the house, where it is entered, and what of the work may disturb old paint."""
    site = surround.job.site
    year = site.house.year
    built = "The year of the house is not in the job"
    if year is not None:
        built = f"The house was built in {year:.0f}"
    work = []
    if site.old_ledger.top is not None and site.old_ledger.use == REMOVE:
        work.append("an old ledger comes off")
    board = site.baseboard
    if board.meets == CUT_BACK and (board.height_left is not None or board.height_right is not None):
        work.append("baseboards are cut back")
    if not work:
        return f"{built}. Old paint that is sanded, scraped or cut counts."
    return f"{built}, and {' and '.join(work)}."


def _say_old_board(surround: Surround) -> str:
    if surround.job.site.house.old_board:
        return "Old board or sheet round the fireplace is entered."
    return "What the fireplace was built and patched with is not known here."
