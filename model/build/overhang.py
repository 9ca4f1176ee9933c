"""How far the shelf passes what is under it, where it passes least, and what can hang there."""

from __future__ import annotations

from model.build.ledger import Ledger
from model.build.lines import LEFT, RIGHT, is_broken
from model.design import IN_FRONT, PLANK, Design


def end_overhang(design: Design, name: str) -> float:
    """How far the shelf passes the column on one side, LEFT or RIGHT."""
    shelf = design.shelf
    own = shelf.overhang_left if name == LEFT else shelf.overhang_right
    return shelf.overhang_end if own is None else own


def least_overhang(design: Design) -> float:
    """The least that the shelf passes what is under it, at the front or at either end."""
    return min(design.shelf.overhang_front, *(end_overhang(design, name) for name in (LEFT, RIGHT)))


def least_overhang_at(design: Design) -> str:
    """Where the shelf passes least what is under it, for a sentence."""
    ends = {name: end_overhang(design, name) for name in (LEFT, RIGHT)}
    least = min(ends.values())
    if design.shelf.overhang_front <= least:
        return "at the front" if design.shelf.overhang_front < least else "at the front and an end"
    if ends[LEFT] == ends[RIGHT]:
        return "at its ends"
    return f"at its {min(ends, key=lambda name: ends[name])} end"


def mould_overhang(design: Design, frieze_front: float, step: float) -> float:
    """The least that the shelf, a `step` further out over the columns, passes what a bed mould lies on."""
    column, front = design.column.projection, design.shelf_depth
    if not (step and is_broken(design.frieze.place == IN_FRONT, column, frieze_front)):
        return least_overhang(design)
    ends = (end_overhang(design, name) for name in (LEFT, RIGHT))
    return min(front - frieze_front, front + step - column, *ends)


def room_before_columns(design: Design, step: float, hanging: float) -> float:
    """How far what is laid on a column's face may stand out: an edge band `hanging` thick hangs before it, a
    `step` further out than between the columns."""
    return design.shelf_depth + step - hanging - design.column.projection


def fit_edge_height(design: Design, thickness: float, ledger: Ledger) -> float:
    """An edge band may hang below the shelf only where it clears what stands under it; a plank has none."""
    if design.shelf.kind == PLANK:
        return thickness
    asked = design.shelf.edge_height
    built = asked if least_overhang(design) >= design.board.thickness else min(asked, thickness)
    return ledger.hold("shelf.edge_height", asked, built, "the overhang leaves no room for it to hang lower")
