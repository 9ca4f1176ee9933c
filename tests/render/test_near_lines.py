"""What is left of lines that keep clear of others, by hand and against GEOS's own buffer."""

from __future__ import annotations

import numpy as np
import pytest
from shapely import LineString, MultiLineString, linestrings, multilinestrings

from render.near_lines import keep_apart


def test_a_line_that_crosses_another_leaves_a_gap_on_both_sides_of_it() -> None:
    left = keep_apart(LineString([(0, 0), (10, 0)]), LineString([(4, -5), (4, 5)]), 0.5)
    assert [list(part.coords) for part in left.geoms] == [[(0, 0), (3.5, 0)], [(4.5, 0), (10, 0)]]


def test_a_line_beside_another_goes_as_far_as_its_round_ends() -> None:
    """At 0.3 from it a circle of 0.5 about its end reaches 0.4 on."""
    left = keep_apart(LineString([(0, 0.3), (10, 0.3)]), LineString([(2, 0), (3, 0)]), 0.5)
    assert left.bounds == pytest.approx((0, 0.3, 10, 0.3))
    assert left.length == pytest.approx(10 - 1.8)


def test_a_line_that_lies_on_another_is_gone() -> None:
    line = LineString([(0, 0), (3, 4), (5, 4)])
    assert keep_apart(line, line, 0.1).is_empty


def test_what_is_far_from_it_stays_as_it_is() -> None:
    line = LineString([(0, 0), (3, 4), (5, 4)])
    assert keep_apart(line, LineString([(0, 9), (9, 9)]), 0.1).length == line.length


@pytest.mark.parametrize("seed", range(40))
def test_any_lines_keep_as_far_apart_as_a_buffer_says(seed: int) -> None:
    random = np.random.default_rng(seed)
    own, other = (multilinestrings(linestrings(random.uniform(0, 10, (6, 2, 2)))) for _ in range(2))
    expected = own.difference(other.buffer(0.5, quad_segs=256))
    assert keep_apart(own, other, 0.5).length == pytest.approx(expected.length, abs=1e-3)


def test_a_line_with_several_parts_has_no_piece_from_one_to_the_next() -> None:
    lines = MultiLineString([[(0, 0), (1, 0)], [(5, 0), (6, 0)]])
    assert keep_apart(lines, LineString([(3, -1), (3, 1)]), 0.5).length == 2
