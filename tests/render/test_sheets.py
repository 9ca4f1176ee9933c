"""The page: border, title block below or beside, check bar and the room left for drawings."""

from itertools import combinations, product

import pytest
from shapely import Polygon, box

from render.drawing import Drawing, Placed
from render.extent import drawing_extent, list_texts, text_corners
from render.sheets import (
    DETAIL_TITLES,
    PAPERS,
    TITLES,
    VIEW_TITLES,
    Block,
    build_sheet,
    draw_frame,
    safe_area,
)
from render.tables import SMALL
from render.title_block import CAUTIONS, TitleBlock
from render.views import VIEWS

BLOCK = TitleBlock(
    job="Invented job",
    client="R. and S. Example",
    maker="Nobody & Daughter",
    date="2025-03-04",
    title="Front elevation",
    number="10 of 12",
    scale='1 1/2" = 1\'-0"',
    units="Feet and inches",
    notes=("Wood: invented.", "Shelf height is from the hearth."),
)
EVERY = [
    pytest.param(size, place, id=f"{name}-{place}") for (name, size), place in product(PAPERS.items(), Block)
]


def boxes_of(drawing):
    return [(text.text, Polygon(text_corners(text))) for text in list_texts(drawing)]


@pytest.mark.parametrize(("size", "place"), EVERY)
def test_the_sheet_says_everything_its_block_is_given(size, place):
    written = [text.text for text in list_texts(draw_frame(*size, place, BLOCK))]
    for value in (BLOCK.job, BLOCK.client, BLOCK.maker, BLOCK.date, BLOCK.title, BLOCK.number):
        assert value in written
    assert BLOCK.scale in written
    assert BLOCK.units in written


@pytest.mark.parametrize(("size", "place"), EVERY)
def test_every_sheet_says_what_to_verify_and_who_decides(size, place):
    assert CAUTIONS in " ".join(text.text for text in list_texts(draw_frame(*size, place, BLOCK)))


@pytest.mark.parametrize(("size", "place"), EVERY)
def test_no_writing_of_the_frame_overlaps_another_or_leaves_the_paper(size, place):
    frame = draw_frame(*size, place, BLOCK)
    for (one, area), (other, beside) in combinations(boxes_of(frame), 2):
        assert not area.intersects(beside), (one, other)
    paper = box(0.2, 0.2, size[0] - 0.2, size[1] - 0.2)
    assert all(paper.contains(area) for _, area in boxes_of(frame))


@pytest.mark.parametrize(("size", "place"), EVERY)
def test_room_for_drawings_is_clear_of_border_block_and_check_bar(size, place):
    frame = draw_frame(*size, place, BLOCK)
    area = safe_area(*size, place)
    left, bottom, right, top = drawing_extent(Drawing(frame.marks[:1]))
    assert left < area[0] < area[2] < right
    assert bottom < area[1] < area[3] < top
    room = box(*area)
    assert not any(room.intersects(writing) for _, writing in boxes_of(frame))


def test_a_block_beside_leaves_more_height_and_one_below_more_width():
    for size in PAPERS.values():
        beside, below = (safe_area(*size, place) for place in Block)
        assert beside[3] - beside[1] > below[3] - below[1]
        assert beside[2] - beside[0] < below[2] - below[0]


@pytest.mark.parametrize(("size", "place"), EVERY)
def test_no_writing_of_the_frame_is_smaller_than_two_and_a_half_millimetres(size, place):
    assert min(text.height for text in list_texts(draw_frame(*size, place, BLOCK))) >= SMALL - 1e-12


def test_a_sheet_carries_its_drawings_and_its_frame():
    placed = Placed(Drawing(()), (1.0, 1.0), "front")
    sheet = build_sheet(*PAPERS["letter"], Block.BESIDE, BLOCK, (placed,))
    assert [p.name for p in sheet.placed] == ["front", "frame"]
    assert (sheet.number, sheet.title) == ("10 of 12", "Front elevation")
    assert (sheet.width, sheet.height) == (11, 8.5)


def test_every_view_and_every_detail_has_its_own_title():
    assert set(VIEW_TITLES) == set(VIEWS)
    assert {name.removesuffix("_detail") for name in DETAIL_TITLES} < set(VIEWS)
    assert len(set(TITLES.values())) == len(TITLES)
