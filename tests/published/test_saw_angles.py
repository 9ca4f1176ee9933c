"""Mitre and bevel of sprung mouldings, as tables and manuals of compound mitre saws print them."""

import pytest

from model.takeoff.saw_angles import (
    Corner,
    Hand,
    lying_angles,
    set_lying,
    set_standing,
    standing_angle,
)

# Crown lying flat: spring from the wall, corner, mitre, bevel. W. C. Corwin, Crown Molding Calculator,
# version 2.00, table of fixed values for a slope of 38 degrees from the wall.
CORWIN_38 = [
    (45, 56.0670, 46.7210),
    (90, 31.6190, 33.8629),
    (135, 14.3064, 17.5512),
    (179, 0.307, 0.396),
]

# SBE Builders, Crown Molding Miter Angle and Bevel Angle Settings, table for a crown spring angle of 52
# degrees: crown laying flat, face up.
SBE_52 = [
    (1, 89.36550, 37.99830),
    (2, 88.73106, 37.99318),
    (3, 88.09674, 37.98466),
    (4, 87.46259, 37.97274),
    (5, 86.82868, 37.95741),
    (6, 86.19507, 37.93868),
    (7, 85.56180, 37.91655),
]

# Compound angle settings chart of a compound mitre saw's owner's manual: pitch of the side over the table
# for boxes of 4 to 10 sides, mitre and bevel. A side pitched by P from flat stands 90 - P off the box's
# wall, and n sides meet at 180 - 360 / n degrees.
BOXES = {
    5: [(4, 44.89, 3.53), (5, 35.90, 2.94), (6, 29.91, 2.50), (8, 22.42, 1.91), (10, 17.94, 1.54)],
    15: [(4, 44.01, 10.55), (5, 35.06, 8.75), (6, 29.15, 7.44), (8, 21.81, 5.68), (10, 17.42, 4.59)],
    25: [(4, 42.19, 17.39), (5, 33.36, 14.38), (6, 27.62, 12.20), (8, 20.58, 9.31), (10, 16.41, 7.50)],
    30: [(4, 40.89, 20.70), (5, 32.18, 17.09), (6, 26.57, 14.48), (8, 19.73, 11.03), (10, 15.72, 8.97)],
    35: [(4, 39.32, 23.93), (5, 30.76, 19.70), (6, 25.31, 16.67), (8, 18.74, 12.68), (10, 14.90, 10.21)],
    40: [(4, 37.45, 27.03), (5, 29.10, 22.20), (6, 23.86, 18.75), (8, 17.60, 14.24), (10, 13.98, 11.46)],
    45: [(4, 35.26, 30.00), (5, 27.19, 24.56), (6, 22.21, 20.70), (8, 16.32, 15.70), (10, 12.94, 12.62)],
    50: [(4, 32.73, 32.80), (5, 25.03, 26.76), (6, 20.36, 22.52), (8, 14.91, 17.05), (10, 11.80, 13.69)],
}
UNREADABLE = {(30, 10)}
"""Bevels that the stored copy of the chart does not show."""


@pytest.mark.parametrize(("corner", "mitre", "bevel"), CORWIN_38)
def test_crown_sprung_38_is_set_as_printed_for_several_corners(corner, mitre, bevel):
    # Three places are right in the page's sharper corners; next to a straight wall its third is off by two.
    assert lying_angles(38, corner) == pytest.approx((mitre, bevel), abs=0.0021 if corner == 179 else 0.0006)


@pytest.mark.parametrize(("corner", "mitre", "bevel"), SBE_52)
def test_crown_sprung_52_is_set_as_printed_for_very_sharp_corners(corner, mitre, bevel):
    assert lying_angles(52, corner) == pytest.approx((mitre, bevel), abs=0.6e-5)


@pytest.mark.parametrize("pitch", BOXES)
def test_boxes_with_pitched_sides_are_cut_as_printed(pitch):
    for sides, mitre, bevel in BOXES[pitch]:
        found = lying_angles(90 - pitch, 180 - 360 / sides)
        assert found[0] == pytest.approx(mitre, abs=0.0101), sides
        if (pitch, sides) not in UNREADABLE:
            assert found[1] == pytest.approx(bevel, abs=0.0101), sides


def test_the_two_usual_crowns_are_set_for_a_square_corner_as_manuals_say():
    # Saw manuals' charts for crown lying flat: 52/38 crown 31.6 and 33.9, 45/45 crown 35.3 and 30.0.
    assert [round(angle, 1) for angle in lying_angles(38, 90)] == [31.6, 33.9]
    assert [round(angle, 1) for angle in lying_angles(45, 90)] == [35.3, 30.0]


@pytest.mark.parametrize(
    ("sides", "mitre"), [(3, 60), (4, 45), (5, 36), (6, 30), (8, 22.5), (10, 18), (12, 15)]
)
def test_flat_frames_of_equal_sides_are_cut_180_over_n(sides, mitre):
    # Geometry of the regular polygon.
    assert standing_angle(180 - 360 / sides) == pytest.approx(mitre)


# Manuals' charts for crown lying flat with the blade tilted to the left: which edge lies to the fence,
# which way the table turns, which side of the cut is saved. "Left side" of a corner is the piece whose
# right end is cut.
@pytest.mark.parametrize(
    ("kind", "end", "fence", "swing", "keep"),
    [
        (Corner.INSIDE, Hand.RIGHT, "top edge", Hand.RIGHT, Hand.LEFT),
        (Corner.INSIDE, Hand.LEFT, "bottom edge", Hand.LEFT, Hand.LEFT),
        (Corner.OUTSIDE, Hand.RIGHT, "bottom edge", Hand.LEFT, Hand.RIGHT),
        (Corner.OUTSIDE, Hand.LEFT, "top edge", Hand.RIGHT, Hand.RIGHT),
    ],
)
def test_crown_lying_flat_has_its_edge_and_hand_where_the_manual_puts_them(kind, end, fence, swing, keep):
    setting = set_lying(38, 90, kind, end)
    assert (setting.fence, setting.swing, setting.keep) == (fence, swing, keep)


# A manual's chart for crown nested upside down, bottom of the moulding against the fence.
@pytest.mark.parametrize(
    ("kind", "end", "swing", "keep"),
    [
        (Corner.INSIDE, Hand.RIGHT, Hand.RIGHT, Hand.RIGHT),
        (Corner.INSIDE, Hand.LEFT, Hand.LEFT, Hand.LEFT),
        (Corner.OUTSIDE, Hand.RIGHT, Hand.LEFT, Hand.RIGHT),
        (Corner.OUTSIDE, Hand.LEFT, Hand.RIGHT, Hand.LEFT),
    ],
)
def test_crown_standing_upside_down_turns_the_way_the_manual_says(kind, end, swing, keep):
    setting = set_standing(90, kind, end, "bottom edge")
    assert (setting.mitre, setting.bevel) == (45, 0)
    assert (setting.swing, setting.keep) == (swing, keep)
