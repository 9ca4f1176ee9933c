"""Signs: told apart by shape, in their place."""

import pytest

from model.check.finding import Status
from render.drawing import Drawing, Polyline
from render.extent import drawing_extent
from render.symbols import status_marks, third_angle_marks, third_angle_width


@pytest.mark.parametrize("status", Status)
def test_a_sign_stays_within_its_square(status):
    box = drawing_extent(Drawing(status_marks(status, (2, 3), 1)))
    assert box[0] >= 1.5
    assert box[1] >= 2.5
    assert box[2] <= 2.5
    assert box[3] <= 3.5


def test_each_answer_has_its_own_shape():
    outlines = {status: status_marks(status, (0, 0), 1)[0].points for status in Status}
    assert {status: len(points) for status, points in outlines.items()}[Status.FAIL] == 3
    assert len(set(outlines.values())) == len(Status)


def test_only_a_plain_circle_has_nothing_in_it():
    assert [status for status in Status if len(status_marks(status, (0, 0), 1)) == 1] == [Status.PASS]


def test_third_angle_sign_places_the_end_view_beside_the_cones_small_end():
    end, inner, cone, _ = third_angle_marks((0, 0), 1)
    assert all(isinstance(mark, Polyline) for mark in (end, inner, cone))
    middle = sum(x for x, _ in end.points) / len(end.points)
    near = min(x for x, _ in cone.points)
    small = [y for x, y in cone.points if x == near]
    large = [y for x, y in cone.points if x != near]
    assert middle < near
    assert max(small) - min(small) == pytest.approx(0.5)
    assert max(large) - min(large) == pytest.approx(1)


def test_third_angle_sign_is_as_wide_as_it_says():
    outlines = third_angle_marks((0, 0), 1)[:3]
    box = drawing_extent(Drawing(outlines))
    assert box[2] - box[0] == pytest.approx(third_angle_width(1), abs=0.01)
