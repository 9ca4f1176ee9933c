"""A sheet to take to a fireplace: a sketch with a letter for each size, and a line for everything to measure.

The same letters, names and help as the site record's, so that what is written on it goes into the fields.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from model.job import default_job, with_texts
from model.measuring_walk import is_measured_there
from model.parameters import Parameter
from model.surround import plan_surround
from render.desk import NO_SCALE, Desk, Draft, draft_pages
from render.drawing import MM, Drawing, Placed, Sheet, Text
from render.packet import number_sheets
from render.sheets import Block, paper_size
from render.site_layout import lay_site
from render.site_sheet import list_measured_rows
from render.site_sketch import KEYS
from render.tables import SMALL, Cell, Row, Strip, Table, share_columns, table_strips
from render.view_layout import CAPTION

TITLE = "Measuring sheet"
WRITE = "_" * 14
"""A line for the title block's fields, which are filled in by hand."""
LEAST_ROW = 6.2 * MM
"""Room to write by hand."""
COLUMNS = ("Key", "What", "Where the tape goes", "Write here", "")
SHARES = (12, 56, 112, 32, 32)
NOTES = (
    "Not to scale. Letters: those of the list.",
    "Measure with one tape, to one fraction, from the finished hearth at the opening's middle upwards. Read "
    "every size twice, the opening at three places. What is not there stays empty; circle choices.",
    "Let the fire go out and the masonry cool. Old paint may hold lead, old boards and linings asbestos: do "
    "not scrape, drill or break them untested.",
    "Wanted too: an appliance's manual, the code adopted here, photos.",
)
EXAMPLE = {"facing.proud": "4", "hearth.height": "8", "hearth.thickness": "5", "opening.sill": "3"}
"""What is drawn in the sketch over a job's defaults, so that every letter has its place."""
AGAIN, LEFT_RIGHT, FIRST_SECOND = ("", "again"), ("left", "right"), ("first", "second")
TOGETHER: Mapping[str, tuple[str, tuple[str, str]]] = {
    **{
        f"{group}.{size}": (f"readings.{group}_{size}", AGAIN)
        for group, size in (
            ("opening", "width"),
            ("opening", "height"),
            ("facing", "width"),
            ("facing", "height"),
            ("hearth", "depth"),
        )
    },
    "readings.diagonal_falling": ("readings.diagonal_rising", ("falling", "rising")),
    **{
        f"{name}left": (f"{name}right", LEFT_RIGHT)
        for name in (
            *("level.", "level.floor_", "plumb.", "room.", "baseboard.height_", "baseboard.thickness_"),
            *("outlet.", "outlet.height_", "casing.", "casing.bottom_", "casing.top_", "old_ledger."),
        )
    },
    **{
        f"bolt_one.{size}": (f"bolt_two.{size}", FIRST_SECOND) for size in ("across", "up", "out", "diameter")
    },
    "room.length": ("room.breadth", ("length", "breadth")),
    "room.driest": ("room.dampest", ("driest", "dampest")),
    "outlet.width": ("outlet.tall", ("wide", "high")),
    "old_ledger.top": ("old_ledger.tall", ("top", "height")),
}
"""Rows that stand on one line with another, and what is written in their boxes."""
MOST_HELP = 70
"""Letters of help that stand on one line."""


@dataclass(frozen=True, slots=True)
class Line:
    """A line of the list: one row or two that belong together, and the small words in their boxes."""

    rows: tuple[Parameter, ...]
    words: tuple[str, str]

    @property
    def key(self) -> str:
        """The letters of its sizes in the sketch."""
        return ", ".join(KEYS[row.path] for row in self.rows if row.path in KEYS)

    @property
    def label(self) -> str:
        """What its rows are called in the window."""
        labels = [row.label for row in self.rows]
        return labels[0] if self.words == AGAIN or len(labels) < 2 else join_labels(labels[0], labels[1])


def join_labels(first: str, second: str) -> str:
    """Two names that differ in the middle as one: ``Over the left and right foot``."""
    one, other = first.split(), second.split()
    alike = list(zip(one, other, strict=False))
    start = next((n for n, (a, b) in enumerate(alike) if a != b), len(alike))
    back = list(zip(reversed(one[start:]), reversed(other[start:]), strict=False))
    end = next((n for n, (a, b) in enumerate(back) if a != b), len(back))
    middle = " ".join(one[start : len(one) - end]), " ".join(other[start : len(other) - end])
    return " ".join((*one[:start], middle[0], "and", middle[1].lower(), *one[len(one) - end :]))


def build_measuring_sheets(paper: str, units: str) -> tuple[Sheet, ...]:
    """Sketch and list on `paper`, for sizes in `units`, keys of PAPERS and UNITS. Raises Refused."""
    size = paper_size(paper)
    job = with_texts(default_job(), EXAMPLE.items())
    about = replace(job.about, name=WRITE, client=WRITE, maker=WRITE, units=units)
    surround = plan_surround(replace(job, about=about))
    desk = Desk(surround, size)
    layout = lay_site(desk, surround, NOTES)
    placed = tuple(_without_scale(each) if each.name == CAPTION else each for each in layout.placed)
    sketch = Draft(TITLE, NO_SCALE, placed, Block.BELOW)
    drafts = [sketch, *draft_pages(desk, f"{TITLE}, list", measuring_strips(desk.width))]
    return number_sheets(desk, drafts, WRITE[:8])


def _without_scale(caption: Placed) -> Placed:
    """A caption's title alone: the sketch stands for any fireplace."""
    marks = tuple(mark for mark in caption.drawing.marks if isinstance(mark, Text) and mark.bold)
    return replace(caption, drawing=Drawing(marks))


def measuring_strips(width: float) -> tuple[Strip, ...]:
    """A line for everything that is measured, in the order of the fields, for a page `width` wide."""
    columns = share_columns(width, COLUMNS, SHARES)
    return table_strips(Table(columns, tuple(_list_rows()), SMALL, LEAST_ROW, ruled=True))


def list_lines() -> tuple[Line, ...]:
    """Every row that is measured at the fireplace, alone or with the one it belongs to, group after group."""
    rows = {row.path: row for row in list_measured_rows() if is_measured_there(row)}
    seconds = {second for first, (second, _) in TOGETHER.items() if first in rows}
    lines = []
    for path, row in rows.items():
        if path not in seconds:
            second, words = TOGETHER.get(path, ("", AGAIN))
            both = (row, rows[second]) if second in rows else (row,)
            lines.append(Line(both, words))
    return tuple(lines)


def _list_rows() -> Iterator[Row]:
    group = ""
    for line in list_lines():
        row = line.rows[0]
        if row.group != group:
            group = row.group
            yield group
        if row.choices is not None:
            yield Cell(), Cell(line.label), Cell(" / ".join(row.choices.values())), Cell(), Cell()
        else:
            boxes = (Cell(words) for words in line.words)
            yield Cell(line.key), Cell(line.label), Cell(_shorten(row.help)), *boxes


def _shorten(help: str) -> str:
    """As much of a row's help as stands on one line, sentence by sentence."""
    kept = help
    for end in (". ", "; ", ", "):
        while len(kept) > MOST_HELP and end in kept:
            kept = kept.rpartition(end)[0] + "."
    return kept
