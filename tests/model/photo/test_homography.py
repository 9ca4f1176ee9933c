"""A plane is taken to a photo the one way that keeps straight lines straight."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import Refused
from model.photo.homography import apply_homography, find_homography

PLACES = np.array([(0, 0), (60, 0), (60, 52.5), (0, 52.5)])
PIXELS = np.array([(100, 120), (520, 90), (540, 480), (80, 430)])


def test_the_map_is_the_one_that_two_other_programs_find():
    """Found alike by a general toolkit for windows and one for pictures."""
    expected = [[5.30941704, -0.50053385, 100], [-0.79260090, 5.26201153, 120], [-0.00325112, -0.00149477, 1]]
    assert find_homography(PLACES, PIXELS) == pytest.approx(np.array(expected), abs=6e-9)


def test_it_is_not_the_mean_of_the_corners():
    """Where diagonals cross stays where they cross; the mean of the corners does not."""
    middle = apply_homography(find_homography(PLACES, PIXELS), [(30, 26.25)])[0]
    a, c, b, d = PIXELS[0], PIXELS[2], PIXELS[1], PIXELS[3]
    along = np.linalg.solve(np.column_stack([c - a, b - d]).astype(float), b - a)[0]
    assert middle == pytest.approx(a + along * (c - a))
    assert np.hypot(*(middle - PIXELS.mean(axis=0))) > 1


@given(st.lists(st.floats(-40, 40), min_size=8, max_size=8))
def test_every_corner_comes_to_lie_where_it_was_marked(moved: list[float]):
    pixels = PIXELS + np.array(moved).reshape(4, 2)
    assert apply_homography(find_homography(PLACES, pixels), PLACES) == pytest.approx(pixels, abs=1e-6)


@pytest.mark.parametrize(
    "corners",
    [
        [(0, 0), (100, 0), (200, 0), (0, 100)],
        [(0, 0), (100, 100), (100, 0), (0, 100)],
        [(0, 0), (100, 0), (20, 20), (0, 100)],
        [(0, 0), (0, 0), (0, 0), (0, 0)],
    ],
    ids=["three on a line", "crossed", "hollow", "one place"],
)
def test_corners_that_are_no_quadrilateral_are_refused(corners):
    with pytest.raises(Refused, match="corners"):
        find_homography(PLACES, corners)
