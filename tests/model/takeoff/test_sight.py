"""What can be seen of boards, by hand and against rays cast one by one."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import MultiPolygon, Point, box

from app.demo import list_demos, read_demo
from model.board import Board, End, StockKind
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.sight import LINES, _snap
from model.takeoff.surfaces import Surfaces, list_surfaces, part_surfaces
from tests.planned import list_faces_of
from tests.strategies import jobs
from tests.takeoff_wood import POPLAR, board, is_free, triangles_of

WALL = board((-50, 50), (-50, 50), (-9, 0))
FLOOR = board((-50, 50), (-9, 0), (-9, 5))
EDGE = 0.01
"""Places nearer than this to the edge of what is seen are left out, in."""


def _box(lid: bool) -> Surfaces:
    """Five boards 1 in. thick round a hollow 4 by 4 by 3 on the wall, and a sixth before it."""
    sides = [
        board((0, 1), (20, 26), (0, 3)),
        board((5, 6), (20, 26), (0, 3)),
        board((1, 5), (20, 21), (0, 3)),
        board((1, 5), (25, 26), (0, 3)),
        board((1, 5), (21, 25), (0, 1)),
    ]
    return part_surfaces((*sides, *([board((0, 6), (20, 26), (3, 4))] if lid else [])), (WALL, FLOOR))


def test_all_of_a_block_shows_but_its_back_on_the_wall():
    alone = part_surfaces((board((0, 2), (25, 28), (0, 1)),), (WALL, FLOOR))
    assert alone.painted_area == pytest.approx(alone.primed_area - 6)


def test_the_inside_of_a_closed_box_is_not_seen():
    """From outside: a 6 by 6 front and four sides 6 long and 4 deep."""
    assert _box(lid=True).painted_area == pytest.approx(6 * 6 + 4 * 6 * 4)


def test_the_inside_of_an_open_box_is_seen_through_its_mouth():
    """Outside 4 sides 6 by 3; the rim 36 less 16; the hollow 2 deep: four sides 4 by 2, a back 4 by 4."""
    assert _box(lid=False).painted_area == pytest.approx(4 * 6 * 3 + 20 + 4 * 4 * 2 + 16)


def test_what_stands_before_a_face_at_a_distance_hides_none_of_it():
    """It is looked at from the side. Both backs, one on the wall and one turned to it, are not seen."""
    both = part_surfaces((board((0, 4), (25, 29), (0, 1)), board((0, 4), (25, 29), (4, 5))), (WALL, FLOOR))
    assert both.painted_area == pytest.approx(both.primed_area - 2 * 16)


@pytest.mark.parametrize("ledger", [(-3, 5), (-50, 5), (-3, 50)])
def test_what_of_a_board_lies_in_an_obstacle_is_not_seen(ledger):
    """A block 2 wide, 4 high and 4 deep, a ledger 2 high and 1 deep right through it: less 2 of each side."""
    through = board(ledger, (26, 28), (0, 1))
    alone = part_surfaces((board((0, 2), (25, 29), (0, 4)),), (WALL, FLOOR, through))
    assert alone.painted_area == pytest.approx(2 * 4 + 2 * 2 * 4 + 2 * (4 * 4 - 2 * 1), abs=0.02)


def test_a_slit_shows_no_more_than_its_mouth():
    """Two boards 1/4 in. apart and 4 in. deep: each face half an inch in, twice the slit's width.

    From the front over all of 40 in., and from the top over the 3 1/2 in. behind that; the floor is in the
    way of looking in from below.
    """
    pair = part_surfaces(
        (board((0, 1), (20, 60), (0, 4)), board((1.25, 2.25), (20, 60), (0, 4))), (WALL, FLOOR)
    )
    outside = 2 * 40 * 4 + 2 * 40 + 4 * 4
    assert pair.painted_area == pytest.approx(outside + 2 * (40 * 0.5 + 3.5 * 0.5))


def test_a_narrow_groove_in_a_wide_board_is_seen_to_its_floor():
    """1 in. wide and 1/2 deep in a board 10 by 1 and 40 long, closed by blocks 1 in. long at both ends.

    All round the three but their backs, which are on the wall: fronts, groove, both edges, ends, and what of
    the blocks' inner ends the groove leaves bare.
    """
    grooved = ((20, 0), (30, 0), (30, 1), (24, 1), (24, 0.5), (23, 0.5), (23, 1), (20, 1))
    face = Board("face", "box", POPLAR, "x", grooved, End(0), End(40))
    stops = (board((-1, 0), (20, 30), (0, 1)), board((40, 41), (20, 30), (0, 1)))
    shown = 9 * 40 + 2 * 10 + (1 + 2 * 0.5) * 40 + 2 * 42 + 2 * 10 + 2 * 0.5
    assert part_surfaces((face, *stops), (WALL,)).painted_area == pytest.approx(shown)


def test_a_strip_too_thin_to_divide_by_goes_without_a_warning():
    """As drawn by a random design whose shelf passes a wall by 4e-306 in.; a warning would fail here."""
    shapes = np.array([MultiPolygon([box(-2, 19, -1, 20), box(0, 19, 4.448423001223591e-306, 20)])])
    assert _snap(shapes)[0].area == pytest.approx(1)


def test_lines_of_sight_come_from_the_room_and_are_alike_on_both_sides():
    assert (LINES[:, 2] >= 0).all()
    assert np.linalg.norm(LINES, axis=1) == pytest.approx(1)
    rounded = {tuple(np.round(line, 9)) for line in LINES}
    assert {(-x, y, z) for x, y, z in rounded} == rounded
    assert len(rounded) == len(LINES)


def test_no_two_neighbouring_lines_of_a_plane_are_more_than_27_degrees_apart():
    level = sorted(np.degrees(np.arctan2(x, z)) for x, y, z in LINES if y == 0)
    assert max(b - a for a, b in pairwise(level)) < 27
    assert (level[0], level[-1]) == pytest.approx((-90, 90))


def _pick_places(surfaces: Surfaces, count: int, seed: int) -> list[tuple[int, np.ndarray]]:
    """Places spread evenly over all faces: the face, and where in its plane."""
    random = np.random.default_rng(seed)
    areas = np.array([face.area for face in surfaces.faces])
    places = []
    for i in random.choice(len(areas), size=count, p=areas / areas.sum()):
        face = surfaces.faces[i]
        low, high = (np.array(face.polygon.bounds[k : k + 2]) for k in (0, 2))
        while not face.polygon.contains(Point(*(flat := random.uniform(low, high)))):
            pass
        places.append((int(i), flat))
    return places


def _draw_lines(count: int, seed: int) -> np.ndarray:
    """Directions out of the wall, drawn at random."""
    lines = np.random.default_rng(seed).normal(size=(count, 3))
    lines[:, 2] = np.abs(lines[:, 2])
    return lines / np.linalg.norm(lines, axis=1)[:, None]


def _check_by_rays(surfaces: Surfaces, count: int, seed: int, others: np.ndarray) -> tuple[int, int]:
    """How many places rays and shapes agree on, and on how many they do not.

    A place that is seen must have a free line among LINES; one that is not must have none among `others`.
    """
    triangles = triangles_of((*surfaces.boards, *surfaces.standing))
    agree = differ = 0
    for i, flat in _pick_places(surfaces, count, seed):
        face, seen = surfaces.faces[i], surfaces.seen[i]
        if seen.boundary.distance(Point(*flat)) < EDGE:
            continue
        is_seen = seen.contains(Point(*flat))
        lines = LINES if is_seen else others
        turned = lines[lines @ face.normal > 1e-3]
        at = flat @ face.basis + (face.offset + 1e-5) * face.normal
        found = bool(len(turned)) and bool(is_free(at[None], turned, triangles).any())
        agree, differ = agree + (found == is_seen), differ + (found != is_seen)
    return agree, differ


@pytest.mark.parametrize("name", list_demos())
def test_painted_area_is_what_rays_from_the_faces_reach_the_room_from(name):
    surfaces = list_surfaces(plan_surround(read_demo(name)))
    agree, differ = _check_by_rays(surfaces, 400, 7, _draw_lines(60, 7))
    assert differ <= 1, f"{differ} of {agree + differ}"


@pytest.mark.parametrize(
    "settings",
    [
        "frieze.projection=5 1/2",
        "frieze.projection=5 1/2,panel.reveal=5/8",
        "frieze.projection=6,frieze.kind=plain",
        "frieze.place=in_front",
    ],
)
def test_painted_area_of_a_frieze_before_the_columns_is_what_rays_reach(settings):
    surfaces = _list_set(settings)
    agree, differ = _check_by_rays(surfaces, 400, 7, _draw_lines(60, 7))
    assert differ <= 1, f"{differ} of {agree + differ}"


@pytest.mark.parametrize("frieze", ["4 7/8", "5 1/2", "9"])
@pytest.mark.parametrize("reveal", ["3/8", "5/8", "1"])
def test_nothing_is_seen_of_the_hollow_behind_a_proud_frieze(frieze, reveal):
    surfaces = _list_set(f"frieze.projection={frieze},panel.reveal={reveal}")
    for face, seen in zip(surfaces.faces, surfaces.seen, strict=True):
        if surfaces.boards[face.owner].stock.kind is StockKind.FRAMING:
            assert seen.area == 0
        if face.normal[2] < -0.5 and surfaces.boards[face.owner].assembly == "frieze":
            assert seen.area == 0


def _list_set(settings: str) -> Surfaces:
    pairs = [tuple(setting.split("=")) for setting in settings.split(",")]
    return list_surfaces(plan_surround(with_texts(default_job(), pairs)))


@settings(max_examples=6, deadline=None)
@given(jobs(), st.integers(0, 1000))
def test_rays_along_the_same_lines_agree_on_any_job(job, seed):
    agree, differ = _check_by_rays(list_faces_of(job), 60, seed, LINES)
    assert differ <= 1, f"{differ} of {agree + differ}"


@settings(max_examples=6, deadline=None)
@given(jobs())
def test_what_is_seen_is_bare_and_what_is_bare_is_wood(job):
    surfaces = list_faces_of(job)
    for face, bare, seen in zip(surfaces.faces, surfaces.bare, surfaces.seen, strict=True):
        assert seen.area <= bare.area + 1e-6
        assert bare.area <= face.area + 1e-6
        assert seen.difference(face.polygon.buffer(1e-6)).area < 1e-6
    assert 0 < surfaces.painted_area < surfaces.primed_area
