"""What is marked over a view, faults and keep-out, is in nobody's way and in nothing's way."""

from math import dist

import pytest

from app.demo import list_demos, read_demo
from model.check.all import check_surround
from model.check.finding import Status
from model.surround import plan_surround
from render.drawing import Fill, Pen, Placed, Polyline, Region, Sheet
from render.fault_marks import FLAG, FLAG_SIDES
from render.views import VIEWS, ViewOptions, draw_view
from tests.bench.collisions import build_random_job
from tests.collisions import list_collisions

RATIO = 12.0


def draw_marked(job, view, clearance=True):
    surround = plan_surround(job)
    findings = check_surround(surround)
    drawing = draw_view(surround, view, ViewOptions(RATIO, clearance=clearance, findings=findings))
    return drawing, [f for f in findings if f.status is Status.FAIL and f.at is not None]


def list_in_the_way(drawing, view):
    sheet = Sheet("1", view, 17, 11, (Placed(drawing, (8.0, 4.0), view),))
    return [str(found) for found in list_collisions(sheet) if found.kind != "outside"]


def list_rings(drawing):
    """Middles of the rings that numbers stand in."""
    rings = [
        mark.points
        for mark in drawing.marks
        if isinstance(mark, Polyline) and mark.pen is Pen.FAULT and len(mark.points) == FLAG_SIDES
    ]
    return [tuple(sum(c) / FLAG_SIDES for c in zip(*ring, strict=True)) for ring in rings]


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("name", list_demos())
def test_nothing_is_in_the_way_on_the_shipped_jobs_views_with_faults_and_keep_out(name, view):
    drawing, _ = draw_marked(read_demo(name), view)
    assert list_in_the_way(drawing, view) == []


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("number", [1, 5, 6])
def test_nothing_is_in_the_way_on_random_views_with_faults_and_keep_out(number, view):
    drawing, _ = draw_marked(build_random_job(number), view)
    assert list_in_the_way(drawing, view) == []


@pytest.mark.parametrize("clearance", [False, True])
@pytest.mark.parametrize("view", ["front", "side"])
def test_every_fault_has_its_number_in_a_ring_of_its_own(view, clearance):
    drawing, placed = draw_marked(read_demo("too-close"), view, clearance)
    rings = list_rings(drawing)
    assert len(rings) == len(placed) > 3
    for i, ring in enumerate(rings):
        assert all(dist(ring, other) >= 2 * FLAG * RATIO for other in rings[:i])


def test_what_the_keep_outs_outlines_mean_is_said_on_paper_ground():
    drawing, _ = draw_marked(read_demo("too-close"), "front")
    said = [mark for mark in drawing.marks if getattr(mark, "text", "").endswith(" inside")]
    assert [mark.text for mark in said] == ["no wood inside", "projection limited inside"]
    grounds = [m for m in drawing.marks if isinstance(m, Region) and m.fill is Fill.PAPER]
    assert all(any(mark.stands_for == ground.stands_for for ground in grounds) for mark in said)
