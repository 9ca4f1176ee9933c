"""Dressed lumber sizes: American Softwood Lumber Standard PS 20, dry dressed, as two size charts give it."""

from __future__ import annotations

import pytest

from model.reference.lumber import DRESSED_WIDTHS, WIDEST_BOARD


@pytest.mark.parametrize(
    ("nominal", "dressed"),
    # PS 20, dry: face widths, in.
    [(2, 1.5), (3, 2.5), (4, 3.5), (5, 4.5), (6, 5.5), (8, 7.25), (10, 9.25), (12, 11.25)],
)
def test_nominal_softwood_is_dressed_to_the_widths_of_ps_20(nominal, dressed):
    assert DRESSED_WIDTHS[nominal] == dressed


def test_softwood_widths_lose_a_half_up_to_6_in_and_three_quarters_above():
    """The rule behind the PS 20 widths, on a remodelling page."""
    for nominal, dressed in DRESSED_WIDTHS.items():
        assert nominal - dressed == (0.5 if nominal <= 6 else 0.75)


def test_the_widest_board_stocked_is_a_one_by_twelve():
    assert WIDEST_BOARD == 11.25
