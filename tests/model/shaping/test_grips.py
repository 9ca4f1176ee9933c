"""Edges that can be taken hold of: each goes as far as it says, and each has a name of its own."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.demo import list_demos, read_demo
from model.errors import Refused
from model.job import Job, default_job, with_value
from model.shaping.grip import ACROSS, UP, Grip, move_edge
from model.shaping.grips import find_grip, follow_grip, list_grips
from model.surround import Surround, plan_surround
from tests.planned import plan_of
from tests.strategies import jobs

VIEWS = ("front", "side")
SMALL = 1 / 64


def _with(job: Job, **values: object) -> Job:
    for path, value in values.items():
        job = with_value(job, path.replace("__", "."), value)
    return job


def _grips(job: Job, view: str = "front") -> tuple[Grip, ...]:
    return list_grips(plan_surround(job), view)


def _named(job: Job, name: str, view: str = "front") -> Grip:
    return next(grip for grip in _grips(job, view) if grip.name == name)


def _paths(job: Job, view: str = "front") -> set[str]:
    return {grip.path for grip in _grips(job, view)}


def _moves_as_it_says(job: Job, here: Surround, grip: Grip) -> bool | None:
    """Whether the edge goes where `factor` says; None where the change makes something else give way too."""
    try:
        there = plan_surround(move_edge(job, grip, grip.value + SMALL))
    except Refused:
        return None
    if [(s.path, s.built) for s in there.layout.shortfalls] != [
        (s.path, s.built) for s in here.layout.shortfalls
    ]:
        return None
    if any(s.path == grip.path or s.path in grip.also for s in there.layout.shortfalls):
        return None
    after = find_grip(list_grips(there, grip.view), grip.key)
    if after is None or len(after.segments) != len(grip.segments):
        return None
    # A column's taper moves the top of its edge; what lies below follows less.
    gone = [
        after.segments[i][end] - grip.segments[i][end]
        for i in range(len(grip.segments))
        for end in ((grip.way + 2,) if grip.path == "column.taper" else (grip.way, grip.way + 2))
    ]
    return all(abs(off - SMALL / grip.factor) < 1e-6 for off in gone)


@pytest.mark.parametrize("name", list_demos())
@pytest.mark.parametrize("view", VIEWS)
def test_every_edge_of_the_shipped_jobs_moves_as_far_as_it_says(name: str, view: str):
    job = read_demo(name)
    here = plan_surround(job)
    told = {grip.name: _moves_as_it_says(job, here, grip) for grip in list_grips(here, view)}
    assert not [words for words, right in told.items() if right is False]
    assert sum(right is True for right in told.values()) >= 0.8 * len(told) > 4


FULL = {
    "capital__on": True,
    "plinth_cap__on": True,
    "over__on": True,
    "over__reach": "height",
    "slip__on": True,
    "column__panels": 2,
    "shelf__edge_height": 2.5,
}


@pytest.mark.parametrize("more", [{}, {"column__kind": "fluted"}, {"column__kind": "raised"},
                                  {"frieze__kind": "tablet"},
                                  {"frieze__place": "in_front"}, {"column__taper": 1.0}])  # fmt: skip
@pytest.mark.parametrize("view", VIEWS)
def test_every_edge_of_a_crowded_job_moves_as_far_as_it_says(more: dict[str, object], view: str):
    job = _with(read_demo("brick"), **(FULL | more))
    here = plan_surround(job)
    for grip in list_grips(here, view):
        assert _moves_as_it_says(job, here, grip) is not False, grip


@settings(max_examples=40)
@given(jobs(), st.sampled_from(VIEWS))
def test_edges_of_any_job_are_named_apart_and_move_as_they_say(job: Job, view: str):
    here = plan_of(job)
    grips = list_grips(here, view)
    assert len({grip.name for grip in grips}) == len(grips)
    assert all(follow_grip(here, grip.key) == grip for grip in grips)
    for grip in grips[::5]:
        assert grip.factor
        assert _moves_as_it_says(job, here, grip) is not False, grip


def test_both_columns_follow_one_edge_and_a_column_with_a_width_of_its_own_goes_alone():
    job = read_demo("brick")
    assert _named(job, "outer side of the left column").path == "column.width"
    alone = with_value(job, "column.width_left", 8.0)
    assert _named(alone, "outer side of the left column").path == "column.width_left"
    assert _named(alone, "outer side of the left column").value == 8.0
    assert _named(alone, "outer side of the right column").path == "column.width"


def test_a_panel_as_far_from_the_friezes_foot_as_from_its_top_is_still_one_of_the_columns_own():
    low = _with(default_job(), opening__height=10.0, facing__height=12.0, plinth__height=6.0)
    shelf = low.design.shelf.height - plan_surround(low).layout.shelf_bottom + 42.0
    job = _with(low, shelf__height=shelf, frieze__kind="plain", frieze__height=27.625, bed_mould__on=False)
    job = _with(job, column__kind="framed", column__panels=4)
    here = plan_surround(job)
    third = here.layout.left.frame.openings[2]
    assert third[1] - here.layout.frieze_bottom == 42.0 - third[3] == 10.875
    assert _named(job, "lower edge of panel 4 of the left column").path == "column.rail"
    assert all(_moves_as_it_says(job, here, grip) is not False for grip in list_grips(here, "front"))


def test_edges_that_nothing_of_is_built_cannot_be_taken_hold_of():
    job = read_demo("brick")
    assert {"plinth.height", "plinth.projection"} <= _paths(job)
    assert not {path for path in _paths(with_value(job, "plinth.on", False)) if path.startswith("plinth")}
    assert "frieze.stile" not in _paths(with_value(job, "frieze.kind", "plain"))


def test_a_frieze_behind_the_columns_is_not_taken_hold_of_from_the_side():
    job = read_demo("brick")
    assert job.design.frieze.projection < job.design.column.projection
    assert "frieze.projection" not in _paths(job, "side")
    assert "frieze.projection" in _paths(with_value(job, "frieze.projection", 6.0), "side")


def test_what_is_measured_on_the_masonry_is_not_shaped():
    firsts = {path.split(".")[0] for view in VIEWS for path in _paths(read_demo("brick"), view)}
    assert not firsts & {"opening", "facing", "hearth", "room", "level"}


def test_sections_and_plans_have_no_edges_to_take_hold_of():
    surround = plan_surround(default_job())
    assert list_grips(surround, "plan") == ()
    assert list_grips(surround, "vertical_section") == ()


def test_an_edge_band_as_high_as_its_shelf_stays_so():
    job = read_demo("brick")
    under = _named(job, "underside of the shelf")
    moved = move_edge(job, under, 3.0)
    assert (moved.design.shelf.thickness, moved.design.shelf.edge_height) == (3.0, 3.0)
    lower = with_value(job, "shelf.edge_height", 3.0)
    band = _named(lower, "lower edge of the shelf's edge band")
    assert band.path == "shelf.edge_height"
    assert move_edge(lower, band, 3.5).design.shelf.thickness == job.design.shelf.thickness


def test_an_edge_has_the_value_it_is_built_as():
    job = with_value(default_job(), "column.stile", 8.0)
    surround = plan_surround(job)
    built = next(s.built for s in surround.layout.shortfalls if s.path == "column.stile")
    edge = next(g for g in list_grips(surround, "front") if g.path == "column.stile")
    assert edge.value == built < 8.0


def test_a_site_with_readings_is_shaped_as_it_was_entered():
    job = read_demo("brick")
    readings = replace(job.site.readings, opening_width=(48.25, 47.75))
    read = replace(job, site=replace(job.site, readings=readings))
    assert _paths(read) == _paths(job)


def test_edges_go_across_where_they_stand_and_up_where_they_lie():
    for view in VIEWS:
        for grip in _grips(read_demo("brick"), view):
            x0, y0, x1, y1 = grip.segments[0]
            assert grip.way == (ACROSS if abs(x1 - x0) < abs(y1 - y0) else UP), grip.name


def test_an_edge_says_what_it_changes_as_the_measuring_list_does():
    assert _named(read_demo("brick"), "outer side of the left column").label == "Column width"
