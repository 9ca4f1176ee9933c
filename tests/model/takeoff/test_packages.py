"""Whole packages: never less than is needed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.measures import BARE, FLUID_OUNCE, FOOT, GALLON, POUND
from model.takeoff.materials import Basis, Material
from model.takeoff.packages import format_package
from model.units import INCHES_16, MILLIMETRES


def _take(amount, measure, style=INCHES_16, unit=""):
    return format_package(Material("it", amount, measure, Basis("it"), (), unit), style)


@pytest.mark.parametrize(
    ("amount", "measure", "unit", "text"),
    [
        (0.1, GALLON, "", "1 qt"),
        (0.25, GALLON, "", "1 qt"),
        (0.26, GALLON, "", "2 qt"),
        (0.76, GALLON, "", "1 gal"),
        (1.01, GALLON, "", "2 gal"),
        (4.5, FLUID_OUNCE, "", "8 fl oz"),
        (300, FLUID_OUNCE, "", "384 fl oz"),
        (0.3, POUND, "", "0.5 lb"),
        (1, POUND, "", "1 lb"),
        (2.9, FOOT, "", "3 ft"),
        (1.46, BARE, "cartridge", "2 cartridges"),
        (0.2, BARE, "cartridge", "1 cartridge"),
        (46, BARE, "screw", "46 screws"),
    ],
)
def test_amounts_are_rounded_up_to_what_is_sold(amount, measure, unit, text):
    assert _take(amount, measure, unit=unit) == text


@pytest.mark.parametrize(
    ("amount", "measure", "text"),
    [
        (0.1, GALLON, "0.75 L"),
        (0.5, GALLON, "2.5 L"),
        (4, FLUID_OUNCE, "250 mL"),
        (0.4, POUND, "0.25 kg"),
        (4, FOOT, "2 m"),
    ],
)
def test_a_job_in_millimetres_takes_litres_and_kilograms(amount, measure, text):
    assert _take(amount, measure, MILLIMETRES) == text


@given(
    st.floats(0.001, 50),
    st.sampled_from((GALLON, FLUID_OUNCE, POUND, FOOT)),
    st.sampled_from((INCHES_16, MILLIMETRES)),
)
def test_a_package_is_never_less_than_the_amount(amount, measure, style):
    number, unit = _take(amount, measure, style).split(" ", 1)
    size = float(number) / (4 if unit == "qt" else 1)
    assert size >= amount * measure.scale(style) * (1 - 1e-6)
