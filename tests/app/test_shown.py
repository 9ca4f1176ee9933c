"""Drawings stand beside each other on the sheet, and what an edit left as it was is not made ready again."""

from __future__ import annotations

from itertools import pairwise

import pytest

from app.shown import set_out
from model.job import default_job, read_value, with_value
from model.surround import plan_surround
from render.drawing import Drawing
from render.views import VIEWS, ViewOptions, draw_views

RATIO = 12.0


def _draw(**more: float) -> list[tuple[str, Drawing]]:
    job = default_job()
    for path, off in more.items():
        path = path.replace("__", ".")
        job = with_value(job, path, read_value(job, path) + off)
    return list(zip(VIEWS, draw_views(plan_surround(job), VIEWS, ViewOptions(RATIO)), strict=True))


def test_views_stand_clear_of_each_other_in_their_order():
    shown = set_out(_draw())
    assert [view.name for view in shown] == list(VIEWS)
    for left, right in pairwise(shown):
        assert right.box.left() - left.box.right() == pytest.approx(0.5 * RATIO)


def test_a_view_that_an_edit_leaves_as_it_was_is_not_made_ready_again():
    before = set_out(_draw())
    after = set_out(_draw(column__width=0.5), before)
    kept = {new.name for old, new in zip(before, after, strict=True) if new.gathered is old.gathered}
    assert kept == {new.name for old, new in zip(before, after, strict=True) if new.drawing == old.drawing}
    assert "side" in kept
    assert "front" not in kept


def test_a_view_of_another_name_is_made_ready_even_where_it_looks_alike(dressed: object):
    (_, drawing), *_ = _draw()
    (before,) = set_out([("front", drawing)])
    (after,) = set_out([("other", drawing)], [before])
    assert after.gathered is not before.gathered
    assert after.box == before.box
