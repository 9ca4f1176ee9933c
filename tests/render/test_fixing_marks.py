"""Anchors and a cord way over the views: they lie where the model has them, in each view's own axes."""

from __future__ import annotations

import pytest

from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.anchors import plan_anchors
from model.takeoff.cord_way import plan_cord_way
from render.drawing import Polyline, Text
from render.fixing_sheet import COLUMNS, fixing_strips, row_texts
from render.views import VIEWS, ViewOptions, draw_view


def _plan(**texts):
    return plan_surround(
        with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()])
    )


def _circles(drawing, what):
    """Middle and width of each ring that stands for `what`."""
    rings = [m.points for m in drawing.marks if isinstance(m, Polyline) and m.stands_for == what]
    spans = [([x for x, _ in ring], [y for _, y in ring]) for ring in rings]
    return [((max(x) + min(x)) / 2, (max(y) + min(y)) / 2, max(x) - min(x)) for x, y in spans]


def test_anchors_are_drawn_on_request_and_numbered_as_in_their_table():
    surround = _plan()
    assert not _circles(draw_view(surround, "front"), "anchor")
    drawing = draw_view(surround, "front", ViewOptions(anchors=True))
    planned = plan_anchors(surround).anchors
    assert [(x, y) for x, y, _ in _circles(drawing, "anchor")] == [
        pytest.approx((anchor.x, anchor.y)) for anchor in planned
    ]
    numbers = [m.text for m in drawing.marks if isinstance(m, Text) and m.stands_for == "anchor"]
    assert numbers == [str(n) for n in range(1, len(planned) + 1)]


@pytest.mark.parametrize(
    ("view", "which"), [("side", "lower"), ("vertical_section", "lower"), ("plan", "upper")]
)
def test_a_cord_hole_is_round_where_it_is_looked_through(view, which):
    surround = _plan(cord__on="yes")
    way = plan_cord_way(surround)
    (hole,) = (h for h in way.holes if h.name == which)
    x, y, z = hole.centre
    ((across, up, size),) = _circles(draw_view(surround, view), "cord way")
    assert (across, up) == pytest.approx((x, -z) if view == "plan" else (-z, y))
    assert size == pytest.approx(way.diameter, rel=0.01)


@pytest.mark.parametrize("view", VIEWS)
def test_nothing_of_a_cord_way_is_drawn_where_there_is_none(view):
    assert not [m for m in draw_view(_plan(), view).marks if getattr(m, "stands_for", "") == "cord way"]


def test_the_table_says_where_each_anchor_goes_from_centre_line_and_hearth():
    surround = _plan()
    rows = [row_texts(surround, n, a) for n, a in enumerate(plan_anchors(surround).anchors, start=1)]
    assert all(len(row) == len(COLUMNS) for row in rows)
    assert rows[0][1] == "2'-8 1/2\" left"
    assert ("on it", "4'-2 1/4\"") in [row[1:3] for row in rows]
    assert fixing_strips(surround, 9.0)
