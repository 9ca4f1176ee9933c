"""The visible-surface grid against pictures worked out by hand and by another library."""

import numpy as np
import pytest
import shapely

from render.arrangement import (
    GRAIN,
    MOST_LINES,
    NOTHING,
    Face,
    arrange,
    join_collinear,
    list_borders,
    trace_areas,
    trace_rings,
)


def rectangle(h0, v0, h1, v1, depth):
    corners = np.array([(h0, v0), (h1, v0), (h1, v1), (h0, v1)], dtype=float)
    return Face(corners, (0.0, 0.0, depth), upright=True)


def polygon(points, plane):
    return Face(np.array(points, dtype=float), plane, upright=False)


def seen_areas(faces):
    """Area seen of each face, from the grid's triangles: each is a quarter of its cell."""
    grid = arrange(faces)
    cells = np.outer(np.diff(grid.v), np.diff(grid.h))[:, :, None] / 4
    return [float((cells * (grid.seen == i)).sum()) for i in range(len(faces))]


def test_nothing_is_seen_of_nothing():
    grid = arrange([])
    assert grid.seen.size == 0
    assert len(list_borders(grid).segments) == 0


def test_nearer_rectangle_hides_what_lies_behind_it():
    assert seen_areas([rectangle(0, 0, 10, 10, 0), rectangle(2, 2, 6, 5, 1)]) == [88, 12]
    assert seen_areas([rectangle(0, 0, 10, 10, 2), rectangle(2, 2, 6, 5, 1)]) == [100, 0]


def test_sloping_edge_divides_exactly_where_it_crosses_other_lines():
    # A right triangle over a board whose edge cuts it at a third of its height.
    areas = seen_areas([rectangle(0, 0, 3, 9, 0), polygon([(0, 0), (9, 0), (0, 9)], (0.0, 0.0, 1.0))])
    assert areas == pytest.approx([3 * 9 - (9 * 9 - 6 * 6) / 2, 40.5])


def test_where_lines_are_too_many_a_centre_on_an_edge_is_seen_alike_on_both_hands(monkeypatch):
    monkeypatch.setattr("render.arrangement.MOST_LINES", 0)
    # The leaning edge passes (3, 5), the centre of the cell from (0, 0) to (6, 6)'s north triangle.
    right = [(0, -1), (6, -1), (0, 11), (-3, 11), (-3, -1)]
    left = [(-h, v) for h, v in reversed(right)]
    behind = rectangle(-3, 0, 6, 6, 0), rectangle(-6, 0, 3, 6, 0)
    seen = [
        seen_areas([back, polygon(points, (0.0, 0.0, 1.0))])
        for back, points in zip(behind, (right, left), strict=True)
    ]
    assert not arrange([behind[0], polygon(right, (0.0, 0.0, 1.0))]).exact
    assert seen[0] == seen[1]


def test_of_two_sloping_faces_the_nearer_wins_along_their_crossing_depths():
    # Depth h against depth 4: the sloping face is nearer only beyond h = 4, where a grid line lies.
    sloping = Face(np.array([(0, 0), (8, 0), (8, 1), (0, 1)], dtype=float), (1.0, 0.0, 0.0), upright=True)
    level = rectangle(0, 0, 4, 1, 4.0), rectangle(4, 0, 8, 1, 4.0)
    assert seen_areas([sloping, *level]) == [4, 4, 0]


def test_borders_part_different_faces_and_are_joined_where_they_run_on():
    grid = arrange([rectangle(0, 0, 10, 10, 0), rectangle(2, 2, 6, 5, 1)])
    borders = list_borders(grid)
    kinds = np.zeros(len(borders.left), dtype=np.intp)
    joined, _ = join_collinear(borders.segments, kinds)
    length = np.abs(joined[:, 2:] - joined[:, :2]).sum()
    assert length == 40 + 14
    assert len(joined) == 8


def test_rings_have_their_area_on_the_left_and_holes_turn_the_other_way():
    faces = [rectangle(0, 0, 10, 10, 0), rectangle(2, 2, 6, 5, 1)]
    borders = list_borders(arrange(faces))
    rings = trace_rings(borders, np.array([True, False, False]))
    areas = sorted(shapely.LinearRing(r).is_ccw for r in rings)
    assert areas == [False, True]
    assert shapely.Polygon(rings[0], rings[1:]).area == 88


