"""Pieces of line and boxes, many at once, meet where a geometry library says that they do."""

import numpy as np
import pytest
import shapely

from render.crossing import are_crossed, find_hits, to_rows


def draw_lines(chance, count, upright):
    """Rows on a coarse grid, so that ends lie on edges and on each other now and then."""
    lines = chance.integers(-6, 7, (count, 4)) / 2
    if upright:
        lines[::2, 2] = lines[::2, 0]
        lines[1::4, 3] = lines[1::4, 1]
    return lines[(lines[:, :2] != lines[:, 2:]).any(axis=1)]


def draw_boxes(chance, count):
    low = chance.integers(-6, 6, (count, 2)) / 2
    return np.hstack([low, low + chance.integers(1, 5, (count, 2)) / 2])


def to_shapes(lines):
    return shapely.linestrings(lines.reshape(-1, 2, 2))


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("upright", [False, True])
def test_a_box_is_hit_by_the_lines_that_touch_it(seed, upright):
    chance = np.random.default_rng(seed)
    boxes, lines = draw_boxes(chance, 30), draw_lines(chance, 60, upright)
    expected = shapely.intersects(shapely.box(*boxes.T)[:, None], to_shapes(lines))
    assert set(zip(*(found.tolist() for found in find_hits(boxes, lines)), strict=True)) == set(
        zip(*(found.tolist() for found in np.nonzero(expected)), strict=True)
    )
    assert expected.any()
    assert not expected.all()


@pytest.mark.parametrize("seed", range(20))
def test_lines_cross_where_both_go_on_beyond_the_place(seed):
    chance = np.random.default_rng(seed)
    lines, others = draw_lines(chance, 40, False), draw_lines(chance, 6, False)
    crossed = shapely.crosses(to_shapes(lines)[:, None], to_shapes(others)).any(axis=1)
    assert are_crossed(lines, others).tolist() == crossed.tolist()


def test_where_there_is_nothing_nothing_is_met():
    lines, none = to_rows([(0.0, 0.0, 1.0, 1.0)]), to_rows([])
    assert none.shape == (0, 4)
    assert [len(found) for found in find_hits(none, lines)] == [0, 0]
    assert [len(found) for found in find_hits(lines, none)] == [0, 0]
    assert are_crossed(lines, none).tolist() == [False]
    assert are_crossed(none, lines).tolist() == []
