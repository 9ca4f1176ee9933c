"""Dressed lumber sizes and board measure.

Sources: American Softwood Lumber Standard PS 20, dry dressed, as two size charts give it; hardwood grading
thicknesses surfaced two sides, as two dealers' charts give them; board feet as worked in woodworkers' and
lumber traders' pages.
"""

from __future__ import annotations

import pytest

from model.reference.lumber import (
    DRESSED_THICKNESSES,
    DRESSED_WIDTHS,
    SURFACED_THICKNESSES,
    WIDEST_BOARD,
    board_feet,
    dressed_size,
)


@pytest.mark.parametrize(
    ("nominal", "dressed"),
    # PS 20, dry: face widths, in.
    [(2, 1.5), (3, 2.5), (4, 3.5), (5, 4.5), (6, 5.5), (8, 7.25), (10, 9.25), (12, 11.25)],
)
def test_softwood_face_widths(nominal, dressed):
    assert DRESSED_WIDTHS[nominal] == dressed


@pytest.mark.parametrize(("nominal", "dressed"), [(1, 0.75), (1.25, 1.0), (1.5, 1.25), (2, 1.5)])
def test_softwood_thicknesses(nominal, dressed):
    """PS 20, dry. Some western finish grades dress 5/4 to 1 5/32; that is from memory and left out."""
    assert DRESSED_THICKNESSES[nominal] == dressed


def test_softwood_widths_lose_a_half_up_to_6_in_and_three_quarters_above():
    """The rule behind the PS 20 widths, on a remodelling page."""
    for nominal, dressed in DRESSED_WIDTHS.items():
        assert nominal - dressed == (0.5 if nominal <= 6 else 0.75)


@pytest.mark.parametrize(
    ("thickness", "width", "size"),
    [(1, 4, (0.75, 3.5)), (1, 12, (0.75, 11.25)), (2, 4, (1.5, 3.5)), (2, 12, (1.5, 11.25))],
)
def test_boards_by_name(thickness, width, size):
    """PS 20: 1x4, 1x12, 2x4, 2x12."""
    assert dressed_size(thickness, width) == size


def test_the_widest_board_stocked_is_a_one_by_twelve():
    assert WIDEST_BOARD == 11.25


@pytest.mark.parametrize(
    ("quarters", "surfaced"), [(4, 0.8125), (5, 1.0625), (6, 1.3125), (8, 1.75), (12, 2.75)]
)
def test_hardwood_surfaced_two_sides(quarters, surfaced):
    assert SURFACED_THICKNESSES[quarters] == surfaced


@pytest.mark.parametrize(
    ("thickness", "width", "length", "feet"),
    [
        (1, 9, 96, 6),  # woodworkers' tip sheet
        (1.5, 9, 96, 9),  # the same
        (1, 3, 8 * 12, 2),  # furniture maker's page on ordering lumber
        (1, 4, 6 * 12, 2),  # furniture maker's page on board feet
        (1, 12, 10 * 12, 10),  # freight company's page on board feet
        (2, 6, 10 * 12, 10),  # formwork page on nominal sizes
        (0.75, 12, 12, 1),  # stock under 1 in. counts as 1 in., the same sheets
    ],
)
def test_board_feet(thickness, width, length, feet):
    assert board_feet(thickness, width, length) == pytest.approx(feet)


def test_price_by_the_thousand_board_feet():
    """2 x 6 x 10 ft at 400 the thousand is 4.00 (formwork page on nominal sizes)."""
    assert board_feet(2, 6, 120) * 400 / 1000 == pytest.approx(4.0)
