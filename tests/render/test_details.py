"""Details of the sections: what they show, and that no dimension is lost or given twice."""

from functools import cache

import pytest

from app.demo import list_demos, read_demo
from model.job import with_texts
from model.surround import plan_surround
from render.details import (
    AROUND,
    detail_box,
    detail_of,
    draw_detail,
    draw_relieved,
    string_outside,
    strings_within,
)
from render.dimension_strings import Edge, measure
from render.drawing import Dimension, Fill, Lines, Region
from render.views import VIEWS, ViewOptions, draw_view

BOX = (0.0, 0.0, 10.0, 10.0)
SECTIONS = ("plan_section", "vertical_section")
EVERY = [(name, view) for name in list_demos() for view in SECTIONS]
surround_of = cache(lambda name: plan_surround(read_demo(name)))


def dimensions_of(drawing):
    return [mark for mark in drawing.marks if isinstance(mark, Dimension)]


def reach_of(dimension):
    return (dimension.vertical, *(round(value, 6) for value in dimension.span))


def test_only_sections_have_details():
    assert [view for view in VIEWS if detail_of(view)] == list(SECTIONS)


@pytest.mark.parametrize(("name", "view"), EVERY)
def test_a_detail_shows_cut_wood_at_the_places_of_its_view(name, view):
    detail = draw_detail(surround_of(name), detail_of(view), 4)
    whole = draw_view(surround_of(name), view, ViewOptions(ratio=4))
    cut = {
        p
        for m in detail.marks
        if isinstance(m, Region) and m.fill is Fill.CUT_WOOD
        for r in m.rings
        for p in r
    }
    all_cut = {
        p
        for m in whole.marks
        if isinstance(m, Region) and m.fill is Fill.CUT_WOOD
        for r in m.rings
        for p in r
    }
    assert len(cut & all_cut) > 12


@pytest.mark.parametrize(("name", "view"), EVERY)
def test_nothing_of_a_detail_but_its_dimensions_leaves_its_box(name, view):
    left, bottom, right, top = detail_box(surround_of(name), view)
    for mark in draw_detail(surround_of(name), detail_of(view), 4).marks:
        if isinstance(mark, Lines):
            for x1, y1, x2, y2 in mark.segments:
                assert left - 1e-9 <= min(x1, x2) <= max(x1, x2) <= right + 1e-9
                assert bottom - 1e-9 <= min(y1, y2) <= max(y1, y2) <= top + 1e-9


@pytest.mark.parametrize("wish", [("plinth.projection", "2"), ("column.taper", "-4"), ("plinth.on", "no")])
def test_the_detail_of_a_column_shows_it_with_its_plinth_and_head_whole(wish):
    surround = plan_surround(with_texts(read_demo("brick"), [wish]))
    left, bottom, right, _ = detail_box(surround, "plan_section")
    own = [board.bounds for board in surround.boards if board.assembly == "right column"]
    assert left + AROUND / 2 <= min(low[0] for low, _ in own)
    assert max(high[0] for _, high in own) <= right - AROUND / 2
    assert max(high[2] for _, high in own) <= -bottom - AROUND / 2


@pytest.mark.parametrize(("name", "view"), EVERY)
def test_view_and_detail_together_give_every_dimension(name, view):
    whole = {reach_of(d) for d in dimensions_of(draw_view(surround_of(name), view, ViewOptions(ratio=12)))}
    relieved = {reach_of(d) for d in dimensions_of(draw_relieved(surround_of(name), view, 12))}
    detail = {reach_of(d) for d in dimensions_of(draw_detail(surround_of(name), detail_of(view), 4))}
    assert whole <= relieved | detail
    assert relieved < whole | relieved
    assert detail <= whole


@pytest.mark.parametrize(("name", "view"), EVERY)
def test_the_relieved_view_has_fewer_dimensions_than_the_whole(name, view):
    whole = dimensions_of(draw_view(surround_of(name), view, ViewOptions(ratio=12)))
    assert 0 < len(dimensions_of(draw_relieved(surround_of(name), view, 12))) < len(whole)


def test_a_string_inside_the_box_goes_to_the_detail_as_it_is():
    string = measure(Edge.BELOW, (1, 1, ""), (3, 1, "column.stile"), (8, 1, ""))
    assert strings_within(string, BOX) == [string]
    assert string_outside(string, BOX).stations == ()


def test_a_string_that_passes_through_keeps_its_ends_and_is_measured_across_the_box():
    string = measure(Edge.BELOW, (-9, 1, ""), (1, 1, "a"), (3, 1, "b"), (8, 1, "c"), (20, 1, "d"))
    outside = string_outside(string, BOX)
    assert [(s.along, s.shows) for s in outside.stations] == [(-9, ""), (1, "a"), (8, ""), (20, "d")]
    (within,) = strings_within(string, BOX)
    assert [s.along for s in within.stations] == [1, 3, 8]


def test_two_neighbouring_places_in_the_box_still_show_their_parameter():
    string = measure(Edge.LEFT, (-9, 1, ""), (1, 1, "a"), (3, 1, "b"), (20, 1, "c"))
    assert [s.shows for s in string_outside(string, BOX).stations] == ["", "a", "b", "c"]


def test_a_single_place_in_the_box_is_no_string():
    string = measure(Edge.BELOW, (-9, 1, ""), (1, 1, "a"), (30, 1, "b"))
    assert strings_within(string, BOX) == []
    assert string_outside(string, BOX) == string
