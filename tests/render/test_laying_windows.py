"""A grid of many cells is laid face by face, with the same outcome as one whose triangles are found first."""

from __future__ import annotations

import numpy as np
import pytest

import render.arrangement as arrangement
from app.demo import list_demos, read_demo
from model.surround import plan_surround
from render.visibility import FROM_ABOVE, FROM_FRONT, FROM_RIGHT, flatten_boards, project
from tests.bench.drawn import draw_design


def _look(boards, look, most: int, monkeypatch):
    monkeypatch.setattr(arrangement, "KEPT_CELLS", most)
    return project(flatten_boards(boards), look).grid.seen


@pytest.mark.parametrize("look", [FROM_FRONT, FROM_RIGHT, FROM_ABOVE])
@pytest.mark.parametrize("job", [*list_demos(), 100, 101, 106, 111])
def test_what_is_seen_is_the_same_whichever_way_faces_are_laid(job, look, monkeypatch):
    boards = plan_surround(read_demo(job) if isinstance(job, str) else draw_design(job)).boards
    one, other = (_look(boards, look, most, monkeypatch) for most in (0, 10**9))
    assert np.array_equal(one, other)
