"""A note between dimensions: clear of them, near the middle, on the first level that has room."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon, box

from render.dimension_strokes import dimension_strokes, dimension_text
from render.drawing import Anchor, Dimension, Text
from render.extent import text_corners
from render.lettering import text_width
from render.note_places import APART, free_place, part_line

RATIO = 12.0
SIZE = (20.0, 1.2)


def level_at(line, first=-30.0, second=30.0):
    return Dimension((first, 0), (second, 0), False, line, "5'-0\"", ((first + second) / 2, line + 1.3), 1.4)


def note_box(place):
    x, y = place
    return box(x - SIZE[0] / 2, y - 0.4, x + SIZE[0] / 2, y + 1.3)


def test_without_dimensions_the_note_stands_in_the_middle_of_the_first_level():
    assert free_place(SIZE, (-40, 40), (10, 8), (), RATIO) == (0, 10)


def test_a_text_in_the_way_moves_the_note_along_its_level():
    x, y = free_place(SIZE, (-40, 40), (10, 2), (level_at(8.9),), RATIO)
    assert y == 10
    words = text_corners(dimension_text(level_at(8.9)))
    apart = abs(x) - SIZE[0] / 2 - max(corner[0] for corner in words)
    assert apart >= APART * RATIO, "a note and a size end to end are read as one"


def test_the_end_of_a_long_plumb_text_moves_the_note_too():
    plumb = Dimension((0, 0), (0, 1), True, 3.0, '45 1/4" [1149]', (0, 1), 1.4)
    reach = text_width(plumb.text, plumb.height) / 2
    x, y = free_place(SIZE, (-40, 40), (reach,), (plumb,), RATIO)
    assert y == reach
    assert abs(x) > SIZE[0] / 2


def test_a_dimension_line_in_the_way_moves_the_note_to_the_next_level():
    assert free_place(SIZE, (-40, 40), (10, 2), (level_at(10.4, -60, 60),), RATIO) == (0, 2)


def test_where_nothing_is_free_there_is_no_place():
    crowd = tuple(level_at(10 + n / 4, -300, 300) for n in range(9))
    assert free_place(SIZE, (-40, 40), (10, 11), crowd, RATIO) is None


@given(st.lists(st.tuples(st.floats(4, 14), st.floats(-30, 0), st.floats(3, 40)), max_size=6))
def test_a_place_that_is_found_is_clear_of_every_stroke_and_text(given_lines):
    dimensions = tuple(level_at(line, first, first + width) for line, first, width in given_lines)
    place = free_place(SIZE, (-40, 40), (10, 7), dimensions, RATIO)
    note = note_box(place).buffer(-0.06)
    strokes = [LineString([s[:2], s[2:]]) for d in dimensions for s in dimension_strokes(d, RATIO)]
    texts = [Polygon(text_corners(dimension_text(d))) for d in dimensions]
    if any(note.intersects(shape) for shape in [*strokes, *texts]):
        assert place == (0, 10), "only the fallback may lie in the way"


def test_the_note_is_measured_as_it_is_written():
    text = Text("Ceiling", (0, 10), SIZE[1], Anchor.MIDDLE)
    low, high = min(y for _, y in text_corners(text)), max(y for _, y in text_corners(text))
    assert note_box((0, 10)).bounds[1] <= low + 0.01
    assert note_box((0, 10)).bounds[3] >= high - 0.06


def test_a_line_gives_way_to_the_texts_it_would_run_through_and_to_no_others():
    crossed, beside = level_at(9.0), level_at(30.0)
    (y,) = {crossed.text_at[1]}
    first, last = part_line((-40.0, y, 40.0, y), (crossed, beside), 0.5)
    half = text_width(crossed.text, crossed.height) / 2 + 0.5
    assert first == pytest.approx((-40.0, y, crossed.text_at[0] - half, y))
    assert last == pytest.approx((crossed.text_at[0] + half, y, 40.0, y))
    assert part_line((-40.0, 20.0, 40.0, 20.0), (crossed, beside), 0.5) == ((-40.0, 20.0, 40.0, 20.0),)


def test_a_plumb_line_gives_way_as_a_level_one_does():
    crossed = level_at(9.0)
    x, y = crossed.text_at
    low, high = part_line((x, -10.0, x, 40.0), (crossed,), 0.5)
    assert low[:2] == (x, -10.0)
    assert low[3] < y < high[1]
    assert high[2:] == (x, 40.0)
