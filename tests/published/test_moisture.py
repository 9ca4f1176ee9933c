"""Moisture of wood in air, and its movement over a wide range.

Sources: Wood Handbook ch. 4, Hailwood and Horrobin's equation, as worked by a professor of wood science from
the 2010 edition (65 degrees F); by an encyclopaedia page (140 degrees F); by a public calculator (70 degrees
F; it rounds the humidity, so that 0.2 % are allowed). Table 13-5 for the coefficients, about 10 % moisture; a
worked board of the handbook, p. 13-18; a page on quarter-sawn oak is left out, being quarter-sawn.
"""

from __future__ import annotations

import pytest

from model.reference.moisture import INDOORS_DAMP, INDOORS_DRY, moisture_in_air, swell


@pytest.mark.parametrize(
    ("warmth", "humidity", "moisture", "within"),
    [
        (65, 60, 11.1, 0.06),
        (65, 30, 6.2, 0.06),
        (140, 55, 8.4, 0.06),
        (70, 25, 5.3, 0.2),
        (70, 60, 11.1, 0.2),
        (70, 84, 17.6, 0.2),
        (70, 87, 19.0, 0.2),
        # the handbook's own table at 70 degrees F, from memory
        (70, 30, 6.2, 0.1),
        (70, 40, 7.7, 0.1),
        (70, 50, 9.2, 0.1),
        (70, 65, 12.0, 0.1),
    ],
)
def test_moisture_follows_the_air(warmth, humidity, moisture, within):
    assert moisture_in_air(humidity, warmth) == pytest.approx(moisture, abs=within)


@pytest.mark.parametrize(
    ("species", "coefficient"),
    [("maple", 0.00353), ("cherry", 0.00248), ("walnut", 0.00274), ("basswood", 0.00330), ("alder", 0.00256)],
)
def test_about_ten_percent_it_moves_by_the_tables_coefficient(species, coefficient):
    """Table 13-5, tangential: change for each percent, as a part of the width."""
    assert swell(species, 1.0, 10, 11) == pytest.approx(coefficient, abs=0.000006)


def test_a_foot_of_cherry_grows_an_eighth():
    """12 in., 8 to 12 %: 0.12 in., a woodworking magazine."""
    assert swell("cherry", 12, 8, 12) == pytest.approx(0.12, abs=0.005)


def test_a_room_indoors_is_between_30_and_55_percent_damp():
    """AWI 200, Care and Storage."""
    assert (INDOORS_DRY.value, INDOORS_DAMP.value) == (30, 55)
