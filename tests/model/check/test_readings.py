"""What several readings, diagonals and levels say about the opening, by constructed openings."""

from math import hypot

import pytest

from model.check.finding import Status
from model.check.survey import check_survey
from model.job import default_job, with_texts, with_value
from model.surround import plan_surround


def _check(job):
    return [(f.status, f.path, f.message) for f in check_survey(plan_surround(job))]


def _job(**texts):
    return with_texts(default_job(), [(k.replace("__", "."), v) for k, v in texts.items()])


def _with_diagonals(aside, stretch=0.0):
    """An opening 36 by 30 whose top is pushed `aside` to the right, with the diagonals of its corners."""
    foot, top = ((0.0, 0.0), (36.0, 0.0)), ((aside, 30.0), (36.0 + aside, 30.0))
    rising = hypot(top[1][0] - foot[0][0], 30.0)
    falling = hypot(foot[1][0] - top[0][0], 30.0)
    job = with_value(default_job(), "readings.diagonal_rising", rising + stretch)
    return with_value(job, "readings.diagonal_falling", falling + stretch)


def test_square_opening_raises_nothing():
    assert _check(_with_diagonals(0.0)) == []
    assert _check(_job()) == []


@pytest.mark.parametrize(("aside", "words"), [(0.5, '1/2" to the right'), (-0.25, '1/4" to the left')])
def test_opening_out_of_square_is_told_by_how_much_and_which_way(aside, words):
    ((status, path, message),) = _check(_with_diagonals(aside))
    assert (status, path) == (Status.WARN, "readings.diagonal_rising")
    assert words in message


def test_diagonals_that_do_not_belong_to_the_sides_are_a_contradiction_with_its_amount():
    ((status, _, message),) = _check(_with_diagonals(0.0, stretch=2.0))
    assert status is Status.FAIL
    assert '2" off' in message


def test_readings_apart_are_named_with_their_spread_and_the_one_that_governs():
    ((status, path, message),) = _check(_job(readings__opening_width="35 1/2, 36 1/16"))
    assert (status, path) == (Status.WARN, "opening.width")
    assert 'from 2\'-11 1/2" to 3\'-0 1/16", 9/16" apart; 2\'-11 1/2" governs' in message


def test_readings_close_together_raise_nothing():
    assert _check(_job(readings__opening_width="35 7/8")) == []


def test_a_level_line_without_its_height_at_the_opening_is_not_known():
    ((status, path, _),) = _check(_job(level__left="20"))
    assert (status, path) == (Status.UNKNOWN, "level.centre")
