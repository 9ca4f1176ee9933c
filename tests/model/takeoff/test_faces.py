"""Every face of every board, in its plane."""

from __future__ import annotations

from math import dist

import numpy as np
import pytest
from hypothesis import given, settings

from app.demo import list_demos, read_demo
from model.board import Board, End
from model.build.run import Profile, run_section
from model.surround import plan_surround
from model.takeoff.faces import list_faces, primed_area
from tests.planned import list_faces_of, plan_of
from tests.solids import build_trimesh
from tests.strategies import jobs
from tests.takeoff_wood import POPLAR, board


def _around(ring) -> float:
    return sum(dist(a, b) for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))


def _mesh_area(boards) -> float:
    return float(build_trimesh(boards).area)


def test_a_block_has_six_faces_that_look_outwards():
    """3 by 2 by 1: twice 6, 3 and 2 square inches, 22 in all."""
    faces = list_faces([board((0, 3), (0, 2), (0, 1))])
    assert sorted(round(face.area, 9) for face in faces) == [2, 2, 3, 3, 6, 6]
    assert primed_area(faces) == pytest.approx(22)
    centre = np.array([1.5, 1, 0.5])
    for face in faces:
        assert (face.ring.mean(axis=0) - centre) @ face.normal > 0
        assert np.linalg.norm(face.normal) == pytest.approx(1)


def test_a_mitred_strip_has_a_long_and_a_short_face():
    """A 1 by 2 strip wrapped round a corner at 10 in.: the longer leg's outside is 11 long, its inside 10.

    Ends: one square, 1 by 2; one at 45 degrees, 2 by 1.4142. Top and bottom: 10 1/2 square inches each.
    """
    path = [(10.0, 0.0), (10.0, 5.0), (0.0, 5.0)]
    section = [(0.0, 0.0), (1.0, 0.0), (1.0, 2.0), (0.0, 2.0)]
    leg = run_section(["end", "front"], "shelf", POPLAR, path, Profile(section))[1]
    areas = sorted(round(face.area, 4) for face in list_faces([leg]))
    assert areas == sorted([2.0, round(2 * 2**0.5, 4), 10.5, 10.5, 20.0, 22.0])


def test_a_side_that_two_cuts_meet_in_is_no_face():
    roof = Board("a", "b", POPLAR, "x", ((0, 0), (1, 0), (1, 1), (0, 1)), End(0, 1.0), End(2, -1.0))
    faces = list_faces([roof])
    assert len(faces) == 5
    assert primed_area(faces) == pytest.approx(_mesh_area([roof]))


@pytest.mark.parametrize("name", list_demos())
def test_primed_area_is_the_surface_that_an_independent_mesh_library_measures(name):
    boards = plan_surround(read_demo(name)).boards
    assert primed_area(list_faces(boards)) == pytest.approx(_mesh_area(boards), rel=1e-9)


@settings(max_examples=40, deadline=None)
@given(jobs())
def test_primed_area_is_the_sum_of_all_faces_of_any_job(job):
    boards, faces = plan_of(job).boards, list_faces_of(job).faces
    assert primed_area(faces) == pytest.approx(sum(face.polygon.area for face in faces), rel=1e-9)
    bores = [bore for board in boards for bore in board.bores if not bore.breaks]
    walls = sum(_around(bore.ring) * (bore.span[1] - bore.span[0]) for bore in bores)
    assert primed_area(faces) == pytest.approx(_mesh_area(boards) - walls, rel=1e-9)


def test_a_shape_in_the_plane_goes_back_to_the_room():
    for face in list_faces([board((1, 4), (2, 4), (3, 4))]):
        (ring,) = face.place(face.polygon)
        assert {tuple(np.round(p, 9)) for p in ring} == {tuple(np.round(p, 9)) for p in face.ring}
