"""Names of things in a view."""

import pytest
from shapely import LineString, Polygon, box

from render.drawing import Dimension, Fill, Hatch, Lines, Pen, Region, Text
from render.extent import text_corners
from render.names import Name, place_names

RATIO = 12.0
WALL = tuple((x, -60.0, x, 60.0) for x in range(-60, 61, 2))


def placed(names, *under):
    marks = place_names(names, under, RATIO)
    words = {mark.text: Polygon(text_corners(mark)) for mark in marks if isinstance(mark, Text)}
    return marks, words


def test_a_name_stands_close_where_nothing_is_in_the_way():
    marks, words = placed([Name("outlet", (0.0, 0.0), 1.0, "outlet.left")])
    assert [type(mark) for mark in marks] == [Text]
    assert 1.0 <= words["outlet"].distance(Polygon([(0, 0), (0.01, 0), (0, 0.01)])) < 2.5


def test_names_keep_off_lines_dimensions_and_each_other():
    line = Lines(Pen.EDGE, ((-40.0, 1.5, 40.0, 1.5), (1.0, -40.0, 1.0, 40.0)))
    size = Dimension((-20.0, -9.0), (20.0, -9.0), False, -3.0, "3'-4\"", (0.0, -2.0), 1.5)
    names = [Name("casing", (0.0, 0.0), 0.0, "a"), Name("outlet", (0.5, 0.0), 0.0, "b")]
    _, words = placed(names, line, size)
    assert not words["casing"].intersects(words["outlet"])
    for word in words.values():
        for x0, y0, x1, y1 in line.segments:
            assert not word.intersects(LineString([(x0, y0), (x1, y1)]))
        assert not word.intersects(LineString([(-20.0, -3.0), (20.0, -3.0)]))


def test_a_name_that_stands_off_is_joined_to_its_thing():
    blocks = Lines(Pen.EDGE, tuple((-6.0, y / 2, 6.0, y / 2) for y in range(-14, 15)))
    marks, _ = placed([Name("outlet", (0.0, 0.0), 0.0, "a")], blocks)
    (join,) = (mark for mark in marks if isinstance(mark, Lines))
    assert join.segments[0][:2] == pytest.approx((0.0, 0.0))


def test_a_name_over_a_hatch_has_a_ground_of_paper():
    hatch = Hatch(Pen.HATCH, (((-60, -60), (60, -60), (60, 60), (-60, 60)),), 45.0, 1.0)
    marks, words = placed([Name("outlet", (0.0, 0.0), 0.0, "a")], hatch)
    (ground,) = (mark for mark in marks if isinstance(mark, Region))
    assert ground.fill is Fill.PAPER
    assert Polygon(ground.rings[0]).buffer(1e-6).contains(words["outlet"])
    assert marks.index(ground) < next(n for n, mark in enumerate(marks) if isinstance(mark, Text))


def test_where_lines_are_everywhere_names_stand_on_paper_and_not_on_each_other():
    names = [Name(f"outlet {n}", (0.0, 0.0), 0.0, str(n)) for n in range(4)]
    marks, words = placed(
        names, Lines(Pen.EDGE, tuple((x / 4, -90.0, x / 4, 90.0) for x in range(-400, 401)))
    )
    assert sum(isinstance(mark, Region) for mark in marks) == 4
    found = list(words.values())
    assert not any(a.intersects(b) for n, a in enumerate(found) for b in found[:n])


def test_no_name_stands_on_the_dark_of_the_opening():
    dark = Region(Fill.OPENING, (((-20, -20), (20, -20), (20, 20), (-20, 20)),))
    _, words = placed([Name("outlet", (0.0, 0.0), 0.0, "a")], dark)
    assert not words["outlet"].intersects(box(-20, -20, 20, 20))
