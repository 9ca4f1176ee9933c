"""Where obstacles lie, and what is cut round them."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from manifold3d import Manifold

from model.job import default_job, with_texts, with_value
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from model.takeoff.joints import list_joints
from model.takeoff.surfaces import list_surfaces
from tests.planned import plan_of
from tests.solids import build_solid
from tests.strategies import jobs

NOTCHED = ("plinth.on=no", "facing.width=50", "baseboard.meets=notched", "baseboard.height_right=5")


def plan(*settings: str):
    return plan_surround(with_texts(default_job(), [tuple(s.split("=")) for s in settings]))


def obstacle(surround, name):
    (found,) = (o for o in surround.layout.obstacles if o.name == name)
    return found


def test_a_job_without_obstacles_has_none():
    assert plan().layout.obstacles == ()


def test_a_baseboard_is_cut_back_to_the_plinth_that_stands_on_its_wall():
    """The default's column ends 38 1/2 in. from the centre line and its plinth 3/4 in. further out."""
    right = obstacle(plan("facing.width=60", "baseboard.height_right=5"), "right baseboard")
    assert (right.met, right.x[0], right.y, right.z) == ("cut_back", 39.25, (0, 5), (0, 0.5))
    left = obstacle(plan("facing.width=60", "baseboard.height_left=5"), "left baseboard")
    assert left.x[1] == -39.25


def test_a_baseboard_is_cut_back_to_where_a_column_that_widens_upwards_meets_its_top():
    """Half an inch wider on this side over the 43 in. up to the frieze: 5/86 in. at the baseboard's top."""
    right = obstacle(
        plan("plinth.on=no", "facing.width=60", "baseboard.height_right=5", "column.taper=-1"),
        "right baseboard",
    )
    assert right.x[0] == pytest.approx(38.5 + 5 / 86)


LOW_FRIEZE = ("facing.width=60", "shelf.height=40", "frieze.height=36", "plinth.height=2")
LOW_CAPITAL = (*LOW_FRIEZE, "plinth.projection=1/2", "capital.on=yes", "capital.size=1")


@pytest.mark.parametrize("meets", ["cut_back", "notched"])
def test_a_baseboard_that_reaches_a_capital_is_cut_back_clear_of_it(meets):
    """A frieze that comes down to 6 in. over the hearth: the foot of an inch of capital is at 5."""
    surround = plan(*LOW_CAPITAL, f"baseboard.meets={meets}", "baseboard.height_right=7 1/2")
    right, capital = obstacle(surround, "right baseboard"), surround.layout.mouldings.capital
    assert surround.layout.frieze_bottom - capital.height == pytest.approx(5)
    assert capital.projection > surround.layout.plinth_out
    assert (right.met, right.x[0]) == ("cut_back", pytest.approx(38.5 + capital.projection))
    assert [s.path for s in surround.layout.shortfalls].count("baseboard.meets") == (meets == "notched")


def test_a_baseboard_that_would_run_into_a_frieze_is_cut_back():
    """The soffit lies 6 in. over the hearth between the columns, from where the baseboard would run on."""
    surround = plan(*LOW_FRIEZE, "facing.width=50", "baseboard.meets=notched", "baseboard.height_right=7 1/2")
    assert obstacle(surround, "right baseboard").x[0] == 39.25
    (shortfall,) = (s for s in surround.layout.shortfalls if s.path == "baseboard.meets")
    assert shortfall.reason == "the frieze comes down to it, and that cannot be coped"


def test_a_baseboard_lower_than_a_capital_ends_at_the_plinth():
    right = obstacle(plan(*LOW_CAPITAL, "baseboard.height_right=5"), "right baseboard")
    assert right.x[0] == 39


def test_a_baseboard_beyond_a_wide_facing_keeps_clear():
    right = obstacle(plan("facing.width=90", "baseboard.height_right=5"), "right baseboard")
    assert (right.met, right.x[0]) == ("", 45)


def test_returns_on_the_wall_are_notched_round_a_baseboard_through_their_thickness():
    """Before the wall they are 3 1/4 in. wide and 52 high: 5 x 1/2 in. comes out at the foot of each."""
    surround = plan(*NOTCHED)
    for role in ("column inner return", "column outer return"):
        (board,) = (b for b in surround.boards if b.role == role and b.assembly == "right column")
        assert board.section == ((0, 0.5), (5, 0.5), (5, 0), (52, 0), (52, 3.25), (0, 3.25))
        assert board.volume == pytest.approx(0.75 * (52 * 3.25 - 5 * 0.5))
        assert (board.length, board.width, board.thickness) == (52, 3.25, 0.75)
    nailers = [b.bounds[0][1] for b in surround.boards if b.role == "column nailer" and b.bounds[0][0] > 0]
    assert set(nailers) == {5}


def test_the_cut_list_names_the_notch_with_its_size_and_place():
    notes = {c.name: c.notes for c in list_cuts(plan(*NOTCHED)) if "right" in c.assembly}
    assert 'notched 1/2" off one edge for 5" from one end' in notes["right column outer return"]


@pytest.mark.parametrize(
    ("settings", "reason"),
    [
        (("plinth.on=yes", "plinth_cap.on=yes", "baseboard.height_right=8 1/4"), "meets the plinth cap"),
        (("slip.on=yes",), "inside the column"),
        (("plumb.right=1/4",), "masonry out of plumb"),
        (("column.projection=2", "baseboard.thickness=1"), "too little of the returns"),
        (("facing.width=76",), "does not run on behind the column's outer side"),
    ],
)
def test_where_returns_cannot_be_notched_the_baseboard_is_cut_back_and_it_is_said(settings, reason):
    surround = plan(*NOTCHED, *settings)
    assert obstacle(surround, "right baseboard").met == "cut_back"
    (shortfall,) = (s for s in surround.layout.shortfalls if s.path == "baseboard.meets")
    assert reason in shortfall.reason
    assert all(
        len(b.section) == 4 for b in surround.boards if b.role == "column outer return" and not b.grain
    )


