"""A drawing comes out on the screen where it lies in the model, in the inks of the paper."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QImage, QPainter

from app.painter import Place, gather_drawing, paint_drawing, screen_pen
from render.drawing import (
    Anchor,
    Dimension,
    Drawing,
    Fill,
    Hatch,
    Lines,
    Mark,
    Pen,
    Polyline,
    Region,
    Text,
)
from render.lettering import text_width
from render.pens import TINTS

SQUARE = ((10.0, 10.0), (30.0, 10.0), (30.0, 30.0), (10.0, 30.0))
HOLE = ((15.0, 15.0), (15.0, 25.0), (25.0, 25.0), (25.0, 15.0))
SCALE = 10.0
SIZE = 400
"""Pixels; the model's origin is the picture's lower left corner."""


@pytest.fixture(autouse=True)
def _dressed(dressed):
    """Letters need the typeface."""


def _paint(*marks: Mark) -> QImage:
    image = QImage(SIZE, SIZE, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    with QPainter(image) as painter:
        paint_drawing(painter, gather_drawing(Drawing(marks, 4.0)), Place(SCALE, 0.0, SIZE), 4.0)
    return image


def _colour(image: QImage, x: float, y: float) -> str:
    """What is seen at a point of the model."""
    return image.pixelColor(int(x * SCALE), int(SIZE - y * SCALE)).name()


def _ink_box(image: QImage) -> tuple[float, float, float, float]:
    """Left, bottom, right, top of everything that is not white, in model inches."""
    dark = [(x, y) for x in range(SIZE) for y in range(SIZE) if image.pixelColor(x, y).lightness() < 200]
    xs, ys = [x for x, _ in dark], [y for _, y in dark]
    return min(xs) / SCALE, (SIZE - max(ys) - 1) / SCALE, (max(xs) + 1) / SCALE, (SIZE - min(ys)) / SCALE


def test_up_in_the_model_is_up_on_the_screen():
    image = _paint(Region(Fill.OPENING, (((0.0, 30.0), (40.0, 30.0), (40.0, 40.0), (0.0, 40.0)),)))
    assert _colour(image, 20, 35) == TINTS[Fill.OPENING]
    assert _colour(image, 20, 5) == "#ffffff"


def test_a_hole_in_an_area_shows_what_is_behind_it():
    image = _paint(Region(Fill.FACING, (SQUARE, HOLE)))
    assert _colour(image, 12, 12) == TINTS[Fill.FACING]
    assert _colour(image, 20, 20) == "#ffffff"


def test_an_area_may_be_in_several_places():
    far = tuple((x, y) for x, y in ((32.0, 32.0), (38.0, 32.0), (38.0, 38.0), (32.0, 38.0)))
    image = _paint(Region(Fill.FACING, (SQUARE, far)))
    assert _colour(image, 20, 20) == _colour(image, 35, 35) == TINTS[Fill.FACING]


def test_what_is_laid_down_later_covers_what_was_there():
    line = Lines(Pen.OUTLINE, ((0.0, 20.0, 40.0, 20.0),))
    covered = _paint(line, Region(Fill.WOOD, (SQUARE,)))
    assert _colour(covered, 20, 20) == TINTS[Fill.WOOD]
    assert QColor(_colour(covered, 5, 20)).lightness() < 100
    assert QColor(_colour(_paint(Region(Fill.WOOD, (SQUARE,)), line), 20, 20)).lightness() < 100


def test_strokes_of_every_kind_end_where_the_model_says():
    for mark in (
        Lines(Pen.OUTLINE, ((10.0, 10.0, 30.0, 10.0), (30.0, 10.0, 10.0, 30.0), (10.0, 30.0, 10.0, 10.0))),
        Polyline(Pen.OUTLINE, SQUARE, closed=True),
        Polyline(Pen.OUTLINE, ((10.0, 10.0), (30.0, 30.0))),
        Hatch(Pen.OUTLINE, (SQUARE,), 45.0, 1.0),
    ):
        assert _ink_box(_paint(mark)) == pytest.approx((10, 10, 30, 30), abs=0.8), mark


def test_a_closed_line_comes_back_to_its_start():
    image = _paint(Polyline(Pen.OUTLINE, SQUARE, closed=True))
    assert QColor(_colour(image, 10, 20)).lightness() < 100


@pytest.mark.parametrize(("anchor", "left"), [(Anchor.START, 20), (Anchor.MIDDLE, 15), (Anchor.END, 10)])
def test_writing_stands_at_its_place_and_is_as_wide_as_it_was_laid_out(anchor: Anchor, left: float):
    height = 10 / text_width("HIH", 1.0)
    image = _paint(Text("HIH", (20.0, 20.0), height, anchor))
    box = _ink_box(image)
    assert box[0] == pytest.approx(left, abs=1)
    assert box[2] == pytest.approx(left + 10, abs=1)
    assert box[1] == pytest.approx(20, abs=0.3)
    assert box[3] == pytest.approx(20 + height, abs=0.3)


def test_turned_writing_reads_upward():
    box = _ink_box(_paint(Text("HIHIH", (20.0, 10.0), 3.0, rotation=90.0)))
    assert box[3] - box[1] > box[2] - box[0]
    assert box[1] == pytest.approx(10, abs=0.6)
    assert box[2] == pytest.approx(20, abs=0.3)


def test_a_dimension_is_drawn_with_line_and_writing():
    image = _paint(Dimension((10.0, 10.0), (30.0, 10.0), False, 20.0, '20"', (20.0, 22.0), 1.5))
    left, bottom, right, top = _ink_box(image)
    assert left == pytest.approx(10, abs=0.8)
    assert right == pytest.approx(30, abs=0.8)
    assert bottom < 12
    assert top == pytest.approx(22.75, abs=0.3)


def test_the_box_holds_everything_that_is_painted():
    marks = (Text("Ceiling", (5.0, 5.0), 2.0), Lines(Pen.EDGE, ((20.0, 30.0, 39.0, 30.0),)))
    box = gather_drawing(Drawing(marks, 4.0)).box
    left, bottom, right, top = _ink_box(_paint(*marks))
    assert box.left() <= left + 0.2
    assert box.top() <= bottom + 0.2
    assert box.right() >= right - 0.2
    assert box.bottom() >= top - 0.2


def test_a_point_goes_to_its_pixel_and_back():
    place = Place(7.5, 100.0, 300.0).moved(3.0, -2.0)
    assert place.to_model(place.to_pixels((4.25, -8.0))) == pytest.approx((4.25, -8.0))
    assert place.to_pixels((-3.0, 2.0)) == QPointF(100.0, 300.0)


def test_sharp_thin_lines_are_paler_and_never_gone():
    thin, heavy = screen_pen(Pen.ARRIS, 3.0, False), screen_pen(Pen.CUT, 3.0, False)
    assert thin.widthF() == 1.0
    assert heavy.color().lightness() < thin.color().lightness() < 255
    assert thin.color().alpha() == 255
    assert heavy.widthF() > thin.widthF()


def test_dashes_are_as_long_on_the_screen_as_on_paper():
    for smooth in (True, False):
        pen = screen_pen(Pen.CENTRE, 4.0, smooth)
        assert [d * pen.widthF() / 4.0 for d in pen.dashPattern()] == pytest.approx([5.0, 1.1, 0.6, 1.1])


def _widest_gap(text: str, capital: float) -> int:
    """Pixels without ink in a row between the first and the last letter."""
    image = _paint(Text(text, (1.0, 20.0), capital / SCALE))
    inked = [any(image.pixelColor(x, y).lightness() < 220 for y in range(180, 210)) for x in range(SIZE)]
    columns = [x for x in range(SIZE) if inked[x]]
    return max(right - left - 1 for left, right in pairwise(columns))


@pytest.mark.parametrize("capital", [4, 4.7, 5, 6, 6.6, 8])
def test_a_fraction_stands_as_far_from_its_whole_number_at_the_end_of_a_long_line_as_alone(capital):
    for begin in ("l" * 30, "m" * 12, "Standingatthesideofthefire"):
        assert abs(_widest_gap(f"{begin}5 3/4", capital) - _widest_gap("5 3/4", capital)) <= 1
        assert _widest_gap(f"{begin}5 3/4", capital) >= 1
