"""Anchors and a cord way over the views: they lie where the model has them, in each view's own axes."""

from __future__ import annotations

from math import dist

import pytest

from model.build.cord_way import plan_cord_way
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.anchors import plan_anchors
from render.drawing import Hatch, Lines, Pen, Polyline, Text
from render.fixing_sheet import COLUMNS, fixing_strips, list_said, row_texts
from render.hatching import hatch_segments
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


@pytest.mark.parametrize(("view", "which"), [("side", "lower"), ("plan", "upper")])
def test_a_hole_that_shows_is_drawn_by_its_rim_as_large_as_it_is_bored(view, which):
    """7/8 in. from the middle, 5 1/2 in. round, none of it dashed."""
    surround = _plan(cord__on="yes")
    (hole,) = (h for h in plan_cord_way(surround).holes if h.name == which)
    drawing = draw_view(surround, view)
    assert not _circles(drawing, "cord way")
    x, y, z = hole.centre
    middle = (x, -z) if view == "plan" else (-z, y)
    lines = [s for m in drawing.marks if isinstance(m, Lines) and m.pen is not Pen.CENTRE for s in m.segments]
    rim = [s for s in lines if all(abs(dist(middle, end) - 0.875) < 0.01 for end in (s[:2], s[2:]))]
    # What is longer than a side, 0.23 in., is the edge of the nailer that shows through the hole.
    sides = [size for s in rim if (size := dist(s[:2], s[2:])) < 0.25]
    # Where its edge is parted, a bit of it counts as well; a side of the rim is one in 24.
    assert sum(sides) == pytest.approx(5.498, rel=0.03)


def test_a_hole_hidden_behind_the_near_column_is_dashed():
    surround = _plan(cord__on="yes", cord__place="left")
    way = plan_cord_way(surround)
    (hole,) = (h for h in way.holes if h.name == "lower")
    _, y, z = hole.centre
    drawing = draw_view(surround, "side")
    ((across, up, size),) = _circles(drawing, "cord way")
    assert (across, up) == pytest.approx((-z, y))
    assert size == pytest.approx(way.diameter, rel=0.01)
    pens = {m.pen for m in drawing.marks if isinstance(m, Polyline) and m.stands_for == "cord way"}
    assert pens == {Pen.GUIDE}


def test_a_hole_cut_away_with_what_it_is_in_is_not_drawn():
    """The section's plane is far to the left of the right column, seen from the right."""
    assert not _circles(draw_view(_plan(cord__on="yes"), "vertical_section"), "cord way")


def test_what_is_sawn_out_behind_the_loose_panel_is_dashed_in_the_front_view():
    surround = _plan(cord__on="yes")
    ((_, _, wide),) = _circles(draw_view(surround, "front"), "cord way")
    x0, _, x1, _ = surround.layout.right.frame.openings[0]
    assert wide == pytest.approx(x1 - x0 - 2 / 16 - 2 * 0.75)


def test_hatching_leaves_the_hole_out_of_a_cut_board():
    """A hole in the frieze lies in the section's plane: 1 3/4 in. of the soffit's cut face are air."""
    surround = _plan(cord__on="yes", cord__place="frieze", frieze__projection="5")
    (hole,) = (h for h in plan_cord_way(surround).holes if h.name == "lower")
    _, y, z = hole.centre
    strokes = [s for m in draw_view(surround, "vertical_section").marks if isinstance(m, Hatch)
               for s in hatch_segments(m)]  # fmt: skip
    level = [
        (a + (y + 0.3 - b) / (d - b) * (c - a)) for a, b, c, d in strokes if min(b, d) < y + 0.3 < max(b, d)
    ]
    wood = [h for h in level if -5 < h < 0]
    assert wood
    assert not [h for h in wood if abs(h + z) < 0.85]
    assert [h for h in wood if abs(h + z) > 0.9]


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


def test_the_sheet_says_what_finds_no_anchor_and_what_to_take():
    """A count before a diameter is parted from it: "22 1/4 in." would be read as one length."""
    said = list_said(_plan())
    assert any(text.startswith("N1b finds no sound place for an anchor") for text in said)
    assert '18 \N{MULTIPLICATION SIGN} 1/4 in. masonry screws, 3 1/4" long' in said[-1]
    assert "maker" in said[-1]