def test_only_the_return_on_the_wall_is_notched_where_the_other_lies_on_the_facing():
    surround = plan(*NOTCHED, "facing.width=70")
    inner, outer = (
        next(b for b in surround.boards if b.role == f"column {which} return" and b.bounds[0][0] > 0)
        for which in ("inner", "outer")
    )
    assert len(inner.section) == 4
    assert outer.section[:3] == ((0, 0.5), (5, 0.5), (5, 0))


def test_a_plinths_returns_are_notched_and_its_front_covers_their_ends():
    """By hand, for a column from 31 to 38 1/2 that stands out 4, with an 8 x 3/4 plinth round it.

    The front is 7 1/2 + 2 x 3/4 = 9 long; each return runs from the wall to its back, 4 long and 8 high, and
    loses 5 x 1/2 at its lower back corner: 3/4 (4 x 8 - 5 x 1/2) = 22 1/8 cubic inches.
    """
    surround = plan(*NOTCHED, "plinth.on=yes")
    boards = [b for b in surround.boards if b.role.startswith("plinth") and b.bounds[0][0] > 0]
    front, *returns = sorted(boards, key=lambda b: b.role)
    assert (front.length, front.width, front.bounds[0][2], front.bounds[1][2]) == (9, 8, 4, 4.75)
    assert front.low.is_square
    assert front.high.is_square
    for board in returns:
        assert board.volume == pytest.approx(22.125)
        assert (board.length, board.width, board.thickness) == (4, 8, 0.75)
    notes = {c.name: c.notes for c in list_cuts(surround) if "right" in c.assembly}
    assert 'notched 5" off one edge for 1/2" from one end' in notes["right plinth return"]
    left = [b for b in surround.boards if b.role == "plinth return" and b.bounds[0][0] < 0]
    assert all(board.axis == "z" for board in left)


def test_a_plinth_no_higher_than_the_baseboard_ends_before_it_and_its_cap_too():
    surround = plan(*NOTCHED, "plinth.on=yes", "plinth_cap.on=yes", "baseboard.height_right=10")
    for role in ("plinth return", "plinth cap return"):
        ends = {b.bounds[0][2] for b in surround.boards if b.role == role and b.bounds[0][0] > 0}
        assert ends == {0.5}, role


def test_baseboards_may_differ_in_height_and_thickness_or_be_on_one_side_only():
    surround = plan(*NOTCHED, "baseboard.height_left=7", "baseboard.thickness_left=1")
    left, right = obstacle(surround, "left baseboard"), obstacle(surround, "right baseboard")
    assert (left.y, left.z, right.y, right.z) == ((0, 7), (0, 1), (0, 5), (0, 0.5))
    assert [o.name for o in plan(*NOTCHED).layout.obstacles] == ["right baseboard"]


def test_wood_against_a_baseboard_is_not_painted_and_the_joint_to_it_is_caulked():
    """A baseboard 5 x 1/2 that ends at the plinth's side covers 2 1/2 square inches of it.

    Along its top and its front edge 5 + 1/2 in. of joint show.
    """
    bare, met = plan("facing.width=60"), plan("facing.width=60", "baseboard.height_right=5")
    before, after = list_surfaces(bare), list_surfaces(met)
    assert before.painted_area - after.painted_area == pytest.approx(2.5, abs=0.01)
    joints = [j for j in list_joints(after) if j.site == "baseboard"]
    assert sum(j.length for j in joints) == pytest.approx(5.5, abs=0.01)


def test_a_baseboard_on_a_wall_behind_a_proud_facing_lies_on_that_wall():
    right = obstacle(plan("facing.proud=2", "facing.width=60", "baseboard.height_right=4"), "right baseboard")
    assert right.z == (-2, -1.5)


@settings(max_examples=60, deadline=None)
@given(jobs(baseboard__height_left=5.0, baseboard__height_right=7.5))
def test_no_board_lies_in_a_baseboard(job):
    surround = plan_of(job)
    for o in surround.layout.obstacles:
        if o.kind != "baseboard":
            continue
        for board in surround.boards:
            (x0, y0, z0), (x1, y1, z1) = board.bounds
            near = all(
                min(a1, b1) - max(a0, b0) > 1e-6
                for (a0, a1), (b0, b1) in zip(((x0, x1), (y0, y1), (z0, z1)), (o.x, o.y, o.z), strict=True)
            )
            if near:
                shared = (build_solid(board) ^ _block(o)).volume()
                assert shared < 1e-6, (o, board.role, board.bounds)


def _block(obstacle) -> Manifold:
    low, high = zip(obstacle.x, obstacle.y, obstacle.z, strict=True)
    return Manifold.cube([b - a for a, b in zip(low, high, strict=True)]).translate(low)


@settings(max_examples=30, deadline=None)
@given(jobs(outlet__left=None, outlet__right=None, casing__left=None, casing__right=None))
def test_outlets_and_casings_move_no_board(job):
    beset = with_value(with_value(job, "outlet.right", 30.0), "casing.left", 40.0)
    assert plan_of(job).boards == plan_surround(beset).boards
