"""Short chapters share a sheet with the one before where they have room, and are found there."""

from render.chapters.joined import join_short
from render.desk import Desk, Draft
from render.drawing import Drawing, Placed, Text
from render.packet import list_holders
from render.sheets import PAPERS, Block, safe_area

DESK = Desk(None, PAPERS["letter"])  # type: ignore[arg-type]
_, LOW, _, HIGH = safe_area(*PAPERS["letter"], Block.BELOW)


def draft_of(title, *rows):
    marks = tuple(Text(title, (2.0, y), 0.12) for y in rows)
    return Draft(title, "–", (Placed(Drawing(marks), (0.0, 0.0), "table"),), Block.BELOW)


def test_a_chapter_that_has_room_below_the_end_of_the_one_before_stands_there():
    top = HIGH - 0.2
    cautions, notes = draft_of("Cautions", top), draft_of("Notes", top, top - 1)
    (sheet,) = join_short(DESK, [cautions, notes])
    assert sheet.title == "Cautions, notes"
    ys = [mark.at[1] for mark in sheet.placed[0].drawing.marks]
    assert ys[1] < ys[0] - 0.2
    assert min(ys) > LOW
    assert list_holders([sheet])["Notes"] == list_holders([sheet])["Cautions"] == 1


def test_a_chapter_without_room_there_has_a_sheet_of_its_own():
    cautions, notes = draft_of("Cautions", LOW + 0.5), draft_of("Notes", HIGH - 0.2)
    assert join_short(DESK, [cautions, notes]) == [cautions, notes]


def test_a_chapter_of_several_sheets_and_lists_that_are_handed_out_stay_alone():
    top = HIGH - 0.2
    long = [draft_of("Cautions", top), draft_of("Notes", top), draft_of("Notes, continued", top)]
    lists = [draft_of("Saw settings", top), draft_of("Buying list", top)]
    assert join_short(DESK, long) == long
    assert join_short(DESK, lists) == lists
