"""Section and detail marks: they lead to the sheet that holds the drawing, and back."""

from functools import cache

import pytest
from shapely import LineString, Polygon

from app.demo import list_demos, read_demo
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from render.details import detail_box
from render.drawing import Dimension, Lines, Pen, Polyline, Region, Text
from render.extent import list_texts
from render.number_places import list_strokes
from render.packet import build_packet, build_view_sheets
from render.references import HELD
from render.section_marks import mark_references
from render.section_places import section_level, section_station
from render.sheets import DETAILS, LABELS, MARKED_ON, TITLES
from render.views import ViewOptions, draw_view
from tests.bench.collisions import build_random_job

SECTIONS = {HELD + "plan_section", HELD + "vertical_section"}
EVERY = [(name, paper) for name in list_demos() for paper in ("letter", "a3")]


@cache
def packet_of(name, paper):
    surround = plan_surround(read_demo(name))
    return build_packet(surround, (), (), list_cuts(surround), paper, "2026-01-02")


def holders(sheets):
    """The sheets' numbers by the names of the drawings on them; the first where there are several."""
    found = {}
    for number, sheet in enumerate(sheets, start=1):
        for placed in sheet.placed:
            found.setdefault(placed.name, number)
    return found


def marks_on(sheet, target):
    """Letter and number of each mark for a drawing."""
    for placed in sheet.placed:
        texts = [
            m.text for m in placed.drawing.marks if isinstance(m, Text) and m.stands_for == HELD + target
        ]
        yield from (
            (placed.name, letter, number) for letter, number in zip(texts[::2], texts[1::2], strict=True)
        )


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_every_mark_names_the_sheet_that_holds_the_drawing_and_every_drawing_is_marked(name, paper):
    sheets = packet_of(name, paper)
    where = holders(sheets)
    for target in MARKED_ON:
        found = [mark for sheet in sheets for mark in marks_on(sheet, target)]
        assert bool(found) is (target in where and MARKED_ON[target] in where), target
        for view, letter, number in found:
            assert view == MARKED_ON[target]
            assert letter == LABELS[target]
            assert int(number) == where[target]


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_a_sections_sheet_names_its_letter_and_the_sheet_it_is_marked_on(name, paper):
    sheets = packet_of(name, paper)
    where = holders(sheets)
    for target, view in MARKED_ON.items():
        if target not in where:
            continue
        words = [text.text for part in sheets[where[target] - 1].placed for text in list_texts(part.drawing)]
        assert f"{LABELS[target]}  {TITLES[target].upper()}" in words
        if where[view] != where[target]:
            text = " ".join(words)
            words = "out of section" if target in DETAILS else "is marked on"
            assert words in text
            assert f"sheet {where[view]}." in text
            assert any(True for _ in marks_on(sheets[where[view] - 1], target))


@pytest.mark.parametrize(("name", "paper"), EVERY)
def test_each_mark_is_a_link_to_its_sheet(name, paper):
    sheets = packet_of(name, paper)
    where = holders(sheets)
    for target, view in MARKED_ON.items():
        if target in where:
            assert where[target] in {link.to for link in sheets[where[view] - 1].links}


def test_a_view_alone_has_no_marks_that_lead_nowhere():
    surround = plan_surround(default_job())
    for view in ("front", "plan_section"):
        for sheet in build_view_sheets(surround, view, "letter", ""):
            assert not [m for p in sheet.placed for m in p.drawing.marks if m.stands_for.startswith(HELD)]


def marked(view, ratio=16.0, settings=()):
    surround = plan_surround(with_texts(default_job(), settings))
    drawing = draw_view(surround, view, ViewOptions(ratio=ratio))
    return surround, drawing, mark_references(surround, view, drawing)


def strokes_of(drawing, target):
    return [
        segment
        for mark in drawing.marks
        if isinstance(mark, Lines) and mark.pen is Pen.CUT and mark.stands_for == HELD + target
        for segment in mark.segments
    ]


def test_a_cutting_planes_stroke_lies_where_the_section_is_cut():
    surround, _, drawing = marked("front")
    for x0, y0, x1, y1 in strokes_of(drawing, "plan_section"):
        assert y0 == y1 == pytest.approx(section_level(surround))
        assert x0 != x1
    for x0, _, x1, _ in strokes_of(drawing, "vertical_section"):
        assert x0 == x1 == pytest.approx(section_station(surround))
    assert strokes_of(drawing, "plan_section")
    assert strokes_of(drawing, "vertical_section")


def test_arrows_point_the_way_the_sections_are_looked_at():
    _, _, drawing = marked("front")
    for target, (u, v) in (("plan_section", (0.0, -1.0)), ("vertical_section", (-1.0, 0.0))):
        whose = [mark for mark in drawing.marks if mark.stands_for == HELD + target]
        arrows = [mark for mark in whose if isinstance(mark, Region)][::2]
        rings = [mark for mark in whose if isinstance(mark, Polyline)]
        for arrow, ring in zip(arrows, rings, strict=True):
            x, y = (sum(axis) / len(ring.points) for axis in zip(*ring.points, strict=True))
            tip = max(arrow.rings[0], key=lambda p: (p[0] - x) * u + (p[1] - y) * v)
            assert ((tip[0] - x) * v, (tip[1] - y) * u) == pytest.approx((0.0, 0.0), abs=1e-9)
            assert (tip[0] - x) * u + (tip[1] - y) * v > 0


def test_the_dashed_line_goes_round_what_the_detail_shows():
    surround, _, drawing = marked("plan_section")
    (dashed,) = (m for m in drawing.marks if isinstance(m, Lines) and m.pen is Pen.GUIDE and m.stands_for)
    xs = [x for x0, _, x1, _ in dashed.segments for x in (x0, x1)]
    ys = [y for _, y0, _, y1 in dashed.segments for y in (y0, y1)]
    assert (min(xs), min(ys), max(xs), max(ys)) == pytest.approx(detail_box(surround, "plan_section"))


@pytest.mark.parametrize("number", range(12))
def test_no_leader_runs_through_the_circle_of_a_section(number):
    surround = plan_surround(build_random_job(number))
    for ratio in (16.0, 32.0):
        bare = draw_view(surround, "front", ViewOptions(ratio))
        marks = mark_references(surround, "front", bare).marks[len(bare.marks) :]
        rings = [Polygon(m.points) for m in marks if isinstance(m, Polyline) and m.stands_for in SECTIONS]
        leaders = [
            LineString((stroke[:2], stroke[2:]))
            for stroke in list_strokes([m for m in bare.marks if isinstance(m, Dimension)], ratio)
            if stroke[0] != stroke[2] and stroke[1] != stroke[3]
        ]
        assert rings
        assert not any(ring.intersects(leader) for ring in rings for leader in leaders)
