"""What is seen of boards, held against brute force: every point asked of every face on its own."""

import random
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import given, settings

from model.board import Stock, StockKind, block
from model.build.run import Profile, run_section
from model.job import default_job, with_texts
from model.surround import plan_surround
from render import holes
from render.arrangement import GRAIN, NOTHING
from render.visibility import CELL, FROM_ABOVE, FROM_FRONT, FROM_RIGHT, Line, flatten_boards, project
from tests.planned import plan_of
from tests.strategies import alike, jobs

POPLAR = Stock(StockKind.BOARD, 0.75, "poplar")
LOOKS = {"front": FROM_FRONT, "right": FROM_RIGHT, "above": FROM_ABOVE}


def brute_force_nearest(boards, look, point):
    """Board seen at a point of the picture: a ray against every solid, by its own half spaces."""
    nearest, found = -np.inf, NOTHING
    for i, board in enumerate(boards):
        depths = ray_depths(board, look, point)
        if depths and max(depths) > nearest + 1e-6:
            nearest, found = max(depths), i
    return found


def ray_depths(board, look, point):
    """Depths at which the ray through `point` meets the board's faces."""
    corners = look.place(np.array(board.vertices))
    count = len(board.section)
    rings = [[k, (k + 1) % count, (k + 1) % count + count, k + count] for k in range(count)]
    rings += [list(range(count)), list(range(count, 2 * count))]
    depths = []
    for ring in rings:
        face = corners[ring]
        polygon = shapely.Polygon(face[:, :2])
        if polygon.area > 1e-9 and polygon.contains(shapely.Point(point)):
            plane, *_ = np.linalg.lstsq(np.c_[face[:, :2], np.ones(len(face))], face[:, 2], rcond=None)
            depths.append(float(plane @ (*point, 1)))
    return depths


def seen_at(projection, point):
    """Board that the projection shows at a point."""
    for owner in projection.seen_owners():
        if any_ring_contains(projection.rings_of(owner), point):
            return owner
    return NOTHING


def any_ring_contains(rings, point):
    return sum(shapely.Polygon(ring).contains(shapely.Point(point)) for ring in rings) % 2 == 1


@pytest.mark.parametrize("name", LOOKS)
def test_default_surround_shows_the_nearest_board_at_every_point(name):
    boards = plan_surround(default_job()).boards
    projection = project(flatten_boards(boards), LOOKS[name])
    draw = random.Random(7)
    corners = LOOKS[name].place(np.concatenate([b.vertices for b in boards]))
    (low_h, low_v, _), (high_h, high_v, _) = corners.min(axis=0), corners.max(axis=0)
    for _ in range(150):
        point = (draw.uniform(low_h, high_h), draw.uniform(low_v, high_v))
        assert seen_at(projection, point) == brute_force_nearest(boards, LOOKS[name], point), point


A_GRAIN_OFF = 1000 * GRAIN
"""Square inches that an area may be off: lines within a grain are one, along a thousand inches of outline."""
A_CELL = 0.5
"""Inches that lines may be off where a grid was not refined until every sloping edge met its corners."""


@settings(max_examples=25, deadline=None)
@given(jobs())
def test_visible_areas_add_up_to_the_silhouette(job):
    boards = plan_of(job).boards
    for look in LOOKS.values():
        projection = project(flatten_boards(boards), look)
        if not projection.grid.exact:
            continue
        seen = sum(ring_area(projection.rings_of(owner)) for owner in projection.seen_owners())
        assert seen == pytest.approx(ring_area(projection.wood_rings), rel=1e-9, abs=A_GRAIN_OFF)
        whole, bored = silhouette_area(boards, look), hole_area(boards)
        # What is seen right through holes that lie behind each other is no wood; nothing else is missing.
        assert seen <= whole * (1 + 1e-6) + A_GRAIN_OFF
        assert seen >= whole * (1 - 1e-6) - A_GRAIN_OFF - bored


def hole_area(boards):
    """Area of all holes as they may be drawn at most: views lay their corners on a grid of their own."""
    bores = [bore for board in boards for bore in board.bores]
    return sum(bore.area + shapely.Polygon(bore.ring).length / holes.CELL for bore in bores)


