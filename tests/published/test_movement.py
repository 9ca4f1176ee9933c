"""Movement across the grain: Wood Handbook FPL-GTR-190, equation 13-2 and Table 13-5, and worked examples."""

import pytest

from model.reference.movement import ACROSS

TABLE_13_5 = {
    "maple": 0.00353,
    "red_oak": 0.00369,
    "white_oak": 0.00365,
    "cherry": 0.00248,
    "walnut": 0.00274,
    "alder": 0.00256,
    "basswood": 0.00330,
}
"""Tangential coefficients; the oaks are the commercial groups."""
TABLE_4_3 = {"poplar": 8.2, "white_pine": 6.1, "ponderosa": 6.2, "cherry": 7.1, "walnut": 7.8, "alder": 7.3}
"""Tangential shrinkage, green to ovendry, %."""


@pytest.mark.parametrize(("species", "coefficient"), TABLE_13_5.items())
def test_coefficients_are_the_tables(species, coefficient):
    assert ACROSS[species].value == coefficient


@pytest.mark.parametrize(("species", "shrinkage"), TABLE_4_3.items())
def test_coefficients_follow_from_the_shrinkage(species, shrinkage):
    # Equation 13-3 about 10 % moisture: 1 / (30 * 100 / S - 30 + 10).
    assert ACROSS[species].value == pytest.approx(1 / (3000 / shrinkage - 20), abs=0.000006)


def test_a_foot_of_flat_sawn_cherry_grows_an_eighth_from_8_to_12_percent():
    # Worked example in a woodworking magazine's page on wood movement: 12 in., 8 to 12 %: 0.12 in.
    assert 12 * ACROSS["cherry"].value * (12 - 8) == pytest.approx(0.12, abs=0.005)
