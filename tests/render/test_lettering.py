"""Widths of writing against the typeface itself, and where lines are broken."""

import json

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from render.lettering import (
    ASCENT,
    CAPITAL,
    DESCENT,
    ELLIPSIS,
    SET_SIZE,
    TYPEFACES,
    missing_letters,
    replace_missing,
    set_share,
    shorten_text,
    text_runs,
    text_width,
    wrap_text,
)
from tests.render.write_advances import FONTS, WEIGHTS, measure_typeface

TEXTS = st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), max_size=60)


@pytest.mark.parametrize("weight", WEIGHTS)
def test_shipped_advances_are_those_of_the_typeface(weight):
    shipped = json.loads((FONTS / "advances.json").read_text(encoding="utf-8"))
    assert shipped[weight] == measure_typeface(WEIGHTS[weight])


@pytest.mark.parametrize("bold", [False, True])
def test_capitals_are_the_typefaces(bold):
    font = TTFont(FONTS / TYPEFACES[bold])
    assert font["OS/2"].sCapHeight / font["head"].unitsPerEm == CAPITAL


@pytest.mark.parametrize("bold", [False, True])
def test_letters_and_figures_stay_within_the_stated_reach(bold):
    font = TTFont(FONTS / TYPEFACES[bold])
    glyphs, codes = font["glyf"], font.getBestCmap()
    shapes = [glyphs[codes[code]] for code in range(ord("!"), ord("~") + 1) if chr(code) not in "|@{}$\\"]
    capital = font["OS/2"].sCapHeight
    assert max(shape.yMax for shape in shapes) / capital <= ASCENT
    assert min(shape.yMin for shape in shapes) / capital >= -DESCENT


def test_width_of_a_feet_and_inches_text_is_the_sum_of_its_advances():
    font = TTFont(FONTS / TYPEFACES[False])
    codes, advances = font.getBestCmap(), font["hmtx"]
    units = sum(advances[codes[ord(c)]][0] for c in "4'-4 \"/")
    units += sum(SET_SIZE * advances[codes[ord(c)]][0] for c in "516")
    assert text_width("4'-4 5/16\"", 0.66) == pytest.approx(units / 1000)


@pytest.mark.parametrize(
    ("text", "fractions"),
    [
        ('1 1/2"', ["1/2"]), ("3/4", ["3/4"]), ("(5/8 by 3-15/16)", ["5/8", "15/16"]),
        ('1/2" = 1\'-0"', ["1/2"]), ("1'-1 1/4\"", ["1/4"]),
        ("2026/11/26", []), ("1/2/3", []), ("and/or", []), ("R1001/2", []), ("1.1/2", []),
    ],
)  # fmt: skip
def test_a_fraction_has_smaller_figures_and_a_full_solidus(text, fractions):
    runs = text_runs(text)
    assert "".join(run.text for run in runs) == text
    found = [
        (upper, lower)
        for upper, stroke, lower in zip(runs, runs[1:], runs[2:], strict=False)
        if stroke.text == "/" and upper.size == lower.size == SET_SIZE and stroke.size == 1
    ]
    assert [f"{upper.text}/{lower.text}" for upper, lower in found] == fractions
    for upper, lower in found:
        assert upper.rise + upper.size == pytest.approx(1)
        assert lower.rise == 0
        assert lower.at > upper.at
    assert set_share(text) == 1 if not fractions else 0.7 < set_share(text) < 1


@given(st.text(alphabet="0123456789/ -'\"abe.", max_size=20), st.booleans())
def test_runs_put_together_are_the_line_and_as_wide(text, bold):
    runs = text_runs(text, bold)
    assert "".join(run.text for run in runs) == text
    end = runs[-1].at + runs[-1].size * text_width(runs[-1].text.replace("/", ""), 1, bold)
    end += runs[-1].size * runs[-1].text.count("/") * text_width("/", 1, bold)
    assert text_width(text, 1, bold) == pytest.approx(end)


def test_figures_all_have_one_width():
    assert len({text_width(figure, 1.0) for figure in "0123456789"}) == 1


def test_a_character_the_typeface_lacks_takes_the_stand_ins_width():
    assert text_width("\U0001fa9a", 0.66) == pytest.approx(0.653)


@given(TEXTS, st.floats(0.2, 5))
def test_lines_are_no_wider_than_the_room_unless_one_character_is(text, width):
    for line in wrap_text(text, 0.1, width):
        assert len(line) <= 1 or text_width(line, 0.1) <= width


@given(TEXTS, st.floats(0.2, 5))
def test_breaking_into_lines_loses_no_letter(text, width):
    assert "".join("".join(wrap_text(text, 0.1, width)).split()) == "".join(text.split())


def test_lines_break_where_the_text_breaks():
    assert wrap_text("measure twice\ncut once", 0.1, 5) == ("measure twice", "cut once")


def test_no_text_is_one_empty_line():
    assert wrap_text("", 0.1, 1) == ("",)


def test_a_text_that_fits_is_not_shortened():
    assert shorten_text("Made by\tsomeone", 0.1, 5) == "Made by someone"


@given(TEXTS.filter(str.strip), st.floats(0.3, 2))
def test_a_shortened_text_fits_and_says_that_it_is_shortened(text, width):
    shown = shorten_text(text, 0.1, width)
    assert text_width(shown, 0.1) <= width
    assert shown == " ".join(text.split()) or shown.endswith(ELLIPSIS)


def test_letters_that_the_typeface_lacks_are_named_once_and_stood_in_for():
    assert missing_letters("Hearth, 炉 and 炉\n") == "炉"
    assert replace_missing("Müller 炉端 ½ Ж λ") == "Müller ?? ½ Ж λ"
    assert replace_missing("fire 🔥\ufe0f") == "fire ?"


@pytest.mark.parametrize(
    "words", ['sawn to shape, 2 1/16" wide at its foot', "length 4'-10 15/16\" over all"]
)
def test_a_fraction_stays_beside_its_whole_number_however_narrow_the_lines(words):
    for width in (1.0, 1.3, 1.7, 2.2):
        lines = wrap_text(words, 0.1, width)
        assert " ".join(lines) == words
        assert not any(line[0].isdigit() and "/" in line.split()[0] for line in lines), lines


def test_where_even_a_fraction_has_no_room_beside_it_nothing_is_lost():
    lines = wrap_text('2 29/32"', 0.1, 0.95 * text_width("2 29/32", 0.1))
    assert lines == ("2", '29/32"')
