"""Templates on paper, read back by an independent PDF reader: full size, also over the joins of pages."""

from functools import cache
from io import BytesIO
from itertools import combinations, pairwise
from math import dist

import pdfplumber
import pytest
from shapely import Polygon, box

from app.demo import read_demo
from export.pdf import write_pdf
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.templates import Template
from model.units import FEET_INCHES_16, LengthStyle
from render.drawing import Placed, Polyline, Sheet, Text
from render.extent import list_texts, text_corners
from render.pens import STROKES, Pen
from render.sheets import PAPERS
from render.template_drawing import draw_template, list_all
from render.template_pages import OVERLAP, REGISTER, build_template_sheets, lay_flat, list_crosses, part_tiles
from tests.collisions import list_collisions

POINT = 1 / 72
HUNDREDTH = 0.01
JOBS = {
    "plain": "",
    "cords": "cord.on=yes",
    "tapered": "column.taper=1 plumb.left=1 plumb.right=-1/2",
    "fluted": "column.kind=fluted flute.count=5 hearth.height=8 hearth.width=70 column.over_edge=stepped",
}
EVERY = [(name, paper) for name in JOBS for paper in ("letter", "a4", "a3")]


@cache
def sheets_of(name, paper):
    job = with_texts(default_job(), [tuple(text.split("=")) for text in JOBS[name].split()])
    surround = plan_surround(job)
    return surround, build_template_sheets(surround, paper)


@cache
def pages_of(name, paper):
    data = write_pdf(sheets_of(name, paper)[1], "Templates")
    return pdfplumber.open(BytesIO(data)).pages


def strokes_of(page, pen):
    """Straight strokes of a pen in inches from the page's lower left corner."""
    width = STROKES[pen].width / 25.4 * 72
    found = []
    for shape in (*page.lines, *page.curves):
        if abs(shape["linewidth"] - width) < 0.01:
            points = [(x * POINT, (float(page.height) - y) * POINT) for x, y in shape["pts"]]
            found += list(pairwise(points))
    return found


def crosses_of(page):
    """Middles of registration crosses: where a level and a plumb stroke of equal length halve each other."""
    strokes = strokes_of(page, Pen.EDGE)
    level = [(a, b) for a, b in strokes if abs(a[1] - b[1]) < 1e-3 and abs(dist(a, b) - 0.28) < 0.01]
    return sorted(((a[0] + b[0]) / 2, a[1]) for a, b in level)


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_every_cut_of_a_template_on_one_page_measures_true(name, paper):
    surround, _ = sheets_of(name, paper)
    measured = 0
    drawn = [dist(a, b) for page in pages_of(name, paper) for a, b in strokes_of(page, Pen.CUT)]
    width, height = PAPERS[paper]
    for template in list_all(surround):
        flat = lay_flat(template, (width - 1.2, height - 1.9))
        if len(part_tiles(flat.size, (width - 1.4, height - 2.4))) > 1:
            continue
        for stroke in template.cuts:
            for a, b in pairwise(stroke):
                if dist(a, b) > 0.2:
                    assert min(abs(length - dist(a, b)) for length in drawn) < HUNDREDTH, template
                    measured += 1
    assert measured >= 2


def large():
    """A notch that needs six letter pages: its lines run over joins both ways."""
    cuts = (((2.0, 1.0), (2.0, 14.0)), ((2.0, 14.0), (24.0, 15.0)), ((24.0, 15.0), (24.0, 2.0)))
    return Template(
        "notch", "X1", 1, "front up", (26.0, 16.0), cuts, (((0.0, 0.0), (26.0, 0.0), "lower edge"),)
    )


@cache
def large_pages():
    from model.units import FEET_INCHES_16
    from render.drawing import Sheet
    from render.template_pages import _tile_large

    room = (0.8, 1.4, 10.5, 8.0)
    drafts = list(_tile_large([large()], [draw_template(large(), FEET_INCHES_16)], room, FEET_INCHES_16))
    sheets = [Sheet(str(n), title, 11.0, 8.5, placed) for n, (title, placed) in enumerate(drafts, start=1)]
    tiles = part_tiles(large().size, (room[2] - room[0], room[3] - room[1]))
    return tiles, pdfplumber.open(BytesIO(write_pdf(sheets, "Templates"))).pages


def test_pages_are_named_row_by_row_and_overlap():
    tiles, pages = large_pages()
    assert len(tiles) == len(pages)
    assert [t.name for t in tiles[:3]] == ["A1", "A2", "A3"]
    first, second = tiles[0], tiles[1]
    assert first.box[2] - second.box[0] == pytest.approx(OVERLAP)
    below = next(t for t in tiles if t.name == "B1")
    assert below.box[3] - first.box[1] == pytest.approx(OVERLAP)


