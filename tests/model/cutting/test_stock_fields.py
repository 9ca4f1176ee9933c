"""Texts of single fields, as a table on a screen takes and shows them."""

from __future__ import annotations

from typing import Any

import pytest

from model.cutting.stock_fields import HAND_FIELDS, SOLD_FIELDS, Field
from model.errors import Refused
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES

FIELDS: dict[str, Field] = {field.name: field for field in (*HAND_FIELDS, *SOLD_FIELDS)}


@pytest.mark.parametrize(
    ("name", "text", "value"),
    [
        ("length", "8'", 96.0),
        ("length", "96", 96.0),
        ("width", "3 1/2", 3.5),
        ("width", "", 0.0),
        ("price", "12.40", 1240),
        ("price", "1,240.50", 124050),
        ("price", "", None),
        ("limit", "", None),
        ("limit", "3", 3),
        ("kind", "Boards", "board"),
        ("kind", "panel", "panel"),
        ("bought", "Yes", True),
        ("name", " 1x4 ", "1x4"),
        ("price", "12,40", 1240),
    ],
)
def test_a_text_is_read_as_it_is_meant(name: str, text: str, value: Any):
    assert FIELDS[name].parse(text, "row 1") == value


@pytest.mark.parametrize(
    ("name", "text"),
    [("length", "long"), ("length", ""), ("price", "cheap"), ("price", "1.240,50"), ("price", "0"),
     ("price", "1e3"), ("price", "-4"),
     ("limit", "2.5"), ("kind", "logs"), ("bought", "perhaps"), ("width", "2000")],
)  # fmt: skip
def test_a_text_that_cannot_be_read_is_quoted_with_what_is_wanted(name: str, text: str):
    with pytest.raises(Refused) as refused:
        FIELDS[name].parse(text, "row 7")
    assert str(refused.value).startswith(f'row 7, {FIELDS[name].label} "{text}": write')


@pytest.mark.parametrize("style", [FEET_INCHES_16, INCHES_16])
@pytest.mark.parametrize(
    ("name", "value"),
    [("length", 98.5), ("price", 1240), ("price", None), ("limit", 4), ("kind", "board"), ("bought", False)],
)
def test_what_is_shown_is_read_back(name: str, value: Any, style):
    field = FIELDS[name]
    assert field.parse(field.format(value, style), "", style) == value


def test_a_bare_length_has_the_styles_unit():
    assert FIELDS["length"].parse("2438", "", MILLIMETRES) == pytest.approx(2438 / 25.4)
