"""The packet as a whole, on the shipped jobs: every sheet there, readable, in its place."""

from functools import cache

import pytest
from shapely import Polygon, STRtree, box
from shapely.affinity import affine_transform

from app.demo import list_demos, read_demo
from model.errors import Refused
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from render.desk import MORE_NOTES, title_of_views
from render.extent import list_texts, text_corners
from render.packet import build_packet, build_view_sheets
from render.scales import ARCHITECTURAL, METRIC
from render.sheet_notes import list_notes
from render.sheets import DETAIL_TITLES, FRAME_SIZES, PAPERS, TITLES, VIEW_TITLES, Block, safe_area
from render.tables import SMALL

DATE = "2025-03-04"


@cache
def packet_of(name, paper, units="feet_inches"):
    job = with_texts(read_demo(name), [("job.units", units)])
    surround = plan_surround(job)
    return build_packet(surround, (), (), list_cuts(surround), paper, DATE)


def boxes_of(sheet):
    """Every writing of a sheet with its box in paper inches."""
    for placed in sheet.placed:
        scale = 1 / placed.drawing.ratio
        for text in list_texts(placed.drawing):
            box = affine_transform(Polygon(text_corners(text)), [scale, 0, 0, scale, *placed.at])
            yield placed.name, text.text, text.height * scale, box


EVERY = [(name, paper) for name in list_demos() for paper in PAPERS]


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_packet_holds_every_sheet_in_the_order_of_use(name, paper):
    sheets = packet_of(name, paper)
    views = [p.name for sheet in sheets for p in sheet.placed if p.name in VIEW_TITLES]
    assert [view for view in views if view != "plan"] == ["front", "side", "plan_section", "vertical_section"]
    titles = dict.fromkeys(sheet.title.partition(", ")[0] for sheet in sheets)
    order = [
        "Cover",
        "Site record",
        "Plan section",
        "Vertical section",
        "Cut list",
        "Fixing",
        "Checks",
        "Cautions",
    ]
    assert [title for title in titles if title in order] == order


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_sheets_are_numbered_and_of_the_papers_size(name, paper):
    sheets = packet_of(name, paper)
    assert [sheet.number for sheet in sheets] == [f"{n} of {len(sheets)}" for n in range(1, len(sheets) + 1)]
    assert {(sheet.width, sheet.height) for sheet in sheets} == {PAPERS[paper]}


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_no_writing_leaves_the_safe_area(name, paper):
    for sheet in packet_of(name, paper):
        drawn = any(placed.name in TITLES for placed in sheet.placed)
        low = sheet.title in ("Cover", "Site record")
        area = safe_area(*PAPERS[paper], Block.BESIDE if drawn and not low else Block.BELOW)
        room = box(*area).buffer(1e-6)
        for part, text, _, writing in boxes_of(sheet):
            assert part == "frame" or room.contains(writing), (sheet.title, text)


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_no_writing_covers_another(name, paper):
    for sheet in packet_of(name, paper):
        written = [(text, area.buffer(-0.01)) for _, text, _, area in boxes_of(sheet)]
        pairs = STRtree([area for _, area in written]).query([area for _, area in written], "intersects")
        covered = [(written[i][0], written[j][0]) for i, j in pairs.T if i < j]
        assert not covered, sheet.title


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_no_writing_is_smaller_than_two_and_a_half_millimetres(name, paper):
    for sheet in packet_of(name, paper):
        for _, text, height, _ in boxes_of(sheet):
            assert height >= SMALL - 1e-9, (sheet.title, text)


@pytest.mark.parametrize("paper", PAPERS)
def test_each_drawing_sheet_names_the_standard_scales_it_is_drawn_at(paper):
    names = {scale.ratio: scale.name for scale in ARCHITECTURAL}
    for sheet in packet_of("brick", paper):
        ratios = {placed.drawing.ratio for placed in sheet.placed if placed.name in TITLES}
        views = {placed.drawing.ratio for placed in sheet.placed if placed.name in VIEW_TITLES}
        written = [text for _, text, _, _ in boxes_of(sheet)]
        assert len(views) <= 1
        assert all(names[ratio] in written for ratio in ratios)
        assert all(written.count(names[ratio]) >= 2 for ratio in views), "title block and caption"


def test_millimetre_jobs_are_drawn_at_metric_scales():
    sheets = packet_of("gas", "a3", "millimetres")
    ratios = {placed.drawing.ratio for sheet in sheets for placed in sheet.placed if placed.name in TITLES}
    assert ratios <= {scale.ratio for scale in METRIC}


@pytest.mark.parametrize("name", list_demos())
def test_on_the_large_papers_the_front_is_at_three_quarter_scale_or_larger(name):
    for paper in ("tabloid", "a3"):
        front = next(p for sheet in packet_of(name, paper) for p in sheet.placed if p.name == "front")
        assert front.drawing.ratio <= 16


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_every_front_is_at_half_inch_scale_or_larger_on_the_shipped_jobs(name, paper):
    for sheet in packet_of(name, paper):
        for placed in sheet.placed:
            assert placed.name not in ("front", FRAME_SIZES) or placed.drawing.ratio <= 24


def test_a_crowded_front_parts_its_dimensions_over_two_sheets_next_to_each_other():
    titles = [sheet.title for sheet in packet_of("gas", "a4", "millimetres")]
    first = titles.index("Front elevation")
    assert titles[first : first + 3] == ["Front elevation", "Front elevation, frame sizes", "Side elevation"]


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_sections_have_a_detail_at_least_twice_as_large(name, paper):
    for sheet in packet_of(name, paper):
        ratios = {placed.name: placed.drawing.ratio for placed in sheet.placed}
        for detail in DETAIL_TITLES.keys() & ratios.keys():
            assert ratios[detail] * 2 <= ratios[detail.removesuffix("_detail")]


