"""Spans and boxes found by sweeping are those found by trying all pairs."""

from __future__ import annotations

from itertools import combinations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from model.takeoff.spans import list_meeting, list_within

PLACES = st.integers(0, 8).map(float)
SPANS = st.tuples(PLACES, PLACES).map(sorted)


@given(st.lists(SPANS, max_size=8), st.lists(PLACES, max_size=8))
def test_numbers_within_spans_are_those_that_trying_all_pairs_finds(spans, places):
    low, high = np.array(spans, dtype=float).reshape(-1, 2).T
    found = list_within(low, high, np.array(places, dtype=float))
    tried = [(i, j) for i in range(len(spans)) for j, p in enumerate(places) if low[i] <= p <= high[i]]
    assert sorted(zip(*map(list, found), strict=True)) == tried


@given(st.lists(st.tuples(SPANS, SPANS, SPANS), max_size=8))
def test_boxes_that_meet_are_those_that_trying_all_pairs_finds(boxes):
    low, high = np.moveaxis(np.array(boxes, dtype=float).reshape(-1, 3, 2), 2, 0)
    found = list(zip(*map(list, list_meeting(low, high)), strict=True))
    tried = [
        (i, j)
        for i, j in combinations(range(len(boxes)), 2)
        if (low[i] <= high[j]).all() and (low[j] <= high[i]).all()
    ]
    assert found == tried
