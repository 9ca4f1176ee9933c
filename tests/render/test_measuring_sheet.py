"""The blank sheet asks for everything that is measured, once, under the letters of its sketch."""

from __future__ import annotations

import pytest

from model.measuring_walk import is_measured_there
from render.drawing import Dimension, Text
from render.extent import drawing_extent
from render.measuring_sheet import AGAIN, build_measuring_sheets, join_labels, list_lines
from render.sheets import PAPERS
from render.site_layout import VIEWS
from render.site_sheet import list_measured_rows
from render.site_sketch import KEYS


def _texts(sheets) -> list[str]:
    marks = [mark for sheet in sheets for placed in sheet.placed for mark in placed.drawing.marks]
    return [mark.text for mark in marks if isinstance(mark, Text | Dimension)]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("units", ["feet_inches", "millimetres"])
def test_every_letter_of_the_list_stands_in_the_sketch(paper: str, units: str):
    sheets = build_measuring_sheets(paper, units)
    sketched = _texts(sheets[:1])
    listed = ", ".join(_texts(sheets[1:])).split(", ")
    for letter in KEYS.values():
        assert sketched.count(letter) == 1, letter
        assert listed.count(letter) == 1, letter


@pytest.mark.parametrize(("paper", "most"), [("letter", 3), ("a4", 3), ("tabloid", 3), ("a3", 3)])
def test_it_is_no_more_than_two_or_three_sheets(paper: str, most: int):
    assert 2 <= len(build_measuring_sheets(paper, "feet_inches")) <= most


def test_every_row_has_a_box_of_its_own_under_its_name_in_the_window():
    asked = [row.path for line in list_lines() for row in line.rows]
    wanted = [row.path for row in list_measured_rows() if is_measured_there(row)]
    assert sorted(asked) == sorted(wanted)
    for line in list_lines():
        words = set(line.label.lower().replace(",", "").split())
        for row in line.rows:
            if not row.path.startswith("readings.") or line.words != AGAIN:
                assert set(row.label.lower().replace(",", "").split()) <= words, (line.label, row.label)
        if len(line.rows) == 2:
            assert line.words[0] != line.words[1]
            assert len(line.rows) == len(line.words)


@pytest.mark.parametrize(
    ("first", "second", "label"),
    [
        ("Over the left foot", "Over the right foot", "Over the left and right foot"),
        ("Outlet, left", "Outlet, right", "Outlet, left and right"),
        ("Driest air", "Dampest air", "Driest and dampest air"),
    ],
)
def test_names_that_differ_in_a_word_are_joined(first: str, second: str, label: str):
    assert join_labels(first, second) == label


@pytest.mark.parametrize("paper", PAPERS)
def test_the_words_stand_clear_of_the_sketch(paper: str):
    sheet = build_measuring_sheets(paper, "feet_inches")[0]
    words = next(placed for placed in sheet.placed if placed.name == "table")
    left, bottom, *_ = drawing_extent(words.drawing)
    for placed in sheet.placed:
        if placed.name in VIEWS:
            _, _, x1, y1 = (value / placed.drawing.ratio for value in drawing_extent(placed.drawing))
            assert placed.at[0] + x1 < left or placed.at[1] + y1 < bottom, placed.name


def test_everything_measured_is_asked_for_and_nothing_is_filled_in():
    words = " ".join(_texts(build_measuring_sheets("a3", "inches")))
    for row in list_measured_rows():
        if is_measured_there(row):
            assert row.label.split(",")[0].split()[0].lower() in words.lower()
    assert "1'-0" not in words
    assert '36"' not in words