def test_pages_laid_over_each_other_at_their_crosses_give_the_template_to_a_hundredth():
    tiles, pages = large_pages()
    by_name = {t.name: (t, page) for t, page in zip(tiles, pages, strict=True)}
    offsets = {"A1": (0.0, 0.0)}
    for name in sorted(by_name):
        if name == "A1":
            continue
        tile, page = by_name[name]
        before = (
            next(t.name for t in tiles if (t.row, t.column) == (tile.row, tile.column - 1))
            if tile.column
            else next(t.name for t in tiles if (t.row, t.column) == (tile.row - 1, tile.column))
        )
        own, other = crosses_of(page), crosses_of(by_name[before][1])
        if tile.column:
            own = sorted(own, key=lambda p: p[0])[:3]
            other = sorted(other, key=lambda p: p[0])[-3:]
        else:
            own = sorted(own, key=lambda p: p[1])[-3:]
            other = sorted(other, key=lambda p: p[1])[:3]
        pairs = list(zip(sorted(own), sorted(other), strict=True))
        shifts = [(b[0] - a[0] + offsets[before][0], b[1] - a[1] + offsets[before][1]) for a, b in pairs]
        assert max(abs(s[k] - shifts[0][k]) for s in shifts for k in (0, 1)) < HUNDREDTH
        offsets[name] = shifts[0]
    points = [
        (x + offsets[name][0], y + offsets[name][1])
        for name, (_, page) in by_name.items()
        for stroke in strokes_of(page, Pen.CUT)
        for x, y in stroke
    ]
    corner = min(points, key=lambda p: p[0] * 10 + p[1])
    for wanted in ((22.0, 1.0), (0.0, 13.0), (22.0, 14.0)):
        target = corner[0] + wanted[0], corner[1] + wanted[1]
        assert min(dist(target, p) for p in points) < HUNDREDTH, wanted


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_every_page_has_bars_both_ways_that_measure_four_inches_and_a_hundred_millimetres(name, paper):
    for page in pages_of(name, paper):
        strokes = strokes_of(page, Pen.ARRIS)
        for k in (0, 1):
            lengths = [abs(a[k] - b[k]) for a, b in strokes if abs(a[1 - k] - b[1 - k]) < 1e-3]
            assert min(abs(length - 4.0) for length in lengths) < HUNDREDTH
            assert min(abs(length - 100 / 25.4) for length in lengths) < HUNDREDTH


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_every_template_says_its_mark_and_which_side_lies_up(name, paper):
    surround, _ = sheets_of(name, paper)
    text = " ".join(page.extract_text() for page in pages_of(name, paper)).replace("\n", " ")
    for template in list_all(surround):
        assert template.mark.split(",")[0] in text
        assert template.face.split()[0] in text
    assert "Print at 100 %" in text


def test_holes_are_round_to_less_than_a_pens_width():
    surround, _ = sheets_of("cords", "letter")
    for template in list_all(surround):
        drawing = draw_template(template, surround.job.about.length_style)
        rings = [m for m in drawing.marks if isinstance(m, Polyline) and m.closed]
        for ring, (at, diameter) in zip(rings, template.holes, strict=True):
            for a, b in zip(ring.points, ring.points[1:], strict=False):
                middle = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
                assert abs(dist(middle, at) - diameter / 2) < 0.005


def test_a_hole_far_from_an_end_says_how_far():
    surround = plan_surround(with_texts(read_demo("brick"), [("cord.on", "yes")]))
    pages = pdfplumber.open(BytesIO(write_pdf(build_template_sheets(surround, "letter"), "Templates"))).pages
    text = " ".join(page.extract_text() for page in pages).replace("\n", " ")
    board = next(b for b in surround.boards if b.role == "shelf top")
    (bore,) = board.bores
    middle = bore.place(bore.at, 0.0)[0]
    ends = middle - board.bounds[0][0], board.bounds[1][0] - middle
    edge = "left end" if ends[0] < ends[1] else "right end"
    (off, *_) = [t.off for t in list_all(surround) if t.what == "hole"]
    assert off == ((pytest.approx(min(ends)), edge),)
    assert f"from the {edge}" in text


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_no_writing_stands_on_other_writing_or_off_the_page(name, paper):
    width, height = PAPERS[paper]
    for sheet in sheets_of(name, paper)[1]:
        boxes = [
            Polygon([(x + placed.at[0], y + placed.at[1]) for x, y in text_corners(text)])
            for placed in sheet.placed
            for text in list_texts(placed.drawing)
        ]
        assert all(box(0.15, 0.15, width - 0.15, height - 0.15).contains(one) for one in boxes)
        for one, other in combinations(boxes, 2):
            assert one.buffer(-0.01).intersection(other.buffer(-0.01)).is_empty


@pytest.mark.parametrize(("wide", "high"), [(2.6, 4.0), (1.9, 4.0), (4.0, 2.4), (6.0, 6.0)])
@pytest.mark.parametrize("style", [FEET_INCHES_16, LengthStyle("both")])
def test_what_a_hole_is_drilled_with_stands_clear_of_edges_names_and_lines(wide, high, style):
    corners = [(0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)]
    names = ("lower end", "back edge", "upper end", "front edge")
    edges = tuple(zip(corners, [*corners[1:], corners[0]], names, strict=True))
    hole = ((wide / 2 + 0.05, high / 2), 0.9 if wide < 4 else 1.625)
    template = Template("hole", "C1", 1, "face up", (wide, high), (), edges, (hole,))
    drawing = draw_template(template, style)
    sheet = Sheet("1", "t", 17, 11, (Placed(drawing, (3.0, 3.0), "template"),))
    assert [str(found) for found in list_collisions(sheet)] == []
    assert [m.text for m in drawing.marks if isinstance(m, Text) and m.text.endswith("hole")] != []


def test_crosses_of_a_join_stand_off_the_words_of_the_template():
    line, word = (3.0, 0.0, 3.0, 10.0), (2.9, 4.8, 4.0, 5.05)
    (_, low), (_, middle), (_, high) = list_crosses(line, [word])
    assert (low, high) == pytest.approx((2.0, 8.0))
    assert middle != 5.0
    assert not 4.8 - REGISTER < middle < 5.05 + REGISTER
    assert [y for _, y in list_crosses(line, [])] == pytest.approx([2.0, 5.0, 8.0])
