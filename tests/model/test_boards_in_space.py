"""Every board as a solid, held against independent mesh libraries: closed, sized as stated, apart, joined."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from manifold3d import Error, Manifold, Mesh64

from app.demo import list_demos, read_demo
from export.mesh import build_mesh
from model.board import Board, StockKind
from model.job import Job, default_job, with_texts
from model.moulding.library import USES, Use
from model.parameters import BY_PATH
from model.takeoff.spans import list_meeting
from tests.planned import plan_of
from tests.strategies import jobs

TOUCHING = 1e-6
"""Gap that still counts as touching, and edge of what still counts as empty, in."""
NOTHING = 1e-6
"""Cubic inches."""
HAIR = 1e-3
SOME_AREA = 1e-3
"""Square inches of surface that two boards must share to be joined."""


def _near(boards: tuple[Board, ...], gap: float) -> list[tuple[int, int]]:
    """Pairs whose boxes come within `gap` of each other; negative for boxes that reach into each other."""
    low = np.array([board.bounds[0] for board in boards])
    high = np.array([board.bounds[1] for board in boards])
    one, other = list_meeting(low - gap / 2, high + gap / 2)
    return list(zip(one.tolist(), other.tolist(), strict=True))


@lru_cache(1024)
def _solid(board: Board) -> Manifold:
    """Checked: its surface is closed, turns outwards and holds the board's volume."""
    corners, faces = map(np.array, build_mesh(board))
    begin, end = faces.ravel(), np.roll(faces, -1, axis=1).ravel()
    edges = np.unique(begin * len(corners) + end)
    assert len(edges) == faces.size, board
    assert np.array_equal(edges, np.unique(end * len(corners) + begin)), board
    one, two, three = (corners[faces[:, k]] - corners[0] for k in range(3))
    volume = float(np.einsum("nx,nx->", np.cross(one, two), three)) / 6
    assert volume == pytest.approx(board.volume, rel=1e-9), board
    assert volume > 1e-4, board
    solid = Manifold(Mesh64(corners, faces.astype(np.uint64)))
    assert solid.status() == Error.NoError
    return solid


def _check_by_another_library(boards: tuple[Board, ...]) -> None:
    for board in boards:
        mesh = trimesh.Trimesh(*map(np.array, build_mesh(board)), process=False)
        assert mesh.is_watertight, board
        assert mesh.is_winding_consistent, board
        assert mesh.volume == pytest.approx(board.volume, rel=1e-9), board


def _check_apart(boards: tuple[Board, ...]) -> None:
    for i, j in _near(boards, -TOUCHING):
        shared = _shared(boards[i], boards[j])
        assert shared < NOTHING, f"{shared:.6f} cu in. of {boards[i]} lies in {boards[j]}"


@lru_cache(2048)
def _shared(one: Board, other: Board) -> float:
    """Cubic inches in which two boards lie in each other; designs that are alike have many boards alike."""
    return float((_solid(one) ^ _solid(other)).volume())


@lru_cache(2048)
def _touch(one: Board, other: Board) -> bool:
    """Whether two boards that do not overlap share some surface.

    One of them, swollen a hair, reaches into the other: swelling the member would only open its groove.
    """
    return _reaches(_solid(one), _solid(other)) or _reaches(_solid(other), _solid(one))


def _reaches(one: Manifold, other: Manifold) -> bool:
    box = np.array(one.bounding_box())
    middle, size = (box[:3] + box[3:]) / 2, box[3:] - box[:3]
    swollen = one.translate(-middle).scale(1 + 2 * HAIR / size).translate(middle)
    return (swollen ^ other).volume() > HAIR * SOME_AREA


def _list_nailers(boards: tuple[Board, ...]) -> list[int]:
    """Which are fixed to the masonry by anchors, so that they hang loose nowhere."""
    return [i for i, board in enumerate(boards) if board.stock.kind is StockKind.FRAMING]


def _check_connected(boards: tuple[Board, ...]) -> None:
    """From the shelf and what is anchored to the masonry, every board is reached over boards that touch.

    Two boards that are joined already, over whichever others, need not touch.
    """
    starts = [next(i for i, board in enumerate(boards) if board.assembly == "shelf"), *_list_nailers(boards)]
    group = [min(starts) if i in starts else i for i in range(len(boards))]
    for i, j in _near(boards, TOUCHING):
        if group[i] != group[j] and _touch(boards[i], boards[j]):
            group = [group[i] if own == group[j] else own for own in group]
    reached = group[starts[0]]
    loose = [f"{b.assembly}: {b.role} {b.bounds}" for i, b in enumerate(boards) if group[i] != reached]
    assert not loose


def _check(job: Job) -> None:
    boards = plan_of(job).boards
    for board in boards:
        _solid(board)
    _check_apart(boards)
    _check_connected(boards)


@pytest.mark.parametrize("name", list_demos())
def test_a_shipped_jobs_boards_are_solid_apart_and_joined(name):
    _check(read_demo(name))
    _check_by_another_library(plan_of(read_demo(name)).boards)


def test_the_default_jobs_boards_are_solid_apart_and_joined():
    _check(default_job())


@pytest.mark.parametrize("frieze", ["1.96875", "2.03125", "2.0624", "2.0625", "1.9375"])
def test_a_bed_mould_keeps_off_a_frieze_that_stands_a_hair_off_the_columns(frieze):
    _check(with_texts(default_job(), [("column.projection", "2"), ("frieze.projection", frieze)]))


def test_a_nailer_that_its_return_cannot_reach_is_left_out():
    """The return stops at the masonry, and what lies beside that is on the wall, two inches further back."""
    settings = "opening.width=12 facing.width=12.0625 facing.proud=2 column.margin=0"
    _check(with_texts(default_job(), [tuple(setting.split("=")) for setting in settings.split()]))


PLACES = [
    (f"{use.replace(' ', '_')}.profile", f"{use.replace(' ', '_')}.size", key)
    for use in Use
    if use is not Use.SHELF_EDGE
    for key in USES[use]
] + [("shelf.edge_profile", "shelf.edge_size", key) for key in USES[Use.SHELF_EDGE]]
ALL_ON = [(f"{place}.on", "yes") for place in ("capital", "plinth_cap", "panel_mould", "back_band")]


@pytest.mark.parametrize(("profile", "size", "key"), PLACES)
def test_any_shipped_section_fits_where_it_is_offered_at_any_size(profile, size, key):
    row = BY_PATH[size]
    for asked in (row.lowest, row.default, row.highest):
        _check(with_texts(default_job(), [*ALL_ON, (profile, key), (size, str(asked))]))


@settings(max_examples=60, deadline=None)
@given(
    jobs(
        capital__on=True,
        plinth_cap__on=True,
        panel_mould__on=True,
        back_band__on=True,
        slip__on=True,
        over__on=True,
    )
)
def test_no_job_with_every_moulding_has_boards_that_overlap_or_hang_loose(job):
    _check(job)


@settings(max_examples=40, deadline=None)
@given(jobs(cord__on=True))
def test_no_job_with_a_cord_way_has_boards_that_overlap_or_hang_loose(job):
    _check(job)


@settings(max_examples=60, deadline=None)
@given(jobs())
def test_no_job_in_range_has_boards_that_overlap_or_hang_loose(job):
    _check(job)
