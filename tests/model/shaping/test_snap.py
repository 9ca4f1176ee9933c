"""Values settle on the tape's fractions, on what is worth stopping at, and on what can be built."""

from __future__ import annotations

import pytest

from app.demo import read_demo
from model.job import Job, with_value
from model.shaping.grip import Grip
from model.shaping.grips import list_grips
from model.shaping.snap import (
    Mark,
    Pointer,
    explain,
    next_mark,
    round_coarsely,
    settle,
    step_along_tape,
)
from model.surround import plan_surround
from model.units import FEET_INCHES_16, MILLIMETRES, MM_PER_INCH, LengthStyle

BRICK = read_demo("brick")


def _grip(path: str, job: Job = BRICK) -> Grip:
    return next(grip for grip in list_grips(plan_surround(job), "front") if grip.path == path)


@pytest.mark.parametrize(("denominator", "value"), [("16", 8.4375), ("32", 8.40625)])
def test_without_anything_near_a_value_settles_on_the_jobs_fraction(denominator: str, value: float):
    job = with_value(BRICK, "job.precision", denominator)
    settled = settle(job, _grip("column.width", job), 8.41)
    assert (settled.value, settled.reason) == (value, "")


def test_a_job_in_millimetres_settles_on_whole_millimetres():
    job = with_value(BRICK, "job.units", "millimetres")
    assert settle(job, _grip("column.width", job), 8.41).value * MM_PER_INCH == pytest.approx(214, abs=1e-9)


def test_the_nearest_mark_in_reach_pulls_and_says_why():
    marks = (Mark(9.25, "a board"), Mark(9.0, "a rule"))
    near = settle(BRICK, _grip("column.width"), 9.2, marks, Pointer(pull=0.2))
    assert (near.value, near.reason) == (9.25, "a board")
    assert settle(BRICK, _grip("column.width"), 9.2, marks, Pointer(pull=0.01)).reason == ""


def test_a_mark_keeps_its_own_value_though_the_tape_has_no_such_fraction():
    assert settle(BRICK, _grip("column.width"), 8.3, (Mark(8.3333, "x"),), Pointer(pull=0.1)).value == 8.3333


def test_a_limit_pulls_from_further_off_than_anything_else():
    pointer = Pointer(pull=0.1, hold=0.5)
    grip = _grip("column.width")
    limit, board = Mark(9.5, "limit", over=1), Mark(9.875, "board")
    assert settle(BRICK, grip, 9.9, (limit, board), pointer).value == 9.5
    assert settle(BRICK, grip, 9.9, (board,), pointer).value == 9.875
    assert settle(BRICK, grip, 10.1, (limit,), pointer).value == pytest.approx(10.125)


def test_a_limit_holds_only_what_goes_past_it():
    pointer = Pointer(pull=0.1, hold=0.5)
    above, below = Mark(9.5, "limit", over=1), Mark(9.5, "limit", over=-1)
    assert settle(BRICK, _grip("column.width"), 9.25, (above,), pointer).value == 9.25
    assert settle(BRICK, _grip("column.width"), 9.25, (below,), pointer).value == 9.5
    assert settle(BRICK, _grip("column.width"), 9.75, (below,), pointer).value == 9.75


def test_past_a_limit_it_is_said_which_unless_there_is_more_to_say():
    marks = (Mark(9.5, "limit", over=1, past="past it"), Mark(10.0, "a board"))
    grip = _grip("column.width")
    told = settle(BRICK, grip, 9.75, marks)
    assert (told.value, told.reason, told.is_over) == (9.75, "past it", True)
    assert settle(BRICK, grip, 10.0, marks).reason == "a board"
    assert settle(BRICK, grip, 9.25, marks) == settle(BRICK, grip, 9.25)


def test_all_reasons_for_one_value_are_told():
    marks = (Mark(9.25, "a board"), Mark(9.25, "a rule"), Mark(9.25, "a rule"))
    assert explain(9.25, marks) == "a board; a rule"
    assert settle(BRICK, _grip("column.width"), 9.25, marks).reason == "a board; a rule"


@pytest.mark.parametrize(("wanted", "held"), [(-3.0, 4.0), (99.0, 24.0)])
def test_a_value_never_leaves_its_rows_bounds(wanted: float, held: float):
    settled = settle(with_value(BRICK, "facing.width", 140.0), _grip("column.width"), wanted)
    assert settled.value == held
    assert "can be entered" in settled.reason


def test_what_cannot_be_built_stops_where_it_still_can_and_says_why():
    grip = _grip("plinth.height")
    settled = settle(with_value(BRICK, "frieze.height", 36.0), grip, 24.0)
    surround = plan_surround(with_value(with_value(BRICK, "frieze.height", 36.0), "plinth.height", 24.0))
    short = next(s for s in surround.layout.shortfalls if s.path == "plinth.height")
    assert isinstance(short.built, float)
    assert 0 <= short.built - settled.value < 1 / 16
    assert settled.reason == short.reason


def test_a_shelf_of_layers_stops_at_whole_layers():
    job = with_value(with_value(BRICK, "shelf.thickness", 1.5), "shelf.edge_height", 1.5)
    settled = settle(job, _grip("shelf.thickness", job), 1.5625)
    assert settled.value == 1.5
    assert "boards" in settled.reason


@pytest.mark.parametrize(
    ("value", "count", "after"), [(9.0, 1, 9.0625), (9.0, -1, 8.9375), (9.01, 1, 9.0625), (9.01, -1, 9.0)]
)
def test_a_step_goes_to_the_next_fraction(value: float, count: int, after: float):
    assert step_along_tape(value, count, FEET_INCHES_16) == after


@pytest.mark.parametrize(
    ("style", "grain", "rounded"),
    [
        (FEET_INCHES_16, 0.0, 9.3125),
        (FEET_INCHES_16, 0.1, 9.375),
        (FEET_INCHES_16, 0.24, 9.25),
        (FEET_INCHES_16, 0.3, 9.5),
        (FEET_INCHES_16, 3.0, 9.0),
        (LengthStyle("inches", 4), 0.01, 9.25),
        (MILLIMETRES, 0.0, 237 / MM_PER_INCH),
        (MILLIMETRES, 3 / MM_PER_INCH, 235 / MM_PER_INCH),
        (MILLIMETRES, 1.0, 240 / MM_PER_INCH),
    ],
)
def test_a_coarse_pointer_means_no_finer_fraction_than_it_can_show(
    style: LengthStyle, grain: float, rounded: float
):
    assert round_coarsely(9.318, grain, style) == pytest.approx(rounded)


def test_the_next_mark_lies_beyond_the_value():
    marks = (Mark(5.5, "a"), Mark(9.25, "b"), Mark(7.25, "c"))
    assert next_mark(7.25, 1, marks) == marks[1]
    assert next_mark(7.25, -1, marks) == marks[0]
    assert next_mark(9.25, 1, marks) is None
