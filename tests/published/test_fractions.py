"""Published ways of writing and defining lengths. Changed only when a source was misread."""

from __future__ import annotations

from fractions import Fraction

import pytest

from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES, MM_PER_INCH, format_length, parse_length


def test_the_inch_is_25_4_millimetres_exactly():
    """NIST Special Publication 811 (2008), appendix B.6, footnote on the international inch of 1959."""
    assert MM_PER_INCH == 25.4
    assert parse_length("25.4 mm") == 1.0
    assert parse_length("30.48 cm") == 12.0
    assert parse_length("0.3048 m") == 12.0


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        # Fundamentals: Drawings and Specifications (Workforce LibreTexts), "Use scale rulers to determine
        # actual dimensions from drawings": feet and inches are joined by a dash.
        (51.5, "4'-3 1/2\""),
        (84, "7'-0\""),
        # Dimensioning practice in architectural drawing: no zero is dropped, and under one foot the figure
        # is in inches only.
        (120, "10'-0\""),
        (11.5, '11 1/2"'),
        (0.75, '3/4"'),
    ],
)
def test_feet_and_inches_are_written_as_drafting_books_write_them(inches, text):
    assert format_length(inches, FEET_INCHES_16) == text


@pytest.mark.parametrize(
    ("inches", "feet_text", "inches_text"),
    [
        # Arithmetic by hand; the carries are the cases that break naive formatting.
        (52.3125, "4'-4 5/16\"", '52 5/16"'),
        (48, "4'-0\"", '48"'),
        (47.99, "4'-0\"", '48"'),
        (95.999, "8'-0\"", '96"'),
        (11.97, "1'-0\"", '12"'),
        (0.5, '1/2"', '1/2"'),
        (0, '0"', '0"'),
        (60.75, "5'-0 3/4\"", '60 3/4"'),
        (-3.25, '-3 1/4"', '-3 1/4"'),
    ],
)
def test_rounding_carries_into_the_next_inch_and_foot(inches, feet_text, inches_text):
    assert format_length(inches, FEET_INCHES_16) == feet_text
    assert format_length(inches, INCHES_16) == inches_text


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        # NIST Special Publication 811 (2008), appendix B.8: 1 ft = 3.048 E-01 m, 1 in = 2.54 E+01 mm.
        ("1 ft", "304.8"),
        ("1 in", "25.4"),
        # American Softwood Lumber Standard PS 20, tables of dressed sizes: inch and metric side by side.
        ("3/4", "19"),
        ("1 1/2", "38"),
        ("3 1/2", "89"),
        ("5 1/2", "140"),
        ("7 1/4", "184"),
        ("9 1/4", "235"),
        ("11 1/4", "286"),
    ],
)
def test_inch_sizes_have_the_published_millimetres(text, millimetres):
    inches = parse_length(text)
    if "." in millimetres:
        assert Fraction(inches) * 254 / 10 == Fraction(millimetres)
    else:
        assert format_length(inches, MILLIMETRES) == f"{millimetres} mm"
