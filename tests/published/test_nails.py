"""Finishing nails and nailing.

Sources: tables of finishing nails by penny size (length, count to the pound); pages on nails for the
rule of three times the thickness, for a quarter of the penny size and a half, and for a wall board in
between; a construction cost book of 2018, trim section, for casings nailed about 16 in. apart.
"""

from __future__ import annotations

import pytest

from model.reference.nails import NAILS
from model.reference.rates import NAIL_FACTOR, NAIL_SPACING
from model.takeoff.fasteners import choose_nail

TABLE = {
    # penny: length, in.; count to the pound
    2: (1.0, 1351),
    3: (1.25, 807),
    4: (1.5, 584),
    5: (1.75, 500),
    6: (2.0, 309),
    7: (2.25, 238),
    8: (2.5, 189),
    9: (2.75, 172),
    10: (3.0, 121),
}


def test_finishing_nails_are_as_long_and_as_many_to_the_pound_as_printed():
    assert {nail.penny: (nail.length, nail.per_pound) for nail in NAILS} == TABLE


def length_of_penny(penny: float) -> float:
    """Inches, by the rule that holds up to 10d: a quarter of the penny size and a half."""
    return penny / 4 + 1 / 2


@pytest.mark.parametrize("nail", NAILS, ids=lambda nail: f"{nail.penny}d")
def test_up_to_ten_penny_the_length_is_a_quarter_of_the_penny_size_and_a_half(nail):
    assert length_of_penny(nail.penny) == nail.length


def test_no_nail_is_listed_past_where_that_rule_holds():
    """A 12d is 3 1/4 in., not 3 1/2."""
    assert length_of_penny(12) != 3.25
    assert max(nail.penny for nail in NAILS) < 12


def test_a_nail_is_three_times_as_long_as_the_piece_is_thick():
    """Three pages; another says 2 1/2 times."""
    assert NAIL_FACTOR.value == 3
    assert choose_nail(NAIL_FACTOR.value * 0.75, 99) == 2.25


@pytest.mark.parametrize(("through", "lengths"), [(0.75, (2.25,)), (0.75 + 0.5, (2.5, 2.75, 3.0))])
def test_a_nail_is_longer_by_what_lies_between_both_pieces(through, lengths):
    """A 3/4 in. piece: 2 1/4. With 1/2 in. of wall board behind it 2 3/4, said as 2 1/2 to 3."""
    assert choose_nail(NAIL_FACTOR.value * 0.75 + (through - 0.75), 99) in lengths


def test_an_eight_penny_holds_a_one_by_three_to_heavy_timber():
    """3/4 in. through, 1 3/4 in. in the base, which is at least two thirds (encyclopaedia page)."""
    (length,) = (nail.length for nail in NAILS if nail.penny == 8)
    assert length - 0.75 == 1.75
    assert (length - 0.75) / length >= 2 / 3


def test_casings_are_nailed_about_16_in_apart():
    assert NAIL_SPACING.value == 16
