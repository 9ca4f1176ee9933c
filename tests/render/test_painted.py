"""Colours in pictures: told apart in grey, and lines that show on any of them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.look import BARE, FACINGS, PAINTS, STAINS, WALLS
from render.painted import mix_paint
from render.pens import contrast

LEAST_CONTRAST = 3.0
"""Of lines with what they are drawn on: WCAG 2.1, success criterion 1.4.11."""
NAMED = sorted({c for p in (PAINTS, WALLS, FACINGS, STAINS) for _, c in p.values()} | set(BARE.values()))


def check(colour):
    paint = mix_paint(colour)
    for tone in (paint.lit, paint.shade, paint.shadow):
        assert contrast(paint.ink, tone) >= LEAST_CONTRAST
    assert contrast(paint.lit, paint.shade) > 1.3
    assert contrast(paint.shade, paint.shadow) > 1.3


@pytest.mark.parametrize("colour", NAMED)
def test_lines_shades_and_shadows_show_on_every_named_colour(colour):
    check(colour)


@given(st.integers(0, 0xFFFFFF))
def test_lines_shades_and_shadows_show_on_any_colour(number):
    check(f"#{number:06x}")


def test_a_colour_that_shadows_show_on_is_as_chosen_in_the_light():
    assert mix_paint("#a9b39c").lit == "#a9b39c"


@pytest.mark.parametrize(
    ("colour", "on_white"),
    [("#0072b2", 5.19), ("#d55e00", 3.87), ("#009e73", 3.42), ("#767676", 4.542), ("#777777", 4.478)],
)
def test_contrast_is_that_of_wcag_21(colour, on_white):
    assert contrast(colour, "#ffffff") == pytest.approx(on_white, abs=6e-3)
