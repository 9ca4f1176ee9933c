"""The small drawing of a finding shows the distances it speaks of, true to the model."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from app.demo import read_demo
from model.check.all import check_surround
from model.job import default_job, with_texts
from model.surround import plan_surround
from render.drawing import Dimension, Drawing, Lines, Pen, Polyline
from render.explained import HIGH, WIDE, draw_explanation
from render.extent import drawing_extent
from tests.planned import pictures_of
from tests.strategies import jobs


def _draw(name: str, part: str, *texts: tuple[str, str]) -> Drawing:
    surround = plan_surround(with_texts(read_demo(name), texts))
    finding = next(f for f in check_surround(surround) if f.part == part and f.check != "fit")
    return draw_explanation(surround, finding)


def _texts(drawing: Drawing) -> list[str]:
    return [mark.text for mark in drawing.marks if isinstance(mark, Dimension)]


def test_a_plinths_distance_and_projection_are_measured():
    drawing = _draw("too-close", "left plinth")
    assert _texts(drawing) == ['5 3/4"', '4 3/4"']
    assert [mark.measure for mark in drawing.marks if isinstance(mark, Dimension)] == pytest.approx(
        [5.75, 4.75]
    )
    assert any(isinstance(mark, Lines) and mark.pen is Pen.FAULT for mark in drawing.marks)
    assert any(isinstance(mark, Polyline) and mark.pen is Pen.CLEARANCE for mark in drawing.marks)


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_plinth_and_the_baseboard_beside_it_are_measured_on_their_own_side(side: str):
    texts = [("facing.width", "50"), (f"baseboard.height_{side}", "9"), ("plinth.height", "8")]
    surround = plan_surround(with_texts(default_job(), texts))
    (finding,) = (f for f in check_surround(surround) if f.check == "plinth height")
    measured = [mark for mark in draw_explanation(surround, finding).marks if isinstance(mark, Dimension)]
    assert [mark.measure for mark in measured] == pytest.approx([8, 9])
    assert all(mark.line < 0 if side == "left" else mark.line > 0 for mark in measured)


@pytest.mark.parametrize(("side", "other"), [("left", "right"), ("right", "left")])
def test_a_plinth_that_the_frieze_comes_down_to_is_measured_where_the_floor_is_higher(side: str, other: str):
    low = [("opening.height", "24"), ("shelf.height", "36"), ("plinth.height", "24"), ("level.centre", "30")]
    texts = [*low, (f"level.{side}", "29"), (f"level.{other}", "30")]
    surround = plan_surround(with_texts(default_job(), texts))
    (finding,) = (f for f in check_surround(surround) if f.path == "plinth.height" and f.check == "fit")
    (height,) = (mark for mark in draw_explanation(surround, finding).marks if isinstance(mark, Dimension))
    assert height.measure == pytest.approx(finding.limit)
    assert height.line < 0 if side == "left" else height.line > 0


def test_a_shelf_that_reaches_further_on_one_side_is_measured_from_end_to_end():
    texts = [("facing.height", "70"), ("shelf.overhang_left", "8"), ("shelf.overhang_right", "1")]
    surround = plan_surround(with_texts(read_demo("brick"), texts))
    (finding,) = (f for f in check_surround(surround) if f.part == "shelf" and "ends stand" in f.message)
    (whole,) = (mark for mark in draw_explanation(surround, finding).marks if isinstance(mark, Dimension))
    ends = (board.bounds for board in surround.boards if board.assembly == "shelf")
    (left, _, _), (right, _, _) = (
        f(points) for f, points in zip((min, max), zip(*ends, strict=True), strict=True)
    )
    assert (whole.first[0], whole.second[0]) == pytest.approx((left, right))


def test_a_frieze_is_measured_up_from_the_opening():
    assert _texts(_draw("too-close", "frieze")) == ['7"', '3"']


def test_a_hearth_is_drawn_from_above_with_what_it_lacks():
    assert _texts(_draw("too-close", "hearth, front")) == ["1'-4\"", "1'-8\""]
    slips = _draw("too-close", "hearth, front", ("facing.added", "1"))
    assert _texts(slips)[0] == "1'-3\""


@given(jobs())
@settings(max_examples=20)
def test_any_finding_of_any_job_is_drawn_within_its_room(job):
    for drawing in pictures_of(job):
        x0, y0, x1, y1 = drawing_extent(drawing)
        assert x1 - x0 <= 1.3 * WIDE * drawing.ratio
        assert y1 - y0 <= 1.3 * HIGH * drawing.ratio
