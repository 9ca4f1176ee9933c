"""The blank sheet asks for everything that is measured, once, under the letters of its sketch."""

from __future__ import annotations

import pytest

from model.measuring_walk import is_measured_there
from model.parameters import TABLE
from render.drawing import Dimension, Text
from render.measuring_sheet import build_measuring_sheets
from render.sheets import PAPERS
from render.site_sheet import GROUPS
from render.site_sketch import KEYS


def _texts(sheets) -> list[str]:
    marks = [mark for sheet in sheets for placed in sheet.placed for mark in placed.drawing.marks]
    return [mark.text for mark in marks if isinstance(mark, Text | Dimension)]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("units", ["feet_inches", "millimetres"])
def test_every_letter_of_the_list_stands_in_the_sketch(paper: str, units: str):
    sheets = build_measuring_sheets(paper, units)
    sketched, listed = _texts(sheets[:1]), _texts(sheets[1:])
    for letter in KEYS.values():
        assert sketched.count(letter) == 1, letter
        assert listed.count(letter) == 1, letter


def test_everything_measured_is_asked_for_and_nothing_is_filled_in():
    words = " ".join(_texts(build_measuring_sheets("a3", "inches")))
    for row in TABLE:
        if row.group in GROUPS and is_measured_there(row):
            assert row.name.capitalize().split(",")[0].split(" ")[0] in words
    assert "1'-0" not in words
    assert '36"' not in words
