"""The masonry rules as functions of a point: how they join up and which way they err."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from model.check.clearance import (
    hold_irc,
    hold_nfpa211,
    irc_greatest_projection,
    irc_least_distance,
    square_distance,
    straight_distance,
)

LENGTH = st.floats(0, 40)


def _point(*values: float) -> list[np.ndarray]:
    return [np.array([float(value)]) for value in values]


@given(LENGTH, LENGTH)
def test_square_distance_is_never_more_than_straight(beside, above):
    a, b = _point(beside, above)
    assert square_distance(a, b) <= straight_distance(a, b) + 1e-12


@given(LENGTH)
def test_what_stands_at_its_least_distance_may_stand_out_so_far(projection):
    distance = float(irc_least_distance(np.array([projection]))[0])
    greatest = irc_greatest_projection(distance)
    assert greatest is not None
    assert greatest >= projection - 1e-9


@given(LENGTH, LENGTH, LENGTH, LENGTH)
def test_standing_further_out_never_leaves_more_to_spare(projection, more, beside, above):
    for rule in (hold_irc, hold_nfpa211):
        near, far = (
            rule(p, b, a, straight_distance(b, a)).spare
            for p, b, a in (_point(projection, beside, above), _point(projection + more, beside, above))
        )
        assert far <= near + 1e-9


@given(LENGTH, LENGTH, LENGTH, LENGTH)
def test_standing_further_off_never_leaves_less_to_spare(projection, beside, above, off):
    for rule in (hold_irc, hold_nfpa211):
        here, beyond, higher = (
            rule(p, b, a, straight_distance(b, a)).spare
            for p, b, a in (
                _point(projection, beside, above),
                _point(projection, beside + off, above),
                _point(projection, beside, above + off),
            )
        )
        assert beyond >= here - 1e-9
        assert higher >= here - 1e-9


def test_nfpa211_clears_a_bold_point_off_the_corner_in_either_direction():
    for beside, above, clear in ((9, 1, True), (8.9, 11.9, False), (1, 12, True)):
        p, b, a = _point(3, beside, above)
        assert bool(hold_nfpa211(p, b, a, straight_distance(b, a)).spare[0] >= 0) is clear


def test_within_the_width_only_height_counts_and_below_the_top_only_the_side():
    for beside, above, needed, measured in ((-4, 2, 12, 2), (3, -9, 8, 3), (-4, -9, 12, 0)):
        p, b, a = _point(2, beside, above)
        held = hold_nfpa211(p, b, a, straight_distance(b, a))
        assert (held.measured[0], held.needed[0]) == (measured, needed)


def test_arithmetic_dust_does_not_make_trim_bold():
    p, b, a = _point(1.5 + 1e-9, 0, 6)
    assert hold_nfpa211(p, b, a, straight_distance(b, a)).needed == [6]
