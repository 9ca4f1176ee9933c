"""Tape text: what is read, what is refused and how lengths are written."""

from __future__ import annotations

import math
import timeit
from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import MantelwrightError, Refused
from model.units import (
    FEET_INCHES_16,
    INCHES_16,
    MILLIMETRES,
    LengthStyle,
    _read_sum,
    format_length,
    parse_length,
    round_length,
    without_feet,
)

FEET_INCHES_32 = LengthStyle("feet_inches", 32)
INCHES_32 = LengthStyle("inches", 32)
STYLES = (FEET_INCHES_16, FEET_INCHES_32, INCHES_16, INCHES_32, LengthStyle("inches", 1), MILLIMETRES)
WANTED = "write a length such as 36, 36 1/2, 3' 0-1/2\" or 914 mm"


@pytest.mark.parametrize(
    "text",
    [
        "64 1/2",
        '64 1/2"',
        '64-1/2"',
        "64-1/2",
        "64 - 1/2 in",
        "64 - 1/2",
        "64\u20131/2",
        "64.5",
        "64.50",
        "5' 4 1/2\"",
        "5'-4-1/2\"",
        "5'-4 1/2\"",
        "5' - 4 1/2\"",
        "5'4 1/2",
        "5' 4-1/2",
        "5ft 4.5in",
        "5ft4.5in",
        "5 ft. 4 1/2 in.",
        "5 feet 4.5 inches",
        "5 Foot 4 1/2 Inches",
        "5 FT 4 1/2 IN",
        "64½",
        "64 ½ in",
        "64-½",
        "64 1\u20442",
        "5\u2032 4\u00bd\u2033",
        "5\u2019 4 1/2\u201d",
        "5\u2018 4 1/2\u201c",
        "5' 4 1/2''",
        "64 1/2\u2032\u2032",
        "\u00a064\u00a01/2\u2009\u2033 ",
        "\t64   1 / 2\n",
        "64\u200b1/2",
        "5 3/8'",
        "64 8/16",
        "1638.3 mm",
        "1638.3MM",
        "163.83 cm",
        "1.6383 m",
        "1.6383 metres",
        "1638.3 millimeters",
        "63 + 1 1/2",
        "60+4.5",
        "5' + 4 1/2\"",
        "2*32 1/4",
        "2 \u00d7 32 1/4",
        "60 + 2*2 1/4",
        "3*20 + 4 1/2",
        "65 1/4 - 3/4",
        '65" - 1/2"',
        '65" \u2212 1/2"',
        "65.0 - .5",
        "5' 5\" - 1/2",
        "70 - 2*2 3/4",
        "5 ft + 114.3 mm",
    ],
)
def test_every_way_of_writing_sixty_four_and_a_half_reads_alike(text):
    assert parse_length(text) == 64.5


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("5' 4", 64),
        ("5ft4in", 64),
        ("5'", 60),
        ("5 ft", 60),
        ("5.5'", 66),
        ("5 1/2 ft", 66),
        ("5'-3/4\"", 60.75),
        ("5'-0 3/4\"", 60.75),
        ("5' 11 15/16\"", 71.9375),
        ("⅞", 0.875),
        ("7/8", 0.875),
        ("1/128", 1 / 128),
        (".5", 0.5),
        ("36.", 36),
        ("036", 36),
        ("0", 0),
        ('0"', 0),
        ("0'-0\"", 0),
        ("36 + 2*3 1/2", 43),
        ("2*1/2", 1),
        ("1' - 1\"", 13),
        ('1" - 1"', 0),
        ("999999", 999999),
    ],
)
def test_a_reading_means_these_inches(text, inches):
    assert parse_length(text) == inches


def test_a_dash_before_a_fraction_is_the_tapes_own_and_not_a_minus():
    assert parse_length("64 - 1/2") == 64.5
    assert parse_length('64" - 1/2"') == 63.5


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("914", Fraction(9140, 254)),
        ("914.5", Fraction(9145, 254)),
        ("91.4 cm", Fraction(9140, 254)),
        ("36 in", 36),
        ("3' 4", 40),
        ("900 + 14", Fraction(9140, 254)),
        ("2*450 + 14 mm", Fraction(9140, 254)),
    ],
)
def test_a_bare_number_is_millimetres_where_the_job_is(text, inches):
    assert parse_length(text, style=MILLIMETRES) == float(inches)


