"""The cut list as a spreadsheet reads it."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from export.csv import write_cut_list_csv
from model.job import default_job
from model.surround import plan_surround
from model.takeoff.cut_list import Cut, list_cuts
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES, LengthStyle, parse_length

CUTS = list_cuts(plan_surround(default_job()))
PLAIN = Cut(
    mark="C1",
    name="column stile",
    assembly="left column",
    quantity=2,
    stock='3/4" poplar board',
    length=52.3125,
    width=1.75,
    thickness=0.71875,
    ends="both square",
    notes="",
    pieces=("C1a", "C1b"),
)


def _rows(cuts, style: LengthStyle) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(write_cut_list_csv(cuts, style), newline="")))


def test_every_cut_is_a_row_under_a_heading():
    rows = _rows(CUTS, FEET_INCHES_16)
    assert [row["mark"] for row in rows] == [cut.mark for cut in CUTS]
    assert list(rows[0]) == [
        "mark", "name", "assembly", "quantity", "stock", "length", "width", "thickness",
        "length_in", "width_in", "thickness_in", "ends", "notes", "pieces", "short_points_in",
        "rough_length_in", "scribe_length_in", "trim_length_in", "glue_up_length_in",
        "rough_width_in", "scribe_width_in", "trim_width_in", "glue_up_width_in", "grain", "hand", "shows",
    ]  # fmt: skip


def test_lengths_stand_as_tape_text_and_as_decimals():
    (row,) = _rows([PLAIN], FEET_INCHES_16)
    assert (row["length"], row["width"], row["thickness"]) == ("4'-4 5/16\"", '1 3/4"', '23/32"')
    assert (row["length_in"], row["width_in"], row["thickness_in"]) == ("52.3125", "1.75", "0.71875")


def test_a_millimetre_list_says_so_in_its_heading():
    (row,) = _rows([PLAIN], MILLIMETRES)
    assert (row["length"], row["length_mm"], row["thickness_mm"]) == ("1329 mm", "1329", "18")


@pytest.mark.parametrize("style", [FEET_INCHES_16, INCHES_16, LengthStyle("inches", 32), MILLIMETRES])
def test_text_and_decimals_agree(style):
    for row in _rows(CUTS, style):
        for size in ("length", "width", "thickness"):
            if style == MILLIMETRES:
                assert row[size] == f"{row[f'{size}_mm']} mm"
            else:
                assert parse_length(row[size]) == pytest.approx(float(row[f"{size}_in"]), abs=1e-5)


def test_lines_end_and_quotes_double_as_rfc_4180_says():
    text = write_cut_list_csv([PLAIN], INCHES_16)
    assert text.endswith("\r\n")
    assert text.count("\r\n") == 2
    assert '"3/4"" poplar board"' in text


def test_the_list_is_plain_ascii_for_spreadsheets_that_guess():
    assert write_cut_list_csv(CUTS, INCHES_16).isascii()
    assert "45-degree mitre" in write_cut_list_csv(CUTS, INCHES_16)


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_no_text_can_run_as_a_formula(start):
    evil = f"{start}HYPERLINK(1)"
    (row,) = _rows([replace(PLAIN, name=evil, stock=evil, notes=evil, assembly=evil, ends=evil)], INCHES_16)
    for field in ("name", "stock", "notes", "assembly", "ends"):
        assert row[field] == f"'{evil}"


@given(st.text(st.characters(exclude_categories=("Cs",)), max_size=30))
def test_any_words_come_back_as_they_were(words):
    (row,) = _rows([replace(PLAIN, notes=words)], INCHES_16)
    assert row["notes"] in (words, f"'{words}")
