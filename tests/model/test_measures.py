"""Areas, volumes, weights and rates: how they are written and read."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import Refused
from model.measures import (
    BARE,
    COVERAGE,
    FLUID_OUNCE,
    FOOT,
    GALLON,
    INCH,
    MIL,
    PERCENT,
    POUND,
    SQ_FT,
    format_measure,
    parse_measure,
)
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES

PINT = {
    SQ_FT: ("foot**2", "meter**2"),
    COVERAGE: ("foot**2/gallon", "meter**2/liter"),
    GALLON: ("gallon", "liter"),
    FLUID_OUNCE: ("fluid_ounce", "milliliter"),
    POUND: ("pound", "kilogram"),
    FOOT: ("foot", "meter"),
    MIL: ("inch/1000", "micrometer"),
    INCH: ("inch", "millimeter"),
}


@pytest.mark.parametrize("measure", PINT, ids=lambda measure: measure.name)
def test_factors_agree_with_an_independent_unit_library(measure):
    inch, metric = PINT[measure]
    registry = pint.UnitRegistry()
    assert measure.factor == pytest.approx(registry.parse_expression(inch).to(metric).magnitude, rel=1e-12)


@pytest.mark.parametrize(
    ("value", "measure", "style", "text"),
    [
        (12.345, SQ_FT, INCHES_16, "12.3 sq ft"),
        (12.345, SQ_FT, MILLIMETRES, "1.15 m²"),
        (0.0123, GALLON, INCHES_16, "0.0123 gal"),
        (0.00001, GALLON, INCHES_16, "0.00001 gal"),
        (2345.6, SQ_FT, FEET_INCHES_16, "2346 sq ft"),
        (100, POUND, MILLIMETRES, "45.4 kg"),
        (8, PERCENT, INCHES_16, "8 %"),
        (3, BARE, MILLIMETRES, "3"),
        (0, SQ_FT, INCHES_16, "0 sq ft"),
    ],
)
def test_values_are_written_short(value, measure, style, text):
    assert format_measure(value, measure, style) == text


@given(
    st.floats(1e-2, 1e5),
    st.sampled_from(list(PINT)),
    st.sampled_from((INCHES_16, FEET_INCHES_16, MILLIMETRES)),
)
def test_what_is_written_reads_back_to_its_figures(value, measure, style):
    assert parse_measure(format_measure(value, measure, style, 4), "it", measure, style) == pytest.approx(
        value, rel=1e-3
    )


@pytest.mark.parametrize(
    "text", ["250", "250 sq ft/gal", "250 SQ FT/GAL", "250 ft2/gal", "250 ft²/gal", "250."]
)
def test_a_coverage_is_read_in_any_of_its_spellings(text):
    assert parse_measure(text, "coverage", COVERAGE, INCHES_16) == 250


def test_a_comma_is_a_decimal_point():
    assert parse_measure("6,2 m²/L", "coverage", COVERAGE, MILLIMETRES) == pytest.approx(252.6, abs=0.05)


def test_a_bare_number_has_the_unit_of_the_job():
    assert parse_measure("10", "film", MIL, INCHES_16) == 10
    assert parse_measure("254", "film", MIL, MILLIMETRES) == pytest.approx(10)
    assert parse_measure("254 µm", "film", MIL, INCHES_16) == pytest.approx(10)


@pytest.mark.parametrize("text", ["", "many", "-1", "1/2", "3 lb", "1e5", "1 2"])
def test_what_is_no_number_is_refused_with_an_example(text):
    with pytest.raises(Refused) as caught:
        parse_measure(text, "coverage", COVERAGE, INCHES_16)
    assert "write a number, such as 2.5 sq ft/gal" in str(caught.value)
