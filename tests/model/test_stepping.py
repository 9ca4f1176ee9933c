"""Steps land on whole steps of the row and stay within its bounds."""

from __future__ import annotations

import pytest

from model.parameters import TABLE, Kind, find_parameter
from model.stepping import step_value
from model.units import INCHES_16, MILLIMETRES, format_length

WIDTH = find_parameter("opening.width")


@pytest.mark.parametrize(
    ("value", "count", "after"),
    [(36, 1, 36.125), (36, -1, 35.875), (36, 8, 37), (36.1, 1, 36.125), (36.1, -1, 36.0), (36.1, 2, 36.25)],
)
def test_a_length_steps_onto_whole_steps(value: float, count: int, after: float):
    assert step_value(WIDTH, value, count, INCHES_16) == after


def test_steps_stop_at_the_bounds():
    assert step_value(WIDTH, 119.95, 3, INCHES_16) == WIDTH.highest
    assert step_value(WIDTH, 12.05, -3, INCHES_16) == WIDTH.lowest


def test_a_job_in_millimetres_steps_by_whole_millimetres():
    value = 36.0
    for wanted in ("915 mm", "916 mm", "917 mm"):
        value = float(str(step_value(WIDTH, value, 1, MILLIMETRES)))
        assert format_length(value, MILLIMETRES) == wanted
    assert value * 25.4 == pytest.approx(917)


def test_there_and_back_is_where_it_was():
    value: object = 36.0
    for count in (1, 1, 1, -1, -1, -1):
        value = step_value(WIDTH, float(str(value)), count, INCHES_16)
    assert value == 36.0


def test_a_count_steps_by_one_and_stays_whole():
    panels = find_parameter("frieze.panels")
    assert step_value(panels, 3, 1, MILLIMETRES) == 4
    assert isinstance(step_value(panels, 3, 1, INCHES_16), int)
    assert step_value(panels, 7, 1, INCHES_16) == 7


def test_a_missing_reading_starts_from_the_lowest_and_only_upward():
    thickness = find_parameter("hearth.thickness")
    assert step_value(thickness, None, 1, INCHES_16) == thickness.lowest
    assert step_value(thickness, None, -1, INCHES_16) is None


def test_what_is_no_number_does_not_step():
    for path, value in (("bed_mould.on", True), ("site.rule", "irc"), ("chart.shelf", ((1.0, 2.0),))):
        assert step_value(find_parameter(path), value, 1, INCHES_16) == value


@pytest.mark.parametrize("row", [row for row in TABLE if row.kind in (Kind.LENGTH, Kind.COUNT, Kind.NUMBER)])
@pytest.mark.parametrize("style", [INCHES_16, MILLIMETRES])
def test_every_step_of_every_row_is_a_value_the_row_takes(row, style):
    value = row.default if row.default is not None else row.lowest
    for count in (1, 1, -1, 500, -1000, 3):
        value = row.check(step_value(row, value, count, style))
