"""Every board has its own tightest place, and the part's finding is that of its tightest board."""

from __future__ import annotations

from math import isnan

import pytest
from hypothesis import given, settings

from app.demo import read_demo
from model.check.board_distance import list_board_distances
from model.check.finding import Status
from model.check.mantel import CHECK as MANTEL
from model.job import with_texts
from model.surround import plan_surround
from tests.planned import findings_of, plan_of
from tests.wood import place_at_corner, place_beside, surround_of
from tests.wrong_designs import designs


@settings(max_examples=25)
@given(designs())
def test_a_part_is_over_just_when_one_of_its_boards_is(job):
    surround = plan_of(job)
    boards = list_board_distances(surround)
    if surround.job.site.fireplace == "not_in_use":
        return
    over = {f.part for f in findings_of(job) if f.check == MANTEL and f.status is Status.FAIL}
    assert {board.part for board in boards if board.status is Status.FAIL} == over


def test_each_board_is_measured_where_it_lies():
    surround = plan_surround(read_demo("too-close"))
    found = list_board_distances(surround)
    assert [board.mark for board in found] == list(surround.marks)
    for one, board in zip(found, surround.boards, strict=True):
        low, high = board.bounds
        assert all(a - 1e-6 <= x <= b + 1e-6 for a, x, b in zip(low, one.at, high, strict=True))
    plinth = min((b for b in found if b.part == "left plinth"), key=lambda b: b.measured)
    assert (plinth.measured, plinth.needed) == (5.75, 12)


def test_wood_clear_only_straight_to_the_corner_has_both_measures():
    """5 and 5 in. off the corner: 7.071 straight allows 3/4 in. of projection, 5 allows none."""
    (found,) = list_board_distances(surround_of(place_at_corner(0.75, 5, 5), site__rule="irc"))
    assert (found.measured, found.square, found.needed) == (pytest.approx(7.0711, abs=1e-4), 5, 6)
    assert found.is_disputed
    assert found.status is Status.WARN
    (beside,) = list_board_distances(surround_of(place_beside(0.75, 7), site__rule="irc"))
    assert (beside.measured, beside.square, beside.is_disputed) == (7, 7, False)


def test_where_no_rule_is_known_there_is_none_and_where_rows_lack_nothing_is_made_up():
    assert list_board_distances(plan_surround(with_texts(read_demo("gas"), [("site.rule", "irc")]))) == ()
    legless = plan_surround(with_texts(read_demo("gas"), [("chart.legs", "")]))
    assert any(isnan(board.measured) for board in list_board_distances(legless))
