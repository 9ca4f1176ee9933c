"""What follows from a job's values and is shown beside them: never stored, never typed."""

from __future__ import annotations

from dataclasses import dataclass

from model.build.cord_way import hole_size
from model.build.lines import Layout
from model.fixing import CordWay

ALIKE = 1e-9
"""Differences up to this, in inches, are arithmetic."""


@dataclass(frozen=True, slots=True)
class Derived:
    """A length that follows from others, in inches, and the group of the table it is shown in.

    `key` is a short name that no parameter has. `value` is None where another line says it already; less
    than nothing means that two things overlap.
    """

    key: str
    label: str
    group: str
    value: float | None


def list_derived(layout: Layout, cord: CordWay) -> tuple[Derived, ...]:
    """Every derived length, in the order of the table's groups; always the same keys."""
    left, right = (layout.shelf_bottom - side.base for side in layout.sides)
    legs = [layout.shelf_bottom - side.step.floor if side.step else None for side in layout.sides]
    alike = abs(left - right) <= ALIKE
    wide, other = (side.width + 2 * layout.plinth_out if layout.plinth_out else None for side in layout.sides)
    one_width = wide is None or other is None or abs(wide - other) <= ALIKE
    return (
        Derived("facing.margin_above", "Facing showing above", "Facing", layout.facing_margin),
        Derived("room.over_shelf", "Free over the shelf", "Room", layout.ceiling - layout.shelf_top),
        Derived("column.tall", "Height", "Columns", left if alike else None),
        Derived("column.tall_left", "Height, left", "Columns", None if alike else left),
        Derived("column.tall_right", "Height, right", "Columns", None if alike else right),
        *(
            Derived(f"column.leg_{side.name}", f"Leg to the floor, {side.name}", "Columns", leg)
            for side, leg in zip(layout.sides, legs, strict=True)
        ),
        Derived("column.across", "Outside to outside", "Columns", layout.left.outer + layout.right.outer),
        Derived("plinth.wide", "Width", "Plinths", wide if one_width else None),
        Derived("plinth.wide_left", "Width, left", "Plinths", None if one_width else wide),
        Derived("plinth.wide_right", "Width, right", "Plinths", None if one_width else other),
        Derived("frieze.over_hearth", "Lower edge over hearth", "Frieze", layout.frieze_bottom),
        Derived("frieze.across", "Between the columns", "Frieze", 2 * layout.column_inner),
        Derived("shelf.across", "Overall width", "Shelf", layout.left.shelf_side + layout.right.shelf_side),
        Derived("shelf.over_floor", "Top over floor", "Shelf", layout.shelf_top - layout.floor),
        Derived("shelf.under", "Underside over hearth", "Shelf", layout.shelf_bottom),
        Derived("cord.hole", "Holes, diameter", "Cord way", hole_size(cord) if cord.on else None),
    )