def silhouette_area(boards, look):
    """Area of everything the boards cover, unbored, by another library's union of all their faces."""
    flat, ends = [], []
    for board in boards:
        corners = look.place(np.round(np.array(board.vertices) * CELL) / CELL)[:, :2]
        count = len(board.section)
        low = np.arange(count)
        sides = np.stack([low, (low + 1) % count, (low + 1) % count + count, low + count], axis=1)
        flat.append(corners[sides])
        ends += [corners[:count], corners[count:]]
    polygons = np.concatenate([shapely.polygons(np.concatenate(flat)), [shapely.Polygon(e) for e in ends]])
    real = polygons[shapely.is_valid(polygons) & (shapely.area(polygons) > 0)]

    try:
        return shapely.union_all(real).area
    except shapely.errors.GEOSException:  # edges that nearly run on defeat the exact way
        return shapely.union_all(real, grid_size=1 / CELL).area


def ring_area(rings):
    """Area by the even-odd rule of rings whose holes turn the other way."""
    total = 0.0
    for ring in rings:
        total += sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*ring, ring[0]])) / 2
    return total


@settings(max_examples=25, deadline=None)
@given(alike())
def test_front_view_of_a_surround_is_its_own_mirror_image(job):
    boards = plan_of(job).boards
    projection = project(flatten_boards(boards), FROM_FRONT)
    within = 10 * GRAIN if projection.grid.exact else A_CELL
    for kind, segments in projection.lines.items():
        total = sum(abs(a - c) + abs(b - d) for a, b, c, d in segments)
        right = sum(length_right(s) for s in segments)
        assert right == pytest.approx(total / 2, abs=within), kind


def length_right(segment):
    h0, v0, h1, v1 = segment
    if h0 == h1:
        return abs(v1 - v0) * (1.0 if h0 > 1e-6 else 0.5 if abs(h0) <= 1e-6 else 0.0)
    low, high = min(h0, h1), max(h0, h1)
    part = (high - max(low, 0.0)) / (high - low) if high > 0 else 0.0
    return part * (abs(h1 - h0) + abs(v1 - v0))


def test_flush_boards_are_parted_by_a_fine_joint_and_stepped_ones_by_an_edge():
    left = block("left", "t", POPLAR, "y", (0, 2), (0, 9), (0, 1))
    flush = block("flush", "t", POPLAR, "y", (2, 4), (0, 9), (0, 1))
    back = block("back", "t", POPLAR, "y", (4, 6), (0, 9), (0, 0.5))
    lines = project(flatten_boards([left, flush, back]), FROM_FRONT).lines
    assert lines[Line.JOINT] == ((2, 0, 2, 9),)
    assert lines[Line.EDGE] == ((4, 0, 4, 9),)


def test_mitre_between_flush_pieces_shows_from_above_as_one_sloping_joint():
    band = run_section(
        ["end", "front"],
        "shelf",
        POPLAR,
        [(10, 0), (10, 5), (0, 5)],
        Profile([(0, 0), (1, 0), (1, 2), (0, 2)]),
    )
    lines = project(flatten_boards(band), FROM_ABOVE).lines
    ((h0, v0, h1, v1),) = lines[Line.JOINT]
    assert {(h0, v0), (h1, v1)} == {(10, -5), (11, -6)}


def test_facets_of_one_curve_show_no_lines_between_them():
    boards = [b for b in plan_surround(default_job()).boards if b.assembly == "bed mould"]
    front = max(boards, key=lambda b: b.length)
    lines = project(flatten_boards([front]), FROM_FRONT).lines
    level = [s for kind in (Line.ARRIS, Line.EDGE) for s in lines.get(kind, ()) if s[1] == s[3]]
    # The upper fillet's lower edge; the cavetto runs into the lower fillet without one.
    assert len({s[1] for s in level}) == 1


def test_faces_are_numbered_once_for_boards_that_only_change_their_sizes():
    one = plan_of(default_job())
    wider = plan_of(with_texts(default_job(), [("column.width", "7")]))
    first, second = (flatten_boards(surround.boards, surround.corners) for surround in (one, wider))
    assert first.quads is second.quads
    assert not np.array_equal(first.corners, second.corners)
    for solids in (first, second):
        for quad, owner in zip(solids.quads, solids.quad_owner, strict=True):
            own = np.array(solids.boards[owner].vertices)
            off = np.abs(solids.corners[quad][:, None] - own).max(axis=2)
            assert off.min(axis=1).max() < 1 / CELL
