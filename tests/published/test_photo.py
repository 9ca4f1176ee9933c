"""Photos of rectangles, against published formulas and figures."""

from __future__ import annotations

import pytest

from model.photo.aspect import find_aspect

SEEN = ((563.6364, 400.9091), (1459.4161, 350.1262), (1443.8212, 1264.0033), (625.2530, 1117.3125))
"""A rectangle of 60 x 52.5 seen by a camera of focal length 1600 about (1000, 750), worked out by hand from
the pinhole camera; as whole pixels, 8 and 0.19 % further off."""
SQUARE = ((849.029, 792.363), (1170.147, 1019.212), (1170.154, 60.757), (849.033, 287.516))
"""A square in a photo of 1920 x 1080 whose focal length is 960: a question put to a public forum of
programmers on rectifying a white board, with its figures; there the formula finds no focal length."""


def test_zhang_and_he_tell_proportion_and_focal_length():
    """MSR-TR-2003-39, section 3.2."""
    found = find_aspect(SEEN, (1000, 750))
    assert found.ratio == pytest.approx(60 / 52.5, rel=1e-6)
    assert found.focal == pytest.approx(1600, abs=0.01)
    rounded = find_aspect([(round(x), round(y)) for x, y in SEEN], (1000, 750))
    assert rounded.ratio == pytest.approx(1.14499, abs=1e-5)
    assert rounded.focal == pytest.approx(1608.1, abs=0.05)


def test_where_the_photo_does_not_tell_it_is_not_made_up():
    assert find_aspect(SQUARE, (960, 540)) is None
    assert find_aspect(SQUARE, (960, 540), 960).ratio == pytest.approx(1.0013, abs=1e-4)
    assert find_aspect(SQUARE, (960, 540), 700).ratio == pytest.approx(0.790, abs=1e-3)
    assert find_aspect(SQUARE, (960, 540), 1400).ratio == pytest.approx(1.384, abs=1e-3)


def test_straight_on_a_photo_shows_proportions_as_they_are():
    found = find_aspect(((0, 525), (600, 525), (600, 0), (0, 0)), (300, 262))
    assert found.ratio == pytest.approx(600 / 525, rel=1e-12)
