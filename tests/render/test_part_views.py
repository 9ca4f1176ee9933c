"""A sub-assembly drawn alone: every board marked somewhere, every view true to its boards, no size twice."""

from functools import cache

import pytest

from app.demo import list_demos, read_demo
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.assemblies import list_assemblies
from render.drawing import Dimension, Fill, Region, Text
from render.extent import drawing_extent
from render.part_sheet import list_plans
from render.part_views import Part, draw_part, frame_part, mark_part
from render.sheets import PART_FRONT, PART_LEFT, PART_LEVEL_CUT, PART_RIGHT, PART_UPRIGHT_CUT

ODD = {
    "tapered": "column.taper=1 plumb.left=3/8 cord.on=yes",
    "fluted": "column.kind=fluted flute.count=5 hearth.height=8 slip.on=yes",
    "over": "over.on=yes capital.on=yes plinth_cap.on=yes panel_mould.on=yes back_band.on=yes",
    "stepped": "shelf.step=1 plumb.left=-1 baseboard.height_left=5 baseboard.meets=notched facing.width=60",
}
EVERY = [*list_demos(), *ODD]


@cache
def parts_of(name):
    if name in ODD:
        job = with_texts(default_job(), [tuple(text.split("=")) for text in ODD[name].split()])
    else:
        job = read_demo(name)
    surround = plan_surround(job)
    return [Part(surround, assembly) for assembly in list_assemblies(surround.boards)]


def views_of(name):
    for part in parts_of(name):
        shown = list_plans(part)[0].views
        for view in shown:
            yield part, view, shown


def part_named(name, assembly):
    return next(part for part in parts_of(name) if part.assembly.name == assembly)


@pytest.mark.parametrize("name", EVERY)
def test_a_view_is_as_large_as_its_boards(name):
    for part, view, _ in views_of(name):
        left, bottom, right, top = part.outline(view)
        rings = [ring for _, found, _ in part.list_seen(view) for ring in found]
        xs, ys = zip(*(point for ring in rings for point in ring), strict=True)
        if view not in (PART_LEVEL_CUT, PART_UPRIGHT_CUT):
            assert (min(xs), max(xs)) == pytest.approx((left, right), abs=1e-3)
            assert (min(ys), max(ys)) == pytest.approx((bottom, top), abs=1e-3)
        assert left - 1e-3 <= min(xs) <= max(xs) <= right + 1e-3
        assert bottom - 1e-3 <= min(ys) <= max(ys) <= top + 1e-3


@pytest.mark.parametrize("name", EVERY)
def test_overall_width_and_height_are_given_on_the_sheet(name):
    for part in parts_of(name):
        shown = list_plans(part)[0].views
        front = draw_part(part, PART_FRONT, 8, shown)
        spans = [(m.vertical, m.measure) for m in front.marks if isinstance(m, Dimension)]
        for vertical, axis in ((False, "x"), (True, "y")):
            given = [size for way, size in spans if way is vertical]
            assert max(given) == pytest.approx(part.extent(axis), abs=0.05), part.assembly.name


@pytest.mark.parametrize("name", EVERY)
def test_no_size_is_given_twice(name):
    for part, view, shown in views_of(name):
        drawing = draw_part(part, view, 8, shown)
        spans = [
            (m.vertical, *(round(v, 3) for v in m.span)) for m in drawing.marks if isinstance(m, Dimension)
        ]
        assert len(spans) == len(set(spans)), (part.assembly.name, view)


@pytest.mark.parametrize("name", EVERY)
def test_no_size_is_printed_as_nothing(name):
    for part, view, shown in views_of(name):
        for mark in draw_part(part, view, 8, shown).marks:
            assert not isinstance(mark, Dimension) or mark.text not in ("0", '0"'), part.assembly.name


@pytest.mark.parametrize("name", EVERY)
def test_the_frame_takes_up_as_much_room_as_the_drawing(name):
    for part, view, shown in views_of(name):
        wanted = drawing_extent(draw_part(part, view, 8, shown))
        found = drawing_extent(frame_part(part, view, 8, shown))
        room = 0.4 * 8 if view == PART_FRONT else 1e-3
        assert found == pytest.approx(wanted, abs=room)


@pytest.mark.parametrize("name", list_demos())
def test_every_kind_of_board_is_marked_on_one_of_its_views_at_a_large_scale(name):
    for part in parts_of(name):
        shown = list_plans(part)[0].views
        told = set()
        for view in shown:
            drawing = draw_part(part, view, 4, shown)
            told |= {m.text for m in mark_part(part, drawing, view).marks if isinstance(m, Text)}
        assert told >= set(part.kinds), part.assembly.name


def test_the_left_side_shows_the_front_at_its_right_and_the_right_side_at_its_left():
    part = part_named("brick", "left column")
    (stile, *_) = (n for n, board in enumerate(part.boards) if board.role == "plinth front")
    ahead = part.bounds[2][1]
    for view, front in ((PART_LEFT, ahead), (PART_RIGHT, -ahead)):
        xs = [x for n, rings, _ in part.list_seen(view) if n == stile for ring in rings for x, _ in ring]
        assert not xs or any(x == pytest.approx(front) for x in xs)
        assert front in (part.outline(view)[0], part.outline(view)[2])
    assert part.outline(PART_LEFT)[2] == ahead
    assert part.outline(PART_RIGHT)[0] == -ahead


def test_a_columns_section_goes_through_its_panel():
    part = part_named("brick", "left column")
    cut = {part.boards[n].role for n, _, is_cut in part.list_seen(PART_LEVEL_CUT) if is_cut}
    assert {"column stile", "column panel", "column inner return", "column outer return"} <= cut


def test_a_friezes_section_goes_through_panel_rails_and_soffit():
    part = part_named("brick", "frieze")
    cut = {part.boards[n].role for n, _, is_cut in part.list_seen(PART_UPRIGHT_CUT) if is_cut}
    assert cut == {"frieze bottom rail", "frieze top rail", "frieze panel", "soffit"}


def test_what_is_cut_is_filled_as_cut_wood():
    part = part_named("brick", "frieze")
    shown = list_plans(part)[0].views
    drawing = draw_part(part, PART_UPRIGHT_CUT, 4, shown)
    assert len([m for m in drawing.marks if isinstance(m, Region) and m.fill is Fill.CUT_WOOD]) == 4


def test_a_hole_is_placed_by_its_middle_and_its_width_is_written():
    job = with_texts(default_job(), [("cord.on", "yes")])
    surround = plan_surround(job)
    parts = [Part(surround, assembly) for assembly in list_assemblies(surround.boards)]
    found = [(p, v) for p in parts for v in list_plans(p)[0].views if list(p.list_holes(v))]
    assert found
    part, view = found[0]
    shown = list_plans(part)[0].views
    drawing = draw_part(part, view, 8, shown)
    (_, ring), *_ = part.list_holes(view)
    xs, ys = zip(*ring, strict=True)
    middle = (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
    ends = [(m.vertical, end) for m in drawing.marks if isinstance(m, Dimension) for end in m.span]
    assert any(not way and end == pytest.approx(middle[0]) for way, end in ends) or any(
        way and end == pytest.approx(middle[1]) for way, end in ends
    )
    words = [m.text for m in mark_part(part, drawing, view).marks if isinstance(m, Text)]
    assert any(text.endswith(" hole") for text in words)