def test_a_front_that_shares_its_sheet_stays_as_large_as_alone_or_at_three_quarter_scale():
    surround = plan_surround(read_demo("brick"))
    for paper in PAPERS:
        named = ({placed.name: placed for placed in sheet.placed} for sheet in packet_of("brick", paper))
        names = next(found for found in named if "front" in found)
        alone, *_ = build_view_sheets(surround, "front", paper, DATE)
        ratio = next(p.drawing.ratio for p in alone.placed if p.name == "front")
        assert names["front"].drawing.ratio <= max(ratio, 16)
        assert "side" in names or names["front"].drawing.ratio == ratio


@pytest.mark.parametrize("view", VIEW_TITLES)
def test_one_view_alone_makes_one_sheet(view):
    sheet, *_ = build_view_sheets(plan_surround(default_job()), view, "letter", DATE)
    assert sheet.number == "1 of 1"
    assert sheet.title == VIEW_TITLES[view]


def test_an_unknown_paper_or_view_is_refused_by_name():
    surround = plan_surround(default_job())
    with pytest.raises(Refused, match='paper "a5": write one of letter, tabloid, a4, a3'):
        build_view_sheets(surround, "front", "a5", DATE)
    with pytest.raises(Refused, match='view "back": write one of front, side'):
        build_view_sheets(surround, "back", "a4", DATE)


def test_a_job_without_a_name_is_still_called_something():
    sheet, *_ = build_view_sheets(plan_surround(default_job()), "front", "letter", DATE)
    assert "Fireplace surround" in {text for _, text, _, _ in boxes_of(sheet)}


def test_titles_of_shared_sheets_are_joined_as_they_are_spoken():
    assert title_of_views(("front",)) == "Front elevation"
    assert title_of_views(("front", "side")) == "Front and side elevation"
    assert title_of_views(("front", "side", "plan")) == "Front and side elevation, plan"


def test_the_same_job_gives_the_same_packet():
    packet_of.cache_clear()
    first = packet_of("bedroom", "letter")
    packet_of.cache_clear()
    assert packet_of("bedroom", "letter") == first


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize(
    "settings",
    [
        "opening.width=120 column.margin=60 column.width_right=24 shelf.overhang_right=24",
        "opening.width=120 opening.height=84 shelf.height=108 frieze.height=36 column.margin=60",
        "facing.width=240 facing.height=144 hearth.width=300 hearth.height=24",
    ],
)
def test_no_view_runs_out_of_the_frame_however_large_the_job(settings, paper):
    pairs = [tuple(setting.split("=")) for setting in settings.split()]
    surround = plan_surround(with_texts(read_demo("brick"), pairs))
    for sheet in build_packet(surround, (), (), list_cuts(surround), paper, DATE):
        for name, text, _, outline in boxes_of(sheet):
            left, bottom, right, top = outline.bounds
            assert left >= 0, (name, text)
            assert bottom >= 0, (name, text)
            assert right <= sheet.width, (name, text)
            assert top <= sheet.height, (name, text)


@pytest.mark.parametrize("paper", PAPERS)
def test_no_note_is_dropped_however_full_the_title_blocks_column_is(paper):
    job = with_texts(
        read_demo("brick"), [("job.name", "A living room with a name that takes many lines " * 2)]
    )
    surround = plan_surround(job)
    sheets = build_packet(surround, (), (), list_cuts(surround), paper, DATE)
    notes = [t for sheet in sheets if sheet.title.lower().endswith("notes") for _, t, _, _ in boxes_of(sheet)]
    for sheet in sheets:
        views = tuple(placed.name for placed in sheet.placed if placed.name in VIEW_TITLES)
        if views:
            beside = [t for part, t, _, _ in boxes_of(sheet) if part == "frame"]
            for note in list_notes(surround, views, ()):
                assert _holds(beside, note) or _holds(notes, note), (sheet.title, note)
                assert _holds(beside, note) or _holds(beside, MORE_NOTES), sheet.title


def _holds(lines, note):
    """Whether the note stands in the lines, wherever it was broken."""
    return note in " ".join(lines)


@pytest.mark.parametrize(("name", "told"), [("炉 parlour", True), ("Hüttner parlour", False)])
def test_letters_the_typeface_lacks_are_told_on_the_sheet(name, told):
    surround = plan_surround(with_texts(default_job(), [("job.name", name)]))
    sheet, *_ = build_view_sheets(surround, "front", "letter", DATE)
    said = " ".join(text.text for placed in sheet.placed for text in list_texts(placed.drawing))
    assert ("typeface lacks" in said) is told


@pytest.mark.parametrize("paper", PAPERS)
def test_a_view_alone_is_followed_by_the_notes_that_found_no_room_beside_it(paper):
    texts = [("job.name", "A living room with a name that takes many lines " * 3)]
    surround = plan_surround(with_texts(read_demo("brick"), texts))
    sheet, *more = build_view_sheets(surround, "plan_section", paper, DATE)
    beside = [t for part, t, _, _ in boxes_of(sheet) if part == "frame"]
    after = [t for page in more for _, t, _, _ in boxes_of(page)]
    for note in list_notes(surround, ("plan_section",)):
        assert _holds(beside, note) or _holds(after, note)
    assert bool(more) == _holds(beside, MORE_NOTES)
