"""Lead and asbestos are spoken of where the house and the work give cause; worked areas by hand."""

from __future__ import annotations

import pytest

from model.check.finding import Status
from model.check.house import check_house
from model.job import default_job, with_texts
from model.surround import plan_surround


def _find(**texts: str):
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return list(check_house(plan_surround(with_texts(default_job(), pairs))))


def test_where_nothing_was_said_nothing_is_asked():
    assert _find() == []
    assert _find(house__year="1978", house__painted="20") == []


@pytest.mark.parametrize(
    ("painted", "status"),
    # Two faces 8 by 48, a frieze 12 by 60, a shelf 8 by 72 in.: 5.33 + 5 + 4 = 14.33 sq ft. One face: 2.67.
    [("14.33", Status.WARN), ("2.67", Status.PASS), ("6", Status.PASS), ("", Status.UNKNOWN)],
)
def test_old_paint_over_six_square_feet_calls_for_the_renovation_rule(painted, status):
    (found,) = _find(house__year="1977", house__painted=painted)
    assert (found.status, found.limit) == (status, 6)
    assert "745.83" in found.rule


def test_old_board_is_left_alone():
    (found,) = _find(house__old_board="yes")
    assert found.status is Status.WARN
    assert "asbestos" in found.message
