"""Limits of the clearances: at one everything is as it was, one fraction further a part is over."""

from __future__ import annotations

import pytest

from app.demo import read_demo
from model.check.finding import Status
from model.check.in_force import read_statuses
from model.job import Job, default_job, with_value
from model.shaping.grip import Grip, move_edge
from model.shaping.grips import list_grips
from model.shaping.limits import find_limits
from model.shaping.snap import Mark, step_along_tape
from model.surround import plan_surround
from model.units import format_length


def _grips(job: Job, view: str = "front") -> tuple[Grip, ...]:
    return list_grips(plan_surround(job), view)


def _grip(job: Job, path: str, view: str = "front") -> Grip:
    return next(grip for grip in _grips(job, view) if grip.path == path)


def _limits(job: Job, grip: Grip) -> list[Mark]:
    return [mark for mark in find_limits(job, grip) if mark is not None]


def _over(job: Job) -> set[str]:
    statuses = read_statuses(plan_surround(job))
    return {part for part, status in statuses.items() if status is Status.FAIL}


@pytest.mark.parametrize(
    ("path", "view", "way"),
    [("frieze.height", "front", 1), ("shelf.height", "front", -1), ("column.margin", "front", -1),
     ("plinth.projection", "front", 1), ("column.projection", "side", 1)],
)  # fmt: skip
def test_a_limit_is_the_last_fraction_before_a_part_is_over(path: str, view: str, way: int):
    job = read_demo("brick")
    grip = _grip(job, path, view)
    assert _over(job) == set()
    (limit,) = _limits(job, grip)
    assert (limit.value - grip.value) * way > 0
    assert limit.over == way
    assert limit.past.endswith(format_length(limit.value, job.about.length_style))
    assert _over(move_edge(job, grip, limit.value)) == set()
    beyond = step_along_tape(limit.value, way, job.about.length_style)
    over = _over(move_edge(job, grip, beyond))
    assert over
    assert any(part in limit.reason for part in over)


def test_where_a_part_is_over_the_first_value_that_clears_it_is_a_limit_too():
    job = read_demo("too-close")
    grip = _grip(job, "column.margin")
    before = _over(job)
    first = next(mark for mark in _limits(job, grip) if mark.reason.startswith("first"))
    assert _over(move_edge(job, grip, first.value)) < before
    short = step_along_tape(first.value, -1, job.about.length_style)
    assert _over(move_edge(job, grip, short)) == before


def test_an_edge_that_no_clearance_hangs_on_has_no_limit():
    job = read_demo("brick")
    assert _limits(job, _grip(job, "column.stile")) == []


def test_where_no_rule_is_known_there_is_no_limit():
    job = with_value(default_job(), "site.fireplace", "factory_built")
    assert read_statuses(plan_surround(job)) == {}
    assert _limits(job, _grip(job, "frieze.height")) == []


def test_the_work_comes_in_small_pieces():
    job = read_demo("brick")
    grip = _grip(job, "frieze.height")
    pieces = list(find_limits(job, grip))
    assert len(pieces) > 8
    assert sum(piece is not None for piece in pieces) == 1


def test_from_a_value_off_the_tape_the_limit_is_found_on_it():
    job = read_demo("brick")
    (limit,) = _limits(job, _grip(job, "frieze.height"))
    at = with_value(job, "frieze.height", limit.value - 0.03)
    assert [own.value for own in _limits(at, _grip(at, "frieze.height"))] == [limit.value]
