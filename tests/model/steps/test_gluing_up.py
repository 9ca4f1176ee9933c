"""Wide pieces are glued up and dressed before anything else, each once, with their glue counted."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from app.demo import read_demo
from model.board import StockKind
from model.cutting.pieces import plan_glued
from model.days.plan import plan_days
from model.job import Job, with_texts
from model.steps.gluing_up import DRESS, GLUE_UP
from model.steps.plan import plan_steps
from model.steps.step import Step, Where
from model.takeoff.rough import plan_rough
from model.takeoff.takeoff import take_off
from model.units import format_length
from render.step_words import say_glue
from tests.planned import plan_of, take
from tests.strategies import jobs

WIDE = [("frieze.kind", "plain"), ("frieze.place", "in_front")]
PLANKS = [("shelf.kind", "plank"), ("shelf.depth", "14")]


def wide_job(pairs: list[tuple[str, str]] = WIDE) -> Job:
    return with_texts(read_demo("brick"), pairs)


def steps_of(job: Job) -> tuple[Step, ...]:
    return plan_steps(plan_of(job), take(job))


def test_a_wide_frieze_is_glued_up_of_strips_of_its_rough_width_and_then_dressed() -> None:
    job = wide_job()
    surround = plan_of(job)
    style = job.about.length_style
    cut, glue, dress, *_ = steps_of(job)
    rough = plan_rough(surround)["F1"]
    assert (cut.title, glue.title, dress.title) == ("Cut and mark every board", GLUE_UP, DRESS)
    assert rough.strips == 2
    wide, long = (format_length(size, style) for size in (rough.strip_width, rough.length.rough))
    assert f"F1: 2 strips {wide} wide, {long} long." in glue.notes
    assert f"F1: rip to {format_length(rough.width.to_saw, style)}" in " ".join(dress.notes)
    assert any("Joint the edges" in note for note in glue.notes)


def test_clamps_and_cure_are_the_jobs_own() -> None:
    job = with_texts(wide_job(), [("times.clamp", "2"), ("times.cure", "30")])
    glue = steps_of(job)[1]
    assert glue.dries == 2
    assert any("in clamps 2 h, and 30 h from gluing" in note for note in glue.notes)


def test_dressing_waits_for_the_cure_and_priming_for_dressing() -> None:
    plan = plan_days(plan_of(wide_job()), take(wide_job()))
    names = [task.name for task in plan.tasks]
    glue, dress, prime = (names.index(name) for name in (GLUE_UP, DRESS, "Prime every piece"))
    assert plan.tasks[glue].hours > 0 < plan.tasks[dress].hours
    assert plan.slots[dress].begin >= plan.slots[glue].work[-1][1] + 24
    assert plan.slots[prime].begin >= plan.slots[dress].ready
    frieze = names.index("Frieze board")
    assert plan.slots[frieze].begin >= plan.slots[prime].ready


def test_planks_of_a_solid_shelf_are_glued_edge_to_edge_at_the_beginning() -> None:
    job = wide_job(PLANKS)
    surround = plan_of(job)
    planks = {i for i, board in enumerate(surround.boards) if board.role == "shelf plank"}
    assert len(planks) > 1
    glue = steps_of(job)[1]
    assert glue.title == GLUE_UP
    assert planks <= set(glue.boards)
    assert say_glue(glue, surround, take(job))


def test_nothing_wide_nothing_glued_up() -> None:
    surround, takeoff = plan_of(read_demo("gas")), take(read_demo("gas"))
    assert bool(takeoff.glue_ups) is any(step.wide for step in plan_steps(surround, takeoff))


@settings(max_examples=10)
@given(jobs())
def test_every_glue_up_is_made_once_and_first_and_its_glue_is_bought(job: Job) -> None:
    surround, takeoff = plan_of(job), take(job)
    steps = plan_steps(surround, takeoff)
    rough = plan_rough(surround)
    wanted = {i for kind in surround.kinds for i in kind.pieces if rough[kind.mark].strips > 1}
    glued = [i for step in steps for i in step.glued]
    assert len(glued) == len(set(glued))
    assert wanted <= set(glued)
    dressed = {i for step in steps for i in step.dressed}
    assert set(glued) <= dressed
    last = max((n for n, step in enumerate(steps) if step.wide), default=0)
    assert all(step.where is Where.BENCH and not step.parts for step in steps[: last + 1])
    edges = sum(
        (rough[kind.mark].strips - 1) * rough[kind.mark].length.rough * surround.boards[i].thickness
        for kind in surround.kinds
        for i in kind.pieces
    )
    (area,) = [m.basis.area for m in takeoff.materials if m.name == "Wood glue"] or [0.0]
    assert area is not None
    assert area >= sum(fixing.glue for fixing in takeoff.fixings) + edges - 1e-6


def test_strips_are_as_many_as_the_yard_has_boards_for() -> None:
    surround = plan_of(wide_job())
    narrow = plan_glued(surround, lambda material: 5.5 if material.kind is StockKind.BOARD else 0.0)
    glue = plan_steps(surround, take_off(surround, narrow))[1]
    assert narrow["F1"].strips > plan_rough(surround)["F1"].strips
    assert any(note.startswith(f"F1: {narrow['F1'].strips} strips") for note in glue.notes)


@pytest.mark.parametrize("pairs", [WIDE, PLANKS])
def test_glue_in_the_steps_adds_up_to_what_is_bought(pairs: list[tuple[str, str]]) -> None:
    job = wide_job(pairs)
    surround, takeoff = plan_of(job), take(job)
    (glue,) = (m for m in takeoff.materials if m.name == "Wood glue")
    told = [say_glue(step, surround, takeoff) for step in plan_steps(surround, takeoff)]
    total = sum(float(words.split()[0]) for words in told if words)
    assert total == pytest.approx((glue.basis.area or 0.0) / 144, rel=0.02)
