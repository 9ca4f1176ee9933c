"""Saw settings: the plane that the blade cuts, turned back into the room, halves the corner."""

from itertools import product
from math import asin, atan, cos, degrees, isclose, radians, sin, tan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.board import Board, End, Stock, StockKind, Worked
from model.takeoff.saw_angles import (
    Corner,
    Hand,
    Lie,
    format_degrees,
    list_end_cuts,
    lying_angles,
    set_frame,
    set_lying,
    set_standing,
    standing_angle,
)

SPRINGS, CORNERS = st.floats(20, 70), st.floats(20, 170)
ENDS = list(product(Corner, Hand))
PINE = Stock(StockKind.MOULDING, 0.75, "pine")


def turn_x(angle):
    c, s = cos(angle), sin(angle)
    return np.array([[1, 0, 0], [0, c, -s], [0, s, c]])


def blade(setting):
    """Normal of the blade's plane on the saw (x right, y away from the sawyer, z up), towards the right."""
    mitre, bevel = radians(setting.mitre), radians(setting.bevel)
    swing = mitre if setting.swing is Hand.RIGHT else -mitre
    tilted = np.array([cos(bevel), 0.0, sin(bevel)])
    return np.array(
        [
            tilted[0] * cos(swing) - tilted[1] * sin(swing),
            tilted[0] * sin(swing) + tilted[1] * cos(swing),
            tilted[2],
        ]
    )


def lay_on_saw(spring, upright):
    """Rows are the saw's x, y and z in the room of the piece (x right, y up, z out of the wall), face up."""
    s = radians(spring)
    along_back, face = np.array([0, cos(s), sin(s)]), np.array([0, -sin(s), cos(s)])
    if upright:
        return np.array([[1, 0, 0], along_back, face])
    return np.array([[-1, 0, 0], -along_back, face])


def wanted(corner, kind, end):
    """Outward normal, in the room, of the plane that halves the corner at that end of the piece."""
    slope = 1 / tan(radians(corner) / 2) * (1 if kind is Corner.OUTSIDE else -1)
    way = 1 if end is Hand.RIGHT else -1
    # x = way * slope * z, wood on the inner side.
    normal = np.array([way, 0.0, -slope])
    return normal / np.linalg.norm(normal)


def cut_in_room(setting, frame):
    """The same, as the saw cuts it: pointing away from the wood that is kept."""
    away = 1 if setting.keep is Hand.LEFT else -1
    return frame.T @ (away * blade(setting))


@pytest.mark.parametrize(("kind", "end"), ENDS)
@given(spring=SPRINGS, corner=CORNERS)
def test_lying_flat_the_blade_halves_the_corner(kind, end, spring, corner):
    setting = set_lying(spring, corner, kind, end)
    frame = lay_on_saw(spring, upright=setting.fence == "top edge")
    assert np.linalg.det(frame) == pytest.approx(1)
    assert cut_in_room(setting, frame) == pytest.approx(wanted(corner, kind, end), abs=1e-9)


@pytest.mark.parametrize(("kind", "end"), ENDS)
@given(corner=CORNERS)
def test_standing_upside_down_the_blade_halves_the_corner(kind, end, corner):
    setting = set_standing(corner, kind, end)
    upside_down = np.array([[-1, 0, 0], [0, 0, -1], [0, -1, 0]])
    assert np.linalg.det(upside_down) == pytest.approx(1)
    assert cut_in_room(setting, upside_down) == pytest.approx(wanted(corner, kind, end), abs=1e-9)


@pytest.mark.parametrize("end", list(Hand))
@given(corner=CORNERS)
def test_a_frames_piece_is_longest_at_its_outer_edge(end, corner):
    setting = set_frame(corner, end)
    normal = cut_in_room(setting, np.eye(3))  # y towards the outer edge, z out of its face
    way = 1 if end is Hand.RIGHT else -1
    slope = 1 / tan(radians(corner) / 2)
    assert normal * np.hypot(1, slope) == pytest.approx([way, -slope, 0], abs=1e-9)


@given(SPRINGS, CORNERS)
def test_identities_between_mitre_and_bevel_hold(spring, corner):
    mitre, bevel = (radians(angle) for angle in lying_angles(spring, corner))
    assert isclose(cos(bevel), sin(radians(corner) / 2) / cos(mitre), rel_tol=1e-9)
    assert isclose(degrees(bevel), degrees(atan(sin(mitre) / tan(radians(spring)))), rel_tol=1e-9)
    assert isclose(degrees(mitre), degrees(asin(tan(bevel) * tan(radians(spring)))), rel_tol=1e-6)


def test_pages_that_are_right_at_a_square_corner_alone_are_not_followed():
    mitre, bevel = lying_angles(38, 120)
    assert mitre < lying_angles(38, 90)[0] < lying_angles(38, 60)[0]
    assert bevel < lying_angles(38, 90)[1] < lying_angles(38, 60)[1]
    assert degrees(atan(tan(radians(60)) * sin(radians(38)))) > 45 > mitre