@pytest.mark.parametrize("text", ["36 1/2", "1/2", '900 + 2"', "900 + 3' 2"])
def test_a_millimetre_job_refuses_what_leaves_the_unit_open(text):
    with pytest.raises(Refused, match="unit"):
        parse_length(text, style=MILLIMETRES)


@pytest.mark.parametrize(
    "text",
    [
        "", " ", "\u200b", "'", '"', "in", "mm", "/", "-", "+", "*", ".", "abc", "3x", "2 x 4", "5 4",
        "1,5", "1,638 mm", "5 ft 20 mm", "20 mm 1 in", "64 1/2 3/4", "1/2 64", "½ ½", "64 1½", "4 in 5 ft",
        "5' 4'", "5\" 4\"", "64\" 1/2", "1/0", "0/0", "0/4", "64 0/16", "64 3/2", "5/4", "4/4", "64 1/7",
        "1/97", "1/1000000", "-3", "-1/2", "- 3", "+3", "3 - ", "36 +", "36 ++ 2", "3\" - 5\"",
        "36 - 36 1/2", "nan", "inf", "-inf", "infinity", "1e5", "1E2", "0x10", "1_000", "5**200", "5^2",
        "2*3*4", "3 1/2*2", "1/2*2", "2.5*3", "0*3", "1000*1", "(36)", "36 / 2", "36/2/2", "5' 12\"",
        "5' 14\"", "5.5' 3\"", "5 1/2' 3\"", "64.5 1/2", "64. 1/2", "1.2.3", "64..5", "64 1/2 mm",
        "1m 638mm", "1000000", "1234567890123", "5-4", "64 - 3", "64 1/2-3/4", "64 1/2 -3/4", "5'-4\"-1/2",
        "36 + 64 - 1/2", "36 + 5' - 4\"", "5' - 20 mm", "36 + 20 mm", "20 mm + 36", "36 mm 2", "64 1/2+",
        "٣٦", "３６", "6²", "Ⅷ", "\x00", "36\x0036", "36\ud800", "a" * 5000, "9" * 5000, "1/2+" * 400,
        "'" * 61, "((((", "36; 37", "36\\", "{36}", "%s", "36°", "36 yd", "36 #",
    ],
)  # fmt: skip
def test_everything_else_is_refused_by_name_with_an_example(text):
    with pytest.raises(Refused) as caught:
        parse_length(text, "opening width")
    assert caught.value.field == "opening width"
    assert str(caught.value).startswith('opening width "')
    assert str(caught.value).endswith(WANTED)
    assert len(str(caught.value)) < 300


def test_a_refusal_reads_as_the_design_says():
    with pytest.raises(Refused) as caught:
        parse_length("3x", "opening width")
    assert str(caught.value) == 'opening width "3x": write a length such as 36, 36 1/2, 3\' 0-1/2" or 914 mm'
    assert isinstance(caught.value, MantelwrightError)
    assert isinstance(caught.value, ValueError)


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("1,5", "write a point for decimals, not a comma"),
        ("5 4", "mark feet and inches, as in 5' 4\""),
        ("-3", "a length cannot be less than nothing"),
        ('3" - 5"', "a length cannot be less than nothing"),
        ("5 ft 20 mm", "write feet and inches or millimetres, not both, unless as a sum"),
        ("64 3/2", "write a fraction as it stands on a tape, such as 1/2, 3/8 or 15/16"),
        ("64 1/2 3/4", "write one whole number and one fraction"),
        ("5' 14\"", "after feet, inches run from 0 up to 12"),
        ("5.5' 3\"", "before inches write whole feet"),
        ("64.5 1/2", "write a fraction or a decimal point, not both"),
        ("64 1/2 mm", "write metric lengths with a decimal point"),
        ("36 + 20 mm", "give each part of the sum its unit"),
        ("64 - 3", "where a dash takes away, give what stands before it a unit"),
        ("64 1/2-3/4", "put a space on either side of a dash that takes away"),
        ("36 + 64 - 1/2", 'in a sum write 64-1/2 to join and 64" - 1/2" to take away'),
        ("3 1/2*2", "write a whole count first and then one length, such as 2*3 1/2"),
    ],
)
def test_a_plain_slip_is_named(text, hint):
    with pytest.raises(Refused) as caught:
        parse_length(text)
    assert str(caught.value) == f'length "{text}": {hint}; {WANTED}'


