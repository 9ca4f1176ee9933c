"""Holes in boards: where they go through, what they take, and what becomes of edges they break."""

from __future__ import annotations

from dataclasses import replace
from math import acos, pi, sqrt

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings

from export.mesh import build_mesh
from model.board import block
from model.build.bores import bore_hole, is_bored
from model.build.cord_way import Hole, plan_cord_way
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.surfaces import list_surfaces, part_surfaces
from model.takeoff.weight import weigh_board
from tests.planned import plan_of
from tests.strategies import jobs
from tests.wood import PINE


def _plan(**texts):
    texts = {"cord__on": "yes"} | texts
    return plan_surround(
        with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()])
    )


def _mesh(board):
    return trimesh.Trimesh(*map(np.array, build_mesh(board)), process=False)


BLOCK = block("block", "block", PINE, "x", (0.0, 10.0), (0.0, 1.0), (0.0, 6.0))


def _bored(x, z, diameter=2.0):
    return bore_hole(BLOCK, Hole("hole", "y", (x, 1.0, z), diameter, (-5.0, 5.0)))


def test_a_hole_takes_its_circle_times_the_thickness():
    """10 by 1 by 6 in. less pi times 1 in. squared."""
    assert _bored(4.0, 3.0).volume == pytest.approx(60 - pi)
    assert _mesh(_bored(4.0, 3.0)).volume == pytest.approx(60 - pi, rel=1e-12)


def test_a_bored_block_is_closed_and_has_one_way_through_it():
    mesh = _mesh(_bored(4.0, 3.0))
    assert mesh.is_watertight
    assert mesh.euler_number == 0


def test_the_centre_of_gravity_moves_away_from_a_hole():
    """60 at 5 in. less pi at 4 in., over 60 less pi."""
    bored = _bored(4.0, 3.0)
    assert weigh_board(bored, 8)[1] == pytest.approx(((300 - 4 * pi) / (60 - pi), 0.5, 3.0))
    assert weigh_board(bored, 8)[1] == pytest.approx(_mesh(bored).center_mass)


def test_primer_covers_the_faces_less_both_circles_and_the_wall_between_them():
    """Faces 2 (60 + 6 + 10), less twice pi, and a wall pi times 2 in. round, 1 in. deep."""
    assert part_surfaces((_bored(4.0, 3.0),)).primed_area == pytest.approx(152 - 2 * pi + 2 * pi)


def test_paint_leaves_out_the_hole_and_its_wall():
    faces = part_surfaces((BLOCK,)).painted_area, part_surfaces((_bored(4.0, 3.0),)).painted_area
    assert faces[0] - faces[1] == pytest.approx(2 * pi, rel=1e-6)


def test_a_hole_over_an_edge_takes_a_segment_of_its_circle():
    """Middle 1/2 in. inside the edge, radius 1: what lies outside is acos(1/2) - 1/2 sqrt(3)/2 sq in."""
    outside = acos(0.5) - 0.5 * sqrt(3) / 2
    bored = _bored(4.0, 0.5)
    assert bored.bores[0].breaks
    assert bored.volume == pytest.approx(60 - (pi - outside), abs=0.02)
    assert _mesh(bored).volume == pytest.approx(bored.volume, rel=1e-9)
    assert _mesh(bored).is_watertight


def test_a_hole_that_would_part_a_piece_leaves_it_whole():
    assert not _bored(4.0, 3.0, diameter=7.0).bores


def test_a_hole_that_only_passes_or_stops_inside_leaves_a_piece_whole():
    assert not _bored(20.0, 3.0).bores
    assert not bore_hole(BLOCK, Hole("hole", "y", (4.0, 1.0, 3.0), 2.0, (0.5, 5.0))).bores


def test_holes_move_and_turn_over_with_their_board():
    moved = _bored(4.0, 3.0).moved(2.0, 3.0, 4.0)
    assert _mesh(moved).center_mass == pytest.approx(
        _mesh(_bored(4.0, 3.0)).center_mass + np.array([2, 3, 4])
    )
    twin = moved.mirrored("other")
    assert _mesh(twin).is_watertight
    assert _mesh(twin).center_mass == pytest.approx(_mesh(moved).center_mass * (-1.0, 1.0, 1.0))


def test_both_layers_of_the_shelf_and_the_return_are_bored_and_the_panel_sawn_out():
    """Mains plug: 1 3/4 in. holes in 3/4 in. boards; the sheet's opening is 3 by 37 1/2 less 3/4 and 1/16."""
    surround = _plan()
    taken = {b.role: b.bores[0].volume for b in surround.boards if b.bores and not b.bores[0].breaks}
    round_hole = pi * 0.875**2 * 0.75
    assert taken == {
        "shelf top": pytest.approx(round_hole),
        "shelf underside": pytest.approx(round_hole),
        "column outer return": pytest.approx(round_hole),
        "column panel": pytest.approx((4 - 1.625) * (37.5 - 1.625) * 0.25),
    }


def test_a_mitred_plinth_return_is_bored_where_the_hole_goes_through_it():
    surround = _plan(cord__exit_height="4")
    (lower, _) = plan_cord_way(surround).holes
    (plinth,) = (b for b in surround.boards if b.role == "plinth return" and b.bores)
    assert is_bored(plinth, lower)
    assert _mesh(plinth).volume == pytest.approx(replace(plinth, bores=()).volume - pi * 0.875**2 * 0.75)


def test_a_rib_of_which_a_hole_leaves_nothing_is_left_out():
    """A hole of 5 7/8 in., 4 by 3 1/16 across and 13/16 wider, where a rib of the shelf is 4 5/8 long."""
    rows = {
        "cord__plug": "own",
        "cord__own_width": "3 1/16",
        "cord__own_height": "4",
        "cord__clearance": "13/16",
        "column__width": "4",
        "column__projection": "4",
        "shelf__thickness": "2",
        "shelf__overhang_front": "3",
        "shelf__overhang_end": "7/16",
        "board__thickness": "15/16",
    }
    ribs = {
        on: [board for board in _plan(cord__on=on, **rows).boards if board.role == "shelf rib"]
        for on in ("yes", "no")
    }
    assert len(ribs["yes"]) == len(ribs["no"]) - 1
    assert all(_mesh(rib).is_watertight for rib in ribs["yes"])


def test_surfaces_of_a_bored_surround_are_those_of_its_meshes():
    surround = _plan(cord__exit_height="4", facing__proud="2", facing__height="46")
    meshes = sum(_mesh(board).area for board in surround.boards)
    # The polygon's walls are 0.3 % more than the circle's.
    assert list_surfaces(surround).primed_area == pytest.approx(meshes, abs=0.2)


@settings(max_examples=60, deadline=None)
@given(jobs(cord__on=True))
def test_every_bored_board_is_closed_and_of_its_own_volume(job):
    for board in plan_of(job).boards:
        if board.bores:
            mesh = _mesh(board)
            assert mesh.is_watertight
            assert mesh.volume == pytest.approx(board.volume, rel=1e-6, abs=1e-6)
