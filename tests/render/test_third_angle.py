"""Views set out in third angle: what is seen from the right stands right, what is seen from above over."""

from __future__ import annotations

from itertools import combinations

from render.drawing import Drawing, Lines, Pen, Placed
from render.extent import drawing_extent
from render.third_angle import place_third_angle


def _box(x0: float, y0: float, x1: float, y1: float) -> Drawing:
    return Drawing(
        (Lines(Pen.OUTLINE, ((x0, y0, x1, y0), (x1, y0, x1, y1), (x1, y1, x0, y1), (x0, y1, x0, y0))),), 12
    )


VIEWS = [
    ("plan", _box(-33, -9, 33, 0)),
    ("vertical_section", _box(-9, 0, 1, 96)),
    ("front", _box(-40, -3, 40, 96)),
    ("side", _box(-12, -3, 3, 97)),
    ("plan_section", _box(-33.3, -30, 33.3, 0)),
]


def _find_box(view: Placed) -> tuple[float, float, float, float]:
    x0, y0, x1, y1 = drawing_extent(view.drawing)
    return x0 + view.at[0], y0 + view.at[1], x1 + view.at[0], y1 + view.at[1]


def test_the_side_stands_right_of_the_front_on_its_height_line():
    placed = {view.name: view for view in place_third_angle(VIEWS)}
    assert placed["front"].at == (0, 0)
    for name in ("side", "vertical_section"):
        assert placed[name].at[1] == 0
        assert _find_box(placed[name])[0] > _find_box(placed["front"])[2]


def test_the_plan_stands_over_the_front_on_its_centre_line():
    placed = {view.name: view for view in place_third_angle(VIEWS)}
    for name in ("plan", "plan_section"):
        assert placed[name].at[0] == 0
        assert _find_box(placed[name])[1] > _find_box(placed["front"])[3]


def test_no_two_views_overlap_and_none_is_left_out():
    placed = place_third_angle(VIEWS)
    assert sorted(view.name for view in placed) == sorted(name for name, _ in VIEWS)
    for one, other in combinations(map(_find_box, placed), 2):
        assert one[2] < other[0] or other[2] < one[0] or one[3] < other[1] or other[3] < one[1]


def test_views_lie_whole_inches_apart():
    for view in place_third_angle(VIEWS):
        assert view.at == (int(view.at[0]), int(view.at[1]))


def test_a_single_view_keeps_its_own_coordinates():
    for view in VIEWS:
        assert place_third_angle([view]) == (Placed(view[1], (0, 0), view[0]),)
