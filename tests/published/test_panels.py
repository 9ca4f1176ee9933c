"""Solid panels in frames: what is published of their movement, beside what is built.

- A page of woodworking tips on panels in frames, second-hand: allow up to 1/8 in. for 12 in. of width; an
  encyclopaedia's article on frame and panel, second-hand: up to 1/8 to 1/4 in. a foot for flat-sawn wood.
- An exchange of woodworkers on panels, second-hand: 1/16 in. lengthways.
- Depth of a groove for a 1/4 in. panel, 3/8 in.: common practice, no source.
"""

from __future__ import annotations

import pytest

from model.build.groove import Groove, Swing
from model.reference.moisture import SHRINKS_ACROSS, swell
from model.reference.panels import A_FOOT, CHEEK, ENDS, LEAST_HELD, LEAST_WEB, PLAY, USUAL_DEPTH
from model.reference.sourced import Standing


def test_the_rule_of_thumb_is_an_eighth_to_the_foot():
    assert (A_FOOT.value, A_FOOT.standing) == (1 / 8, Standing.PUBLISHED)


def test_a_solid_panel_is_cut_a_sixteenth_short_lengthways():
    assert (ENDS.value, ENDS.standing) == (1 / 16, Standing.PUBLISHED)
    assert Groove(3 / 8, Swing(8, 8, 8, 0, 0)).length(20) == 20 + 3 / 4 - 1 / 16


def test_a_quarter_panels_groove_is_three_eighths_deep_by_common_practice():
    assert (USUAL_DEPTH.value, USUAL_DEPTH.standing) == (3 / 8, Standing.COMMON_PRACTICE)


def test_what_is_our_own_choice_says_so():
    assert {figure.standing for figure in (PLAY, LEAST_HELD, LEAST_WEB, CHEEK)} == {Standing.SHOP_CHOICE}


@pytest.mark.parametrize("species", SHRINKS_ACROSS)
def test_a_foot_of_flat_sawn_wood_moves_indoors_as_the_rules_of_thumb_say(species):
    """Air of 30 to 55 % at 70 degrees F: 6.2 to 10.1 % moisture."""
    assert 0.08 < swell(species, 12.0, 6.2, 10.1) <= 1 / 4
