"""What would put a part right: the parameter that moves it and the value it needs, on the safe side."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import isinf, isnan

import numpy as np
from numpy.typing import NDArray

from model.check.clearance import HAIR, Lengths
from model.check.part import (
    BACK_BAND,
    BED_MOULD,
    FRIEZE,
    NAILERS,
    ON_FACING,
    OVERMANTEL,
    ROUND_COLUMNS,
    SHELF,
    SLIP,
    stands_beside,
)
from model.check.wording import Wording
from model.parameters import BY_PATH
from model.sentences import capitalise, end_sentence
from model.surround import Surround

Mask = NDArray[np.bool_]
LeastDistance = Callable[[Lengths], Lengths]
"""Projections to the least distance each needs, infinite where none is enough."""


@dataclass(frozen=True, slots=True)
class Cure:
    """The parameter to change, and a sentence that says to what."""

    path: str
    sentence: str


@dataclass(frozen=True, slots=True)
class Need:
    """Points of a part that are not clear: in the `room` (n, 3) and their `projection` (n,), inches.

    `beside` and `above` give the least distance that would be enough there, whatever the other is.
    """

    room: Lengths
    projection: Lengths
    beside: LeastDistance
    above: LeastDistance


def _reaches_ceiling(surround: Surround) -> bool:
    """Whether an overmantel ends at the ceiling: its head then stays put when the shelf is moved."""
    over = surround.layout.over
    return over is not None and over.top >= surround.layout.ceiling - HAIR


def find_path(part: str) -> str:
    """The parameter that moves `part` away from the opening."""
    if stands_beside(part):
        return "column.margin"
    paths = {FRIEZE: "frieze.height", BACK_BAND: "back_band.on", SLIP: "slip.on"}
    return paths.get(part, "shelf.height")


def cure_part(surround: Surround, part: str, need: Need, wording: Wording) -> Cure:
    """How to clear `part` of the opening: further out, higher up or standing out less, or left off."""
    if part in ON_FACING:
        return Cure(find_path(part), f"Leave the {part} off.")
    if part.startswith(OVERMANTEL) and _reaches_ceiling(surround):
        return Cure("over.on", f"Leave the {OVERMANTEL} off.")
    x, y = np.abs(need.room[:, 0]), need.room[:, 1]
    beside = stands_beside(part)
    least = need.beside if beside else need.above
    short = (surround.layout.opening_side - x) if beside else (surround.layout.opening_top - y)
    lifts = short + least(need.projection)
    move = float(np.max(lifts))
    if isnan(move):
        return Cure(find_path(part), f"Move the {part} clear of the opening.")
    if isinf(move):
        return _keep_within(part, least, float(need.projection.max()), wording)
    raised = _are_tablets(surround, part, need.projection)
    slim = _slim(surround, part, least, (short, raised), wording)
    if beside:
        return _join([_set_off_columns(surround, move, wording), *slim])
    lower = _lower_frieze(surround, part, _lift_edge(surround, lifts, raised), wording)
    ways = [*lower, *_raise_shelf(surround, move, wording), *slim]
    return _join(ways or [Cure("bed_mould.on", "leave the bed mould off")] if part == BED_MOULD else ways)


def _are_tablets(surround: Surround, part: str, projection: Lengths) -> Mask:
    """Which points (n,) of `part` lie on a tablet, by their `projection`, inches."""
    if part != FRIEZE or surround.layout.tablet is None:
        return np.zeros(len(projection), dtype=bool)
    return projection > surround.layout.frieze_front + HAIR


def _lift_edge(surround: Surround, lifts: Lengths, raised: Mask) -> float:
    """How far a frieze's lower edge goes up so that its points rise by `lifts` (n,), inches.

    What is `raised` is a tablet in the middle: it rises half as far, until the edge has come up to it.
    """
    tablet = surround.layout.tablet
    below = tablet.outline[1] - surround.layout.frieze_bottom if tablet else 0.0
    return float(np.max(np.where(raised, lifts + np.minimum(lifts, below), lifts)))


def _set_off_columns(surround: Surround, push: float, wording: Wording) -> Cure:
    margin = surround.layout.right.inner - surround.layout.opening_side + push
    return Cure("column.margin", f"set the columns at least {wording.at_least(margin)} from the opening")


def _join(cures: list[Cure]) -> Cure:
    """One sentence of all that would do; the first one's parameter."""
    if not cures:
        return Cure("", "No height below the ceiling clears it here.")
    sentence = ", or ".join(cure.sentence for cure in cures)
    return Cure(cures[0].path, capitalise(end_sentence(sentence)))


