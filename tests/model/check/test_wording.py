"""Lengths in findings are rounded to the safe side and never hide which is larger."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.check.wording import Wording
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES, LengthStyle, parse_length

STYLES = st.sampled_from([FEET_INCHES_16, INCHES_16, MILLIMETRES, LengthStyle("inches", 32)])
LENGTHS = st.floats(0, 200)


def test_clearances_are_written_in_inches_where_the_job_is_in_feet():
    wording = Wording(FEET_INCHES_16)
    assert wording.distance(12) == '12"'
    assert wording.at_least(12) == "1'-0\""
    assert Wording(MILLIMETRES).distance(12) == "305 mm"


@given(LENGTHS, STYLES)
def test_at_least_is_never_less_and_at_most_never_more_by_a_step_or_beyond(value, style):
    wording = Wording(style)
    least = parse_length(wording.at_least(value), style=style)
    most = parse_length(wording.at_most(value), style=style)
    assert value - 1e-5 <= least < value + wording.step + 1e-5
    assert value - wording.step - 1e-5 < most <= value + 1e-5


@given(LENGTHS, LENGTHS, STYLES)
def test_a_pair_reads_in_the_order_of_its_numbers(measured, needed, style):
    """Differences under 1/10000 in. are beyond any tape."""
    if abs(measured - needed) < 2e-4:
        return
    short, long = (parse_length(text.replace("in.", "in")) for text in Wording(style).pair(measured, needed))
    assert (short < long) is (measured < needed)


@pytest.mark.parametrize(
    ("measured", "needed", "texts"),
    [
        (11.75, 12, ('11 3/4"', '12"')),
        (12, 12, ('12"', '12"')),
        (11.99, 12, ("11.9900 in.", "12.0000 in.")),
        (9.05, 9.04, ('9 1/16"', '9 1/16"')),
    ],
)
def test_decimals_stand_only_where_rounding_would_mislead(measured, needed, texts):
    assert Wording(INCHES_16).pair(measured, needed) == texts
