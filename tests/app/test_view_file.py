"""One drawing as it is asked for: scales, dots and names as they are typed."""

from __future__ import annotations

from pathlib import Path

import pytest

from app.demo import read_demo
from app.view_file import DOTS_PER_INCH, ViewWish, build_view_file, parse_dots, parse_ratio
from model.errors import Refused
from render.scales import ARCHITECTURAL, METRIC


@pytest.mark.parametrize("scale", ARCHITECTURAL + METRIC, ids=lambda scale: scale.name)
def test_every_standard_scale_is_known_by_its_name(scale):
    assert parse_ratio(scale.name) == scale.ratio
    assert parse_ratio(scale.name.upper().replace(" ", "")) == scale.ratio


@pytest.mark.parametrize(("text", "ratio"), [("", None), ("12", 12), ("1:12", 12), (" 1 : 7.5 ", 7.5)])
def test_a_scale_may_be_a_bare_ratio(text, ratio):
    assert parse_ratio(text) == ratio


@pytest.mark.parametrize(
    "text", ["0", "0.5", "201", "-12", "1:", "2:1", "nan", "inf", "1e2", "12x", "٣", "1" * 30]
)
def test_other_scales_are_refused_with_an_example(text):
    with pytest.raises(Refused, match="write a scale from 1:1 to 1:200"):
        parse_ratio(text)


def test_dots_are_a_whole_number_in_bounds():
    assert parse_dots("") == DOTS_PER_INCH
    assert parse_dots("300") == 300
    for text in ("29", "601", "150.5", "-96", "x", "1e2", "²"):
        with pytest.raises(Refused, match="write a whole number from 30 to 600"):
            parse_dots(text)


def test_a_drawing_that_is_not_there_is_refused_with_the_way_to_the_names():
    with pytest.raises(Refused, match=r"front, side, plan.*--list"):
        build_view_file(read_demo("brick"), ViewWish("back", Path("back.svg")), "2001-02-03")
