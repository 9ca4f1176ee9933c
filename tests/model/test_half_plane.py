"""A ring cut along an axis keeps its area, beside GEOS's own."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import Polygon, box

from model.half_plane import keep_side

FAR = 100.0
STEPS = ((0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (2.0, 3.0), (2.0, 5.0), (0.0, 5.0))


@pytest.mark.parametrize(
    ("axis", "at", "above", "left"),
    [
        (0, 3.0, False, {(0, 0), (3, 0), (3, 3), (2, 3), (2, 5), (0, 5)}),
        (0, 2.0, True, {(2, 0), (4, 0), (4, 3), (2, 3)}),
        (0, 2.0, False, {(0, 0), (2, 0), (2, 5), (0, 5)}),
        (1, 3.0, True, {(2, 3), (2, 5), (0, 5), (0, 3)}),
        (1, 5.0, True, set()),
        (1, 5.0, False, set(STEPS)),
    ],
)
def test_what_is_left_is_told_by_its_corners(axis, at, above, left):
    assert set(keep_side(STEPS, axis, at, above)) == left


@st.composite
def _stairs(draw: st.DrawFn) -> tuple[tuple[float, float], ...]:
    """An upright piece with a front and a back edge of steps, as notches leave it."""
    levels = sorted(draw(st.sets(st.integers(0, 12), min_size=2, max_size=6)))
    outs = draw(st.lists(st.integers(1, 6), min_size=len(levels) - 1, max_size=len(levels) - 1))
    edge: list[tuple[float, float]] = []
    for low, high, out in zip(levels, levels[1:], outs, strict=False):
        edge += [(float(out), float(low)), (float(out), float(high))]
    return tuple(dict.fromkeys([(0.0, float(levels[0])), *edge, (0.0, float(levels[-1]))]))


@given(_stairs(), st.integers(0, 12), st.booleans())
def test_a_stepped_piece_has_no_spike_where_it_is_cut_at_any_level(ring, level, above):
    whole = Polygon(ring)
    assume(whole.is_valid)
    left = Polygon(keep_side(ring, 1, float(level), above))
    assert left.is_valid
    side = box(-FAR, level, FAR, FAR) if above else box(-FAR, -FAR, FAR, level)
    assert left.symmetric_difference(whole.intersection(side)).area == pytest.approx(0.0, abs=1e-9)
