"""Sheets of sub-assemblies: within the page, at standard scales, tables where they fit, nothing lost."""

from functools import cache

import pytest

from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.assemblies import list_assemblies
from model.takeoff.takeoff import take_off
from render.chapters.shop import draft_shop
from render.desk import Desk
from render.drawing import Text
from render.extent import drawing_extent, paper_extent
from render.part_views import LOOKS
from render.sheets import PAPERS, Block, safe_area
from tests.render.test_part_views import ODD

JOBS = {"plain": "", **ODD}


@cache
def made(name):
    job = with_texts(default_job(), [tuple(text.split("=")) for text in JOBS[name].split()])
    surround = plan_surround(job)
    return surround, take_off(surround)


@cache
def drafts_of(name, paper):
    surround, takeoff = made(name)
    return draft_shop(Desk(surround, PAPERS[paper], None, (), takeoff.cuts, takeoff))


EVERY = [(name, paper) for name in JOBS for paper in ("letter", "a3")]


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_everything_stays_within_the_room_for_drawings(name, paper):
    for draft in drafts_of(name, paper):
        left, bottom, right, top = safe_area(*PAPERS[paper], draft.block)
        for placed in draft.placed:
            x0, y0, x1, y1 = (v / placed.drawing.ratio for v in drawing_extent(placed.drawing))
            assert left - 1e-6 <= placed.at[0] + x0
            assert placed.at[0] + x1 <= right + 1e-6
            assert bottom - 1e-6 <= placed.at[1] + y0
            assert placed.at[1] + y1 <= top + 1e-6


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_every_sub_assembly_has_its_drawing_or_its_twins(name, paper):
    surround, _ = made(name)
    titles = " | ".join(draft.title.lower() for draft in drafts_of(name, paper))
    for assembly in list_assemblies(surround.boards):
        assert assembly.name in titles or (assembly.twin and "left and right" in titles)


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_every_piece_and_its_size_are_listed_once(name, paper):
    surround, takeoff = made(name)
    marks = [
        mark.text
        for draft in drafts_of(name, paper)
        for placed in draft.placed
        if placed.name == "table"
        for mark in placed.drawing.marks
        if isinstance(mark, Text) and mark.bold
    ]
    drawn_twice = {a.name for a in list_assemblies(surround.boards) if a.twin}
    for cut in takeoff.cuts:
        parts = set(cut.assembly.split(", ")) - ({"right column"} if drawn_twice else set())
        assert marks.count(cut.mark) == len(parts) or cut.assembly == "right column"


@pytest.mark.parametrize("name", JOBS)
def test_drawings_are_not_smaller_than_three_eighths_of_an_inch_to_the_foot_on_letter(name):
    ratios = [p.drawing.ratio for d in drafts_of(name, "letter") for p in d.placed if p.name in LOOKS]
    assert max(ratios) <= 32


def test_on_a_large_sheet_a_column_stands_with_its_tables():
    (column,) = [d for d in drafts_of("plain", "a3") if d.title == "Left and right column"]
    assert column.block is Block.BESIDE
    assert "table" in [placed.name for placed in column.placed]


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_views_without_a_table_stand_in_the_middle_of_their_sheet(name, paper):
    bare = [draft for draft in drafts_of(name, paper) if all(p.name != "table" for p in draft.placed)]
    for draft in bare:
        left, bottom, right, top = safe_area(*PAPERS[paper], draft.block)
        boxes = [(p.at, paper_extent(p.drawing)) for p in draft.placed]
        x0, x1 = min(x + box[0] for (x, _), box in boxes), max(x + box[2] for (x, _), box in boxes)
        y0, y1 = min(y + box[1] for (_, y), box in boxes), max(y + box[3] for (_, y), box in boxes)
        assert (x0 + x1, y0 + y1) == pytest.approx((left + right, bottom + top))
