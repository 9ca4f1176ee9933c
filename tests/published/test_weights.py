"""Weights of woods, and what a person is advised to lift.

Sources: Wood Handbook (USDA Forest Products Laboratory) ch. 4, density = 62.4 G (1 + MC/100), with its
specific gravities at 12 %; weights at 12 % are arithmetic from them. Plywood: 3 lb to the sq ft and inch
of thickness, as panel pages quote a plywood association; its
design specification gives 1.5 lb for 1/2 in. (0.68 kg, quoted). NIOSH 94-110, revised lifting equation.
"""

from __future__ import annotations

import pytest

from model.reference.weights import LOAD_CONSTANT, SPECIFIC_GRAVITIES
from model.takeoff.weight import advised_weight, density_of


@pytest.mark.parametrize(
    ("wood", "pounds", "kilograms"),
    # Wood Handbook, at 12 %: lb to the cu ft and kg to the cu m.
    [
        ("white_pine", 24.5, 392),
        ("basswood", 25.9, 414),
        ("ponderosa", 28.0, 448),
        ("alder", 28.7, 459),
        ("poplar", 29.4, 470),
        ("cherry", 34.9, 560),
        ("walnut", 38.4, 616),
        ("red_oak", 44.0, 706),
        ("maple", 44.0, 706),
        ("white_oak", 47.5, 762),
    ],
)
def test_woods_are_as_heavy_at_twelve_percent_as_printed(wood, pounds, kilograms):
    assert density_of(wood, 12) == pytest.approx(pounds, abs=0.06)
    assert density_of(wood, 12) * 0.45359237 / 0.3048**3 == pytest.approx(kilograms, abs=1.0)


@pytest.mark.parametrize(
    ("wood", "gravity"),
    [
        ("poplar", 0.42), ("white_pine", 0.35), ("ponderosa", 0.40), ("maple", 0.63), ("red_oak", 0.63),
        ("white_oak", 0.68), ("cherry", 0.50), ("walnut", 0.55), ("alder", 0.41), ("basswood", 0.37),
        ("framing", 0.42),
    ],
)  # fmt: skip
def test_specific_gravities_are_the_handbooks(wood, gravity):
    """Wood Handbook tables 5-3a and 5-3b; framing: NDS 2018 table 12.3.3A, spruce-pine-fir."""
    assert SPECIFIC_GRAVITIES[wood].value == gravity


@pytest.mark.parametrize(("thickness", "pounds"), [(1.0, 3.0), (0.5, 1.5)])
def test_plywood_weighs_three_pounds_a_square_foot_and_inch(thickness, pounds):
    assert density_of("plywood", 8) * thickness / 12 == pytest.approx(pounds)


def test_the_load_constant_is_51_pounds():
    assert LOAD_CONSTANT.value == 51


@pytest.mark.parametrize(
    ("reach", "start", "stop", "pounds", "within"),
    [
        # All multipliers 1 but the grip's, 0.90: hands at 30 in., 10 in. out, 10 in. of travel at most.
        # DM = 0.82 + 1.8/10 = 1.00, VM at 40 in. = 1 - 0.0075 x 10 = 0.925.
        (10, 30, 40, 51 * 0.925 * 0.90, 0.01),
        # A worked answer on a homework page: H 20, V 6, D 16: 0.50 x 0.82 x 0.93 x fair grip 0.95 = 18.4.
        # Here the grip is poor, 0.90, and both ends count: V 6 gives 0.82.
        (20, 6, 22, 18.4 * 0.90 / 0.95, 0.15),
        # At floor level VM is 0.78, at 70 in. 0.70 (a page on the equation's limits).
        (10, 0, 30, 51 * 0.78 * (0.82 + 1.8 / 30) * 0.90, 0.25),
        (10, 30, 70, 51 * 0.70 * (0.82 + 1.8 / 40) * 0.90, 0.01),
    ],
)
def test_the_lifting_equation_gives_the_worked_answers(reach, start, stop, pounds, within):
    assert advised_weight(reach, start, stop) == pytest.approx(pounds, abs=within)


def test_beyond_70_inches_nothing_is_advised():
    """The vertical multiplier is 0 above 70 in. (a page on the equation's limits)."""
    assert advised_weight(10, 30, 70.1) == 0
