"""Columns that step over a raised hearth's end: what is notched, how long the legs are, and what stays."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.job import default_job, with_texts, with_value
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from tests.strategies import jobs

STEPPED = ("hearth.height=8", "hearth.width=70", "column.over_edge=stepped")


def plan(*settings: str):
    return plan_surround(with_texts(default_job(), [tuple(s.split("=")) for s in settings]))


def pieces(surround, role):
    return [b for b in surround.boards if b.role == role and b.bounds[0][0] > 0]


def test_a_column_steps_only_where_it_is_asked_to_and_a_hearth_ends_under_it():
    assert plan("hearth.height=8", "hearth.width=70").layout.right.step is None
    assert plan(*STEPPED, "hearth.width=90").layout.right.step is None
    assert plan(*STEPPED, "hearth.height=0").layout.right.step is None
    step = plan(*STEPPED).layout.right.step
    assert (step.edge, step.floor) == (35, -8)


def test_a_stepped_foot_is_as_worked_out_by_hand():
    """By hand. The right column runs from 31 to 38 1/2, the hearth ends at 35, 8 over the floor; the shelf's
    underside lies 52 over the hearth.

    Inner side on the hearth: inner return and inner stile 52. Outer side on the floor: outer return and
    outer stile 52 + 8 = 60, the outer nailer too. The plinth's front is 9 wide (30 1/4 to 39 1/4) and
    8 + 8 = 16 high; from 30 1/4 to 35, 4 3/4, its lower 8 come out: 3/4 (9 x 16 - 4 3/4 x 8) = 79 1/2 cubic
    inches. Its
    inner return is 4 x 8, its outer one 4 x 16.
    """
    surround = plan(*STEPPED)
    inner, outer = sorted(pieces(surround, "column stile"), key=lambda b: b.bounds[0][0])
    assert (inner.length, outer.length) == (52, 60)
    assert [pieces(surround, f"column {which} return")[0].length for which in ("inner", "outer")] == [52, 60]
    assert sorted(b.bounds[0][1] for b in pieces(surround, "column nailer")) == [-8, 0]
    (front,) = pieces(surround, "plinth front")
    assert front.volume == pytest.approx(79.5)
    assert (front.length, front.width, front.thickness) == (16, 9, 0.75)
    returns = sorted(pieces(surround, "plinth return"), key=lambda b: b.bounds[0][0])
    assert [(b.extent("z"), b.extent("y")) for b in returns] == [(4, 8), (4, 16)]


def test_the_cut_list_names_the_notch_of_the_foot():
    notes = {c.name: c.notes for c in list_cuts(plan(*STEPPED))}
    assert 'notched 4 3/4" off one edge for 8" from one end' in notes["plinth front"]


def test_a_plain_column_has_an_l_shaped_foot():
    """Without a plinth the face itself is notched: 7 1/2 x 60 less 4 x 8."""
    surround = plan(*STEPPED, "plinth.on=no", "column.kind=plain")
    (face,) = pieces(surround, "column face")
    assert face.volume == pytest.approx(0.75 * (7.5 * 60 - 4 * 8))
    assert (face.length, face.width) == (60, 7.5)


def test_a_stile_over_the_hearths_end_is_notched():
    surround = plan(*STEPPED, "hearth.width=75", "plinth.on=no")
    stile = max(pieces(surround, "column stile"), key=lambda b: b.bounds[0][0])
    assert stile.section == ((36.75, 0), (37.5, 0), (37.5, -8), (38.5, -8), (38.5, 52), (36.75, 52))


def test_each_leg_follows_its_own_floor_and_the_shelf_does_not():
    readings = ("level.centre=30", "level.floor_left=37", "level.floor_right=39 1/2", "level.right=30 1/4")
    surround = plan(*STEPPED, *readings)
    left, right = surround.layout.sides
    assert (left.step.floor, right.step.floor, left.base, right.base) == (-7, -9.5, 0, -0.25)
    legs = {b.assembly: b.length for b in surround.boards if b.role == "column outer return"}
    assert legs == {"left column": 59, "right column": 61.5}
    inner = {b.assembly: b.length for b in surround.boards if b.role == "column inner return"}
    assert inner == {"left column": 52, "right column": 52.25}
    assert surround.layout.shelf_top == plan(*STEPPED).layout.shelf_top


@settings(max_examples=40, deadline=None)
@given(
    jobs(
        column__over_edge="stepped",
        column__taper=0.0,
        hearth__height=8.0,
        level__centre=40.0,
        plumb__left=None,
        plumb__right=None,
    ),
    st.floats(40, 56),
)
def test_a_floor_reading_never_moves_the_shelf(job, reading):
    """Of upright columns: a leaning one that a reading makes step stands straight, and its shelf with it.

    On masonry that is plumb: what leans begins to where the foot is, and the shelf's back follows it.
    """
    moved = with_value(job, "level.floor_left", reading)
    before, after = (
        sorted(
            (b.role, np.round(b.bounds, 9).tolist()) for b in plan_surround(j).boards if b.assembly == "shelf"
        )
        for j in (job, moved)
    )
    assert before == after


@pytest.mark.parametrize(
    ("settings", "reason"),
    [
        (("hearth.width=76 1/2",), "under one of the column's sides"),
        (("hearth.width=63",), "under one of the column's sides"),
        (("hearth.depth=4",), "does not reach out as far"),
        (
            ("level.centre=30", "level.floor_left=30 1/4", "level.floor_right=30 1/4", "hearth.height=2"),
            "no lower",
        ),
        (("column.kind=fluted", "plinth.on=no", "flute.stop=0"), "flutes run down"),
        (("panel.reveal=1/4", "plinth.on=no"), "rebated"),
        (("column.kind=fluted", "plinth.on=no", "flute.stop=0"), "flutes run down to its foot"),
    ],
)
def test_where_a_foot_cannot_step_it_stays_level_and_it_is_said(settings, reason):
    layout = plan(*STEPPED, *settings).layout
    assert layout.right.step is None
    (shortfall,) = (s for s in layout.shortfalls if s.path == "column.over_edge")
    assert reason in shortfall.reason


def test_a_floor_far_off_is_a_slip_of_the_tape():
    layout = plan(*STEPPED, "level.centre=30", "level.floor_right=50").layout
    assert layout.right.step.floor == -14
    assert [s.path for s in layout.shortfalls] == ["level.floor_right"]


def test_the_baseboard_beside_a_step_begins_at_the_hearths_end():
    surround = plan(*STEPPED, "facing.width=60", "baseboard.height_right=5", "baseboard.meets=notched")
    (board,) = surround.layout.obstacles
    assert (board.x[0], board.y, board.met) == (35, (-8, -3), "notched")
    (outer,) = pieces(surround, "column outer return")
    assert outer.section[:3] == ((-8, 0.5), (-3, 0.5), (-3, 0))
