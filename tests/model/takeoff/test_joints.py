"""Joints that show, by hand and turned over."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings

from app.demo import list_demos, read_demo
from model.build.groove import is_floating
from model.build.run import Profile, run_section
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.joints import Joint, JointKind, joint_length, list_joints
from model.takeoff.standing import STANDING
from model.takeoff.surfaces import list_surfaces, part_surfaces
from tests.planned import list_faces_of
from tests.strategies import jobs
from tests.takeoff_wood import POPLAR, board

WALL = board((-50, 50), (0, 90), (-9, 0), stock=STANDING, role="wall")


def _joints(*boards) -> tuple[Joint, ...]:
    return list_joints(part_surfaces(boards, (WALL,)))


def _lengths(joints) -> dict[str, float]:
    lengths: Counter[str] = Counter()
    for joint in joints:
        lengths[joint.site or joint.kind.value] += joint.length
    return {name: round(length, 6) for name, length in lengths.items()}


def test_two_flush_boards_join_along_their_front_and_over_their_ends():
    """Side by side 10 long, 1 thick: 10 in. in front, and 1 in. over the thickness at each end."""
    joints = _joints(board((0, 10), (20, 22), (0, 1)), board((0, 10), (22, 24), (0, 1), role="other"))
    wood = [joint for joint in joints if not joint.site]
    assert _lengths(wood) == {"flush": 12}


def test_like_boards_glued_edge_to_edge_along_the_grain_have_a_glue_line():
    """The same two as one glue-up: the line in front is planed off, and so are those over the ends."""
    joints = _joints(board((0, 10), (20, 22), (0, 1)), board((0, 10), (22, 24), (0, 1)))
    assert joint_length(joints, JointKind.GLUE_LINE) == pytest.approx(10)


def test_a_board_on_the_face_of_another_makes_inside_corners_round_it():
    """4 by 2 on a larger one: 12 in. round it; 0.5 in. thick, so that nothing else is near."""
    joints = _joints(board((0, 10), (20, 30), (0, 1)), board((3, 7), (24, 26), (1, 1.5), role="other"))
    assert _lengths(joint for joint in joints if not joint.site) == {"inside corner": 12}


def test_a_mitred_corner_that_stands_out_is_an_outside_corner_on_its_outside():
    """Two legs 2 in. high and 1 thick round a corner: 2 in. down its arris, 1.4142 over top and bottom."""
    path = [(10.0, 0.0), (10.0, 5.0), (0.0, 5.0)]
    section = [(0.0, 20.0), (1.0, 20.0), (1.0, 22.0), (0.0, 22.0)]
    joints = _joints(*run_section(["end", "front"], "shelf", POPLAR, path, Profile(section)))
    assert joint_length(joints, JointKind.MITRE) == pytest.approx(2)
    assert joint_length(joints, JointKind.FLUSH) == pytest.approx(2 * 2**0.5)


def test_a_board_on_the_wall_joins_it_all_round():
    """10 by 4: 28 in."""
    (length,) = _lengths(_joints(board((0, 10), (20, 24), (0, 1)))).items()
    assert length == ("wall", 28)


@pytest.mark.parametrize(("gap", "length"), [(1 / 16, 28), (1 / 4, 0)])
def test_a_bead_bridges_a_small_gap_to_the_wall_but_no_large_one(gap, length):
    joints = _joints(board((0, 10), (20, 24), (gap, 1)))
    assert joint_length(joints, JointKind.SITE) == pytest.approx(length)


def test_boards_that_meet_in_an_edge_alone_join_over_the_air_between_them_and_not_through_the_wood():
    joints = _joints(board((0, 10), (20, 22), (0, 1)), board((0, 10), (22, 24), (1, 2), role="other"))
    assert _lengths(joint for joint in joints if not joint.site) == {"inside corner": 10}


def test_joints_shut_up_in_a_box_do_not_show():
    """A closed box 6 by 6 by 4: what shows are its seams, nothing of its inside."""
    sides = [
        board((0, 1), (20, 26), (0, 3), role="side"),
        board((5, 6), (20, 26), (0, 3), role="side"),
        board((1, 5), (20, 21), (0, 3), role="bottom"),
        board((1, 5), (25, 26), (0, 3), role="top"),
        board((0, 6), (20, 26), (3, 4), role="front"),
    ]
    for joint in _joints(*sides):
        for x, y, _ in (joint.start, joint.stop):
            assert min(x, 6 - x) < 1e-9 or min(y - 20, 26 - y) < 1e-9


def _mirrored(surfaces):
    return part_surfaces(
        tuple(one.mirrored(one.assembly) for one in surfaces.boards),
        tuple(one.mirrored(one.assembly) for one in surfaces.standing),
    )


def _check_turned_over(surfaces, within: float = 1e-2, part: float = 0.0, of_area: float = 1e-6) -> None:
    """As long to so many inches, or to that part of the length; as much to paint to that part of the area."""
    turned = _mirrored(surfaces)
    assert turned.painted_area == pytest.approx(surfaces.painted_area, rel=of_area)
    assert turned.glued_area == pytest.approx(surfaces.glued_area, rel=1e-6)
    lengths, others = (_lengths(list_joints(each)) for each in (surfaces, turned))
    for found in (lengths, others):  # an edge that lies within a bead of both is put down to either
        found["masonry"] = found.pop("wall", 0.0) + found.pop("facing", 0.0)
    assert lengths.keys() == others.keys()
    for name, length in lengths.items():
        assert others[name] == pytest.approx(length, abs=within, rel=part), name


@pytest.mark.parametrize("name", list_demos())
def test_joints_of_a_shipped_job_are_as_long_when_it_is_turned_over(name):
    _check_turned_over(list_surfaces(plan_surround(read_demo(name))))


@settings(max_examples=4, deadline=None)
@given(jobs())
def test_joints_of_any_job_are_as_long_when_it_is_turned_over(job):
    _check_turned_over(list_faces_of(job), within=0.25, part=5e-3, of_area=1e-5)


def test_the_demo_is_caulked_along_these_lines():
    """The bedroom job by hand: soffit 53.5 between the columns; inner returns down to the plinth, and so on.

    Against the facing: the soffit 53 1/2, the inner returns from the plinth to the soffit 2 x 32 3/4, the
    plinth's inner returns 2 x 6, and half an inch under each of them where the plinth steps out.
    """
    surround = plan_surround(read_demo("bedroom"))
    joints = list_joints(list_surfaces(surround))
    facing = [joint for joint in joints if joint.site == "facing"]
    by_role: Counter[str] = Counter()
    for joint in facing:
        by_role[surround.boards[joint.boards[0]].role] += joint.length
    assert by_role["soffit"] == pytest.approx(53.5)
    assert by_role["column inner return"] == pytest.approx(2 * 32.75)
    assert by_role["plinth return"] == pytest.approx(2 * (6 + 0.5))
    assert set(by_role) == {"soffit", "column inner return", "plinth return"}


def test_nothing_is_caulked_to_a_solid_panel():
    job = with_texts(default_job(), [("panel.kind", "solid"), ("panel.reveal", "1/4")])
    surround = plan_surround(job)
    round_panels = [
        joint
        for joint in list_joints(list_surfaces(surround))
        if any(is_floating(surround.boards[i]) for i in joint.boards)
    ]
    assert {joint.kind for joint in round_panels} == {JointKind.FLOATING}
    # Round the right column's panel: twice its opening's width and height.
    x0, y0, x1, y1 = surround.layout.right.frame.openings[0]
    own = [j for j in round_panels if surround.boards[j.boards[0]].assembly == "right column"]
    assert sum(joint.length for joint in own) == pytest.approx(2 * (x1 - x0 + y1 - y0))
