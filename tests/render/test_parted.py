"""Views parted over several sheets."""

from collections import Counter

from model.job import default_job, with_texts
from model.surround import plan_surround
from render.desk import Desk
from render.drawing import Dimension
from render.parted import draft_parted
from render.sheets import MORE, PAPERS
from render.view_dimensions import list_strings

CROWDED = (
    ("over.on", "yes"), ("over.panels", "4"), ("frieze.panels", "7"), ("column.panels", "4"),
    ("old_ledger.top", "140"), ("opening.width", "14"), ("column.width", "5"), ("job.units", "millimetres"),
)  # fmt: skip


def desk_of(settings, paper="letter"):
    return Desk(plan_surround(with_texts(default_job(), settings)), PAPERS[paper])


def dimensions_of(draft, name):
    drawing = next(placed.drawing for placed in draft.placed if placed.name == name)
    return [mark for mark in drawing.marks if isinstance(mark, Dimension)]


def test_a_view_that_fits_stays_whole():
    (draft,) = draft_parted(desk_of((), "a3"), "front")
    assert draft.title == "Front elevation"


def test_all_dimensions_of_a_crowded_view_are_on_its_sheets_each_once_and_each_sheet_holds_its_own():
    desk = desk_of(CROWDED)
    first, *others = draft_parted(desk, "front")
    assert others
    assert {draft.title for draft in others} == {"Front elevation, more sizes"}
    drawn = [dimensions_of(first, "front"), *(dimensions_of(draft, "front" + MORE) for draft in others)]
    spans = Counter((d.vertical, d.span, d.line) for dimensions in drawn for d in dimensions)
    assert max(spans.values()) == 1
    stations = sum(len(string.stations) - 1 for string in list_strings(desk.surround, "front"))
    assert sum(spans.values()) == stations
