"""A set over the shelf.

Sources: THX tech tip on sets over a fireplace (look up 15 degrees at most); a television set's sides are as
16 to 9 (arithmetic); a page on heights of sets for its worked angle. "arithmetic" marks what is worked
out by hand.
"""

from __future__ import annotations

from math import radians, tan

import pytest

from model.check.television import place_screen
from model.job import default_job, with_texts
from model.reference.cautions import LOOK_UP, SCREEN_HIGH
from model.reference.sourced import Standing
from model.surround import plan_surround


def _place(**texts: str):
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    screen = place_screen(plan_surround(with_texts(default_job(), pairs)))
    assert screen is not None
    return screen


@pytest.mark.parametrize(("diagonal", "wide", "tall"), [(55, 47.94, 26.96), (50, 43.58, 24.51)])
def test_a_screens_sides_are_as_16_to_9(diagonal, wide, tall):
    """0.8716 and 0.4903 of the diagonal; arithmetic."""
    screen = _place(tv__diagonal=str(diagonal))
    assert (screen.wide, screen.tall) == pytest.approx((wide, tall), abs=0.01)
    assert SCREEN_HIGH.value == pytest.approx(0.4903, abs=5e-5)


def test_one_looks_up_15_degrees_at_most():
    """THX; the tangent is 0.268, so that an eye at 42 in. 120 in. away may look at 74.15 in.; arithmetic."""
    assert (LOOK_UP.value, LOOK_UP.standing) == (15, Standing.PUBLISHED)
    assert tan(radians(15)) == pytest.approx(0.268, abs=5e-4)
    assert _place(tv__diagonal="55", tv__eye="42", tv__away="120").highest == pytest.approx(74.15, abs=0.01)


def test_a_55_inch_set_over_a_shelf_at_54_is_looked_up_to_by_12_9_degrees():
    """Middle at 69.48 in.; from 42 in. and 120 away 12.9 degrees up, 18.8 to the top; arithmetic."""
    screen = _place(tv__diagonal="55", tv__gap="2", tv__eye="42", tv__away="120", shelf__height="54")
    assert screen.middle == pytest.approx(69.48, abs=0.01)
    assert (screen.up, screen.up_to_top) == pytest.approx((12.9, 18.8), abs=0.05)


def test_thirty_inches_of_rise_in_twelve_feet_are_not_quite_twelve_degrees():
    """30 in 144: 11.77 degrees; the page it is worked on says 11.7. The eye is 30 in. under the middle."""
    middle = _place(tv__diagonal="50", tv__gap="2", shelf__height="54").middle
    screen = _place(
        tv__diagonal="50", tv__gap="2", tv__away="144", shelf__height="54", tv__eye=f"{middle - 30:.4f}"
    )
    assert screen.up == pytest.approx(11.77, abs=0.005)
