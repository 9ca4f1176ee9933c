"""A way for cords: what passes, what burns, and what the electrical code says of it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from model.board import block
from model.build.cord_way import list_pierced, plan_cord_way
from model.check.all import check_surround
from model.check.cord_way import check_cord_way, is_inside
from model.check.finding import Status
from model.job import default_job, with_texts
from model.surround import Surround, plan_surround
from model.takeoff.cut_list import list_cuts
from tests.planned import cuts_of, plan_of
from tests.strategies import jobs
from tests.wood import PINE


def _plan(**texts):
    settings = {"cord.on": "yes"} | {path.replace("__", "."): text for path, text in texts.items()}
    return plan_surround(with_texts(default_job(), settings.items()))


def _found(surround):
    return [f for f in check_surround(surround) if f.check == "cord way"]


def test_nothing_is_said_or_bored_where_no_cords_run():
    surround = plan_surround(default_job())
    assert plan_cord_way(surround) is None
    assert not _found(surround)
    assert "access panel" not in {board.role for board in surround.boards}


def test_a_mains_plug_passes_between_the_nailers_of_a_usual_column():
    """6 in. between the returns less two nailers of 1 1/2: 3 in.; 4 in. out less frame and panel: 3 in."""
    surround = _plan()
    way = plan_cord_way(surround)
    assert way.free == pytest.approx((3, 3))
    assert way.passes
    # 28 by 26 mm is 38.21 mm across, 1.504 in.; with 1/8 in. to spare 1.629, and the next eighth is 1 3/4.
    assert way.diameter == 1.75
    assert not [f for f in _found(surround) if f.status is Status.FAIL]


def test_a_plug_wider_than_the_column_leaves_free_cannot_pass():
    surround = _plan(cord__plug="own", cord__own_width="3 1/2", cord__own_height="3 1/8")
    failed = [f for f in _found(surround) if f.status is Status.FAIL and f.limit is not None]
    assert [(f.measured, f.limit) for f in failed] == [(pytest.approx(3), 3.5)]


def test_a_hole_that_would_break_out_of_a_shallow_return_is_found():
    surround = _plan(column__projection="2", cord__plug="own", cord__own_width="1 1/2", cord__own_height="1")
    assert any("breaks out of" in f.message for f in _found(surround))


@pytest.mark.parametrize(
    ("frieze_over", "status"),
    # Shelf's underside at 52; 9 in. of frieze end 13 in. over the opening, 18 in. end 4 in. over it.
    [("9", None), ("18", Status.FAIL), ("13", Status.WARN)],
)
def test_a_way_through_the_zone_round_the_opening_is_found(frieze_over, status):
    surround = _plan(cord__place="frieze", frieze__height=frieze_over, frieze__projection="5")
    crossing = [f.status for f in _found(surround) if "zone round the opening" in f.message]
    assert crossing == ([status] if status else [])


@pytest.mark.parametrize(("plug", "words"), [("mains_plug", "400.12"), ("hdmi_body", "Article 725")])
def test_the_electrical_code_is_named_for_what_the_plug_belongs_to(plug, words):
    cautions = [f for f in _found(_plan(cord__plug=plug)) if f.rule == "NEC"]
    assert [words in f.source for f in cautions] == [True]
    assert cautions[0].status is Status.WARN


@pytest.mark.parametrize("place", ["left", "right"])
def test_both_holes_lie_in_the_asked_columns_outer_side_and_in_the_shelf(place):
    surround = _plan(cord__place=place)
    lower, upper = plan_cord_way(surround).holes
    pierced = [surround.boards[i] for i in list_pierced(surround.boards, lower)]
    shown = {(b.role, b.assembly) for b in pierced if b.role != "column nailer"}
    assert shown == {("column outer return", f"{place} column")}
    assert {b.assembly for i in list_pierced(surround.boards, upper) if (b := surround.boards[i])} == {
        "shelf"
    }


def test_the_cut_list_says_what_to_bore_and_what_to_saw_out():
    notes = {cut.name: cut.notes for cut in list_cuts(_plan())}
    # The hole lies right behind the panel's back, 3 in. out: its middle is half of 1 3/4 nearer the wall.
    words = 'bore 1 3/4" dia. for cords, centre 1\'-0" from its lower end and 2 1/8" from its back edge'
    assert words in notes["column outer return"]
    assert "notch for a hole of 1 3/4" in notes["column nailer"]
    assert 'loose, 1/16" free on each side, held with hook-and-loop tape' in notes["access panel"]
    assert "saw out" in notes["column panel"]
    assert "bore" in notes["shelf top"]


def test_the_loose_panel_is_as_large_as_its_opening_less_the_clearance_all_round():
    surround = _plan(cord__panel_clearance="1/8")
    (panel,) = (b for b in surround.boards if b.role == "access panel")
    x0, y0, x1, y1 = surround.layout.right.frame.openings[0]
    assert (panel.bounds[0][:2], panel.bounds[1][:2]) == (
        (x0 + 0.125, y0 + 0.125), (x1 - 0.125, y1 - 0.125),
    )  # fmt: skip


def test_where_no_panel_can_lift_out_it_is_said():
    assert any("lift out" in f.message for f in _found(_plan(panel__reveal="1/8")))


def test_a_point_is_inside_an_outline_or_not():
    square = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))
    assert is_inside((1.0, 1.0), square)
    assert not is_inside((3.0, 1.0), square)
    assert not is_inside((1.0, 3.0), square)


@settings(max_examples=60, deadline=None)
@given(jobs(cord__on=True))
def test_every_job_in_range_has_its_way_planned_checked_and_listed(job):
    surround = plan_of(job)
    way = plan_cord_way(surround)
    assert all(size >= 0 for size in way.free)
    assert check_cord_way(surround)
    assert cuts_of(job)


def test_a_hole_that_comes_up_under_what_stands_on_the_shelf_is_found():
    """A block in place of an overmantel, right over the hole; moved aside it is out of the way."""
    surround = _plan()
    x, top, z = plan_cord_way(surround).holes[1].centre
    for aside, expected in ((0.0, True), (10.0, False)):
        span = (x - 1 - aside, x + 1 - aside)
        stands = block("block", "overmantel", PINE, "y", span, (top, top + 5), (z - 1, z + 1))
        found = _found(Surround(surround.job, surround.layout, (*surround.boards, stands)))
        assert any("comes up under the overmantel" in f.message for f in found) == expected
