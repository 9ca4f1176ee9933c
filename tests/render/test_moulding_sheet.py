"""Mouldings on paper: full size, every one, inside the page, with the sizes they really have."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from model.build.layout import lay_out
from model.errors import Refused
from model.job import default_job, with_texts
from model.moulding.library import SECTIONS
from model.moulding.notation import parse_section
from model.units import INCHES_16, MILLIMETRES
from render.drawing import Dimension, Fill, Polyline, Region, Text
from render.extent import drawing_extent
from render.moulding_sheet import Entry, build_moulding_sheets, draw_section, list_library, list_used
from render.scales import Scale
from render.sheets import PAPERS, Block, safe_area
from render.title_block import TitleBlock
from tests.collisions import list_collisions
from tests.strategies import jobs

BLOCK = TitleBlock("Mouldings", "", "", "", "Full size", "", "Full size", "Inches")
FULL = Scale("Full size", 1)


def _sections(sheets):
    return [placed for sheet in sheets for placed in sheet.placed if placed.name == "section"]


@pytest.mark.parametrize("paper", PAPERS)
def test_every_section_stands_full_size_inside_the_border_of_its_page(paper):
    entries = list_library(INCHES_16)
    sheets = build_moulding_sheets(entries, paper, BLOCK, INCHES_16)
    assert len(_sections(sheets)) == len(entries) == len(SECTIONS)
    for sheet in sheets:
        left, bottom, right, top = safe_area(sheet.width, sheet.height, Block.BELOW)
        boxes = []
        for placed in (p for p in sheet.placed if p.name == "section"):
            assert placed.drawing.ratio == 1
            x0, y0, x1, y1 = drawing_extent(placed.drawing)
            box = (placed.at[0] + x0, placed.at[1] + y0, placed.at[0] + x1, placed.at[1] + y1)
            assert left - 1e-6 <= box[0]
            assert box[2] <= right + 1e-6
            assert bottom - 1e-6 <= box[1]
            assert box[3] <= top + 1e-6
            boxes.append(box)
        for i, (a0, b0, a1, b1) in enumerate(boxes):
            assert all(a1 <= c0 or c1 <= a0 or b1 <= d0 or d1 <= b0 for c0, d0, c1, d1 in boxes[i + 1 :])


def test_pages_are_numbered():
    sheets = build_moulding_sheets(list_library(INCHES_16), "letter", BLOCK, INCHES_16)
    assert [sheet.number for sheet in sheets] == [f"{n} of {len(sheets)}" for n in range(1, len(sheets) + 1)]


@pytest.mark.parametrize("name", sorted(SECTIONS))
def test_the_dimensions_are_the_outlines(name):
    section = SECTIONS[name].section
    drawing = draw_section(Entry(name, (), section), FULL, INCHES_16)
    level, plumb = sorted(
        (m for m in drawing.marks if isinstance(m, Dimension)), key=lambda dimension: dimension.vertical
    )
    assert level.measure == pytest.approx(section.projection)
    assert plumb.measure == pytest.approx(section.height)


@pytest.mark.parametrize("name", sorted(SECTIONS))
def test_the_outline_is_drawn_finer_than_a_pen(name):
    section = SECTIONS[name].section
    drawing = draw_section(Entry(name, (), section), FULL, INCHES_16)
    (wood,) = (m for m in drawing.marks if isinstance(m, Region) and m.fill is Fill.CUT_WOOD)
    fine, _ = section.outline.facet(1 / 2000)
    assert wood.rings == (fine,)
    assert any(isinstance(m, Polyline) and m.points == fine and m.closed for m in drawing.marks)


def test_captions_name_the_section_its_back_and_its_source():
    texts = {
        name: " ".join(m.text for m in draw_section(entry, FULL, INCHES_16).marks if isinstance(m, Text))
        for name, entry in zip(SECTIONS, list_library(INCHES_16), strict=True)
    }
    assert "Ovolo over a bead" in texts["ovolo_bead"]
    assert 'strip 3/4" by' in texts["crown_38"]
    assert "Vitruvius" in texts["attic_base"]


def test_a_jobs_own_mouldings_are_listed_by_place_at_the_size_they_are_built():
    job = with_texts(default_job(), [("capital.on", "yes"), ("capital.size", "2 1/2")])
    entries = list_used(lay_out(job.site, job.design).mouldings, INCHES_16)
    assert [entry.heading for entry in entries] == ["Bed mould", "Capital"]
    assert entries[1].section.height == pytest.approx(2.5)


@settings(max_examples=20, deadline=None)
@given(jobs(capital__on=True, back_band__on=True))
def test_any_jobs_mouldings_can_be_set_out_on_the_smallest_paper(job):
    entries = list_used(lay_out(job.site, job.design).mouldings, INCHES_16)
    sheets = build_moulding_sheets(entries, "letter", BLOCK, job.about.length_style)
    assert len(_sections(sheets)) == len(entries)


def test_neighbours_that_reach_up_and_down_too_far_for_one_page_stand_on_two():
    tall = Entry("Tall", (), parse_section("cavetto 5 down, 1 back; foot 1/4"))
    told = Entry("Told", ("written about at length",) * 9, parse_section("cavetto 1 down, 1 back; foot 1/4"))
    sheets = build_moulding_sheets((tall, told), "letter", BLOCK, INCHES_16)
    assert [[str(found) for found in list_collisions(sheet)] for sheet in sheets] == [[], []]


def test_a_section_too_large_for_the_paper_is_drawn_smaller_and_says_so():
    section = parse_section("cavetto 11 down, 11 back; foot 1")
    (sheet,) = build_moulding_sheets((Entry("Large", (), section),), "letter", BLOCK, INCHES_16)
    (placed,) = _sections((sheet,))
    assert placed.drawing.ratio > 1
    words = " ".join(m.text for m in placed.drawing.marks if isinstance(m, Text))
    assert "too large for this paper" in words


def test_millimetres_are_written_for_a_job_in_millimetres():
    section = SECTIONS["cove_and_fillets"].section
    drawing = draw_section(Entry("Cove", (), section), Scale("1:1", 1), MILLIMETRES)
    assert {m.text for m in drawing.marks if isinstance(m, Dimension)} == {"25"}


def test_another_paper_is_refused():
    with pytest.raises(Refused, match="paper"):
        build_moulding_sheets((), "postcard", BLOCK, INCHES_16)
