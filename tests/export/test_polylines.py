"""Joining strokes keeps every one of them, once."""

from __future__ import annotations

from itertools import pairwise
from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from export.polylines import join_segments
from render.drawing import Segment


def test_strokes_end_to_end_become_one_run():
    assert join_segments([(0, 0, 2, 0), (2, 1, 2, 0), (5, 5, 6, 5)]) == (
        (((0, 0), (2, 0), (2, 1)), False),
        (((5, 5), (6, 5)), False),
    )


def test_a_ring_is_closed_and_its_straight_points_left_out():
    ring = [(0, 0, 2, 0), (2, 0, 4, 0), (4, 0, 4, 3), (4, 3, 0, 3), (0, 3, 0, 0)]
    ((points, closed),) = join_segments(ring)
    assert closed
    assert sorted(points) == [(0, 0), (0, 3), (4, 0), (4, 3)]


def test_runs_stop_where_three_strokes_meet():
    runs = join_segments([(0, 0, 2, 0), (2, 0, 4, 0), (2, 0, 2, 5)])
    assert sorted(map(sorted, (points for points, _ in runs))) == [
        [(0, 0), (2, 0)],
        [(2, 0), (2, 5)],
        [(2, 0), (4, 0)],
    ]


def test_a_stroke_drawn_twice_or_of_no_length_is_written_once_or_not_at_all():
    assert join_segments([(0, 0, 1, 0), (1, 0, 0, 0), (3, 3, 3, 3)]) == ((((0, 0), (1, 0)), False),)


def _length(segments: list[Segment]) -> float:
    return sum(hypot(x2 - x1, y2 - y1) for x1, y1, x2, y2 in segments)


def _neighbours(draw_pairs: list[tuple[int, int, bool]]) -> list[Segment]:
    """Unit strokes of a square grid, each once: strokes never overlap in part."""
    strokes = {(x, y, x + (not up), y + up) for x, y, up in draw_pairs}
    return sorted(strokes)


@given(st.lists(st.tuples(st.integers(0, 6), st.integers(0, 6), st.booleans()), max_size=60))
def test_no_stroke_is_lost_or_doubled(pairs: list[tuple[int, int, bool]]):
    strokes = _neighbours(pairs)
    joined: list[Segment] = []
    for points, closed in join_segments(strokes):
        ring = (*points, points[0]) if closed else points
        joined += [(*a, *b) for a, b in pairwise(ring)]
    assert _length(joined) == pytest.approx(_length(strokes))
    units = set()
    for x1, y1, x2, y2 in joined:
        steps = round(max(abs(x2 - x1), abs(y2 - y1)))
        for i in range(steps):
            ends = [(x1 + (x2 - x1) * k / steps, y1 + (y2 - y1) * k / steps) for k in (i, i + 1)]
            units.add(tuple(sorted(ends)))
    assert units == {((x1, y1), (x2, y2)) for x1, y1, x2, y2 in strokes}


@given(st.permutations([(0, 0, 1, 0), (1, 0, 1, 1), (1, 1, 0, 1), (0, 1, 0, 0)]))
def test_a_square_is_one_closed_run_in_any_order(strokes: list[Segment]):
    ((points, closed),) = join_segments(strokes)
    assert closed
    assert len(points) == 4
