"""The site record as it stands on paper: every measured value and where it was taken, or a line for it.

What may be measured stands in model.parameters.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from model.idle import list_idle
from model.job import Job, read_value
from model.parameters import TABLE, Parameter
from model.surround import Surround
from render.drawing import Anchor
from render.site_sketch import KEYS
from render.tables import (
    MM,
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

FIREPLACE = "Fireplace"
GROUPS = (FIREPLACE, "Opening", "Facing", "Hearth", "Levels", "Room", "Obstacles")
"""Groups of rows that are found and not chosen; a manual's figures only where a manual governs."""
COLUMNS = ("Key", "What", "As measured", "Read again", "Where the tape goes")
SHARES = (11, 50, 40, 26, 116)
LEAST_ROW = 6.5 * MM
"""Room for a figure by hand."""
HOW = (
    "As entered in the job. What is empty was not measured or is not there: write it on the line. Sizes are "
    "read again on the day, before anything is cut."
)
LINE = "_" * 16
"""To write on: a character of the typeface, so that it keeps its place in its cell everywhere."""


def site_strips(surround: Surround, width: float) -> tuple[Strip, ...]:
    """Everything measured at the site, for a page `width` wide."""
    columns = tuple(
        Column(name, w, Anchor.END if name == "As measured" else Anchor.START, bold=name == "As measured")
        for name, w in zip(COLUMNS, share_widths(width, SHARES), strict=True)
    )
    rows = tuple(_list_rows(surround.asked or surround.job))
    return (
        heading_strip("Site record"),
        *(replace(strip, leads=True) for strip in paragraph_strips(HOW, width)),
        Strip(1.5 * MM, leads=True),
        *table_strips(Table(columns, rows, least_row=LEAST_ROW, ruled=True)),
    )


def _list_rows(job: Job) -> Iterator[Row]:
    idle = list_idle(job)
    for group in GROUPS:
        yield group
        for row in TABLE:
            if row.group == group and not row.linked and not (row.path in idle and group == FIREPLACE):
                yield _row(job, row, row.path in idle)


def _row(job: Job, row: Parameter, idle: bool) -> Row:
    text = "" if idle else row.format(read_value(job, row.path), job.about.length_style)
    label = row.label if row.group in (FIREPLACE, "Levels", "Obstacles") else row.name.capitalize()
    return (
        Cell(KEYS.get(row.path, "")),
        Cell(label),
        Cell(text or LINE),
        Cell(""),
        Cell(row.help),
    )
