"""The site record as it stands on paper: every measured value and where it was taken, or a line for it.

What may be measured stands in model.parameters.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.idle import list_idle
from model.job import Job, read_value
from model.parameters import TABLE, Parameter
from model.surround import Surround
from render.drawing import MM
from render.site_sketch import KEYS
from render.tables import Cell, Row, Strip, Table, opening_strips, share_columns, table_strips

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
    columns = share_columns(width, COLUMNS, SHARES, ends=COLUMNS[2:3], bold=COLUMNS[2:3])
    rows = tuple(_list_rows(surround.asked or surround.job))
    return (
        *opening_strips("Site record", HOW, width),
        *table_strips(Table(columns, rows, least_row=LEAST_ROW, ruled=True)),
    )


def list_measured_rows() -> Iterator[Parameter]:
    """Every row of the table of parameters that is found and not chosen, group after group."""
    for group in GROUPS:
        yield from (row for row in TABLE if row.group == group and not row.linked)


@dataclass(frozen=True, slots=True)
class Measured:
    """A row with the letter it has in the sketch, if any, what it is called here, and its value as text.

    `text` is empty for what was not measured or is not there.
    """

    row: Parameter
    key: str
    label: str
    text: str


def list_measured(job: Job) -> Iterator[Measured]:
    """What the site record says of `job`; a manual's rows only where a manual governs."""
    idle = list_idle(job)
    for row in list_measured_rows():
        if row.path in idle and row.group == FIREPLACE:
            continue
        text = "" if row.path in idle else row.format(read_value(job, row.path), job.about.length_style)
        whole = row.group in (FIREPLACE, "Levels", "Obstacles")
        label = row.label if whole else row.name.capitalize()
        yield Measured(row, KEYS.get(row.path, ""), label, text)


def _list_rows(job: Job) -> Iterator[Row]:
    group = ""
    for measured in list_measured(job):
        if measured.row.group != group:
            group = measured.row.group
            yield group
        texts = (measured.key, measured.label, measured.text or LINE, "", measured.row.help)
        yield tuple(map(Cell, texts))
