"""Pens and tints: that a sheet reads in colour, and as well without."""

import pytest

from render.drawing import Fill, Pen
from render.pens import STROKES, TINTS, contrast, luminance

PAPER = TINTS[Fill.PAPER]


def test_every_pen_and_every_fill_has_a_look():
    assert set(STROKES) == set(Pen)
    assert set(TINTS) == set(Fill)


def test_no_more_than_four_line_widths_are_used():
    assert len({stroke.width for stroke in STROKES.values()}) <= 4


def test_cut_lines_are_heavier_than_outlines_and_those_than_edges_and_those_than_arrises():
    widths = [STROKES[pen].width for pen in (Pen.CUT, Pen.OUTLINE, Pen.EDGE, Pen.ARRIS)]
    assert widths == sorted(widths, reverse=True)
    assert len(set(widths)) == 4


@pytest.mark.parametrize(
    "pen", [Pen.DIMENSION, Pen.TEXT, Pen.OUTLINE, Pen.CUT, Pen.CLEARANCE, Pen.FAULT, Pen.RULE]
)
@pytest.mark.parametrize("ground", [Fill.PAPER, Fill.WALL, Fill.WOOD, Fill.BAND])
def test_inks_that_are_read_stand_out_from_light_grounds(pen, ground):
    assert contrast(STROKES[pen].ink, TINTS[ground]) >= 4.5


def test_a_wcag_example_pair_has_its_published_contrast():
    # WCAG 2.1 "contrast ratio": black on white is 21:1; #767676 on white is the well-known 4.54:1.
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)


def test_the_opening_reads_as_a_hole_beside_facing_and_wood_without_colour():
    for ground in (Fill.FACING, Fill.WOOD, Fill.WALL, Fill.HEARTH):
        assert contrast(TINTS[Fill.OPENING], TINTS[ground]) > 5


def test_wood_is_the_lightest_of_what_stands_on_the_wall():
    greys = [luminance(TINTS[fill]) for fill in (Fill.WOOD, Fill.WALL, Fill.FACING, Fill.HEARTH)]
    assert greys == sorted(greys, reverse=True)


def test_clearance_lines_are_told_from_outlines_by_their_dashes():
    assert STROKES[Pen.CLEARANCE].dash
    assert not STROKES[Pen.OUTLINE].dash
