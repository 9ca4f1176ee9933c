"""The page: border, title block, check bar and the room left for drawings."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon

from model.units import MM_PER_INCH
from render.drawing import Drawing, Lines, Placed
from render.extent import drawing_extent, list_texts, text_corners
from render.lettering import ELLIPSIS
from render.sheets import (
    PAPERS,
    TO_VERIFY,
    WHO_DECIDES,
    TitleBlock,
    build_sheet,
    draw_frame,
    safe_area,
)
from render.tables import SMALL

BLOCK = TitleBlock(
    job="Invented job",
    client="R. and S. Example",
    maker="Nobody & Daughter",
    date="2025-03-04",
    title="Front elevation",
    number="1 of 6",
    scale='1" = 1\'-0"',
    units="Feet and inches",
)


def writing_of(drawing):
    return [text.text for text in list_texts(drawing)]


def boxes_of(drawing):
    return [(text.text, Polygon(text_corners(text))) for text in list_texts(drawing)]


@pytest.mark.parametrize("size", PAPERS.values(), ids=PAPERS)
def test_title_block_says_everything_it_is_given(size):
    written = writing_of(draw_frame(*size, BLOCK))
    for value in (BLOCK.job, BLOCK.client, BLOCK.maker, BLOCK.date, BLOCK.title, BLOCK.number):
        assert value in written
    assert BLOCK.scale in written
    assert BLOCK.units in written


@pytest.mark.parametrize("size", PAPERS.values(), ids=PAPERS)
def test_every_sheet_says_who_decides_and_what_to_verify(size):
    assert f"{TO_VERIFY} {WHO_DECIDES}" in " ".join(writing_of(draw_frame(*size, BLOCK)))


@pytest.mark.parametrize("size", PAPERS.values(), ids=PAPERS)
def test_check_bar_measures_four_inches_and_a_hundred_millimetres(size):
    level = [
        x2 - x1
        for mark in draw_frame(*size, BLOCK).marks
        if isinstance(mark, Lines)
        for x1, y1, x2, y2 in mark.segments
        if y1 == y2
    ]
    assert any(length == pytest.approx(4, abs=1e-9) for length in level)
    assert any(length == pytest.approx(100 / MM_PER_INCH, abs=1e-9) for length in level)


@pytest.mark.parametrize("size", PAPERS.values(), ids=PAPERS)
def test_no_writing_of_the_frame_overlaps_another_or_leaves_the_border(size):
    frame = draw_frame(*size, BLOCK)
    left, bottom, right, top = drawing_extent(Drawing(frame.marks[:1]))
    for (one, box), (other, beside) in combinations(boxes_of(frame), 2):
        assert not box.intersects(beside), (one, other)
    for text, box in boxes_of(frame):
        x0, y0, x1, y1 = box.bounds
        assert left <= x0 and x1 <= right and bottom <= y0 and y1 <= top, text  # noqa: PT018


@pytest.mark.parametrize("size", PAPERS.values(), ids=PAPERS)
def test_room_for_drawings_lies_within_the_border_and_clear_of_the_title_block(size):
    frame = draw_frame(*size, BLOCK)
    area = safe_area(*size)
    left, _, right, top = drawing_extent(Drawing(frame.marks[:1]))
    assert left < area[0]
    assert area[2] < right
    assert area[3] < top
    assert max(box.bounds[3] for _, box in boxes_of(frame)) < area[1]


@given(st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), min_size=1, max_size=400))
def test_a_name_of_any_length_stays_in_its_field(name):
    long = TitleBlock(name, name, name, "2025-03-04", name, "12 of 12", BLOCK.scale, BLOCK.units)
    frame = draw_frame(*PAPERS["letter"], long)
    for (one, box), (other, beside) in combinations(boxes_of(frame), 2):
        assert not box.buffer(-1e-6).intersects(beside), (one, other)


def test_a_name_too_long_for_its_field_says_that_it_is_cut_short():
    long = TitleBlock("word " * 60, "", "", "", "", "1 of 1", "", "")
    assert any(text.endswith(ELLIPSIS) for text in writing_of(draw_frame(*PAPERS["letter"], long)))


def test_no_writing_of_the_frame_is_smaller_than_two_and_a_half_millimetres():
    for size in PAPERS.values():
        assert min(text.height for text in list_texts(draw_frame(*size, BLOCK))) >= SMALL


def test_a_sheet_carries_its_drawings_and_its_frame():
    placed = Placed(Drawing(()), (1.0, 1.0), "front")
    sheet = build_sheet(*PAPERS["letter"], BLOCK, (placed,))
    assert [p.name for p in sheet.placed] == ["front", "frame"]
    assert (sheet.number, sheet.title, sheet.width, sheet.height) == ("1 of 6", "Front elevation", 11, 8.5)
