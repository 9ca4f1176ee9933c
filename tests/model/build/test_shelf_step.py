"""The shelf's front stepped forward over the columns: figures worked by hand for the default job.

There the columns run from 31 to 38 1/2 in. off the centre line and the shelf overhangs them by 3.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.board import Board
from model.build.layout import lay_out
from model.build.surround import build_surround
from model.job import default_job, with_texts
from tests.model.test_boards_in_space import _check
from tests.strategies import jobs


def build(*settings: str):
    job = with_texts(default_job(), [tuple(setting.split("=")) for setting in settings])
    layout = lay_out(job.site, job.design)
    return layout, build_surround(job.site, job.design, layout)


def of_role(boards, role) -> list[Board]:
    return [board for board in boards if board.role == role]


def test_the_front_breaks_forward_over_each_column_and_its_overhangs():
    layout, boards = build("shelf.step=1 1/2")
    assert (layout.shelf_front, layout.shelf_foremost) == (7, 8.5)
    assert layout.right.break_inner == 31 - 3
    fronts = of_role(boards, "edge band front") + of_role(boards, "edge band column front")
    assert sorted((b.bounds[0][0], b.bounds[1][0], b.bounds[1][2]) for b in fronts) == [
        (-41.5, -28, 8.5),
        (-28.75, 28.75, 7),
        (28, 41.5, 8.5),
    ]


def test_the_edge_band_is_mitred_in_and_out_at_each_break():
    _, boards = build("shelf.step=1 1/2")
    returns = of_role(boards, "edge band return")
    assert [(b.length, b.low.mitre, b.high.mitre) for b in returns] == [(2.25, 45, 45)] * 2
    assert all(b.low.slope_u == b.high.slope_u or b.low.slope_v == b.high.slope_v for b in returns)


def test_top_and_underside_are_each_sawn_from_one_board_behind_the_band():
    _, boards = build("shelf.step=1 1/2")
    (top,) = of_role(boards, "shelf top")
    assert top.section_area == 83 * 8.5 - 2 * 0.75 * 8.5 - 0.75 * 81.5 - 1.5 * 57.5
    assert top.section == of_role(boards, "shelf underside")[0].section
    assert (top.length, top.width, top.thickness) == (81.5, 7.75, 0.75)


def test_a_plank_is_sawn_to_the_breaks_from_its_foremost_board():
    _, boards = build("shelf.kind=plank", "shelf.thickness=3", "shelf.step=2", "shelf.overhang_front=9")
    back, front = sorted(of_role(boards, "shelf plank"), key=lambda board: board.bounds[0][2])
    assert (back.width, front.width) == (7.5, 7.5)
    assert front.section_area == 83 * 7.5 - 56 * 2
    assert front.length_axis == "x"


def test_the_hollow_in_a_deep_break_is_closed_behind_its_band():
    _, boards = build("shelf.step=3", "shelf.thickness=4", "shelf.edge_height=4")
    strips = of_role(boards, "shelf front strip") + of_role(boards, "shelf break strip")
    assert sorted(b.bounds[1][2] for b in strips) == [7 - 0.75, 10 - 0.75, 10 - 0.75]
    assert [(b.length, b.bounds[0][2]) for b in of_role(boards, "shelf break rib")] == [(1.5, 7 - 0.75)] * 4


def test_a_narrower_overhang_narrows_the_break_on_its_own_side_alone():
    layout, _ = build("shelf.step=1", "shelf.overhang_left=1")
    assert (layout.left.break_inner, layout.right.break_inner) == (30, 28)


def test_the_bed_mould_round_the_columns_may_be_as_large_as_the_step_leaves_room_for():
    straight, _ = build("shelf.overhang_front=1", "bed_mould.size=2")
    stepped, _ = build("shelf.overhang_front=1", "bed_mould.size=2", "shelf.step=1")
    assert straight.mould_size < 2
    assert stepped.mould_size == 2


@pytest.mark.parametrize(
    ("settings", "reason"),
    [
        (["shelf.step=1/8"], "that is too little to mitre round"),
        (
            ["shelf.step=1", "shelf.overhang_end=24", "column.margin=6"],
            "the columns' overhangs leave nothing",
        ),
        (["shelf.step=1", "shelf.kind=plank", "shelf.edge_profile=bevel"], "the worked edge of a plank"),
        (["shelf.step=1", "column.projection=2", "frieze.projection=2", "shelf.overhang_front=0"], "shallow"),
    ],
)
def test_what_cannot_be_stepped_runs_straight_and_says_why(settings, reason):
    layout, _ = build(*settings)
    assert layout.shelf_step == 0
    (shortfall,) = [s for s in layout.shortfalls if s.path == "shelf.step"]
    assert reason in shortfall.reason


@settings(max_examples=25, deadline=None)
@given(st.floats(0.25, 4).flatmap(lambda step: jobs(shelf__step=step, shelf__edge_profile="square")))
def test_no_stepped_shelf_has_boards_that_overlap_or_hang_loose(job):
    _check(job)
