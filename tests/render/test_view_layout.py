"""Views on a sheet: the largest scale that fits, third-angle order, captions clear of everything."""

from itertools import combinations

import pytest
from shapely import Polygon, box

from render.drawing import Drawing, Pen, Polyline, Text
from render.extent import drawing_extent, list_texts, text_corners
from render.scales import ARCHITECTURAL, METRIC
from render.view_layout import GIVEN_UP, TWICE, lay_views, lay_with_detail

AREA = (1.0, 2.0, 11.0, 9.0)
SIZES = {
    "front": (-40.0, 0.0, 40.0, 55.0),
    "side": (-9.0, 0.0, 0.0, 55.0),
    "plan": (-40.0, -9.0, 40.0, 0.0),
    "plan_section": (-40.0, -20.0, 40.0, 5.0),
    "plan_section_detail": (30.0, -8.0, 42.0, 3.0),
    "vertical_section": (-20.0, 0.0, 5.0, 62.0),
    "vertical_section_detail": (-12.0, 40.0, 5.0, 60.0),
}
SECTIONS = ["plan_section", "vertical_section"]


def draw(view, ratio):
    x0, y0, x1, y1 = SIZES[view]
    frame = Polyline(Pen.OUTLINE, ((x0, y0), (x1, y0), (x1, y1), (x0, y1)), closed=True)
    return Drawing((frame, Text("6'-8\"", (0, y1 + 0.3 * ratio), 0.12 * ratio)), ratio)


def reach(placed):
    ratio = placed.drawing.ratio
    x0, y0, x1, y1 = (value / ratio for value in drawing_extent(placed.drawing))
    return placed.at[0] + x0, placed.at[1] + y0, placed.at[0] + x1, placed.at[1] + y1


def named(layout):
    return {placed.name: placed for placed in layout.placed if placed.name != "caption"}


@pytest.mark.parametrize("scales", [ARCHITECTURAL, METRIC])
@pytest.mark.parametrize(
    "views", [("front",), ("front", "side"), ("front", "side", "plan"), ("side",), ("plan",)]
)
def test_everything_lies_within_the_area(views, scales):
    for placed in lay_views(views, draw, scales, AREA).placed:
        x0, y0, x1, y1 = reach(placed)
        assert x0 >= AREA[0] - 1e-9
        assert y0 >= AREA[1] - 1e-9
        assert x1 <= AREA[2] + 1e-9
        assert y1 <= AREA[3] + 1e-9


def test_the_next_larger_scale_would_not_fit():
    layout = lay_views(("front",), draw, ARCHITECTURAL, AREA)
    assert (
        layout.scale.ratio == 12
    )  # 80 in. are 6.67 in. at 1:12 and 10 in. at 1:8, with 4.6 and 6.9 in. of height
    tight = lay_views(("front",), draw, ARCHITECTURAL, (0, 0, 6.6, 9))
    assert tight.scale.ratio == 16


def test_side_view_stands_right_of_the_front_at_the_same_heights():
    views = named(lay_views(("front", "side"), draw, ARCHITECTURAL, AREA))
    assert views["side"].at[1] == views["front"].at[1]
    assert reach(views["side"])[0] > reach(views["front"])[2]


def test_plan_stands_over_the_front_on_its_centre_line():
    views = named(lay_views(("front", "side", "plan"), draw, ARCHITECTURAL, AREA))
    assert views["plan"].at[0] == views["front"].at[0]
    assert reach(views["plan"])[1] > reach(views["front"])[3]


def test_all_views_of_a_sheet_are_at_its_scale():
    layout = lay_views(("front", "side", "plan"), draw, METRIC, AREA)
    assert {placed.drawing.ratio for placed in named(layout).values()} == {layout.scale.ratio}


def test_each_view_has_its_title_and_scale_below_it():
    layout = lay_views(("front", "side"), draw, ARCHITECTURAL, AREA)
    captions = [p for p in layout.placed if p.name == "caption"]
    words = [text.text for caption in captions for text in list_texts(caption.drawing)]
    assert words == ["FRONT ELEVATION", layout.scale.name, "SIDE ELEVATION", layout.scale.name]
    for caption, view in zip(captions, named(layout).values(), strict=True):
        assert reach(caption)[3] < reach(view)[1]


def test_captions_of_narrow_views_do_not_run_into_their_neighbours():
    layout = lay_views(("front", "side", "plan"), draw, ARCHITECTURAL, AREA)
    boxes = [
        Polygon(text_corners(text))
        for p in layout.placed
        if p.name == "caption"
        for text in list_texts(p.drawing)
    ]
    assert not any(a.intersects(b) for a, b in combinations(boxes, 2))


def test_a_view_too_large_for_any_scale_gets_the_smallest():
    assert lay_views(("front",), draw, METRIC, (0, 0, 0.5, 0.5)).scale is METRIC[-1]


@pytest.mark.parametrize("view", SECTIONS)
def test_a_detail_stands_clear_of_its_view_and_is_at_least_twice_as_large(view):
    layout = lay_with_detail((view, f"{view}_detail"), (draw, draw), ARCHITECTURAL, AREA)
    placed = named(layout)
    assert placed[f"{view}_detail"].drawing.ratio * TWICE <= placed[view].drawing.ratio == layout.scale.ratio
    boxes = [box(*reach(p)) for p in layout.placed]
    assert not any(a.intersects(b) for a, b in combinations(boxes, 2))
    assert all(box(*AREA).buffer(1e-9).contains(b) for b in boxes)


def test_a_tall_view_has_its_detail_beside_it_and_a_wide_one_below():
    tall = named(
        lay_with_detail(("vertical_section", "vertical_section_detail"), (draw, draw), ARCHITECTURAL, AREA)
    )
    wide = named(lay_with_detail(("plan_section", "plan_section_detail"), (draw, draw), ARCHITECTURAL, AREA))
    assert reach(tall["vertical_section_detail"])[0] > reach(tall["vertical_section"])[2]
    assert reach(wide["plan_section_detail"])[3] < reach(wide["plan_section"])[1]


def test_a_view_gives_up_few_scales_for_its_detail():
    alone = lay_views(("vertical_section",), draw, ARCHITECTURAL, AREA).scale
    joined = lay_with_detail(
        ("vertical_section", "vertical_section_detail"), (draw, draw), ARCHITECTURAL, AREA
    )
    assert ARCHITECTURAL.index(joined.scale) - ARCHITECTURAL.index(alone) <= GIVEN_UP


def test_without_room_for_a_larger_detail_there_is_none():
    tight = (0.0, 0.0, 2.9, 6.0)
    assert (
        lay_with_detail(("vertical_section", "vertical_section_detail"), (draw, draw), METRIC, tight) is None
    )
