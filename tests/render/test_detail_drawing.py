"""A detail drawn: true to its section, sized from edge to edge, nothing outside its box but writing."""

from functools import cache

import pytest

from app.demo import list_demos, read_demo
from model.job import default_job, with_texts
from model.surround import plan_surround
from render.detail_drawing import DetailView
from render.detail_list import list_details
from render.drawing import Dimension, Fill, Hatch, Region, Text
from render.views import ViewOptions, draw_view

ODD = {
    "leaning": "slip.on=yes back_band.on=yes plumb.left=1 plumb.right=-1 cord.on=yes column.taper=1",
    "moulded": "capital.on=yes plinth_cap.on=yes panel_mould.on=yes baseboard.height_left=5 facing.width=60",
    "raised": "hearth.height=8 hearth.width=40 shelf.height=52 column.kind=fluted",
}
EVERY = [*list_demos(), *ODD]


@cache
def details_of(name):
    job = (
        with_texts(default_job(), [t.split("=") for t in ODD[name].split()])
        if name in ODD
        else read_demo(name)
    )
    surround = plan_surround(job)
    return surround, [(detail, DetailView(surround, detail)) for detail in list_details(surround)]


@pytest.mark.parametrize("name", EVERY)
def test_every_detail_shows_cut_wood_that_is_hatched_and_marked(name):
    for detail, shown in details_of(name)[1]:
        marks = shown.draw(2).marks
        assert any(isinstance(m, Region) and m.fill is Fill.CUT_WOOD for m in marks), detail.name
        assert any(isinstance(m, Hatch) for m in marks), detail.name
        assert [m for m in marks if isinstance(m, Text)], detail.name


@pytest.mark.parametrize("name", EVERY)
def test_areas_stay_within_the_box(name):
    for detail, shown in details_of(name)[1]:
        left, bottom, right, top = detail.box
        for mark in shown.draw(2).marks:
            if isinstance(mark, Region | Hatch):
                for x, y in (point for ring in mark.rings for point in ring):
                    assert left - 1e-6 <= x <= right + 1e-6
                    assert bottom - 1e-6 <= y <= top + 1e-6


@pytest.mark.parametrize("name", EVERY)
def test_sizes_are_measured_between_places_inside_the_box(name):
    for detail, shown in details_of(name)[1]:
        sizes = [m for m in shown.draw(2).marks if isinstance(m, Dimension)]
        assert sizes, detail.name
        for size in sizes:
            low, high = size.span
            k = 1 if size.vertical else 0
            assert detail.box[k] < low < high < detail.box[k + 2], detail.name


def test_the_shelf_edge_is_what_the_vertical_section_cuts_there():
    surround, details = details_of("brick")
    detail, shown = details[0]
    left, bottom, right, top = detail.box
    whole = draw_view(surround, "vertical_section", ViewOptions(ratio=2, dimensions=False))

    def corners(drawing):
        rings = (
            r for m in drawing.marks if isinstance(m, Region) and m.fill is Fill.CUT_WOOD for r in m.rings
        )
        inside = (p for ring in rings for p in ring)
        return {
            (round(x, 6), round(y, 6))
            for x, y in inside
            if left + 1e-6 < x < right - 1e-6 and bottom + 1e-6 < y < top - 1e-6
        }

    assert corners(shown.draw(2)) == corners(whole)


def test_a_foot_stands_on_the_hearth_and_a_baseboard_detail_names_the_baseboard():
    words = {
        detail.name: {m.text for m in shown.draw(2).marks if isinstance(m, Text)}
        for detail, shown in details_of("moulded")[1]
    }
    assert any("hearth" in found for name, found in words.items() if name.startswith("detail_foot"))
    assert "baseboard" in words["detail_baseboard_left"]
