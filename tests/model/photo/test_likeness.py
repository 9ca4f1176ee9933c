"""Proportions read off a picture are those of what it shows, within the spread that is stated."""

from __future__ import annotations

import numpy as np
import pytest

from model.errors import Refused
from model.photo.likeness import (
    ACROSS,
    END_LEFT,
    END_RIGHT,
    FOOT,
    INNER_LEFT,
    INNER_RIGHT,
    OUTER_LEFT,
    OUTER_RIGHT,
    TOP,
    UNDERSIDE,
    first_marks,
    line_through,
    read_likeness,
)
from tests.model.photo.test_recover import SIZE, pinhole, take

W, H = 40.0, 30.0
OPENING = ((-20, 0, 0), (20, 0, 0), (20, 30, 0), (-20, 30, 0))
WIDE = {END_LEFT: -37, OUTER_LEFT: -34, INNER_LEFT: -27, INNER_RIGHT: 27, OUTER_RIGHT: 34, END_RIGHT: 37}
HIGH = {FOOT: 39, UNDERSIDE: 48, TOP: 50}
TRUE = {
    "column.width": 7 / W,
    "column.margin": 7 / W,
    "frieze.height": 9 / H,
    "shelf.height": 50 / H,
    "shelf.thickness": 2 / H,
    "shelf.overhang_end": 3 / W,
}
"""A surround in the wall's own plane, inches."""


def picture(camera, out: float = 0.0):
    corners = np.array([pinhole(camera, np.array(p, float)) for p in OPENING])
    marks = {name: pinhole(camera, np.array((x, 21.0, out), float)) for name, x in WIDE.items()}
    marks |= {name: pinhole(camera, np.array((-9.0, y, out), float)) for name, y in HIGH.items()}
    return corners, marks


@pytest.mark.parametrize(
    ("millimetres", "yaw", "pitch"), [(28, 0, 0), (28, 30, 10), (50, -40, 5), (80, 15, -8)]
)
def test_proportions_are_those_of_the_surround_from_wherever_it_is_seen(millimetres, yaw, pitch):
    corners, marks = picture(take(millimetres, yaw, pitch, 120 * millimetres / 28))
    found = read_likeness(corners, marks, SIZE)
    assert {each.path: each.value for each in found.proportions} == pytest.approx(TRUE, rel=1e-6)


def test_the_openings_shape_is_told_where_it_can_be_known():
    corners, marks = picture(take(28, 30, 10))
    found = read_likeness(corners, marks, SIZE, noise=1.0)
    assert found.shape == pytest.approx(W / H, rel=1e-5)
    assert 0 < found.shape_spread < 0.1


def test_nine_of_ten_noisy_readings_lie_within_their_spread_also_for_what_stands_out():
    corners, marks = picture(take(28, 25, 8, 130), out=4.0)
    random = np.random.default_rng(2)
    within = []
    for _ in range(60):
        moved = {name: np.array(at) + random.normal(0, 1.5, 2) for name, at in marks.items()}
        found = read_likeness(corners + random.normal(0, 1.5, (4, 2)), moved, SIZE)
        within += [abs(each.value - TRUE[each.path]) <= each.spread for each in found.proportions]
    assert np.mean(within) >= 0.9


def test_one_column_is_enough_and_what_is_not_marked_is_not_told():
    corners, marks = picture(take(28, 20, 5))
    some = {name: marks[name] for name in (OUTER_LEFT, INNER_LEFT, TOP)}
    found = read_likeness(corners, some, SIZE)
    assert [each.path for each in found.proportions] == ["column.width", "column.margin", "shelf.height"]


@pytest.mark.parametrize(
    ("name", "place", "word"),
    [
        (OUTER_LEFT, (-25, 20, 0), "left column, outer edge"),
        (INNER_LEFT, (-10, 20, 0), "within the opening"),
        (FOOT, (0, 20, 0), "over the opening"),
        (TOP, (0, 47, 0), "shelf, underside"),
    ],
)
def test_lines_that_no_surround_has_are_refused(name, place, word):
    camera = take(28, 20, 5)
    corners, marks = picture(camera)
    with pytest.raises(Refused, match=word):
        read_likeness(corners, {**marks, name: pinhole(camera, np.array(place, float))}, SIZE)


def test_lines_stand_where_a_surround_may_have_them_before_they_are_set():
    corners, _ = picture(take(28, 20, 5))
    assert read_likeness(corners, first_marks(corners), SIZE).proportions


def test_a_line_runs_through_its_mark_upright_in_the_room():
    camera = take(28, 20, 5)
    corners, marks = picture(camera)
    for name in ACROSS:
        (x0, y0), (x1, y1) = line_through(corners, name, marks[name])
        x, y = marks[name]
        assert abs((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) / np.hypot(x1 - x0, y1 - y0) < 1e-6
        assert (x0, y0) == pytest.approx(pinhole(camera, np.array((WIDE[name], 0.0, 0.0))), abs=1e-6)
