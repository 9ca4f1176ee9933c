"""Sheets of details: every detail there once, as large as has room, in the room for drawings."""

from functools import cache

import pytest

from app.demo import list_demos, read_demo
from model.job import with_texts
from model.surround import plan_surround
from render.chapters.details import draft_details, say_taken
from render.desk import Desk
from render.detail_list import Detail, list_details
from render.extent import drawing_extent, paper_extent
from render.section_places import section_level, section_station
from render.sheets import DETAILS, PAPERS, safe_area

EVERY = [(name, paper) for name in list_demos() for paper in ("letter", "a3")]


@cache
def drafts_of(name, paper):
    surround = plan_surround(read_demo(name))
    return surround, draft_details(Desk(surround, PAPERS[paper]))


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_every_detail_stands_on_one_sheet(name, paper):
    surround, drafts = drafts_of(name, paper)
    placed = [p.name for draft in drafts for p in draft.placed if p.name.startswith("detail")]
    assert sorted(placed) == sorted(detail.name for detail in list_details(surround))


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_details_are_an_eighth_or_larger_and_the_shelf_edge_a_quarter_or_larger(name, paper):
    for draft in drafts_of(name, paper)[1]:
        for placed in draft.placed:
            if placed.name.startswith("detail"):
                assert placed.drawing.ratio <= 8
                if placed.name == "detail_shelf_edge":
                    assert placed.drawing.ratio <= 4


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_details_stay_within_the_room_for_drawings_and_apart(name, paper):
    for draft in drafts_of(name, paper)[1]:
        left, bottom, right, top = safe_area(*PAPERS[paper], draft.block)
        boxes = []
        for placed in draft.placed:
            x0, y0, x1, y1 = (v / placed.drawing.ratio for v in drawing_extent(placed.drawing))
            box = placed.at[0] + x0, placed.at[1] + y0, placed.at[0] + x1, placed.at[1] + y1
            assert left - 1e-6 <= box[0] <= box[2] <= right + 1e-6
            assert bottom - 1e-6 <= box[1] <= box[3] <= top + 1e-6
            for other in boxes:
                apart = box[0] >= other[2] or other[0] >= box[2] or box[1] >= other[3] or other[1] >= box[3]
                assert apart
            boxes.append(box)


def test_every_detail_says_where_it_is_cut():
    for name in DETAILS:
        detail = Detail(name, "plan_section", 0.0, (0.0, 0.0, 1.0, 1.0))
        assert say_taken(detail).endswith(".")


def test_what_is_said_to_come_out_of_a_section_lies_in_its_plane():
    surround = plan_surround(read_demo("brick"))
    at = {detail.name: detail.at for detail in list_details(surround)}
    assert at["detail_shelf_edge"] == section_station(surround)
    assert at["detail_column_right"] == section_level(surround)


@pytest.mark.parametrize("size", [(11.0, 8.5), (10.0, 6.0)])
def test_details_of_a_high_frieze_stay_on_their_sheet_however_small_they_get(size):
    settings = [("cord.on", "yes"), ("cord.place", "frieze"), ("frieze.height", "36"), ("shelf.height", "84")]
    desk = Desk(plan_surround(with_texts(read_demo("gas"), settings)), size)
    left, low, right, high = desk.area
    for draft in draft_details(desk):
        for placed in draft.placed:
            x0, y0, x1, y1 = paper_extent(placed.drawing)
            assert left - 1e-6 <= placed.at[0] + x0
            assert placed.at[0] + x1 <= right + 1e-6
            assert low - 1e-6 <= placed.at[1] + y0
            assert placed.at[1] + y1 <= high + 1e-6
