"""All corners at once agree with each board's own."""

import numpy as np
import pytest

from model.corners import list_corners
from model.job import default_job, with_texts
from model.surround import plan_surround


def test_corners_of_a_surround_are_those_of_its_boards():
    surround = plan_surround(default_job())
    corners = surround.corners
    for i, board in enumerate(surround.boards):
        count = len(board.section)
        own = corners.owner == i
        assert np.allclose(corners.low[own], board.vertices[:count])
        assert np.allclose(corners.high[own], board.vertices[count:])


def test_onward_goes_once_round_each_section():
    corners = list_corners(plan_surround(default_job()).boards)
    assert sorted(corners.onward) == list(range(len(corners.owner)))
    assert (corners.owner[corners.onward] == corners.owner).all()


def test_corners_of_some_boards_are_those_that_they_have_among_all():
    boards = plan_surround(default_job()).boards
    corners = list_corners(boards)
    chosen = np.array([1, 4, 5, len(boards) - 1])
    some = corners.of(chosen)
    alone = list_corners([boards[i] for i in chosen])
    assert (some.low == alone.low).all()
    assert (some.high == alone.high).all()
    assert (some.onward == alone.onward).all()
    assert (some.owner == chosen[alone.owner]).all()
    assert (some.counts == alone.counts).all()
    assert (some.starts == alone.starts).all()


def test_no_boards_have_no_corners():
    corners = list_corners(())
    assert corners.low.shape == corners.high.shape == (0, 3)


@pytest.mark.parametrize(("left", "right"), [("1/2", "-1/4"), ("-1", "-1"), ("0", "3/8")])
def test_corners_off_the_masonry_fall_back_as_the_masonry_does_behind_each(left: str, right: str):
    job = with_texts(default_job(), [("plumb.left", left), ("plumb.right", right)])
    surround = plan_surround(job)
    corners, moved = surround.corners, surround.off_masonry().corners
    for before, after in ((corners.low, moved.low), (corners.high, moved.high)):
        back = [surround.layout.set_back(float(x), float(y)) for x, y, _ in before]
        assert (after[:, 2] == before[:, 2] + back).all()
        assert (after[:, :2] == before[:, :2]).all()
