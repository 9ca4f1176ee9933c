"""A sheet to take to a fireplace: a sketch with a letter for each size, and a line for everything to measure.

The same letters, names and help as the site record's, so that what is written on it goes into the fields.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from model.job import default_job, with_texts
from model.measuring_walk import is_measured_there
from model.parameters import TABLE, Parameter
from model.surround import plan_surround
from render.desk import NO_SCALE, Desk, Draft, draft_pages, each_once, lay
from render.drawing import Drawing, Placed, Sheet, Text
from render.packet import number_sheets
from render.sheets import SITE_FRONT, SITE_PLAN, Block, paper_size
from render.site_sheet import GROUPS, LINE
from render.site_sketch import KEYS, draw_site
from render.tables import (
    MM,
    SMALL,
    Cell,
    Row,
    Strip,
    Table,
    opening_strips,
    share_columns,
    table_strips,
)
from render.view_layout import CAPTION

TITLE = "Measuring sheet"
WRITE = "_" * 14
"""A line for the title block's fields, which are filled in by hand."""
LEAST_ROW = 7.5 * MM
"""Room to write by hand."""
COLUMNS = ("Key", "What", "Measured", "Again", "Where the tape goes")
SHARES = (10, 52, 45, 32, 104)
NOTES = (
    "Not to scale. The letters are those of the list on the next sheet.",
    "Measure with one tape, to the same fraction all through, from the finished hearth at the opening's "
    "centre line upwards. Read every size twice, and the opening at three places each way.",
)
HOW = (
    "Write each size on its line; what is not there stays empty. Circle choices. Let the fire go out and the "
    "masonry cool before. Old paint may hold lead, old boards and linings asbestos: do not scrape, drill or "
    "break them until they are tested. Wanted as well: the manual of a gas or factory-built unit, the code "
    "adopted here, photos of the whole wall, straight on and from both sides."
)
EXAMPLE = {"facing.proud": "4", "hearth.height": "8"}
"""What is drawn in the sketch over a job's defaults, so that every letter has its place."""


def build_measuring_sheets(paper: str, units: str) -> tuple[Sheet, ...]:
    """Sketch and list on `paper`, for sizes in `units`, keys of PAPERS and UNITS. Raises Refused."""
    size = paper_size(paper)
    job = with_texts(default_job(), EXAMPLE.items())
    about = replace(job.about, name=WRITE, client=WRITE, maker=WRITE, units=units)
    surround = plan_surround(replace(job, about=about))
    desk = Desk(surround, size)
    layout = lay(desk, each_once(surround, draw_site), (SITE_FRONT, SITE_PLAN))
    placed = tuple(_without_scale(each) if each.name == CAPTION else each for each in layout.placed)
    sketch = Draft(TITLE, NO_SCALE, placed, Block.BESIDE, notes=NOTES)
    drafts = [sketch, *draft_pages(desk, f"{TITLE}, list", measuring_strips(desk.width))]
    return number_sheets(desk, drafts, WRITE)


def _without_scale(caption: Placed) -> Placed:
    """A caption's title alone: the sketch stands for any fireplace."""
    marks = tuple(mark for mark in caption.drawing.marks if isinstance(mark, Text) and mark.bold)
    return replace(caption, drawing=Drawing(marks))


def measuring_strips(width: float) -> tuple[Strip, ...]:
    """A line for everything that is measured, in the order of the fields, for a page `width` wide."""
    columns = share_columns(width, COLUMNS, SHARES)
    return (
        *opening_strips(TITLE, HOW, width),
        *table_strips(Table(columns, tuple(_list_rows()), SMALL, LEAST_ROW, ruled=True)),
    )


def _list_rows() -> Iterator[Row]:
    for group in GROUPS:
        yield group
        for row in TABLE:
            if row.group == group and is_measured_there(row):
                yield Cell(KEYS.get(row.path, "")), Cell(row.name.capitalize()), *_places(row), Cell(row.help)


def _places(row: Parameter) -> tuple[Cell, Cell]:
    """Where a value is written, or the choices to circle."""
    if row.choices is not None:
        return Cell(" / ".join(row.choices.values())), Cell()
    return Cell(LINE), Cell()
