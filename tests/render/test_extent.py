"""How much room marks take up."""

import pytest

from render.drawing import (
    Anchor,
    Dimension,
    Drawing,
    Fill,
    Hatch,
    Lines,
    Pen,
    Polyline,
    Region,
    Text,
)
from render.extent import box_of, box_ring, box_sides, drawing_extent, list_texts, text_corners
from render.lettering import ASCENT, DESCENT, text_width

SQUARE = ((1.0, 2.0), (4.0, 2.0), (4.0, 6.0), (1.0, 6.0))


@pytest.mark.parametrize(
    "mark",
    [
        Lines(Pen.EDGE, ((1, 2, 4, 6),)),
        Polyline(Pen.EDGE, SQUARE),
        Region(Fill.WOOD, (SQUARE,)),
        Hatch(Pen.HATCH, (SQUARE,), 45, 1),
    ],
)
def test_strokes_and_areas_reach_as_far_as_their_points(mark):
    assert drawing_extent(Drawing((mark,))) == (1, 2, 4, 6)


@pytest.mark.parametrize(("anchor", "before"), [(Anchor.START, 0), (Anchor.MIDDLE, 0.5), (Anchor.END, 1)])
def test_writing_takes_its_width_from_its_anchor(anchor, before):
    width = text_width("3'-0\"", 1.5)
    box = drawing_extent(Drawing((Text("3'-0\"", (10, 5), 1.5, anchor),)))
    assert box == pytest.approx(
        (10 - before * width, 5 - DESCENT * 1.5, 10 + (1 - before) * width, 5 + ASCENT * 1.5)
    )


def test_turned_writing_reaches_upwards():
    text = Text("2'-6\"", (0, 0), 1.5, rotation=90)
    corners = text_corners(text)
    assert max(y for _, y in corners) == pytest.approx(text_width("2'-6\"", 1.5))
    assert min(x for x, _ in corners) == pytest.approx(-ASCENT * 1.5)


def test_a_dimension_takes_up_its_line_its_ends_and_its_text():
    level = Dimension((0, 0), (36, 0), False, -6, "3'-0\"", (18, -4.8), 1.5)
    low_x, low_y, high_x, high_y = drawing_extent(Drawing((level,), 12))
    assert low_y == -6 - 1.5
    assert low_x < 0 < 36 < high_x
    assert high_y < 0


def test_every_writing_is_listed_and_empty_ones_are_not():
    marks = (
        Text("A", (0, 0), 1),
        Text("", (0, 0), 1),
        Dimension((0, 0), (36, 0), False, -6, "3'-0\"", (18, -4.8), 1.5),
        Text("brick", (6, 6), 1.5),
        Lines(Pen.EDGE, ((0, 0, 1, 1),)),
    )
    assert [text.text for text in list_texts(Drawing(marks, 12))] == ["A", "3'-0\"", "brick"]


def test_a_drawing_without_marks_has_no_extent():
    with pytest.raises(ValueError, match="without marks"):
        drawing_extent(Drawing(()))


def test_a_box_goes_round_its_points_and_has_their_corners_and_four_sides():
    box = box_of(((4.0, 2.0), (1.0, 6.0), (2.0, 3.0)))
    assert box == (1.0, 2.0, 4.0, 6.0)
    assert box_ring(box) == SQUARE
    sides = box_sides(box)
    assert [side[:2] for side in sides] == list(SQUARE)
    assert [side[2:] for side in sides] == [*SQUARE[1:], SQUARE[0]]
