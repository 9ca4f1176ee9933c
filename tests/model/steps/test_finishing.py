"""Finishing uses up what was taken off, no more and no less, in an order in which it can be done."""

from __future__ import annotations

import pytest

from app.demo import read_demo
from model.job import Job, default_job, with_texts
from model.steps.finishing import Finish, list_finishing
from model.surround import plan_surround
from model.takeoff.materials import Material
from model.takeoff.takeoff import take_off

FINISHED_WITH = (
    "Abrasive", "Primer", "Stain", "Sealer", "Wood filler", "Caulk", "Top coat", "Clear coat",
)  # fmt: skip


def finished(job: Job) -> tuple[tuple[Finish, ...], tuple[Material, ...]]:
    materials = take_off(plan_surround(job)).materials
    return list_finishing(job, materials), materials


@pytest.mark.parametrize("finish", ["painted", "stained", "clear"])
@pytest.mark.parametrize("name", ["brick", "gas"])
def test_what_finishing_takes_adds_up_to_the_take_off(name: str, finish: str) -> None:
    finishing, materials = finished(with_texts(read_demo(name), [("look.finish", finish)]))
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


@pytest.mark.parametrize(("finish", "stained"), [("stained", ["Stain"]), ("clear", [])])
def test_wood_whose_grain_shows_is_neither_primed_nor_painted(finish: str, stained: list[str]) -> None:
    finishing, materials = finished(with_texts(default_job(), [("look.finish", finish)]))
    assert [each.title for each in finishing] == [
        "Sand the bare wood",
        *stained,
        "Seal every piece",
        "Fill nail holes",
        "Sand the filler",
        "Caulk",
        "First clear coat",
        "Second clear coat",
    ]
    words = " ".join([each.how for each in finishing] + [each.name for each in materials]).lower()
    assert not any(word in words for word in ("primer", "paint", "top coat", "inside corners"))
    assert [each.dries.row.path for each in finishing if each.dries][-2:] == [
        "times.clear",
        "times.clear_hard",
    ]


def test_stain_goes_on_what_shows_and_sealer_on_all_faces() -> None:
    """At 450 and 425 sq ft to the gallon, a tenth of it lost."""
    job = with_texts(default_job(), [("look.finish", "stained")])
    takeoff = take_off(plan_surround(job))
    gallons = {material.name: material.amount for material in takeoff.materials}
    surfaces = takeoff.surfaces
    assert gallons["Stain"] == pytest.approx(surfaces.painted_area / 144 / (450 * 0.9))
    assert gallons["Sealer"] == pytest.approx(surfaces.primed_area / 144 / (425 * 0.9))
    assert gallons["Clear coat"] == pytest.approx(2 * surfaces.painted_area / 144 / (425 * 0.9))


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