def test_a_refusal_in_a_millimetre_job_gives_metric_examples_that_read():
    with pytest.raises(Refused, match=r"such as 914, 91.4 cm, 36 1/2\" or 3' 0-1/2\""):
        parse_length("x", style=MILLIMETRES)
    for example in ("914", "91.4 cm", '36 1/2"', "3' 0-1/2\""):
        assert parse_length(example, style=MILLIMETRES) == pytest.approx(36, abs=0.6)
    for example in ("36", "36 1/2", "3' 0-1/2\"", "914 mm"):
        assert parse_length(example) == pytest.approx(36, abs=0.6)


@pytest.mark.parametrize(
    ("text", "unit", "number"),
    [
        ("64.25 in", "inch", 64.25),
        ("7 ft", "foot", 7),
        ("1638.7 mm", "millimetre", 1638.7),
        ("163.87 cm", "centimetre", 163.87),
        ("1.6387 m", "metre", 1.6387),
    ],
)
def test_units_agree_with_an_independent_library(text, unit, number):
    quantity = pint.UnitRegistry().Quantity(number, unit)
    assert parse_length(text) == pytest.approx(quantity.to("inch").magnitude, rel=1e-14)


def test_metric_readings_are_exact_to_the_last_bit():
    assert parse_length("25.4 mm") == 1.0
    assert parse_length("0.0254 m") == 1.0
    assert parse_length("1638 mm") == float(Fraction(16380, 254))
    assert parse_length("0.1 + 0.2") == float(Fraction(3, 10))


@pytest.mark.parametrize(
    ("value", "style", "text"),
    [
        (0.03125, INCHES_16, '1/16"'),
        (-0.03125, INCHES_16, '-1/16"'),
        (0.03124, INCHES_16, '0"'),
        (-0.03124, INCHES_16, '0"'),
        (-0.0, INCHES_16, '0"'),
        (5.28125, INCHES_16, '5 5/16"'),
        (5.28125, INCHES_32, '5 9/32"'),
        (11.96875, FEET_INCHES_16, "1'-0\""),
        (11.96875, FEET_INCHES_32, '11 31/32"'),
        (-11.96875, FEET_INCHES_16, "-1'-0\""),
        (1.5 / 25.4, MILLIMETRES, "2 mm"),
        (-1.5 / 25.4, MILLIMETRES, "-2 mm"),
        (1638.5 / 25.4, MILLIMETRES, "1639 mm"),
        (-0.4 / 25.4, MILLIMETRES, "0 mm"),
        (64.5, MILLIMETRES, "1638 mm"),
        (0.4999999, LengthStyle("inches", 1), '0"'),
        (0.5, LengthStyle("inches", 1), '1"'),
        (1200.0, FEET_INCHES_16, "100'-0\""),
        (-64.5, FEET_INCHES_16, "-5'-4 1/2\""),
    ],
)
def test_halves_go_away_from_zero(value, style, text):
    assert format_length(value, style) == text


def test_a_reading_of_half_a_millimetre_rounds_up_whatever_the_float_lost():
    for tenths in range(5, 40000, 10):
        text = format_length(parse_length(f"{tenths / 10} mm"), MILLIMETRES)
        assert text == f"{tenths // 10 + 1} mm"


@given(st.floats(0, 5000), st.sampled_from(STYLES))
def test_what_is_written_reads_back_as_what_was_rounded(value, style):
    assert parse_length(format_length(value, style), style=style) == round_length(value, style)


@given(st.floats(-5000, 5000), st.sampled_from(STYLES))
def test_rounding_moves_a_length_by_half_a_step_at_most_and_mirrors(value, style):
    step = 1 / 25.4 if style == MILLIMETRES else 1 / style.denominator
    rounded = round_length(value, style)
    assert abs(rounded - value) <= step / 2 * (1 + 1e-6)
    assert round_length(rounded, style) == rounded
    assert round_length(-value, style) == -rounded
    minus = "" if rounded <= 0 else "-"
    assert format_length(-value, style) == minus + format_length(abs(value), style)


