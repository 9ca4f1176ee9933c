"""What follows from a job agrees with the job, by sums a person can follow."""

from __future__ import annotations

import pytest

from model.build.layout import lay_out
from model.derived import list_derived
from model.job import Job, default_job, with_texts, with_value
from model.parameters import BY_PATH, TABLE


def _derived(job: Job) -> dict[str, float | None]:
    return {item.key: item.value for item in list_derived(lay_out(job.site, job.design), job.design.cord)}


def test_the_default_job_adds_up_as_by_hand():
    # invented: opening 36 by 30, margin 13, column 7 1/2, plinth 3/4 round it, overhang 3, frieze 9,
    # shelf 2 thick with its top at 54, hearth flush, ceiling 96
    assert _derived(default_job()) == pytest.approx({
        "facing.margin_above": 54 - 2 - 9 - 30,
        "room.over_shelf": 96 - 54,
        "column.tall": 54 - 2,
        "column.tall_left": None,
        "column.tall_right": None,
        "column.leg_left": None,
        "column.leg_right": None,
        "column.across": 36 + 2 * 13 + 2 * 7.5,
        "plinth.wide": 7.5 + 2 * 0.75,
        "plinth.wide_left": None,
        "plinth.wide_right": None,
        "frieze.over_hearth": 54 - 2 - 9,
        "frieze.across": 36 + 2 * 13,
        "shelf.across": 36 + 2 * 13 + 2 * 7.5 + 2 * 3,
        "shelf.over_floor": 54,
        "shelf.under": 52,
        "cord.hole": None,
    })  # fmt: skip


def test_a_raised_hearth_raises_the_shelf_over_the_floor():
    raised = with_value(default_job(), "hearth.height", 12.0)
    assert _derived(raised)["shelf.over_floor"] == 66
    assert _derived(raised)["shelf.under"] == 52


def test_columns_on_an_uneven_floor_are_told_apart():
    # invented: the right foot lies an inch further below the level line than the hearth and the left foot
    job = default_job()
    for path, reading in (("level.centre", 40.0), ("level.left", 40.0), ("level.right", 41.0)):
        job = with_value(job, path, reading)
    derived = _derived(job)
    assert derived["column.tall"] is None
    assert derived["column.tall_left"] == pytest.approx(52)
    assert derived["column.tall_right"] == pytest.approx(53)


def test_plinths_of_columns_that_are_not_as_wide_are_told_apart():
    derived = _derived(with_value(default_job(), "column.width_left", 6.0))
    assert derived["plinth.wide"] is None
    assert (derived["plinth.wide_left"], derived["plinth.wide_right"]) == (6 + 2 * 0.75, 7.5 + 2 * 0.75)


def test_a_frieze_over_the_opening_leaves_less_than_nothing():
    low = with_value(default_job(), "opening.height", 44.0)
    assert _derived(low)["facing.margin_above"] == -1


def test_nothing_derived_is_called_like_a_parameter_and_each_has_a_group_of_the_table():
    job = default_job()
    items = list_derived(lay_out(job.site, job.design), job.design.cord)
    assert len({item.key for item in items}) == len(items)
    assert not {item.key for item in items} & set(BY_PATH)
    assert {item.group for item in items} <= {row.group for row in TABLE}


def test_plinths_that_are_left_away_have_no_width():
    assert _derived(with_value(default_job(), "plinth.on", False))["plinth.wide"] is None


def test_the_hole_for_a_plug_of_ones_own_is_its_diagonal_and_what_it_is_wider_by():
    """1 1/2 by 2 has a diagonal of 2 1/2; 1/8 more is 2 5/8."""
    settings = [
        "cord.on=yes",
        "cord.plug=own",
        "cord.own_width=1 1/2",
        "cord.own_height=2",
        "cord.clearance=1/8",
    ]
    job = with_texts(default_job(), [tuple(setting.split("=")) for setting in settings])
    assert _derived(job)["cord.hole"] == 2.625
