"""Meshes of the boards: what an independent library makes of the file, and the filling of odd sections."""

from __future__ import annotations

import io
from math import cos, pi, sin

import numpy as np
import pytest
import shapely
import trimesh
from hypothesis import given
from hypothesis import strategies as st

from export.mesh import triangulate, write_obj
from model.job import default_job, with_texts
from model.surround import Surround, plan_surround


@pytest.fixture(scope="module")
def surround() -> Surround:
    return plan_surround(with_texts(default_job(), [("panel.reveal", "1/2"), ("facing.proud", "2")]))


@pytest.fixture(scope="module")
def scene(surround) -> trimesh.Scene:
    text = io.StringIO(write_obj(surround))
    return trimesh.load_scene(text, file_type="obj", split_objects=True, process=False, maintain_order=True)


def test_every_board_is_a_mesh_named_by_its_mark(surround, scene):
    assert set(scene.geometry) == set(surround.marks)


def test_every_mesh_is_closed_turned_outwards_and_of_the_boards_volume(surround, scene):
    for mark, board in zip(surround.marks, surround.boards, strict=True):
        mesh = scene.geometry[mark]
        assert mesh.is_watertight, mark
        assert mesh.is_winding_consistent, mark
        assert mesh.volume == pytest.approx(board.volume, rel=1e-9), mark


def test_meshes_lie_where_the_boards_do_in_inches(surround, scene):
    for mark, board in zip(surround.marks, surround.boards, strict=True):
        assert np.allclose(scene.geometry[mark].bounds, board.bounds, rtol=0, atol=1e-9), mark
    layout = surround.layout
    assert scene.bounds[1] == pytest.approx([layout.right.shelf_side, layout.shelf_top, layout.shelf_front])


def test_no_two_boards_share_a_vertex_in_the_file(surround):
    owner: dict[int, str] = {}
    mark = ""
    for line in write_obj(surround).splitlines():
        if line.startswith("o "):
            mark = line[2:]
        if line.startswith("f "):
            for index in map(int, line[2:].split()):
                assert owner.setdefault(index, mark) == mark
    assert len(owner) == sum(len(board.vertices) for board in surround.boards)


def test_the_same_surround_gives_the_same_text(surround):
    assert write_obj(surround) == write_obj(surround)


def _area(ring) -> float:
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)) / 2


def _check_filling(ring) -> None:
    triangles = triangulate(ring)
    assert len(triangles) == len(ring) - 2
    assert {i for triangle in triangles for i in triangle} == set(range(len(ring)))
    areas = [_area([ring[i] for i in triangle]) for triangle in triangles]
    assert all(area > -1e-9 for area in areas)
    assert sum(areas) == pytest.approx(_area(ring))
    whole = shapely.union_all([shapely.Polygon([ring[i] for i in triangle]) for triangle in triangles])
    assert whole.symmetric_difference(shapely.Polygon(ring)).area < 1e-9


@pytest.mark.parametrize(
    "ring",
    [
        [(0, 0), (1, 0), (0, 1)],
        [(0, 0), (1, 0), (2, 0), (2, 1), (1, 1), (0, 1)],
        [(0, 0), (2, 0), (2, 1), (1, 1), (1, 2), (0, 2)],
        [(0, 0), (3, 0), (3, 3), (2, 3), (2, 1), (1, 1), (1, 3), (0, 3)],
        [(0, 0), (4, 0), (4, 1), (3, 1), (3, 2), (4, 2), (4, 3), (0, 3), (0, 2), (1, 2), (1, 1), (0, 1)],
        [(0, 0), (2, 0), (2, 2), (1, 0.5), (0, 2)],
    ],
)
def test_a_concave_section_is_filled_exactly(ring):
    _check_filling(ring)


@given(st.lists(st.floats(0.2, 5), min_size=3, max_size=24))
def test_any_star_shaped_section_is_filled_exactly(reaches):
    count = len(reaches)
    ring = [(r * cos(2 * pi * i / count), r * sin(2 * pi * i / count)) for i, r in enumerate(reaches)]
    _check_filling(ring)


def test_a_clockwise_ring_is_refused():
    with pytest.raises(ValueError, match="runs clockwise"):
        triangulate([(0, 0), (0, 1), (1, 1), (1, 0)])
