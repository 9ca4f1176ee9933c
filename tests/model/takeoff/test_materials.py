"""Materials from areas, lengths and counts by rates."""

from __future__ import annotations

from math import pi

import pytest

from app.demo import list_demos, read_demo
from model.job import with_texts
from model.reference.sourced import Standing
from model.surround import plan_surround
from model.takeoff.fasteners import list_fixings
from model.takeoff.joints import JointKind, joint_length, list_joints
from model.takeoff.materials import CAULKED, find_rate, list_materials
from model.takeoff.surfaces import list_surfaces


def _lines(*settings: str):
    job = with_texts(read_demo("bedroom"), [tuple(setting.split("=", 1)) for setting in settings])
    surround = plan_surround(job)
    surfaces = list_surfaces(surround)
    joints, fixings = list_joints(surfaces), list_fixings(surfaces, job.shop.rates)
    return job, surfaces, joints, fixings, list_materials(job, surfaces, joints, fixings)


def _amounts(name: str, *settings: str) -> list[float]:
    return [line.amount for line in _lines(*settings)[-1] if line.name == name]


def test_primer_is_for_all_faces_and_top_coat_for_what_shows():
    _, surfaces, _, _, lines = _lines()
    by_name = {line.name: line for line in lines}
    assert by_name["Primer"].amount == pytest.approx(surfaces.primed_area / 144 / (250 * 0.9))
    assert by_name["Top coat"].amount == pytest.approx(2 * surfaces.painted_area / 144 / (375 * 0.9))


def test_glue_is_a_film_on_what_is_glued():
    _, _, _, fixings, lines = _lines()
    area = sum(fixing.glue for fixing in fixings)
    (glue,) = (line for line in lines if line.name == "Wood glue")
    assert glue.amount == pytest.approx(area * 0.006 / 231 * 128 * 1.2, rel=1e-3)


def test_caulk_is_a_fillet_along_inside_corners_and_along_masonry():
    _, _, joints, _, lines = _lines()
    wood, masonry = (line for line in lines if line.name == "Caulk")
    assert wood.basis.length == joint_length(joints, JointKind.CORNER)
    assert masonry.basis.length == joint_length(joints, JointKind.SITE, CAULKED)
    assert wood.amount == pytest.approx(wood.basis.length / 128 * 1.1 / (10.1 * 231 / 128))
    assert masonry.amount == pytest.approx(masonry.basis.length / 32 * 1.1 / (10.1 * 231 / 128))


def test_filler_is_for_holes_that_show_and_flush_seams():
    _, _, joints, fixings, lines = _lines()
    holes = sum(fixing.count for fixing in fixings if fixing.shows)
    seams = joint_length(joints, JointKind.FLUSH) + joint_length(joints, JointKind.MITRE)
    (filler,) = (line for line in lines if line.name == "Wood filler")
    volume = holes * pi / 4 * 0.09**2 / 8 + seams / 32**2
    assert filler.amount == pytest.approx(2 * volume * 128 / 231)


@pytest.mark.parametrize(
    ("setting", "name", "factor"),
    [
        ("rates.primer_coverage=500", "Primer", 0.5),
        ("rates.primer_coats=2", "Primer", 2),
        ("rates.top_coats=1", "Top coat", 0.5),
        ("rates.top_coverage=750", "Top coat", 0.5),
        ("rates.coat_loss=55", "Top coat", 2),
        ("rates.glue_film=12", "Wood glue", 2),
        ("rates.glue_loss=0", "Wood glue", 1 / 1.2),
        ("rates.caulk_cartridge=20.2", "Caulk", 0.5),
        ("rates.caulk_loss=65", "Caulk", 1.5),
        ("rates.bead_wood=1/4", "Caulk", 4),
        ("rates.filler_loss=300", "Wood filler", 2),
        ("rates.abrasive_disc=24", "Abrasive", 0.5),
        ("rates.abrasive_grits=1", "Abrasive", 0.5),
    ],
)
def test_every_rate_has_its_say(setting, name, factor):
    assert _amounts(name, setting)[0] == pytest.approx(factor * _amounts(name)[0], rel=1e-6)


def test_twice_the_bead_along_masonry_takes_four_times_the_caulk():
    assert _amounts("Caulk", "rates.bead_masonry=1/2")[1] == pytest.approx(4 * _amounts("Caulk")[1])


def test_what_nothing_is_needed_of_is_not_listed():
    names = {line.name for line in _lines("rates.primer_coats=0", "rates.top_coats=0")[-1]}
    assert not names & {"Primer", "Top coat"}


def test_a_default_rate_keeps_its_source_and_a_changed_one_is_the_makers():
    job = read_demo("bedroom")
    assert find_rate(job, "rates.caulk_cartridge").standing is Standing.PUBLISHED
    own = find_rate(with_texts(job, [("rates.caulk_cartridge", "28")]), "rates.caulk_cartridge")
    assert (own.value, own.standing, own.source) == (28, Standing.SHOP_CHOICE, "set in this job")


def test_a_saw_that_is_not_measured_is_the_usual_one():
    rate = find_rate(read_demo("bedroom"), "saw.shoe_right")
    assert (rate.value, rate.standing) == (5, Standing.COMMON_PRACTICE)


@pytest.mark.parametrize("name", list_demos())
def test_a_shipped_job_needs_of_everything(name):
    job = read_demo(name)
    surfaces = list_surfaces(plan_surround(job))
    fixings = list_fixings(surfaces, job.shop.rates)
    lines = list_materials(job, surfaces, list_joints(surfaces), fixings)
    assert {line.name for line in lines} >= {
        "Wood glue", "Finish nails", "Brads", "Pocket screws", "Wood filler", "Abrasive", "Primer",
        "Caulk", "Top coat",
    }  # fmt: skip
    assert all(line.amount > 0 and line.rates for line in lines)