@given(st.integers(0, 200), st.integers(0, 11), st.integers(1, 15))
def test_every_sixteenth_reads_alike_however_it_is_written(feet, inches, sixteenths):
    exact = feet * 12 + inches + sixteenths / 16
    total = feet * 12 + inches
    for text in (
        f"{feet}' {inches} {sixteenths}/16\"",
        f"{feet}'-{inches}-{sixteenths}/16\"",
        f"{feet}ft{inches + sixteenths / 16}in",
        f"{total} {sixteenths}/16",
        f"{total}-{sixteenths}/16 in",
        f"{exact}",
        f"{exact * 25.4:.5f} mm",
    ):
        assert parse_length(text) == pytest.approx(exact, abs=1e-6)
    assert parse_length(f"{feet}' {inches} {sixteenths}/16") == exact


@given(st.text(max_size=70))
def test_any_text_is_read_or_refused_and_never_below_nothing(text):
    try:
        value = parse_length(text)
    except Refused:
        return
    assert math.isfinite(value)
    assert value >= 0


@given(st.text(alphabet="0123456789 ./'\"-+*½ftinmcx,", max_size=24))
def test_text_of_tape_signs_is_read_or_refused_the_same_way_twice(text):
    results = []
    for _ in range(2):
        try:
            results.append(parse_length(text))
        except Refused as refusal:
            results.append(str(refusal))
    assert results[0] == results[1]


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
@pytest.mark.parametrize("write", [format_length, round_length])
def test_what_is_no_number_is_not_written(value, write):
    for style in (FEET_INCHES_16, MILLIMETRES):
        with pytest.raises(Refused, match="finite number"):
            write(value, style)


@pytest.mark.parametrize(
    ("units", "denominator"), [("yards", 16), ("inches", 10), ("inches", 0), ("inches", 128)]
)
def test_a_style_no_tape_has_is_refused(units, denominator):
    with pytest.raises(ValueError, match="is wanted"):
        LengthStyle(units, denominator)


def _best_of_five(work) -> float:
    return min(timeit.repeat(work, number=1, repeat=5))


def test_reading_and_writing_keep_out_of_the_way_of_an_edit():
    texts = [
        f"{feet}' {inches} 3/{part}\"" for feet in range(9) for inches in range(11) for part in (4, 8, 16)
    ]
    lengths = [i / 32 for i in range(1000)]
    reading = _best_of_five(lambda: [_read_sum.__wrapped__(text, False) for text in texts]) / len(texts)
    writing = _best_of_five(lambda: [format_length(i, FEET_INCHES_16) for i in lengths]) / len(lengths)
    assert reading < 100e-6, f"{reading * 1e6:.1f} us for one reading; 20 is meant"
    assert writing < 15e-6, f"{writing * 1e6:.1f} us for one label; 3 is meant"


BOTH_16 = LengthStyle("both", 16)


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (64.5, '64 1/2" [1638]'),
        (0.75, '3/4" [19]'),
        (0.0, '0" [0]'),
        (-0.5, '-1/2" [-13]'),
        (36, '36" [914]'),
    ],
)
def test_both_units_stand_together_inches_first(value, text):
    assert format_length(value, BOTH_16) == text


@given(st.integers(0, 200 * 16))
def test_what_is_written_in_both_units_is_read_back_by_its_inches(sixteenths):
    assert parse_length(format_length(sixteenths / 16, BOTH_16), style=BOTH_16) == sixteenths / 16


def test_millimetres_in_brackets_are_not_read_so_that_inches_can_be_typed_over():
    assert parse_length('65" [1638]', style=BOTH_16) == 65
    assert parse_length("914 mm", style=BOTH_16) == pytest.approx(914 / 25.4)
    with pytest.raises(Refused):
        parse_length('65" [1638]', style=INCHES_16)


def test_both_units_round_as_the_inches_do():
    assert round_length(64.51, BOTH_16) == 64.5


@pytest.mark.parametrize(
    ("style", "expected"),
    [
        (LengthStyle("feet_inches", 16), LengthStyle("inches", 32)),
        (LengthStyle("inches", 64), LengthStyle("inches", 64)),
        (BOTH_16, LengthStyle("both", 32)),
        (MILLIMETRES, MILLIMETRES),
    ],
)
def test_widths_are_never_in_feet_and_as_fine_as_asked(style, expected):
    assert without_feet(style, 32) == expected