@given(CORNERS)
def test_a_moulding_flat_in_the_frames_plane_needs_no_bevel(corner):
    mitre, bevel = lying_angles(90, corner)
    assert mitre == pytest.approx(standing_angle(corner))
    assert bevel == pytest.approx(0, abs=1e-9)


def leg(low, high, spring=0.0, out="+z", seat="+y", axis="x"):
    section = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
    return Board("mould", "shelf", PINE, axis, section, low, high, worked=Worked("m", spring, out, seat))


def test_a_piece_along_the_front_is_cut_round_outside_corners_at_both_ends():
    # Along x the section runs over (y, z): longer by one for each inch out.
    left, right = list_end_cuts(leg(End(-10, 0, -1), End(10, 0, 1), spring=38))
    assert (left.end, right.end) == (Hand.LEFT, Hand.RIGHT)
    assert {left.kind, right.kind} == {Corner.OUTSIDE}
    assert (left.corner, right.corner) == pytest.approx((90, 90))
    assert left.settings[0] == set_lying(38, left.corner, Corner.OUTSIDE, Hand.LEFT)
    assert [s.lie for s in right.settings] == [Lie.FLAT, Lie.STANDING]


def test_a_flat_backed_piece_is_cut_standing_alone():
    (cut,) = list_end_cuts(leg(End(-10), End(10, 0, -1)))
    assert (cut.end, cut.kind) == (Hand.RIGHT, Corner.INSIDE)
    assert cut.settings == (set_standing(cut.corner, Corner.INSIDE, Hand.RIGHT),)


def test_a_corner_that_is_not_square_is_found_from_the_cut():
    slope = 1 / tan(radians(135) / 2)
    (cut,) = list_end_cuts(leg(End(-10), End(10, 0, slope), spring=45))
    assert cut.corner == pytest.approx(135)
    assert (cut.settings[0].mitre, cut.settings[0].bevel) == pytest.approx(lying_angles(45, 135))


def test_a_return_on_the_right_is_cut_at_its_left_end_seen_from_its_face():
    # Along z the section runs over (x, y); it faces right and its front end wraps the corner.
    (cut,) = list_end_cuts(leg(End(0), End(4, 1, 0), out="+x", axis="z"))
    assert (cut.end, cut.kind) == (Hand.LEFT, Corner.OUTSIDE)


def test_its_mirror_twin_is_cut_at_the_other_end():
    (cut,) = list_end_cuts(leg(End(0), End(4, 1, 0), out="+x", axis="z").mirrored("left"))
    assert (cut.end, cut.kind) == (Hand.RIGHT, Corner.OUTSIDE)


def test_a_piece_that_stands_on_its_seat_is_turned_over_on_the_saw():
    upright = list_end_cuts(leg(End(-10), End(10, 0, 1), spring=38))[0]
    upside_down = list_end_cuts(leg(End(-10), End(10, 0, 1), spring=38, seat="-y"))[0]
    assert upright.end is upside_down.end is Hand.RIGHT
    # What is its right end in place is its left end once its seat is up.
    turned = set_lying(38, 90, Corner.OUTSIDE, Hand.LEFT, ("bottom edge", "top edge"))
    assert upside_down.settings[0].fence == turned.fence == "bottom edge"
    assert (upside_down.settings[0].swing, upside_down.settings[0].keep) == (turned.swing, turned.keep)


def test_a_frames_piece_is_cut_flat_on_its_back():
    # Along x under a frame's upper edge: longer by one for each inch further up.
    left, right = list_end_cuts(leg(End(-5, -1, 0), End(5, 1, 0)))
    assert (left.kind, right.kind) == (None, None)
    assert left.settings == (set_frame(left.corner, Hand.LEFT),)
    assert right.settings == (set_frame(right.corner, Hand.RIGHT),)


def test_pieces_cut_square_or_not_moulded_have_no_settings():
    assert list_end_cuts(leg(End(0), End(4))) == ()
    plain = Board("band", "shelf", PINE, "x", ((0, 0), (1, 0), (1, 1)), End(0, 0, -1), End(4, 0, 1))
    assert list_end_cuts(plain) == ()


def test_a_setting_is_said_in_words():
    words = set_lying(38, 90, Corner.INSIDE, Hand.RIGHT).describe()
    assert words == (
        "table 31.6° right, blade 33.9° left, top edge to the fence, keep what is left of the blade"
    )
    assert set_standing(90, Corner.INSIDE, Hand.LEFT).describe() == (
        "table 45° left, back to the fence, keep what is left of the blade"
    )


def test_degrees_are_written_to_the_tenth():
    assert [format_degrees(angle) for angle in (45.0, 31.619, 22.5)] == ["45°", "31.6°", "22.5°"]
