"""Finishing uses up what was taken off, no more and no less, in an order in which it can be done."""

from __future__ import annotations

import pytest

from app.demo import read_demo
from model.job import Job, default_job, with_texts
from model.steps.finishing import Finish, list_finishing
from model.surround import plan_surround
from model.takeoff.materials import Material
from model.takeoff.takeoff import take_off

FINISHED_WITH = ("Abrasive", "Primer", "Wood filler", "Caulk", "Top coat")


def finished(job: Job) -> tuple[tuple[Finish, ...], tuple[Material, ...]]:
    materials = take_off(plan_surround(job)).materials
    return list_finishing(job, materials), materials


@pytest.mark.parametrize("name", ["brick", "gas"])
def test_what_finishing_takes_adds_up_to_the_take_off(name: str) -> None:
    finishing, materials = finished(read_demo(name))
    for material in materials:
        if material.name in FINISHED_WITH:
            taken = sum(finish.share for finish in finishing if material in finish.materials)
            assert taken == pytest.approx(1.0), material.name


def test_primer_goes_on_loose_pieces_and_caulk_before_the_first_top_coat() -> None:
    titles = [finish.title for finish in finished(default_job())[0]]
    assert titles == [
        "Sand the bare wood",
        "Prime every piece",
        "Fill holes and seams",
        "Sand the filler",
        "Caulk",
        "First top coat",
        "Second top coat",
    ]


def test_coats_that_are_not_wanted_are_left_out() -> None:
    bare = with_texts(default_job(), [("rates.primer_coats", "0"), ("rates.top_coats", "0")])
    titles = [finish.title for finish in finished(bare)[0]]
    assert not any("coat" in title or "rime" in title for title in titles)


def test_the_last_coat_is_left_to_harden_and_those_before_it_to_be_coated_again() -> None:
    job = with_texts(default_job(), [("rates.top_coats", "3"), ("times.top", "5"), ("times.hard", "30")])
    finishing = finished(job)[0]
    assert [finish.waits for finish in finishing[-3:]] == [5.0, 5.0, 30.0]


def test_hours_of_finishing_are_the_jobs() -> None:
    job = with_texts(default_job(), [("times.finish", "4"), ("times.coat", "2")])
    finishing = finished(job)[0]
    assert sum(finish.hours for finish in finishing) == pytest.approx(4 + 3 * 2)