def _lower_frieze(surround: Surround, part: str, lift: float, wording: Wording) -> list[Cure]:
    layout = surround.layout
    height = layout.shelf_bottom - layout.frieze_bottom - lift
    if part != FRIEZE or height < (BY_PATH["frieze.height"].lowest or 0.0):
        return []
    return [Cure("frieze.height", f"make the frieze no more than {wording.at_most(height)} high")]


def _raise_shelf(surround: Surround, lift: float, wording: Wording) -> list[Cure]:
    layout, shelf = surround.layout, surround.job.design.shelf
    datum = 0.0 if shelf.height_from == "hearth" else layout.floor
    top = layout.shelf_top + lift
    if top > layout.ceiling or top - datum > (BY_PATH["shelf.height"].highest or 0.0):
        return []
    place = wording.at_least(top - datum)
    return [Cure("shelf.height", f"set the shelf's top at least {place} over the {shelf.height_from}")]


def _slim(
    surround: Surround, part: str, least: LeastDistance, points: tuple[Lengths, Mask], wording: Wording
) -> list[Cure]:
    """The greatest projection that would do where the part stands, if the part can be that slim.

    `points` are by how much each stands too near were it flush, (n,) inches, and which are a tablet's.
    """
    path = _projection_path(part)
    held = part == FRIEZE and surround.layout.frieze_over
    if path is None or held or part == BED_MOULD or part.endswith((*ROUND_COLUMNS, NAILERS)):
        return []
    design = surround.job.design
    lowest = design.foremost if part == SHELF else BY_PATH[path].lowest or 0.0
    trials = np.arange(lowest, _own_projection(surround, part), wording.step)
    enough = np.ones(len(trials), dtype=bool)
    short, raised = points
    for layer, further in ((~raised, _stands_further(surround, part)), (raised, design.tablet.thickness)):
        if layer.any():
            enough &= least(trials + further) <= HAIR - float(short[layer].max())
    if not enough.any():
        return []
    return [
        Cure(path, f"keep the {part}'s projection to {wording.at_most(float(trials[enough][-1]))} or less")
    ]


def _stands_further(surround: Surround, part: str) -> float:
    return surround.layout.shelf_step if part == SHELF else 0.0


def _own_projection(surround: Surround, part: str) -> float:
    layout = surround.layout
    fronts = {SHELF: layout.shelf_front, FRIEZE: layout.frieze_front}
    return fronts.get(part, layout.column_front)


def _projection_path(part: str) -> str | None:
    paths = {SHELF: "shelf.depth", FRIEZE: "frieze.projection", BED_MOULD: "bed_mould.size"}
    return paths.get(part, "column.projection" if stands_beside(part) else None)


def _keep_within(part: str, least: LeastDistance, greatest: float, wording: Wording) -> Cure:
    """For what stands out further than any distance makes up for."""
    trials = np.arange(0.0, greatest, wording.step)
    permitted = trials[np.isfinite(least(trials))]
    reach = wording.distance(float(permitted[-1]) if len(permitted) else 0.0)
    return Cure(
        _projection_path(part) or "column.projection", f"Keep the {part} within {reach} of the masonry."
    )
