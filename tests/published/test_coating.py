"""Paint, glue and caulk arithmetic.

Sources: a coatings journal and two pages on spreading rates (1604 x solids x efficiency / mils); a boat
builder's page on glue (231 cu in. to the gallon); trade pages on caulk (18.3 cu in. to a 10.1 oz
cartridge; feet from 10.3 oz). Known to be wrong and left out: a chart giving 50 to 55 ft of a 1/4 by 1/4
joint from 10.1 oz, and a formula that forgets to divide by 128.
"""

from __future__ import annotations

from math import pi

import pytest

from model.measures import COVERAGE
from model.reference.coating import OUNCE_VOLUME
from model.reference.rates import HOLE_DEPTH, HOLE_WIDTH
from model.takeoff.materials import bead_volume, cartridges_of, coverage_of_film


@pytest.mark.parametrize(
    ("mils", "solids", "efficiency", "coverage", "within"),
    [
        (1.5, 0.52, 0.30, 167, 0.5),  # coatings journal: 52 % solids, 30 % transfer, 1.5 mils
        (5, 0.65, 1.0, 208.5, 0.05),  # page on spreading rate: 65 %, 5 mils
        (2, 0.35, 1.0, 281, 0.5),  # page on film measurement: 35 %, 2 mils
        (1.5, 0.374, 1.0, 400, 0.5),  # a paint's own sheet: 37.4 %, 1.5 mils
    ],
)
def test_a_gallon_covers_by_solids_and_film_as_printed(mils, solids, efficiency, coverage, within):
    assert coverage_of_film(mils, solids, efficiency) == pytest.approx(coverage, abs=within)


def test_a_litre_covers_what_a_gallon_does_in_proportion():
    """65 % solids at 125 micrometres: 5.2 square metres to the litre (page on spreading rate)."""
    mils = 125 / 25.4
    assert coverage_of_film(mils, 0.65) * COVERAGE.factor == pytest.approx(5.2, abs=0.05)


@pytest.mark.parametrize(("film", "coverage"), [(1 / 32, 48), (1 / 64, 96)])
def test_a_gallon_of_glue_covers_by_the_thickness_of_its_film(film, coverage):
    """1/32 in. covers 48 sq ft by the page's own rounding; by arithmetic 51.3."""
    assert coverage_of_film(film * 1000) == pytest.approx(coverage, rel=0.08)
    assert coverage_of_film(film * 1000) == pytest.approx(231 / film / 144, rel=1e-3)


def test_a_cartridge_of_caulk_holds_18_cubic_inches():
    """10.1 fl oz is 18.3 cu in. on a supplier's page, 18.23 by arithmetic."""
    assert 10.1 * OUNCE_VOLUME.value == pytest.approx(18.3, abs=0.1)


@pytest.mark.parametrize(("side", "feet"), [(1 / 4, 24.8), (3 / 8, 11.0), (1 / 2, 6.2)])
def test_a_cartridge_fills_as_many_feet_of_square_joint_as_printed(side, feet):
    """10.3 oz: about 25, 11 and 6.2 ft on a calculator page; a square joint is twice its fillet."""
    volume = 2 * bead_volume(side, 12.0)
    assert 1 / cartridges_of(volume, 10.3) == pytest.approx(feet, abs=0.06)


@pytest.mark.parametrize(
    ("leg", "feet"),
    [(1 / 8, 194.4), (3 / 16, 86.4), (1 / 4, 48.6), (5 / 16, 31.1), (3 / 8, 21.6), (1 / 2, 12.2)],
)
def test_a_cartridge_lasts_for_as_many_feet_of_fillet_as_its_volume_gives(leg, feet):
    """10.1 oz, legs of the bead; arithmetic from 231 cu in. to the gallon."""
    assert 1 / cartridges_of(bead_volume(leg, 12.0), 10.1) == pytest.approx(feet, abs=0.06)


def test_a_public_chart_that_doubles_the_yield_is_not_followed():
    """50 to 55 ft of 1/4 by 1/4 from 10.1 oz is twice what the cartridge holds."""
    assert 1 / cartridges_of(2 * bead_volume(1 / 4, 12.0), 10.1) < 26


def test_a_nail_hole_is_less_than_a_thousandth_of_a_cubic_inch():
    """0.09 in. wide, 1/8 in. deep: about 0.0008 cu in. (common practice)."""
    assert pi / 4 * HOLE_WIDTH.value**2 * HOLE_DEPTH.value == pytest.approx(0.0008, abs=0.00005)
