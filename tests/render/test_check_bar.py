"""The bar that shows whether a print is true to size."""

import pytest

from model.units import MM_PER_INCH
from render.check_bar import check_bar_marks
from render.drawing import Drawing, Lines
from render.extent import drawing_extent, list_texts

INCHES, MILLIMETRES = (m for m in check_bar_marks(0.7, 0.4) if isinstance(m, Lines))


def upright(mark):
    return [s for s in mark.segments if s[0] == s[2]]


def level(mark):
    return sorted(s[1] for s in mark.segments if s[1] == s[3])


def test_one_side_measures_four_inches_inch_by_inch():
    (edge,) = upright(INCHES)
    assert edge[3] - edge[1] == 4
    assert level(INCHES) == [0.4, 1.4, 2.4, 3.4, 4.4]


def test_the_other_side_measures_a_hundred_millimetres_in_tens():
    (edge,) = upright(MILLIMETRES)
    assert (edge[3] - edge[1]) * MM_PER_INCH == pytest.approx(100)
    assert [(y - 0.4) * MM_PER_INCH for y in level(MILLIMETRES)] == pytest.approx(range(0, 101, 10))


def test_inches_lie_left_of_millimetres_as_the_label_says():
    assert upright(INCHES)[0][0] < upright(MILLIMETRES)[0][0]
    (label,) = list_texts(Drawing(check_bar_marks(0.7, 0.4)))
    assert label.text == "Print at 100 %: this bar measures 4 in. on the left and 100 mm on the right."


def test_the_bar_ends_at_the_edge_it_is_given():
    box = drawing_extent(Drawing(check_bar_marks(0.7, 0.4)))
    assert box[2] == pytest.approx(0.7)
    assert box[1] >= 0.4 - 1e-9
    assert box[0] > 0.3
