"""What follows from a job's values and is shown beside them: never stored, never typed."""

from __future__ import annotations

from dataclasses import dataclass

from model.build.layout import Layout


@dataclass(frozen=True, slots=True)
class Derived:
    """A length that follows from others, in inches, and the group of the table it is shown in.

    `key` is a short name that no parameter has. A negative `value` means that the two things overlap.
    """

    key: str
    label: str
    group: str
    value: float


def list_derived(layout: Layout) -> tuple[Derived, ...]:
    """Every derived length, in the order of the table's groups; always the same keys."""
    return (
        Derived("facing.margin_above", "Left showing above", "Facing", layout.facing_margin),
        Derived("room.over_shelf", "Free over the shelf", "Room", layout.ceiling - layout.shelf_top),
        Derived("column.tall", "Height", "Columns", layout.shelf_bottom - layout.column_base),
        Derived("column.across", "Outside to outside", "Columns", 2 * layout.column_outer),
        Derived(
            "plinth.wide",
            "Width",
            "Plinths",
            layout.column_outer - layout.column_inner + 2 * layout.plinth_out,
        ),
        Derived("frieze.over_hearth", "Lower edge over hearth", "Frieze", layout.frieze_bottom),
        Derived("frieze.across", "Between the columns", "Frieze", 2 * layout.column_inner),
        Derived("shelf.across", "Overall width", "Shelf", 2 * layout.shelf_side),
        Derived("shelf.over_floor", "Top over floor", "Shelf", layout.shelf_top - layout.floor),
        Derived("shelf.under", "Underside over hearth", "Shelf", layout.shelf_bottom),
    )
