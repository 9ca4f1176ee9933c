"""The mitre saw's settings for mouldings as they stand on paper, below the cut list.

What the settings are is worked out in model.takeoff.saw_setups.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.takeoff.saw_angles import SawSetting, format_degrees
from model.takeoff.saw_setups import Angles, Setup
from render.drawing import MM
from render.tables import FIGURES, ROW, Cell, Row, Strip, Table, opening_strips, share_columns, table_strips

HOW = (
    "For a saw whose blade tilts to the left. Left and right on the saw are the sawyer's; left and right "
    "ends are as seen from the moulding's face, in place; so are top and bottom edge. The seat is the side "
    "that lies under the shelf or on the plinth. Try each setting on scrap."
)
SQUARE = "upright"
CORNERS = (86.0, 87.0, 88.0, 89.0, 90.0, 91.0, 92.0, 93.0, 94.0)
"""Corners that a wall or a column may have in place of a square one, degrees."""
NOT_SQUARE = (
    "Measure the corner between the two faces that the moulding runs on. The piece lies, turns and is kept "
    "as above; both pieces of the corner are set alike. Half a degree lies half way between two columns."
)
COLUMNS = ("Cut", "The piece lies", "To the fence", "Table", "Blade", "Keep", "Or", "Ends")
SHARES = (10, 30, 24, 22, 20, 25, 48, 62)


def saw_strips(setups: Sequence[Setup], width: float) -> tuple[Strip, ...]:
    """The settings for a page `width` wide; nothing where no moulding is mitred."""
    if not setups:
        return ()
    columns = share_columns(width, COLUMNS, SHARES, bold=("Table",))
    return (
        *opening_strips("Mitre saw settings for the mouldings", HOW, width, above=6 * MM),
        *table_strips(Table(columns, tuple(map(_row, setups)), FIGURES, ROW, ruled=True)),
    )


def corner_strips(angles: Sequence[Angles], width: float) -> tuple[Strip, ...]:
    """Settings for CORNERS, `angles` in their order; nothing where no moulding is mitred."""
    if not angles:
        return ()
    heads = ("Where the corner measures", *(format_degrees(corner) for corner in CORNERS))
    columns = share_columns(width, heads, (5, *(2 for _ in CORNERS)), bold=(format_degrees(90),))
    rows = tuple(row for each in angles for row in _corner_rows(each))
    return (
        *opening_strips("Where a corner is not square", NOT_SQUARE, width, above=6 * MM),
        *table_strips(Table(columns, rows, FIGURES, ROW, ruled=True)),
    )


def _corner_rows(angles: Angles) -> tuple[Row, ...]:
    tables = tuple(Cell(format_degrees(mitre)) for mitre, _ in angles.settings)
    if not angles.spring:
        return ((Cell("Standing or flat-backed: table"), *tables),)
    blades = tuple(Cell(format_degrees(bevel)) for _, bevel in angles.settings)
    sprung = f"Sprung {format_degrees(angles.spring)}, flat on its back"
    return ((Cell(f"{sprung}: table"), *tables), (Cell(f"{sprung}: blade"), *blades))


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