@pytest.mark.parametrize("seed", range(12))
def test_seen_areas_agree_with_polygon_overlay_in_another_library(seed):
    draw = np.random.default_rng(seed)
    faces, shapes = [], []
    for depth in range(14):
        h, v = np.sort(draw.integers(0, 20, 2)), np.sort(draw.integers(0, 20, 2))
        if depth % 3 == 0:
            # A trapezoid mitred at both ends, as mouldings and bands are.
            x, y, long, high = (
                draw.integers(0, 10),
                draw.integers(0, 15),
                draw.integers(8, 12),
                draw.integers(1, 4),
            )
            points = [(x, y), (x + long, y), (x + long - high, y + high), (x + high, y + high)]
            faces.append(polygon(points, (0.0, 0.0, float(depth))))
        elif h[0] < h[1] and v[0] < v[1]:
            faces.append(rectangle(h[0], v[0], h[1], v[1], float(depth)))
        else:
            continue
        shapes.append(shapely.Polygon(faces[-1].corners))
    expected, nearer = [], shapely.Polygon()
    for shape in reversed(shapes):
        expected.insert(0, shape.difference(nearer).area)
        nearer = nearer.union(shape)
    assert seen_areas(faces) == pytest.approx(expected, abs=1e-6)
    assert sum(seen_areas(faces)) == pytest.approx(nearer.area)


def test_slopes_that_never_agree_cost_less_than_a_cell_and_do_not_run_away():
    faces = [
        polygon([(0, 0), (7.3, 1.9), (3.1, 8.7)], (0.0, 0.0, 0.0)),
        polygon([(1.7, 0.3), (8.9, 4.4), (0.6, 6.1)], (0.0, 0.0, 1.0)),
    ]
    grid = arrange(faces)
    assert len(grid.h) + len(grid.v) <= MOST_LINES
    assert seen_areas(faces)[1] == pytest.approx(shapely.Polygon(faces[1].corners).area, rel=0.01)


def test_the_grid_sees_nothing_between_faces():
    grid = arrange([rectangle(0, 0, 1, 1, 0), rectangle(3, 0, 4, 1, 0)])
    assert (grid.seen[:, 1] == NOTHING).all()


def test_a_corner_that_one_short_piece_makes_stays_where_it_is():
    """A piece of less than a few grains has no direction of its own, and yet may be where a line turns."""
    corner = np.array([[0, 0, 2, 0], [2, 0, 2 + 4e-7, 4e-7], [2 + 4e-7, 4e-7, 2 + 4e-7, 2]])
    joined, _ = join_collinear(corner, np.zeros(3, dtype=np.intp))
    assert len(joined) == 2
    assert np.abs(joined - [[0, 0, 2, 0], [2, 0, 2, 2]]).max() < 1e-6


def test_a_slow_bend_in_small_pieces_is_not_drawn_as_its_chord():
    """A quarter of a circle of radius 4, in pieces that turn by a thousandth each: all stay on it."""
    turns = np.arange(0, np.pi / 2, 1e-3)
    points = 4 * np.stack([np.cos(turns), np.sin(turns)], axis=1)
    joined, _ = join_collinear(np.hstack([points[:-1], points[1:]]), np.zeros(len(turns) - 1, dtype=np.intp))
    middles = (joined[:, :2] + joined[:, 2:]) / 2
    assert np.abs(np.hypot(*middles.T) - 4).max() < 2e-5


def test_a_sloping_face_narrower_than_a_grain_shows_nowhere():
    sloping = Face(
        np.array([(0, 0), (8, 0), (8, 4e-7), (0, 4e-7)], dtype=float), (1.0, 0.0, 0.0), upright=False
    )
    assert seen_areas([sloping, rectangle(0, 0, 8, 2, 1.0)]) == [0, 16]
    assert seen_areas([sloping]) == [0]


def test_areas_traced_together_are_those_traced_one_by_one():
    roof = polygon([(0, 4), (3, 1), (6, 4), (3, 7)], (0.25, 0.0, 1.0))
    grid = arrange([rectangle(0, 0, 10, 6, 0), roof, rectangle(2, 3, 8, 5, 1.5), rectangle(7, 1, 9, 4, 0.5)])
    borders = list_borders(grid)
    insides = np.array([[True, False, False, False, False], [False, True, True, False, False], [True] * 5])
    assert list(trace_areas(borders, insides)) == [trace_rings(borders, inside) for inside in insides]


def test_of_faces_that_meet_in_depth_the_first_is_seen_and_a_nearer_one_before_it():
    square = [(0, 0), (4, 0), (4, 3), (0, 4)]
    level, later, nearer = (polygon(square, (0.0, 0.0, depth)) for depth in (1.0, 1.0 + GRAIN / 2, 2.0))
    assert seen_areas([level, later]) == [pytest.approx(14), 0]
    assert seen_areas([level, later, nearer]) == [0, 0, pytest.approx(14)]
    assert seen_areas([nearer, level]) == [pytest.approx(14), 0]
