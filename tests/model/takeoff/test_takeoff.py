"""Everything at once, on many surrounds: nothing raises, and the parts agree with each other."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from app.demo import list_demos, read_demo
from model.board import StockKind
from model.job import Job, default_job, with_texts
from model.surround import plan_surround
from model.takeoff.joints import JointKind, joint_length
from model.takeoff.materials import CAULKED
from model.takeoff.takeoff import Takeoff, take_off
from tests.planned import take
from tests.strategies import jobs

MANY = {
    "sprung": "bed_mould.profile=crown_38 bed_mould.size=3 capital.on=yes plinth_cap.on=yes",
    "fluted": "column.kind=fluted capital.on=yes frieze.kind=tablet frieze.place=in_front",
    "plank": "shelf.kind=plank shelf.edge_profile=ovolo slip.on=yes back_band.on=yes",
    "overmantel": "over.on=yes room.ceiling=90 panel_mould.on=yes",
    "crooked": "level.centre=20 level.left=21 level.right=19.5 facing.proud=3 facing.height=40",
    "cords": "cord.on=yes column.width=10 column.projection=6 column.panels=2 cord.panel_clearance=1/4",
}


def _job(text: str) -> Job:
    return with_texts(default_job(), [tuple(setting.split("=")) for setting in text.split()])


def _check(job: Job) -> Takeoff:
    surround = plan_surround(job)
    takeoff = take_off(surround)
    surfaces = takeoff.surfaces
    bare, glued = sum(shape.area for shape in surfaces.bare), 2 * surfaces.glued_area
    against = sum(contact.area for contact in surfaces.against)  # facing and wall may lie in one plane
    assert surfaces.primed_area - glued - against <= bare * 1.01 + 1
    assert bare <= surfaces.primed_area - glued + 1e-3
    assert 0 < surfaces.painted_area <= bare + 1e-6
    assert sum(cut.quantity for cut in takeoff.cuts) == len(surround.boards)
    assert sum(load.pieces for load in takeoff.loads) == len(surround.boards)
    caulk = sum(m.basis.length or 0.0 for m in takeoff.materials if m.name == "Caulk")
    assert caulk == pytest.approx(
        joint_length(takeoff.joints, JointKind.CORNER) + joint_length(takeoff.joints, JointKind.SITE, CAULKED)
    )
    assert all(material.amount > 0 for material in takeoff.materials)
    return takeoff


@pytest.mark.parametrize("name", list_demos())
def test_the_parts_of_a_shipped_jobs_takeoff_agree(name):
    takeoff = _check(read_demo(name))
    assert all(cut.shows and cut.grain and cut.hand and cut.rough for cut in takeoff.cuts)


@pytest.mark.parametrize("name", MANY)
def test_the_parts_of_another_surrounds_takeoff_agree(name):
    _check(_job(MANY[name]))


@settings(max_examples=6, deadline=None)
@given(jobs())
def test_no_job_in_range_raises(job):
    take(job)


def test_a_loose_panel_is_taped_and_neither_nailed_nor_caulked():
    surround = plan_surround(_job(MANY["cords"]))
    takeoff = take_off(surround)
    loose = [i for i, board in enumerate(surround.boards) if board.role == "access panel"]
    assert loose
    assert not [f for f in takeoff.fixings if {f.through, f.into} & set(loose)]
    round_it = [joint for joint in takeoff.joints if set(joint.boards) & set(loose)]
    assert {joint.kind for joint in round_it} <= {JointKind.LOOSE}
    (tape,) = (material for material in takeoff.materials if material.name == "Hook-and-loop tape")
    assert tape.amount == pytest.approx(2 * surround.boards[loose[0]].length / 12)


def test_new_parts_are_taken_along_without_a_word_about_them():
    plain, more = (
        take_off(plan_surround(_job(text))) for text in ("over.on=no", "over.on=yes room.ceiling=90")
    )
    assert more.surfaces.primed_area > plain.surfaces.primed_area
    assert more.surfaces.painted_area > plain.surfaces.painted_area
    assert sum(load.weight for load in more.loads) > sum(load.weight for load in plain.loads)
    assert "ceiling" in {joint.site for joint in more.joints}


def test_mouldings_are_bradded_and_never_nailed():
    surround = plan_surround(_job(MANY["sprung"]))
    for fixing in take_off(surround).fixings:
        if surround.boards[fixing.through].stock.kind is StockKind.MOULDING and fixing.count:
            assert "brad" in fixing.means
