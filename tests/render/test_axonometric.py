"""What shows from beside and above, held against rays that know nothing of faces hiding each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from shapely import Point

from app.demo import read_demo
from model.board import Board, End, Point2, block
from model.job import Job
from model.surround import plan_surround
from render.axonometric import BACK_LEFT, BELOW_RIGHT, FRONT_LEFT, FRONT_RIGHT, Scene, Stand, rings_of
from tests.planned import plan_of
from tests.strategies import jobs
from tests.takeoff_wood import POPLAR, board, triangles_of

POINTS = 150
CLEAR = 0.02
"""Points nearer to an edge than this are not asked for."""


class Triangles:
    """The triangles of all solids, each solid's in its place; rays meet them by Moller and Trumbore."""

    def __init__(self, solids: Sequence[Board]) -> None:
        own = [triangles_of([solid]) for solid in solids]
        corners = np.concatenate(own)
        self._owners = np.repeat(np.arange(len(own)), [len(triangles) for triangles in own])
        self._at = corners[:, 0]
        self._first, self._second = corners[:, 1] - self._at, corners[:, 2] - self._at

    def find_nearest(self, stand: Stand, spot: tuple[float, float]) -> tuple[int | None, float]:
        """The solid that a ray from the viewer meets first, and how far on."""
        basis = stand.basis
        origin = spot[0] * basis[0] + spot[1] * basis[1] + 1000 * basis[2]
        line = -basis[2]
        across = np.cross(line, self._second)
        size = (self._first * across).sum(axis=1)
        meets = np.abs(size) > 1e-12
        inverse = 1 / np.where(meets, size, 1.0)
        off = origin - self._at
        u = (off * across).sum(axis=1) * inverse
        turned = np.cross(off, self._first)
        v = (turned @ line) * inverse
        along = (self._second * turned).sum(axis=1) * inverse
        hit = meets & (u >= -1e-9) & (v >= -1e-9) & (u + v <= 1 + 1e-9) & (along > 0)
        if not hit.any():
            return None, np.inf
        best = float(along[hit].min())
        return int(self._owners[hit & (along <= best + 1e-6)].min()), best


def check_against_rays(boards: tuple[Board, ...], stand: Stand, seed: int) -> None:
    """At points off all edges; walls of holes are not drawn, so that rays into holes are left out."""
    triangles, unbored = Triangles(boards), Triangles([replace(one, bores=()) for one in boards])
    scene = Scene(boards, stand)
    present = set(range(len(boards)))
    shown = {i: [shape for _, shape in scene.see(i, present)] for i in present}
    edges = shapely.boundary([shape for own in shown.values() for shape in own if not shape.is_empty])
    left, low, right, high = scene.extent(present)
    random = np.random.default_rng(seed)
    asked = 0
    for h, v in random.uniform((left, low), (right, high), (POINTS, 2)):
        spot = Point(h, v)
        if (shapely.distance(edges, spot) < CLEAR).any():
            continue
        owners = [i for i, own in shown.items() if any(shape.contains(spot) for shape in own)]
        expected, along = triangles.find_nearest(stand, (float(h), float(v)))
        if along > unbored.find_nearest(stand, (float(h), float(v)))[1] + 1e-6:
            continue
        assert owners == ([] if expected is None else [expected]), (h, v)
        asked += 1
    assert asked > POINTS / 4


@pytest.mark.parametrize("stand", [FRONT_RIGHT, FRONT_LEFT, BACK_LEFT, BELOW_RIGHT])
def test_what_shows_is_what_a_ray_meets_first(stand: Stand) -> None:
    check_against_rays(plan_surround(read_demo("brick")).boards, stand, 1)


@settings(max_examples=6)
@given(jobs())
def test_what_shows_of_any_design_is_what_a_ray_meets_first(job: Job) -> None:
    check_against_rays(plan_of(job).boards, FRONT_RIGHT, 2)


def test_a_cube_alone_shows_three_sides_in_their_true_foreshortening() -> None:
    scene = Scene([board((0, 1), (0, 1), (0, 1))], FRONT_RIGHT)
    areas = sorted(shape.area for _, shape in scene.see(0, {0}))
    right, _, toward = FRONT_RIGHT.basis
    assert areas == pytest.approx(sorted(abs(toward)), abs=3e-3)
    assert right[1] == 0


def test_taking_away_what_is_before_it_uncovers_a_board() -> None:
    scene = Scene([board((0, 4), (0, 4), (0, 1)), board((1, 3), (1, 3), (1, 2))], FRONT_RIGHT)
    assert scene.seen(0, {0}) == pytest.approx(scene.whole(0))
    assert scene.seen(0, {0, 1}) < scene.whole(0) - 1
    assert scene.seen(1, {0, 1}) == pytest.approx(scene.whole(1))


def test_two_boards_one_above_the_other_by_a_ramp_cross_in_depth_along_a_line() -> None:
    """A ramp that starts behind a board and ends before it hides one half of it only."""
    ramp: tuple[Point2, ...] = ((4.0, -4.0), (4.2, -4.0), (4.2, 4.0), (4.0, 4.0))
    leaning = Board("ramp", "box", POPLAR, "x", ramp, End(0.0), End(8.0))
    plank = block("plank", "box", POPLAR, "x", (0.0, 8.0), (-6.0, 6.0), (-0.1, 0.1))
    check_against_rays((leaning, plank), FRONT_RIGHT, 3)


def test_facets_of_a_curve_are_one_patch() -> None:
    surround = plan_surround(read_demo("brick"))
    mould = next(i for i, b in enumerate(surround.boards) if b.role == "bed mould frieze front")
    scene = Scene([surround.boards[mould]], BELOW_RIGHT)
    assert len(scene.see(0, {0})) < len(surround.boards[mould].section)


def test_rings_are_outer_and_inner() -> None:
    scene = Scene([board((0, 9), (0, 9), (0, 1)), board((3, 5), (3, 5), (4, 5))], FRONT_RIGHT)
    holed = [rings_of(shape) for _, shape in scene.see(0, {0, 1})]
    assert max(map(len, holed)) == 2
