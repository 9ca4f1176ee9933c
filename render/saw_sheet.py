"""The mitre saw's settings for mouldings as they stand on paper, below the cut list.

What the settings are is worked out in model.takeoff.saw_setups.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from model.takeoff.saw_angles import SawSetting, format_degrees
from model.takeoff.saw_setups import Setup
from model.units import MM_PER_INCH
from render.tables import (
    Cell,
    Column,
    Row,
    Strip,
    Table,
    heading_strip,
    paragraph_strips,
    share_widths,
    table_strips,
)

MM = 1 / MM_PER_INCH
ROW = 9 * MM
FIGURES = 3 * MM
HOW = (
    "For a saw whose blade tilts to the left. Left and right on the saw are the sawyer's; left and right "
    "ends are as seen from the moulding's face, in place; so are top and bottom edge. The seat is the side "
    "that lies under the shelf or on the plinth. Try each setting on scrap."
)
SQUARE = "upright"
COLUMNS = ("Cut", "The piece lies", "To the fence", "Table", "Blade", "Keep", "Or", "Ends")
SHARES = (10, 30, 24, 22, 20, 25, 48, 62)


def saw_strips(setups: Sequence[Setup], width: float) -> tuple[Strip, ...]:
    """The settings for a page `width` wide; nothing where no moulding is mitred."""
    if not setups:
        return ()
    widths = share_widths(width, SHARES)
    columns = tuple(Column(name, w, bold=name == "Table") for name, w in zip(COLUMNS, widths, strict=True))
    return (
        heading_strip("Mitre saw settings for the mouldings", above=6 * MM),
        *(replace(strip, leads=True) for strip in paragraph_strips(HOW, width)),
        Strip(1.5 * MM, leads=True),
        *table_strips(Table(columns, tuple(map(_row, setups)), FIGURES, ROW, ruled=True)),
    )


def _row(setup: Setup) -> Row:
    first, *others = setup.settings
    return (
        Cell(box=True),
        Cell(first.lie),
        Cell(first.fence),
        Cell(f"{format_degrees(first.mitre)} {first.swing}"),
        Cell(f"{format_degrees(first.bevel)} left" if first.bevel else SQUARE),
        Cell(f"{first.keep} of the blade"),
        Cell("; ".join(map(_describe, others))),
        Cell("; ".join(ends.describe() for ends in setup.ends)),
    )


def _describe(setting: SawSetting) -> str:
    table = f"table {format_degrees(setting.mitre)} {setting.swing}"
    return f"{setting.lie}, {setting.fence} to the fence, {table}, keep {setting.keep}"
