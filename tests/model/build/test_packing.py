"""Wedges behind what lies flat on masonry out of plumb."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis.strategies import floats

from model.build.level_backs import PACKING
from model.build.packing import PACKED, list_packed
from model.job import default_job, with_texts, with_value
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from render.views import project_boards
from tests.model.test_boards_in_space import _check
from tests.strategies import jobs


def _plan(*settings: str):
    return plan_surround(with_texts(default_job(), [tuple(s.split("=")) for s in settings]))


def _packing(surround):
    return [board for board in surround.boards if board.role in PACKING]


def test_plumb_masonry_and_what_is_within_a_sixteenth_take_no_packing():
    assert not _packing(_plan("slip.on=yes", "back_band.on=yes"))
    assert not _packing(_plan("slip.on=yes", "plumb.left=1/16", "plumb.right=1/16"))


def test_a_slips_leg_is_packed_from_its_foot_to_its_head():
    """1 in. over 52 in., toward the room: 1 in. at the hearth, 11 of 52 of an inch 41 in. up; 2 in. wide."""
    surround = _plan("slip.on=yes", "plumb.left=1", "plumb.right=1")
    legs = [b for b in _packing(surround) if b.role == "slip packing" and b.length_axis == "y"]
    assert len(legs) == 2
    for leg in legs:
        assert leg.volume == pytest.approx(2 * 41 * (1 + 11 / 52) / 2)
        assert leg.bounds[1][2] == 0


def test_a_heads_packing_runs_past_both_legs():
    """62 in. long between the columns; 43 in. up 9 of 52 of an inch are left, 2 in. high."""
    surround = _plan("slip.on=yes", "plumb.left=1", "plumb.right=1")
    (head,) = (b for b in _packing(surround) if b.role == "slip packing" and b.length_axis == "x")
    assert head.volume == pytest.approx(62 * 2 * 9 / 52)


def test_a_leg_that_masonry_meets_at_its_foot_gets_a_wedge_that_feathers_out():
    surround = _plan("slip.on=yes", "plumb.left=-1", "plumb.right=-1")
    (leg, _) = (b for b in _packing(surround) if b.role == "slip packing" and b.length_axis == "y")
    assert len(leg.section) == 3
    assert leg.volume == pytest.approx(2 * 41 * 41 / 52 / 2)


def test_cleat_and_ledger_are_packed_and_every_one_of_them_is_found():
    surround = _plan("plumb.left=-1/2", "plumb.right=-1/2", "back_band.on=yes")
    roles = {surround.boards[i].role for i in list_packed(surround.boards)}
    assert roles == {"shelf nailer", "soffit nailer", "back band leg", "back band head"}
    assert {PACKED[role] for role in roles} == {board.role for board in _packing(surround)}


def test_the_cut_list_gives_the_thickness_at_both_ends():
    """The leg's inner edge lies 9 1/2 of the 77 in. between 1 and 1/2 in.: 0.938 at its foot."""
    surround = _plan("slip.on=yes", "plumb.left=1", "plumb.right=1/2")
    notes = [cut.notes for cut in list_cuts(surround) if "slip packing" in cut.name]
    assert any(
        'tapered to follow the masonry: 15/16" thick at its foot, 3/16" at its head' in n for n in notes
    )


def test_the_side_view_numbers_its_boards_without_the_packing_that_it_leaves_out():
    surround = _plan("slip.on=yes", "plumb.left=1", "plumb.right=1")
    projection, numbers = project_boards(surround, "side")
    drawn = projection.solids.boards[: projection.solids.site_start]
    assert [surround.boards[i].role for i in numbers] == [board.role for board in drawn]
    assert not PACKING & {board.role for board in drawn}


def test_what_makes_up_an_old_ledger_is_no_wedge_behind_a_new_one():
    surround = _plan("old_ledger.top=51 1/2", "old_ledger.use=use", "plumb.right=1")
    (filler,) = (b for b in surround.boards if b.role.endswith("packing") and b.bounds[0][1] == 51.5)
    assert filler not in _packing(surround)
    _, numbers = project_boards(surround, "side")
    assert any(surround.boards[i] == filler for i in numbers)


@settings(max_examples=40, deadline=None)
@given(
    jobs(plumb__left=None, plumb__right=None, slip__on=True, back_band__on=True),
    floats(-2, 2),
    floats(-2, 2),
)
def test_no_packing_overlaps_anything_or_reaches_into_masonry(job, left, right):
    leaning = with_value(with_value(job, "plumb.left", left), "plumb.right", right)
    _check(leaning)
    surround = plan_surround(leaning)
    for board in _packing(surround):
        for x, y, z in board.vertices:
            assert z >= board.bounds[1][2] - surround.layout.set_back(x, y) - 1e-9
