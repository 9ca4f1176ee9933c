"""Joints: a list of performance standards for remodelers (gaps at mitres in trim: 1/16 in., second-hand);

Architectural Woodwork Standards 2009, section 10, 4.4.6.10 (stiles and rails 3/4 in. thick, 1/32 either way).
"""

from __future__ import annotations

from model.reference.joinery import FRAME_PLAY, FRAME_THICKNESS, LEFT_BESIDE_REBATE, MITRE_GAP
from model.reference.nails import NARROW
from model.reference.sourced import Standing


def test_a_mitre_in_trim_may_stand_open_by_a_sixteenth():
    assert (MITRE_GAP.value, MITRE_GAP.standing) == (1 / 16, Standing.PUBLISHED)


def test_stiles_and_rails_are_three_quarters_thick():
    assert (FRAME_THICKNESS.value, FRAME_PLAY.value) == (3 / 4, 1 / 32)


def test_how_wide_a_joint_wants_its_wood_is_our_own_choice_and_says_so():
    assert {NARROW.standing, LEFT_BESIDE_REBATE.standing} == {Standing.SHOP_CHOICE}
