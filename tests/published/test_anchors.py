"""What anchors in old masonry may be planned with.

Sources: TEK 12-03C (2013), safety factor of tested anchors; a maker's technical guide of 2021 for 1/4 in.
masonry screws in solid brick (full-load edge distance and spacing); caps for soft mortar are common practice.
"""

from __future__ import annotations

from model.reference.anchors import (
    EDGE,
    EMBEDMENT,
    FULL_EDGE,
    LEAST_APART,
    SAFETY_FACTOR,
    SCREW_INTO_FRAMING,
    SOFT_SHEAR,
    SOFT_TENSION,
    WALL_SKIN,
)
from model.reference.sourced import Standing


def test_a_tested_anchor_is_allowed_a_fifth_of_what_it_held():
    """TEK 12-03C (2013): at most 20 % of the average tested strength."""
    assert 1 / SAFETY_FACTOR.value == 0.20


def test_edges_and_spacing_keep_the_full_load():
    """2021 guide: 3 3/4 in. from an edge and 4 in. apart for 1/4 in. screws."""
    assert EDGE.value >= FULL_EDGE.value == 3.75
    assert LEAST_APART.value == 4.0


def test_soft_mortar_is_planned_far_below_the_published_loads_and_says_it_is_only_practice():
    """2021 guide: 550 lb of pull and 405 lb of shear at 1 5/8 in. in solid brick; soft mortar 50 and 100."""
    assert (SOFT_TENSION.value, SOFT_SHEAR.value) == (50, 100)
    assert SOFT_TENSION.value < 550
    assert SOFT_SHEAR.value < 405
    assert {SOFT_TENSION.standing, SOFT_SHEAR.standing} == {Standing.COMMON_PRACTICE}


def test_a_masonry_screw_goes_as_deep_as_its_published_loads_are_for():
    """2021 guide: 550 lb of pull and 405 lb of shear at 1 5/8 in. in the face of solid brick."""
    assert EMBEDMENT.value == 1 + 5 / 8


def test_a_screw_goes_into_framing_by_six_diameters():
    """NDS 2018 12.1.5.6: 6 D at least, 1 1/2 in. of a 1/4 in. screw; the wall's skin is common practice."""
    assert SCREW_INTO_FRAMING.value == 6 / 4
    assert WALL_SKIN.standing is Standing.COMMON_PRACTICE
